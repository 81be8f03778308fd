package gable.verify;

import java.util.Arrays;

/**
 * A hash table from keys to numbers that are not negative, without boxing. Open addressing with
 * linear probing, at most half full.
 */
final class LongTable {

  /** What a missing key gives. */
  static final int NONE = -1;

  private static final long SPREAD = 0x9E3779B97F4A7C15L; // 2^64 over the golden ratio

  private long[] keys;
  private int[] values;
  private int size;

  LongTable(int expected) {
    int room = Integer.highestOneBit(Math.max(8, expected)) * 4;
    keys = new long[room];
    values = new int[room];
    Arrays.fill(values, NONE);
  }

  /** A key for an ordered pair of numbers that are not negative. */
  static long pair(int first, int second) {
    return ((long) first << 32) | second;
  }

  int get(long key) {
    return values[slot(key)];
  }

  /** Stores a value unless the key has one already, and returns that one or {@link #NONE}. */
  int putIfAbsent(long key, int value) {
    int slot = slot(key);
    int before = values[slot];
    if (before == NONE) {
      keys[slot] = key;
      values[slot] = value;
      size++;
      if (2 * size > keys.length) {
        grow();
      }
    }
    return before;
  }

  private int slot(long key) {
    int mask = keys.length - 1;
    int slot = (int) ((key * SPREAD) >>> 32) & mask;
    while (values[slot] != NONE && keys[slot] != key) {
      slot = (slot + 1) & mask;
    }
    return slot;
  }

  private void grow() {
    long[] oldKeys = keys;
    int[] oldValues = values;
    keys = new long[2 * oldKeys.length];
    values = new int[keys.length];
    Arrays.fill(values, NONE);
    for (int k = 0; k < oldKeys.length; k++) {
      if (oldValues[k] != NONE) {
        int slot = slot(oldKeys[k]);
        keys[slot] = oldKeys[k];
        values[slot] = oldValues[k];
      }
    }
  }
}

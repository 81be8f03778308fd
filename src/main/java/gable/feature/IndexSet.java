package gable.feature;

import java.util.Arrays;

/**
 * A set of small numbers in the order of their arrival, emptied in constant time: membership is a
 * stamp, so that one set serves thousands of searches over a large mesh without being cleared.
 */
final class IndexSet {

  private final int[] stamps;
  private final int[] positions;
  private int stamp = 1;
  private int[] items = new int[64];
  private int size;

  /** An empty set of numbers below {@code bound}. */
  IndexSet(int bound) {
    stamps = new int[bound];
    positions = new int[bound];
  }

  void clear() {
    size = 0;
    stamp++;
  }

  boolean contains(int index) {
    return stamps[index] == stamp;
  }

  /** Adds a number; false if it was there. */
  boolean add(int index) {
    if (stamps[index] == stamp) {
      return false;
    }
    stamps[index] = stamp;
    if (size == items.length) {
      items = Arrays.copyOf(items, 2 * size);
    }
    positions[index] = size;
    items[size++] = index;
    return true;
  }

  /** Where a number stands that is in the set. */
  int position(int index) {
    return positions[index];
  }

  int size() {
    return size;
  }

  int get(int position) {
    return items[position];
  }

  /** The numbers in order of arrival, in an array that may be longer and must not be changed. */
  int[] items() {
    return items;
  }

  int[] toArray() {
    return Arrays.copyOf(items, size);
  }

  /** Holds exactly the given numbers from now on. */
  void set(int[] numbers, int count) {
    clear();
    for (int k = 0; k < count; k++) {
      add(numbers[k]);
    }
  }
}

package gable.threemf;

import java.util.Arrays;

/**
 * Primitive arrays that grow with the data that really came, never with a size that somebody
 * claimed. A step of one half keeps the copying linear and the waste below a half.
 */
final class Growing {

  private Growing() {}

  private static int larger(int length, int needed) {
    long grown = Math.max(needed, 64L + length + (length >> 1));
    return (int) Math.min(grown, Integer.MAX_VALUE - 8);
  }

  /** Doubles. */
  static final class Doubles {
    private double[] values = {};
    private int size;

    void add(double value) {
      if (size == values.length) {
        values = Arrays.copyOf(values, larger(size, size + 1));
      }
      values[size++] = value;
    }

    void add(double first, double second, double third) {
      if (size + 3 > values.length) {
        values = Arrays.copyOf(values, larger(size, size + 3));
      }
      values[size] = first;
      values[size + 1] = second;
      values[size + 2] = third;
      size += 3;
    }

    int size() {
      return size;
    }

    double get(int index) {
      return values[index];
    }

    /** The values; this object must not be used after. */
    double[] taken() {
      return size == values.length ? values : Arrays.copyOf(values, size);
    }
  }

  /** Ints. */
  static final class Ints {
    private int[] values = {};
    private int size;

    void add(int value) {
      if (size == values.length) {
        values = Arrays.copyOf(values, larger(size, size + 1));
      }
      values[size++] = value;
    }

    void add(int first, int second, int third) {
      if (size + 3 > values.length) {
        values = Arrays.copyOf(values, larger(size, size + 3));
      }
      values[size] = first;
      values[size + 1] = second;
      values[size + 2] = third;
      size += 3;
    }

    void addAll(int[] more) {
      if (size + more.length > values.length) {
        values = Arrays.copyOf(values, larger(size, size + more.length));
      }
      System.arraycopy(more, 0, values, size, more.length);
      size += more.length;
    }

    int size() {
      return size;
    }

    int get(int index) {
      return values[index];
    }

    void set(int index, int value) {
      values[index] = value;
    }

    /** The values; this object must not be used after. */
    int[] taken() {
      return size == values.length ? values : Arrays.copyOf(values, size);
    }
  }

  /** Bytes. */
  static final class Bytes {
    private byte[] values = {};
    private int size;

    void add(byte[] from, int start, int end) {
      int needed = size + (end - start);
      if (needed > values.length) {
        values = Arrays.copyOf(values, larger(size, needed));
      }
      System.arraycopy(from, start, values, size, end - start);
      size = needed;
    }

    int size() {
      return size;
    }

    byte[] values() {
      return values;
    }
  }
}

package gable.verify;

import java.util.Arrays;

/** A growing list of numbers without boxing: one edit looks at thousands of facets. */
final class IntList {

  private int[] values = new int[64];
  private int size;

  void add(int value) {
    if (size == values.length) {
      values = Arrays.copyOf(values, 2 * size);
    }
    values[size++] = value;
  }

  int size() {
    return size;
  }

  int get(int index) {
    return values[index];
  }

  int removeLast() {
    return values[--size];
  }

  void sort() {
    Arrays.sort(values, 0, size);
  }

  /** True if a sorted list has a value. */
  boolean contains(int value) {
    return Arrays.binarySearch(values, 0, size, value) >= 0;
  }
}

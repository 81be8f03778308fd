package gable.feature;

/** Order statistics without sorting (C. A. R. Hoare, Algorithm 65: FIND, CACM 4, 1961). */
final class Selection {

  private Selection() {}

  /**
   * The upper median of the first values, which change places.
   *
   * @param count how many, at least one
   */
  static double median(double[] values, int count) {
    int wanted = count / 2;
    int low = 0;
    int high = count - 1;
    while (low < high) {
      double pivot = middleOf(values[low], values[(low + high) >>> 1], values[high]);
      int i = low;
      int j = high;
      while (i <= j) {
        while (values[i] < pivot) {
          i++;
        }
        while (values[j] > pivot) {
          j--;
        }
        if (i <= j) {
          double swap = values[i];
          values[i++] = values[j];
          values[j--] = swap;
        }
      }
      if (wanted <= j) {
        high = j;
      } else if (wanted >= i) {
        low = i;
      } else {
        break;
      }
    }
    return values[wanted];
  }

  private static double middleOf(double a, double b, double c) {
    return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
  }
}

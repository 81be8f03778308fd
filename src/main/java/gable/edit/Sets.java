package gable.edit;

import java.util.Arrays;

/** Disjoint sets of the numbers below a bound; the least number of a set stands for it. */
final class Sets {

  private int[] parent;

  Sets(int count) {
    parent = new int[count];
    Arrays.setAll(parent, k -> k);
  }

  /** Makes room for numbers below {@code count}. */
  void grow(int count) {
    int old = parent.length;
    if (count > old) {
      parent = Arrays.copyOf(parent, Math.max(count, 2 * old));
      for (int k = old; k < parent.length; k++) {
        parent[k] = k;
      }
    }
  }

  int find(int number) {
    int root = number;
    while (parent[root] != root) {
      root = parent[root];
    }
    while (parent[number] != root) {
      int next = parent[number];
      parent[number] = root;
      number = next;
    }
    return root;
  }

  void join(int one, int other) {
    int a = find(one);
    int b = find(other);
    parent[Math.max(a, b)] = Math.min(a, b);
  }
}

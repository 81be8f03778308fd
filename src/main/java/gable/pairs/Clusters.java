package gable.pairs;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Claims that hang together because they want the same features. */
final class Clusters {

  private Clusters() {}

  /** The clusters, in the order of their first claims; each keeps the order of its claims. */
  static List<List<Claim>> of(List<Claim> claims) {
    Map<Doubt.Of, Integer> firstWith = new LinkedHashMap<>();
    int[] leader = new int[claims.size()];
    for (int k = 0; k < leader.length; k++) {
      leader[k] = k;
      for (boolean pins : new boolean[] {true, false}) {
        for (Doubt.Of feature : Claim.features(claims.subList(k, k + 1), pins)) {
          Integer other = firstWith.putIfAbsent(feature, k);
          if (other != null) {
            join(leader, other, k);
          }
        }
      }
    }
    Map<Integer, List<Claim>> clusters = new LinkedHashMap<>();
    for (int k = 0; k < leader.length; k++) {
      clusters.computeIfAbsent(find(leader, k), any -> new ArrayList<>()).add(claims.get(k));
    }
    return List.copyOf(clusters.values());
  }

  private static void join(int[] leader, int a, int b) {
    int one = find(leader, a);
    int other = find(leader, b);
    leader[Math.max(one, other)] = Math.min(one, other);
  }

  private static int find(int[] leader, int k) {
    int at = k;
    while (leader[at] != at) {
      leader[at] = leader[leader[at]];
      at = leader[at];
    }
    return at;
  }
}

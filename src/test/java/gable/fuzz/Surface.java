package gable.fuzz;

import gable.geom.Vec3;
import gable.mesh.Mesh;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;

/**
 * A mesh as it stands in a file, judged without any code of the program but the one that counts
 * crossings.
 */
final class Surface {

  private final double[] xyz;
  private final int[] corners;

  Surface(double[] xyz, int[] corners) {
    this.xyz = xyz;
    this.corners = corners;
  }

  int vertices() {
    return xyz.length / 3;
  }

  int triangles() {
    return corners.length / 3;
  }

  boolean sameAs(Surface other) {
    return Arrays.equals(xyz, other.xyz) && Arrays.equals(corners, other.corners);
  }

  /** True if the vertices of the other come first in this. */
  boolean startsAs(Surface other) {
    return xyz.length >= other.xyz.length
        && Arrays.equals(xyz, 0, other.xyz.length, other.xyz, 0, other.xyz.length);
  }

  /** The same with equal points as one vertex. */
  Surface joined() {
    Map<Vec3, Integer> first = new HashMap<>();
    int[] joined = corners.clone();
    for (int i = 0; i < joined.length; i++) {
      int v = joined[i];
      Vec3 point = new Vec3(xyz[3 * v] + 0.0, xyz[3 * v + 1] + 0.0, xyz[3 * v + 2] + 0.0);
      Integer known = first.putIfAbsent(point, v);
      joined[i] = known == null ? v : known;
    }
    return new Surface(xyz, joined);
  }

  /** True if every edge lies between two triangles that run along it in opposite directions. */
  boolean closed() {
    Map<Long, Integer> runs = new HashMap<>();
    for (int i = 0; i < corners.length; i++) {
      int next = i % 3 == 2 ? i - 2 : i + 1;
      long run = (long) corners[i] << 32 | corners[next];
      if (corners[i] == corners[next] || runs.merge(run, 1, Integer::sum) > 1) {
        return false;
      }
    }
    return runs.keySet().stream().allMatch(run -> runs.containsKey(run << 32 | run >>> 32));
  }

  /** Enclosed volume: the sum of the tetrahedra over the first vertex. */
  double volume() {
    double six = 0;
    for (int t = 0; t < corners.length; t += 3) {
      Vec3 a = fromFirst(corners[t]);
      Vec3 b = fromFirst(corners[t + 1]);
      Vec3 c = fromFirst(corners[t + 2]);
      six += a.dot(b.cross(c));
    }
    return six / 6;
  }

  private Vec3 fromFirst(int v) {
    return new Vec3(xyz[3 * v] - xyz[0], xyz[3 * v + 1] - xyz[1], xyz[3 * v + 2] - xyz[2]);
  }

  Mesh mesh() {
    return Mesh.of(xyz.clone(), corners.clone());
  }
}

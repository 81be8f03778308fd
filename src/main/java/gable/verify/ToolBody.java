package gable.verify;

import gable.geom.Box3;
import gable.geom.Vec3;
import gable.plan.ConvexTool;
import gable.plan.ToolPlane;
import java.util.List;

/**
 * A convex tool as the proofs see it: its planes, made unit anew, and its faces, each a polygon got
 * by cutting a large square with all other planes. It shares nothing with the solid that a tool
 * carries for those who cut with it.
 *
 * <p>Coordinates are relative to {@link #apex}, a point inside the tool, so that they are as small
 * as the tool is and pyramids over its faces have their tip at zero.
 */
final class ToolBody {

  private final List<ToolPlane> planes;
  private final Vec3 apex;
  private final Vec3[] normals;
  private final double[] offsets;
  private final double[][] faces;

  /** A ball around each face. */
  private final Ball[] balls;

  private final double volume;
  private final Box3 box;
  private final ConvexClip clip = new ConvexClip();

  private ToolBody(List<ToolPlane> planes, Vec3 apex, double reach) {
    this.planes = planes;
    this.apex = apex;
    this.normals = new Vec3[planes.size()];
    this.offsets = new double[planes.size()];
    for (int k = 0; k < normals.length; k++) {
      Vec3 given = planes.get(k).plane().normal();
      double length = given.norm();
      normals[k] = given.times(1 / length);
      offsets[k] = (planes.get(k).plane().offset() - given.dot(apex)) / length;
    }
    this.faces = new double[planes.size()][];
    this.balls = new Ball[planes.size()];
    double sum = 0;
    Box3 around = Box3.EMPTY;
    for (int k = 0; k < faces.length; k++) {
      faces[k] = face(k, reach);
      balls[k] = Ball.around(faces[k]);
      clip.load(faces[k]);
      sum += clip.isEmpty() ? 0 : offsets[k] * clip.area() / 3;
      for (int i = 0; i < faces[k].length; i += 3) {
        around = around.with(apex.plus(new Vec3(faces[k][i], faces[k][i + 1], faces[k][i + 2])));
      }
    }
    this.volume = sum;
    this.box = around;
  }

  /**
   * The body of a tool.
   *
   * @param attempt another number gives another apex
   */
  static ToolBody of(ConvexTool tool, int attempt) {
    // the box says only how large a square to start from and where; the faces are found anew
    Box3 hint = tool.box();
    double reach = 8 * hint.diagonal();
    Vec3 middle = hint.min().plus(hint.max()).times(0.5);
    var first = new ToolBody(tool.planes(), middle, reach);
    return new ToolBody(tool.planes(), first.inside(attempt), reach);
  }

  private double[] face(int k, double reach) {
    Vec3 n = normals[k];
    Vec3 u = n.anySquare();
    Vec3 v = n.cross(u);
    clip.clear();
    for (int corner = 0; corner < 4; corner++) {
      double su = corner == 0 || corner == 3 ? -reach : reach;
      double sv = corner < 2 ? -reach : reach;
      Vec3 p = n.times(offsets[k]).plus(u.times(su)).plus(v.times(sv));
      clip.add(p.x(), p.y(), p.z());
    }
    for (int turn = 1; turn < normals.length; turn++) {
      // planes listed next to this one mostly meet it, and leave little that others could cut
      int away = turn % 2 == 1 ? (turn + 1) / 2 : -turn / 2;
      int other = Math.floorMod(k + away, normals.length);
      clip.keep(normals[other].x(), normals[other].y(), normals[other].z(), offsets[other]);
    }
    return clip.isEmpty() ? new double[0] : clip.copy();
  }

  /**
   * A mean of the corners with weights that no drawing would give, so that the point lies in no
   * plane in which facets lie.
   */
  private Vec3 inside(int attempt) {
    Vec3 sum = Vec3.ZERO;
    double total = 0;
    int index = 1 + 1000 * attempt;
    for (double[] face : faces) {
      for (int i = 0; i < face.length; i += 3) {
        double golden = index++ * 0.6180339887498949;
        double weight = 0.5 + golden - Math.floor(golden);
        sum = sum.plus(new Vec3(face[i], face[i + 1], face[i + 2]).times(weight));
        total += weight;
      }
    }
    return total > 0 ? apex.plus(sum.times(1 / total)) : apex;
  }

  List<ToolPlane> planes() {
    return planes;
  }

  /** The farthest that a vertex of the mesh may be from a plane in which it counts as lying. */
  double widestSnap() {
    return planes.stream().mapToDouble(ToolPlane::snap).max().orElse(0);
  }

  Vec3 normal(int plane) {
    return normals[plane];
  }

  /** The point from which coordinates are measured. */
  Vec3 apex() {
    return apex;
  }

  double volume() {
    return volume;
  }

  Box3 box() {
    return box;
  }

  /**
   * Signed distance of a point, relative to the apex, from a plane; positive outside of the tool.
   */
  double distance(int plane, Vec3 relative) {
    return normals[plane].dot(relative) - offsets[plane];
  }

  /** Puts the part of a facet inside the tool into {@code into}; corners relative to the apex. */
  void clipInto(ConvexClip into, Vec3 a, Vec3 b, Vec3 c) {
    into.clear();
    into.add(a.x(), a.y(), a.z());
    into.add(b.x(), b.y(), b.z());
    into.add(c.x(), c.y(), c.z());
    for (int k = 0; k < normals.length && !into.isEmpty(); k++) {
      into.keep(normals[k].x(), normals[k].y(), normals[k].z(), offsets[k]);
    }
  }

  /**
   * A plane of the tool to which a part of a facet inside the tool stays nearest, and how far it
   * goes from there.
   *
   * @param part the part, not empty
   * @param reached depth below each plane, filled here
   */
  void depths(ConvexClip part, double[] reached) {
    for (int k = 0; k < normals.length; k++) {
      reached[k] = offsets[k] - part.least(normals[k]);
    }
  }

  /**
   * Volume of the part of the tool that a facet hides from the apex: within the cone of the facet
   * and beyond it. It is the sum over the faces of the tool of the pyramid over what the cone cuts
   * from the face beyond the facet's plane, less the pyramid over the shadow of that piece on the
   * facet's plane; so a facet that lies in a face hides nothing, whichever way rounding goes.
   *
   * @param work scratch
   * @return the volume, negative if the facet shows its outside to the apex
   */
  double hiddenBehind(Vec3 a, Vec3 b, Vec3 c, ConvexClip work) {
    double det = a.dot(b.cross(c));
    if (det == 0 || apart(a, b, c)) {
      return 0;
    }
    double side = Math.signum(det);
    Vec3 ab = b.cross(a).times(side);
    Vec3 bc = c.cross(b).times(side);
    Vec3 ca = a.cross(c).times(side);
    Vec3 n = b.minus(a).cross(c.minus(a)).times(side);
    double size = Math.abs(det);
    double distance = size / n.norm();
    double sum = 0;
    for (int k = 0; k < faces.length; k++) {
      Ball ball = balls[k];
      if (ball.isBeyond(ab, 0) || ball.isBeyond(bc, 0) || ball.isBeyond(ca, 0)) {
        continue; // what follows would find nothing of the face in the cone
      }
      work.load(faces[k]);
      work.keep(ab.x(), ab.y(), ab.z(), 0);
      work.keep(bc.x(), bc.y(), bc.z(), 0);
      work.keep(ca.x(), ca.y(), ca.z(), 0);
      work.keep(-n.x(), -n.y(), -n.z(), -size);
      if (!work.isEmpty()) {
        sum += offsets[k] * work.area();
        work.projectOnto(n, size);
        sum -= distance * work.area();
      }
    }
    return side * sum / 3;
  }

  /** True if a plane of the tool has the whole facet outside. */
  private boolean apart(Vec3 a, Vec3 b, Vec3 c) {
    for (int k = 0; k < normals.length; k++) {
      Vec3 n = normals[k];
      if (n.dot(a) >= offsets[k] && n.dot(b) >= offsets[k] && n.dot(c) >= offsets[k]) {
        return true;
      }
    }
    return false;
  }
}

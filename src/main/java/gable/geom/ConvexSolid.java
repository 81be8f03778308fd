package gable.geom;

import java.util.ArrayList;
import java.util.List;

/**
 * A bounded convex polyhedron, made by clipping a large box with half-spaces. Faces are named by
 * the index of the half-space that bounds them, so that a caller can ask which planes meet in an
 * edge or a corner. Plain double arithmetic: the structure is right as long as no two corners come
 * closer than rounding, which its users check.
 */
public final class ConvexSolid {

  /** A corner: where it is and the three planes that meet there, ascending. */
  public record Corner(Vec3 point, int first, int second, int third) {}

  /**
   * An edge.
   *
   * @param left plane to whose face the edge belongs in its direction, counter-clockwise from
   *     outside
   * @param right the other plane
   * @param from corner where it starts
   * @param to corner where it ends
   */
  public record Edge(int left, int right, Corner from, Corner to) {}

  /** One face: its plane and its corners counter-clockwise from outside. */
  private record Face(int plane, List<Vec3> points, List<Integer> across) {}

  private final List<Plane> planes;
  private final List<Face> faces;

  private ConvexSolid(List<Plane> planes, List<Face> faces) {
    this.planes = planes;
    this.faces = faces;
  }

  /**
   * The solid inside all planes.
   *
   * @param planes bounding planes, normals outwards
   * @param bound half the edge of the cube about {@code centre} from which is cut; longer than the
   *     solid
   * @param centre a point near the solid
   */
  public static ConvexSolid of(List<Plane> planes, Vec3 centre, double bound) {
    List<Face> faces = cube(centre, bound);
    for (int k = 0; k < planes.size(); k++) {
      faces = clipped(faces, planes.get(k), k, bound * 1e-13);
    }
    return new ConvexSolid(List.copyOf(planes), faces);
  }

  /** True if nothing is inside all planes. */
  public boolean isEmpty() {
    return faces.size() < 4;
  }

  /** True if every face lies in one of the given planes, so that they alone bound it. */
  public boolean bounded() {
    return !isEmpty() && faces.stream().allMatch(face -> face.plane >= 0);
  }

  /** Corner points of all faces; corners appear once for each face that has them. */
  public List<Vec3> points() {
    List<Vec3> all = new ArrayList<>();
    faces.forEach(face -> all.addAll(face.points));
    return all;
  }

  /** Smallest box around the solid. */
  public Box3 box() {
    return Box3.around(points());
  }

  /** Volume, by pyramids over the faces. */
  public double volume() {
    if (isEmpty()) {
      return 0;
    }
    Vec3 apex = faces.get(0).points.get(0);
    double sum = 0;
    for (Face face : faces) {
      Vec3 a = face.points.get(0).minus(apex);
      for (int k = 2; k < face.points.size(); k++) {
        Vec3 b = face.points.get(k - 1).minus(apex);
        Vec3 c = face.points.get(k).minus(apex);
        sum += a.dot(b.cross(c));
      }
    }
    return sum / 6;
  }

  /** Corners of the face in plane {@code plane}, counter-clockwise from outside; may be empty. */
  public List<Vec3> face(int plane) {
    for (Face face : faces) {
      if (face.plane == plane) {
        return List.copyOf(face.points);
      }
    }
    return List.of();
  }

  /** Every edge once, in the direction that it has in the face of the lower plane index. */
  public List<Edge> edges() {
    List<Edge> edges = new ArrayList<>();
    for (Face face : faces) {
      int n = face.points.size();
      for (int k = 0; k < n; k++) {
        int across = face.across.get(k);
        if (face.plane < across) {
          int before = face.across.get((k + n - 1) % n);
          int after = face.across.get((k + 1) % n);
          Vec3 from = face.points.get(k);
          Vec3 to = face.points.get((k + 1) % n);
          edges.add(
              new Edge(
                  face.plane,
                  across,
                  corner(from, face.plane, across, before),
                  corner(to, face.plane, across, after)));
        }
      }
    }
    return edges;
  }

  /** The planes that were given. */
  public List<Plane> planes() {
    return planes;
  }

  private static Corner corner(Vec3 point, int a, int b, int c) {
    int low = Math.min(a, Math.min(b, c));
    int high = Math.max(a, Math.max(b, c));
    return new Corner(point, low, a + b + c - low - high, high);
  }

  /** The cube, its faces numbered −1 to −6. */
  private static List<Face> cube(Vec3 centre, double bound) {
    Vec3[] axes = {Vec3.X, Vec3.Y, Vec3.Z};
    List<Face> faces = new ArrayList<>();
    for (int axis = 0; axis < 3; axis++) {
      for (int side = -1; side <= 1; side += 2) {
        Vec3 n = axes[axis].times(side);
        Vec3 u = axes[(axis + 1) % 3];
        Vec3 v = n.cross(u);
        Vec3 middle = centre.along(n, bound);
        List<Vec3> points = new ArrayList<>();
        List<Integer> across = new ArrayList<>();
        double[][] signs = {{-1, -1}, {1, -1}, {1, 1}, {-1, 1}};
        Vec3[] outward = {v.times(-1), u, v, u.times(-1)};
        for (int k = 0; k < 4; k++) {
          points.add(middle.along(u, bound * signs[k][0]).along(v, bound * signs[k][1]));
          across.add(cubeName(outward[k]));
        }
        faces.add(new Face(cubeName(n), points, across));
      }
    }
    return faces;
  }

  private static int cubeName(Vec3 n) {
    int axis = n.x() != 0 ? 0 : n.y() != 0 ? 1 : 2;
    return -1 - 2 * axis - (n.get(axis) > 0 ? 1 : 0);
  }

  private static List<Face> clipped(List<Face> faces, Plane plane, int index, double slack) {
    List<Face> kept = new ArrayList<>();
    List<Vec3> starts = new ArrayList<>();
    List<Vec3> ends = new ArrayList<>();
    List<Integer> neighbours = new ArrayList<>();
    for (Face face : faces) {
      Face cut = clippedFace(face, plane, index, slack);
      if (cut.points.size() < 3) {
        continue;
      }
      kept.add(cut);
      int n = cut.points.size();
      for (int k = 0; k < n; k++) {
        if (cut.across.get(k) == index) {
          starts.add(cut.points.get((k + 1) % n));
          ends.add(cut.points.get(k));
          neighbours.add(cut.plane);
        }
      }
    }
    if (starts.size() >= 3) {
      kept.add(cap(starts, ends, neighbours, index));
    }
    return kept;
  }

  /** Joins the edges that the cut left open to the face in the cutting plane. */
  private static Face cap(List<Vec3> starts, List<Vec3> ends, List<Integer> names, int index) {
    List<Vec3> points = new ArrayList<>();
    List<Integer> across = new ArrayList<>();
    boolean[] used = new boolean[starts.size()];
    int at = 0;
    for (int step = 0; step < starts.size(); step++) {
      used[at] = true;
      points.add(starts.get(at));
      across.add(names.get(at));
      Vec3 end = ends.get(at);
      double nearest = Double.POSITIVE_INFINITY;
      for (int k = 0; k < starts.size(); k++) {
        double distance = used[k] ? nearest : starts.get(k).distance(end);
        if (distance < nearest) {
          nearest = distance;
          at = k;
        }
      }
    }
    return new Face(index, points, across);
  }

  private static Face clippedFace(Face face, Plane plane, int index, double slack) {
    int n = face.points.size();
    if (isInside(face.points, plane, slack)) {
      return face; // most planes meet few faces of a body with many
    }
    List<Vec3> points = new ArrayList<>();
    List<Integer> across = new ArrayList<>();
    for (int k = 0; k < n; k++) {
      Vec3 p = face.points.get(k);
      Vec3 q = face.points.get((k + 1) % n);
      double dp = plane.signedDistance(p);
      double dq = plane.signedDistance(q);
      boolean insideP = dp <= slack;
      boolean insideQ = dq <= slack;
      if (insideP) {
        points.add(p);
        across.add(face.across.get(k));
        if (!insideQ) {
          points.add(p.along(q.minus(p), dp / (dp - dq)));
          across.add(index);
        }
      } else if (insideQ) {
        points.add(p.along(q.minus(p), dp / (dp - dq)));
        across.add(face.across.get(k));
      }
    }
    return new Face(face.plane, points, across);
  }

  private static boolean isInside(List<Vec3> points, Plane plane, double slack) {
    for (Vec3 point : points) {
      if (!(plane.signedDistance(point) <= slack)) {
        return false;
      }
    }
    return true;
  }
}

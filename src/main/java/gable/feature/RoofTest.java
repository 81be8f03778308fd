package gable.feature;

import gable.geom.Vec3;
import gable.mesh.Mesh;

/**
 * Tells whether the gap in a round wall is closed by a roof: faces parallel to the axis that leave
 * the wall tangentially or nearly, stay outside the circle and close above the crown. A keyway
 * leaves the wall at a sharp edge, a flat cuts into the circle, an open channel does not close.
 */
final class RoofTest {

  /** A roof stands upright over the axis within this, or within one facet of the wall. */
  private static final double UPRIGHT = Math.toRadians(8);

  /** A roof leaves the wall at no sharper angle than this. */
  private static final double TANGENTIAL = Math.toRadians(36);

  /** Faces of a roof are parallel to the axis within this, a sine. */
  private static final double PARALLEL = 0.05;

  /** Share of the gap that must be closed: edges of the roof may be off by noise. */
  private static final double CLOSED = 0.97;

  private final Surface surface;
  private final Mesh mesh;
  private final IndexSet wall;
  private final IndexSet roof;
  private final Cylinder cylinder;
  private final Coverage coverage;
  private final double step;
  private final double ledge;

  /**
   * Prepares the test.
   *
   * @param surface the mesh
   * @param wall facets of the round wall
   * @param scratch a set to work with
   * @param cylinder the wall's cylinder in its section frame
   * @param coverage what the wall covers
   * @param step typical angle of one facet of the wall
   * @param ledge width of a step between wall and roof that does not matter, in millimetres
   */
  RoofTest(
      Surface surface,
      IndexSet wall,
      IndexSet scratch,
      Cylinder cylinder,
      Coverage coverage,
      double step,
      double ledge) {
    this.surface = surface;
    this.mesh = surface.mesh();
    this.wall = wall;
    this.roof = scratch;
    this.cylinder = cylinder;
    this.coverage = coverage;
    this.step = step;
    this.ledge = ledge;
  }

  boolean isRoofed() {
    double off = Math.abs(Angles.wrapped(coverage.gapMiddle() - Math.PI / 2));
    if (coverage.isFull() || off > Math.max(UPRIGHT, step) || coverage.gapWidth() > Math.PI) {
      return false;
    }
    collect();
    if (roof.size() == 0) {
      return false;
    }
    int[] faces = new int[roof.size()];
    int count = 0;
    for (int k = 0; k < roof.size(); k++) {
      if (isFace(roof.get(k))) {
        faces[count++] = roof.get(k);
      }
    }
    return count > 0
        && leavesTangentially(faces, count, coverage.gapStart())
        && leavesTangentially(faces, count, coverage.gapStart() + coverage.gapWidth())
        && closes(faces, count);
  }

  /** The part of the gap that the faces leave open, whatever they cover beside it, is small. */
  private boolean closes(int[] faces, int count) {
    int[] all = new int[count + wall.size()];
    System.arraycopy(faces, 0, all, 0, count);
    System.arraycopy(wall.items(), 0, all, count, wall.size());
    Coverage both = Coverage.of(mesh, all, all.length, cylinder);
    return both.gapWidth() <= (1 - CLOSED) * coverage.gapWidth();
  }

  /** Floods from the wall's sides over the roof's faces, and over ledges between. */
  private void collect() {
    roof.clear();
    for (int k = 0; k < wall.size(); k++) {
      addNeighbours(wall.get(k));
    }
    for (int at = 0; at < roof.size(); at++) {
      addNeighbours(roof.get(at));
    }
  }

  private void addNeighbours(int facet) {
    for (int h = 3 * facet; h < 3 * facet + 3; h++) {
      int other = surface.across(h);
      if (other >= 0
          && !wall.contains(other)
          && !roof.contains(other)
          && isInGap(other)
          && (isFace(other) || isLedge(other))) {
        roof.add(other);
      }
    }
  }

  private boolean isInGap(int facet) {
    double slack = ledge / cylinder.radius() + 1e-6;
    for (int k = 0; k < 3; k++) {
      double angle = cylinder.angle(mesh.point(mesh.corner(facet, k)));
      double from = Angles.wrapped(angle - coverage.gapMiddle());
      if (Math.abs(from) > coverage.gapWidth() / 2 + slack) {
        return false;
      }
    }
    return true;
  }

  /** A face of a roof: parallel to the axis, looking at it, not nearer to it than a wall facet. */
  private boolean isFace(int facet) {
    Vec3 normal = normal(facet);
    double axial = Math.abs(normal.dot(cylinder.w()));
    if (axial > PARALLEL || surface.isSliver(facet)) {
      return false;
    }
    double nu = normal.dot(cylinder.u());
    double nv = normal.dot(cylinder.v());
    double norm = Math.hypot(nu, nv);
    double nearest = cylinder.radius() * Math.cos(Math.max(step, Math.toRadians(2))) - ledge;
    for (int k = 0; k < 3; k++) {
      Vec3 point = mesh.point(mesh.corner(facet, k));
      double offset = -(nu * cylinder.u(point) + nv * cylinder.v(point)) / norm;
      if (offset < nearest) {
        return false;
      }
    }
    return true;
  }

  private boolean isLedge(int facet) {
    for (int k = 0; k < 3; k++) {
      double off = cylinder.distance(mesh.point(mesh.corner(facet, k))) - cylinder.radius();
      if (Math.abs(off) > ledge) {
        return false;
      }
    }
    return true;
  }

  private boolean leavesTangentially(int[] faces, int count, double edge) {
    double nearest = Double.POSITIVE_INFINITY;
    double turn = Math.PI;
    for (int k = 0; k < count; k++) {
      Vec3 normal = normal(faces[k]);
      double looks = Math.atan2(-normal.dot(cylinder.v()), -normal.dot(cylinder.u()));
      for (int c = 0; c < 3; c++) {
        double angle = cylinder.angle(mesh.point(mesh.corner(faces[k], c)));
        double away = Math.abs(Angles.wrapped(angle - edge));
        double here = Math.abs(Angles.wrapped(looks - edge));
        if (away < nearest - 1e-9 || (away < nearest + 1e-9 && here < turn)) {
          nearest = Math.min(nearest, away);
          turn = here;
        }
      }
    }
    return turn <= TANGENTIAL + step / 2;
  }

  private Vec3 normal(int facet) {
    return new Vec3(surface.nx(facet), surface.ny(facet), surface.nz(facet));
  }
}

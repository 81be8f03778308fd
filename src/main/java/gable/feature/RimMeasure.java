package gable.feature;

import gable.geom.Plane;
import gable.geom.Vec3;
import gable.mesh.Mesh;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;

/**
 * Measures where a wall stops and says how: from the rim's own shape (flat or not, square to the
 * axis or not) and from the facets that follow it.
 *
 * <p>A facet beyond the rim has a meridian angle: 0 continues the wall, 90 degrees is a face square
 * to the axis that looks out of the bore, −90 degrees a flat bottom, between 0 and 90 a cone that
 * widens outwards.
 */
final class RimMeasure {

  private static final double CROWN = Math.toRadians(60);

  /** Directions that agree within this are one: STL and 3MF writers round far finer. */
  private static final double SAME = Math.toRadians(0.5);

  /** Facets this much apart still belong to one cone of a coarse mesh. */
  private static final double SAME_CONE = Math.toRadians(4);

  /** A rounding turns by no more than this from ring to ring. */
  private static final double MOST_ROUNDING_STEP = Math.toRadians(32);

  /** Share of a rim, by angle, that must agree before the rim is called by that name. */
  private static final double MOSTLY = 0.9;

  private final Surface surface;
  private final Mesh mesh;
  private final IndexSet wall;
  private final Cylinder cylinder;
  private final double tolerance;
  private final double ledge;
  private final IndexSet beyond;
  private final List<Integer> first = new ArrayList<>();
  private final List<Double> weights = new ArrayList<>();

  /**
   * Prepares the measurement.
   *
   * @param surface the mesh
   * @param wall facets of the wall
   * @param scratch a set to work with
   * @param cylinder the wall's cylinder in its section frame
   * @param tolerance how far vertices may be off
   * @param step typical angle of one facet of the wall
   */
  RimMeasure(
      Surface surface,
      IndexSet wall,
      IndexSet scratch,
      Cylinder cylinder,
      double tolerance,
      double step) {
    this.surface = surface;
    this.mesh = surface.mesh();
    this.wall = wall;
    this.beyond = scratch;
    this.cylinder = cylinder;
    this.tolerance = tolerance;
    double sagitta = cylinder.radius() * (1 - Math.cos(Math.min(step, 1) / 2));
    this.ledge = Math.max(3 * tolerance, 1.5 * sagitta);
  }

  /**
   * Measures one end.
   *
   * @param halfEdges half-edges of the wall along the rim
   * @param side −1 for the end at the smaller w, 1 for the other
   */
  Rim measure(List<Integer> halfEdges, int side) {
    var builder = new Rim.Builder();
    measureExtent(builder, halfEdges, side);
    Plane plane = fitPlane(halfEdges, side);
    builder.planeDeviation = deviation(plane, halfEdges);
    boolean flat = builder.planeDeviation <= tolerance;
    builder.plane = flat ? Optional.of(plane) : Optional.empty();
    classify(builder, halfEdges, side, flat, plane);
    return new Rim(builder);
  }

  private void measureExtent(Rim.Builder builder, List<Integer> halfEdges, int side) {
    builder.wMin = Double.POSITIVE_INFINITY;
    builder.wMax = Double.NEGATIVE_INFINITY;
    double crown = Double.NaN;
    int[] loop = new int[halfEdges.size()];
    for (int k = 0; k < loop.length; k++) {
      int h = halfEdges.get(k);
      loop[k] = mesh.origin(h);
      Vec3 from = mesh.point(mesh.origin(h));
      Vec3 to = mesh.point(mesh.target(h));
      double w = cylinder.w(from);
      builder.wMin = Math.min(builder.wMin, w);
      builder.wMax = Math.max(builder.wMax, w);
      if (inCrown(from) || inCrown(to)) {
        double inward = side < 0 ? Math.max(w, cylinder.w(to)) : Math.min(w, cylinder.w(to));
        crown = Double.isNaN(crown) || (inward - crown) * side < 0 ? inward : crown;
      }
    }
    builder.crownW = Double.isNaN(crown) ? (side < 0 ? builder.wMax : builder.wMin) : crown;
    builder.outerRadius = cylinder.radius();
    builder.outerW = side < 0 ? builder.wMin : builder.wMax;
    builder.loop = startedAtLeastAngle(loop);
  }

  private boolean inCrown(Vec3 point) {
    return Math.abs(Math.atan2(cylinder.u(point), cylinder.v(point))) <= CROWN;
  }

  /** The same loop from a vertex that does not depend on the order of facets. */
  private int[] startedAtLeastAngle(int[] loop) {
    int start = 0;
    double least = Double.POSITIVE_INFINITY;
    for (int k = 0; k < loop.length; k++) {
      double angle = cylinder.angle(mesh.point(loop[k]));
      if (angle < least) {
        least = angle;
        start = k;
      }
    }
    int[] turned = new int[loop.length];
    for (int k = 0; k < loop.length; k++) {
      turned[k] = loop[(start + k) % loop.length];
    }
    return turned;
  }

  private Plane fitPlane(List<Integer> halfEdges, int side) {
    Vec3 base = mesh.point(mesh.origin(halfEdges.get(0)));
    Vec3 sum = Vec3.ZERO;
    for (int h : halfEdges) {
      sum = sum.plus(mesh.point(mesh.origin(h)).minus(base));
    }
    Vec3 centre = base.along(sum, 1.0 / halfEdges.size());
    double[] m = new double[6];
    for (int h : halfEdges) {
      Vec3 d = mesh.point(mesh.origin(h)).minus(centre);
      m[0] += d.x() * d.x();
      m[1] += d.x() * d.y();
      m[2] += d.x() * d.z();
      m[3] += d.y() * d.y();
      m[4] += d.y() * d.z();
      m[5] += d.z() * d.z();
    }
    Vec3 normal = new SymmetricEigen(m[0], m[1], m[2], m[3], m[4], m[5]).vector(0);
    boolean inward = normal.dot(cylinder.w()) * side < 0;
    return Plane.through(centre, inward ? normal.times(-1) : normal);
  }

  private double deviation(Plane plane, List<Integer> halfEdges) {
    double most = 0;
    for (int h : halfEdges) {
      most = Math.max(most, Math.abs(plane.signedDistance(mesh.point(mesh.origin(h)))));
    }
    return most;
  }

  private void classify(
      Rim.Builder builder, List<Integer> halfEdges, int side, boolean flat, Plane plane) {
    lookBeyond(halfEdges);
    double total = 0;
    double outward = 0;
    double inPlane = 0;
    double meridian = 0;
    for (int k = 0; k < first.size(); k++) {
      int facet = first.get(k);
      double weight = weights.get(k);
      Vec3 normal = normal(facet);
      total += weight;
      outward += normal.dot(cylinder.w()) * side > 0 ? weight : 0;
      meridian += weight * meridianAngle(facet, side);
      inPlane += agrees(normal, plane.normal(), facet) ? weight : 0;
    }
    if (total == 0) {
      return;
    }
    boolean open = 2 * outward >= total;
    boolean square = flat && Math.abs(plane.normal().dot(cylinder.w())) >= Math.cos(SAME + lean());
    if (flat && inPlane >= MOSTLY * total) {
      builder.kind =
          !open ? EndKind.BLIND_FLAT : square ? EndKind.OPEN_SQUARE : EndKind.OPEN_SLANTED;
    } else if (square) {
      classifyRound(builder, side, meridian / total);
    } else {
      builder.kind = open ? EndKind.OPEN_CURVED : EndKind.BLIND_ROUND;
    }
  }

  /**
   * Collects the facets that follow the rim, each with the angle over which it does. Slivers are
   * looked through, and so are ledges: where the polygons of the wall and of a cone beyond it do
   * not match, narrow faces fill the difference.
   */
  private void lookBeyond(List<Integer> halfEdges) {
    first.clear();
    weights.clear();
    beyond.clear();
    Deque<Integer> waiting = new ArrayDeque<>(halfEdges);
    while (!waiting.isEmpty()) {
      int h = waiting.poll();
      int facet = surface.across(h);
      if (facet < 0 || wall.contains(facet)) {
        continue;
      }
      if (!isLedge(facet)) {
        first.add(facet);
        weights.add(Math.abs(angleOver(h)));
      } else if (beyond.add(facet)) {
        for (int k = 3 * facet; k < 3 * facet + 3; k++) {
          if (k != surface.opposite(h)) {
            waiting.add(k);
          }
        }
      }
    }
  }

  private boolean isLedge(int facet) {
    if (surface.isSliver(facet)) {
      return true;
    }
    for (int k = 0; k < 3; k++) {
      double off = cylinder.distance(mesh.point(mesh.corner(facet, k))) - cylinder.radius();
      if (Math.abs(off) > ledge) {
        return false;
      }
    }
    // a facet of a bottom may have all corners on the rim, but its middle is elsewhere
    return Math.abs(cylinder.distance(centre(facet)) - cylinder.radius()) <= ledge;
  }

  private Vec3 centre(int facet) {
    return mesh.point(mesh.corner(facet, 0))
        .plus(mesh.point(mesh.corner(facet, 1)))
        .plus(mesh.point(mesh.corner(facet, 2)))
        .times(1.0 / 3);
  }

  /** How much noise may tilt a rim of this size. */
  private double lean() {
    return tolerance / cylinder.radius();
  }

  private boolean agrees(Vec3 normal, Vec3 plane, int facet) {
    double slack = SAME + Math.min(0.5, 2 * tolerance / height(facet));
    return Math.abs(normal.dot(plane)) >= Math.cos(slack);
  }

  private double height(int facet) {
    double longest = 0;
    for (int h = 3 * facet; h < 3 * facet + 3; h++) {
      longest = Math.max(longest, surface.length(h));
    }
    return mesh.facetNormal(facet).norm() / longest;
  }

  /** A rim square to the axis, with something turned about the axis beyond it. */
  private void classifyRound(Rim.Builder builder, int side, double slope) {
    beyond.clear();
    for (int facet : first) {
      if (Math.abs(meridianAngle(facet, side) - slope) <= SAME_CONE) {
        beyond.add(facet);
      }
    }
    double next = slope;
    double nextWeight = 0;
    for (int at = 0; at < beyond.size(); at++) {
      int facet = beyond.get(at);
      for (int h = 3 * facet; h < 3 * facet + 3; h++) {
        int other = surface.across(h);
        if (other < 0 || wall.contains(other) || beyond.contains(other)) {
          continue;
        }
        double angle = meridianAngle(other, side);
        if (Math.abs(angle - slope) <= SAME_CONE) {
          beyond.add(other);
        } else if (surface.length(h) > nextWeight) {
          nextWeight = surface.length(h);
          next = angle;
        }
      }
    }
    measureBeyond(builder, side);
    boolean rounding =
        Math.abs(slope) <= MOST_ROUNDING_STEP
            && Math.abs(next) > Math.abs(slope)
            && Math.abs(next) - Math.abs(slope) <= MOST_ROUNDING_STEP
            && Math.abs(next) < Math.PI / 2 - SAME;
    builder.kind = roundKind(builder, slope, rounding);
  }

  private EndKind roundKind(Rim.Builder builder, double slope, boolean rounding) {
    if (slope < 0) {
      return rounding ? EndKind.BLIND_ROUND : EndKind.BLIND_CONE;
    }
    if (slope > Math.PI / 2 + SAME) {
      return EndKind.OPEN_CURVED; // the outside falls away from the mouth: a cone or a ball
    }
    if (rounding) {
      return EndKind.FILLETED;
    }
    boolean large = builder.outerRadius >= 1.5 * cylinder.radius();
    return large ? EndKind.COUNTERSUNK : EndKind.CHAMFERED;
  }

  private void measureBeyond(Rim.Builder builder, int side) {
    for (int k = 0; k < beyond.size(); k++) {
      for (int c = 0; c < 3; c++) {
        Vec3 point = mesh.point(mesh.corner(beyond.get(k), c));
        double w = cylinder.w(point);
        if ((w - builder.outerW) * side > 0) {
          builder.outerW = w;
          builder.outerRadius = cylinder.distance(point);
        }
      }
    }
  }

  /** Angle between the wall and a facet in the plane through the axis; see the class text. */
  private double meridianAngle(int facet, int side) {
    Vec3 normal = normal(facet);
    Vec3 centre = centre(facet);
    double u = cylinder.u(centre);
    double v = cylinder.v(centre);
    double d = Math.max(Math.hypot(u, v), Double.MIN_NORMAL);
    double inward = -(normal.dot(cylinder.u()) * u + normal.dot(cylinder.v()) * v) / d;
    return Math.atan2(normal.dot(cylinder.w()) * side, inward);
  }

  private Vec3 normal(int facet) {
    return new Vec3(surface.nx(facet), surface.ny(facet), surface.nz(facet));
  }

  private double angleOver(int halfEdge) {
    return Angles.wrapped(
        cylinder.angle(mesh.point(mesh.target(halfEdge)))
            - cylinder.angle(mesh.point(mesh.origin(halfEdge))));
  }
}

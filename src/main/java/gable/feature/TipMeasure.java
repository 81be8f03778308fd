package gable.feature;

import gable.geom.Axis;
import gable.geom.Plane;
import gable.geom.Vec3;
import gable.mesh.Mesh;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Measures the free end of a pin: everything that hangs together with the end of its round wall and
 * stays within the pin's cylinder, so that a hole in the tip is followed as deep as it goes.
 */
final class TipMeasure {

  /** Directions that agree within this are one, as at a rim. */
  private static final double SAME = Math.toRadians(0.5);

  /** Facets of one cone of a coarse mesh differ by up to this. */
  private static final double SAME_CONE = Math.toRadians(4);

  /** A facet narrower than this, in millimetres, is a ledge at the foot of a chamfer. */
  private static final double LEDGE = 0.006;

  /** Least depth of a hole in a tip, in millimetres. */
  private static final double HOLE = 0.002;

  /**
   * By which share of the tolerance over its height corners that stray turn a facet: it is six
   * standard deviations, of which corners that stray evenly are off by √3, two of them by twice
   * that.
   */
  private static final double TURNED = 2 * Math.sqrt(3) / 6;

  /** Width from which a face is one, in tolerances: a cone of 11 degrees rises by two in it. */
  private static final double FACE = 10;

  private final Surface surface;
  private final Mesh mesh;
  private final Set<Integer> wall = new HashSet<>();
  private final Axis axis;
  private final double radius;
  private final double tolerance;
  private List<Integer> tip = List.of();

  /**
   * Prepares the measuring.
   *
   * @param wall facets of the round wall
   * @param axis from root to tip
   * @param tolerance how far vertices may be off where they are meant to be
   */
  TipMeasure(Surface surface, int[] wall, Axis axis, double radius, double tolerance) {
    this.surface = surface;
    this.mesh = surface.mesh();
    this.axis = axis;
    this.radius = radius;
    this.tolerance = tolerance;
    for (int facet : wall) {
      this.wall.add(facet);
    }
  }

  /** Facets beyond the end of the wall that was measured last. */
  List<Integer> facets() {
    return tip;
  }

  /**
   * Measures.
   *
   * @param loop vertices of the end of the wall
   * @param rim the same end, as the finder of bores has read it
   */
  Pin.Tip measure(int[] loop, Rim rim) {
    Plane plane = rim.plane().orElse(Plane.through(axis.at(lowest(loop)), axis.direction()));
    tip = flood(loop);
    double above = 0;
    double below = 0;
    for (int facet : tip) {
      for (int k = 0; k < 3; k++) {
        double height = heightOver(plane, mesh.point(mesh.corner(facet, k)));
        above = Math.max(above, height);
        below = Math.max(below, -height);
      }
    }
    // a micrometre is no hole, but what a chamfer may leave at its foot
    below = below > Math.max(tolerance, HOLE) ? below : 0;
    TipKind kind = kind(plane, rim.plane().isPresent(), above, below);
    return new Pin.Tip(kind, rim.plane(), above > tolerance ? above : 0, below);
  }

  private double lowest(int[] loop) {
    double low = Double.POSITIVE_INFINITY;
    for (int vertex : loop) {
      low = Math.min(low, axis.parameter(mesh.point(vertex)));
    }
    return low;
  }

  private double heightOver(Plane plane, Vec3 point) {
    return plane.signedDistance(point) / plane.normal().dot(axis.direction());
  }

  /** Facets beyond the end of the wall that stay within the cylinder, and above the root. */
  private List<Integer> flood(int[] loop) {
    Set<Integer> rim = new HashSet<>();
    for (int vertex : loop) {
      rim.add(vertex);
    }
    double root = Double.POSITIVE_INFINITY;
    Set<Integer> seen = new HashSet<>();
    List<Integer> found = new ArrayList<>();
    for (int facet : wall) {
      for (int h = 3 * facet; h < 3 * facet + 3; h++) {
        root = Math.min(root, axis.parameter(mesh.point(mesh.origin(h))));
        int other = surface.across(h);
        if (rim.contains(mesh.origin(h)) && rim.contains(mesh.target(h))) {
          add(other, Double.NEGATIVE_INFINITY, seen, found);
        }
      }
    }
    for (int at = 0; at < found.size(); at++) {
      for (int h = 3 * found.get(at); h < 3 * found.get(at) + 3; h++) {
        add(surface.across(h), root, seen, found);
      }
    }
    return found;
  }

  private void add(int facet, double root, Set<Integer> seen, List<Integer> found) {
    if (facet < 0 || wall.contains(facet) || !seen.add(facet)) {
      return;
    }
    boolean above = false;
    for (int k = 0; k < 3; k++) {
      Vec3 point = mesh.point(mesh.corner(facet, k));
      if (axis.distance(point) > radius + tolerance) {
        return;
      }
      above |= axis.parameter(point) > root;
    }
    if (above) {
      found.add(facet);
    }
  }

  private TipKind kind(Plane plane, boolean flatRim, double above, double below) {
    if (below > 0) {
      return flatRim ? TipKind.HOLLOW : TipKind.UNEVEN;
    }
    if (!flatRim) {
      return TipKind.UNEVEN;
    }
    if (above <= tolerance) {
      return TipKind.FLAT;
    }
    return narrowing(plane, above);
  }

  /**
   * A tip that reaches beyond the end of its wall: by a cone, to a face or a point, or otherwise.
   */
  private TipKind narrowing(Plane plane, double above) {
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    double face = 0;
    for (int facet : tip) {
      if (isAtTop(facet, plane, above)) {
        face += surface.twiceArea(facet) / 2;
        continue;
      }
      double height = height(facet);
      double noise = TURNED * tolerance / height;
      if (surface.isSliver(facet) || height < LEDGE || noise > SAME_CONE) {
        continue;
      }
      Vec3 normal = new Vec3(surface.nx(facet), surface.ny(facet), surface.nz(facet));
      if (normal.dot(plane.normal()) >= Math.cos(SAME + noise)) {
        face += surface.twiceArea(facet) / 2;
        continue;
      }
      double angle = meridian(facet, normal);
      least = Math.min(least, angle + noise);
      most = Math.max(most, angle - noise);
    }
    if (most - least > SAME_CONE) {
      return TipKind.ROUNDED;
    }
    // where corners stray, some facets beside a point lie as high as it
    return face > FACE * FACE * tolerance * tolerance ? TipKind.CHAMFERED : TipKind.CONICAL;
  }

  private boolean isAtTop(int facet, Plane plane, double above) {
    for (int k = 0; k < 3; k++) {
      if (heightOver(plane, mesh.point(mesh.corner(facet, k))) < above - 2 * tolerance) {
        return false;
      }
    }
    return true;
  }

  private double height(int facet) {
    double longest = 0;
    for (int h = 3 * facet; h < 3 * facet + 3; h++) {
      longest = Math.max(longest, surface.length(h));
    }
    return mesh.facetNormal(facet).norm() / longest;
  }

  /** Angle of a facet's normal from the direction out of the axis, 0 to π. */
  private double meridian(int facet, Vec3 normal) {
    Vec3 centre =
        mesh.point(mesh.corner(facet, 0))
            .plus(mesh.point(mesh.corner(facet, 1)))
            .plus(mesh.point(mesh.corner(facet, 2)))
            .times(1.0 / 3);
    Vec3 out = centre.minus(axis.at(axis.parameter(centre)));
    double length = out.norm();
    return length == 0
        ? Math.PI / 2
        : Math.acos(Math.max(-1, Math.min(1, normal.dot(out) / length)));
  }
}

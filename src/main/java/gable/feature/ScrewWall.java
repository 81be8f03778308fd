package gable.feature;

import gable.geom.Axis;
import gable.geom.Vec3;
import gable.mesh.Mesh;
import java.util.Optional;

/**
 * A set of facets from which those are kept that a screw motion moves along themselves: the wall of
 * a thread, inside or outside.
 */
final class ScrewWall {

  /** A facet of one of eight steps in a turn is moved off itself by the sine of 7.5 degrees. */
  private static final double MOST_AGAINST = 0.3;

  /** Facets that face the wrong way by more than this sine are on another wall. */
  private static final double MOST_AVERTED = 0.3;

  /**
   * Roots are no farther from the axis than this many times the crests: a sharp thread of 0.87 P
   * with a pitch of 0.3 diameters has 1.52.
   */
  private static final double WIDEST = 1.6;

  private final Surface surface;
  private final Mesh mesh;
  private final double side;

  /**
   * Walls of one kind.
   *
   * @param side −1 for walls that face the axis, 1 for those that face away from it
   */
  ScrewWall(Surface surface, double side) {
    this.surface = surface;
    this.mesh = surface.mesh();
    this.side = side;
  }

  /** The motion that fits a set of facets best. */
  Optional<ScrewMotion> motion(IndexSet facets) {
    Vec3 sum = Vec3.ZERO;
    double areas = 0;
    for (int k = 0; k < facets.size(); k++) {
      double area = surface.twiceArea(facets.get(k));
      sum = sum.along(ScrewFit.middle(mesh, facets.get(k)), area);
      areas += area;
    }
    if (!(areas > 0)) {
      return Optional.empty();
    }
    var fit = new ScrewFit(surface, sum.times(1 / areas));
    for (int k = 0; k < facets.size(); k++) {
      fit.add(facets.get(k));
    }
    return fit.motion();
  }

  /**
   * Keeps the facets that obey a motion and are about as far from the axis as most.
   *
   * @param from where they are
   * @param to filled with them
   */
  void keepObeying(ScrewMotion motion, IndexSet from, IndexSet to) {
    double[] nearest = new double[from.size()];
    for (int k = 0; k < from.size(); k++) {
      nearest[k] = span(motion, from.get(k))[0];
    }
    double usual = Selection.median(nearest, from.size());
    to.clear();
    for (int k = 0; k < from.size(); k++) {
      int facet = from.get(k);
      double[] span = span(motion, facet);
      if (span[0] >= usual / WIDEST && span[1] <= usual * WIDEST && obeys(motion, facet)) {
        to.add(facet);
      }
    }
  }

  /** True if a motion moves a facet along itself, and it faces the way of the wall. */
  boolean obeys(ScrewMotion motion, int facet) {
    return surface.isSliver(facet)
        || Math.abs(motion.against(ScrewFit.middle(mesh, facet), normal(facet))) <= MOST_AGAINST
            && side * outward(motion, facet) >= -MOST_AVERTED;
  }

  /** Share of a set's area that faces the way of the wall, of what faces to or from the axis. */
  double facing(ScrewMotion motion, IndexSet facets) {
    double right = 0;
    double wrong = 0;
    for (int k = 0; k < facets.size(); k++) {
      double faces = surface.twiceArea(facets.get(k)) * side * outward(motion, facets.get(k));
      right += Math.max(0, faces);
      wrong += Math.max(0, -faces);
    }
    return right > 0 ? right / (right + wrong) : 0;
  }

  /** Least and greatest distance of a facet's corners from the axis. */
  double[] span(ScrewMotion motion, int facet) {
    Axis axis = new Axis(motion.origin(), motion.direction());
    double a = axis.distance(mesh.point(mesh.corner(facet, 0)));
    double b = axis.distance(mesh.point(mesh.corner(facet, 1)));
    double c = axis.distance(mesh.point(mesh.corner(facet, 2)));
    return new double[] {Math.min(a, Math.min(b, c)), Math.max(a, Math.max(b, c))};
  }

  /** The part of a facet's normal that points away from the axis. */
  private double outward(ScrewMotion motion, int facet) {
    Vec3 from = ScrewFit.middle(mesh, facet).minus(motion.origin());
    Vec3 radial = from.along(motion.direction(), -from.dot(motion.direction()));
    double distance = radial.norm();
    return distance > 0 ? radial.dot(normal(facet)) / distance : 0;
  }

  private Vec3 normal(int facet) {
    return new Vec3(surface.nx(facet), surface.ny(facet), surface.nz(facet));
  }
}

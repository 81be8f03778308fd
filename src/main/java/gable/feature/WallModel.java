package gable.feature;

import gable.geom.Vec3;

/**
 * What is believed of a round wall while it grows.
 *
 * @param cylinder best cylinder so far
 * @param step angle in radians by which the wall turns from facet to facet
 * @param width angle in radians that a facet of the wall typically spans: the median by area
 * @param noise robust standard deviation of the corners' distances from the cylinder
 * @param rms root mean square of these distances
 * @param extent angle in radians over which corners spread about the axis, at most 2π
 * @param corners number of vertices at which the wall turns
 */
record WallModel(
    Cylinder cylinder,
    double step,
    double width,
    double noise,
    double rms,
    double extent,
    int corners) {

  /** Nothing is believed yet. */
  static final WallModel NONE =
      new WallModel(Cylinder.about(Vec3.ZERO, Vec3.Z, 1), 0, 0, 0, 0, 0, 0);

  /** Angle of one facet or of one flat strip of facets, whichever is larger. */
  double facetAngle() {
    return Math.max(step, width);
  }

  /**
   * How clearly the corners tell a circle: rise of the arc over its chord against their scatter.
   */
  double clarity() {
    double rise = cylinder.radius() * (1 - Math.cos(Math.min(extent, Math.PI) / 2));
    return rise / Math.max(rms, Double.MIN_NORMAL);
  }
}

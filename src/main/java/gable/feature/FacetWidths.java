package gable.feature;

import gable.geom.Vec3;
import gable.mesh.Mesh;
import java.util.Arrays;

/**
 * How wide the facets of a wall are about its axis. The median by area is what counts: a flat that
 * was cut into a finely meshed wall, or the narrow facets at a curved mouth, do not move it.
 */
final class FacetWidths {

  /** Bins: sign, exponent and three bits of the mantissa of a float, eight to the octave. */
  private static final int SHIFT = 20;

  private final Surface surface;
  private final Mesh mesh;
  private final double[] areas = new double[1 << (31 - SHIFT)];

  FacetWidths(Surface surface) {
    this.surface = surface;
    this.mesh = surface.mesh();
  }

  /** The median by area of the angles that facets span, in radians, to within an eighth. */
  double median(IndexSet facets, Cylinder cylinder) {
    Arrays.fill(areas, 0);
    double total = 0;
    for (int k = 0; k < facets.size(); k++) {
      int facet = facets.get(k);
      double chord = chord(facet, cylinder);
      double area = surface.twiceArea(facet);
      areas[Float.floatToIntBits((float) (chord / cylinder.radius())) >>> SHIFT] += area;
      total += area;
    }
    double below = 0;
    int bin = 0;
    while (bin < areas.length - 1 && below + areas[bin] < total / 2) {
      below += areas[bin++];
    }
    double half = Float.intBitsToFloat(bin << SHIFT) / 2;
    return half < 1 ? 2 * Math.asin(half) : Math.PI;
  }

  private double chord(int facet, Cylinder c) {
    Vec3 first = mesh.point(mesh.corner(facet, 0));
    Vec3 second = mesh.point(mesh.corner(facet, 1)).minus(first);
    Vec3 third = mesh.point(mesh.corner(facet, 2)).minus(first);
    double u2 = second.dot(c.u());
    double v2 = second.dot(c.v());
    double u3 = third.dot(c.u());
    double v3 = third.dot(c.v());
    double longest = Math.max(u2 * u2 + v2 * v2, u3 * u3 + v3 * v3);
    return Math.sqrt(Math.max(longest, (u3 - u2) * (u3 - u2) + (v3 - v2) * (v3 - v2)));
  }
}

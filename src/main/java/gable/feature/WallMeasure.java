package gable.feature;

import gable.geom.Vec3;
import gable.mesh.Mesh;
import java.util.Arrays;
import java.util.Optional;

/**
 * Measures a set of facets as a round wall: axis from the normals (they lie on a great circle of
 * the unit sphere, square to the axis; T. Chaperon and F. Goulette, Extracting cylinders in full 3D
 * data using a random sampling method and the Gaussian image, VMV 2001), then a circle through the
 * projected corners, then least squares over all five parameters.
 *
 * <p>Only corners count: vertices at which the wall turns. A vertex inside a flat strip of a coarse
 * polygon, or on its edge at a mouth, lies on a chord and not on the circle.
 */
final class WallMeasure {

  /**
   * A vertex counts as a corner if the normals around it fall short by this share of the square of
   * the typical bend: one facet in twelve that turns by half the typical bend does.
   */
  private static final double LEAST_SHORTFALL = 0.02;

  private final Surface surface;
  private final Mesh mesh;
  private final FacetWidths widths;
  private final IndexSet corners;
  private final IndexSet touched;
  private double[] sums = new double[1024];
  private double[] scratch = new double[256];

  WallMeasure(Surface surface) {
    this.surface = surface;
    this.mesh = surface.mesh();
    this.widths = new FacetWidths(surface);
    this.corners = new IndexSet(mesh.vertexCount());
    this.touched = new IndexSet(mesh.vertexCount());
  }

  /** Corners found by the last measurement. */
  IndexSet corners() {
    return corners;
  }

  /** Measures facets of which nothing is known; empty if they are flat or too few. */
  Optional<WallModel> fresh(IndexSet facets) {
    double step = collectCorners(facets);
    if (corners.size() < 6) {
      return Optional.empty();
    }
    Vec3 axis = axisOf(facets);
    Vec3 origin = mesh.point(corners.get(0));
    Cylinder frame = Cylinder.about(origin, axis, 1);
    double[] uv = room(2 * corners.size());
    for (int k = 0; k < corners.size(); k++) {
      Vec3 point = mesh.point(corners.get(k));
      uv[2 * k] = frame.u(point);
      uv[2 * k + 1] = frame.v(point);
    }
    CircleFit circle = CircleFit.taubin(uv, corners.size());
    if (!(circle.radius() > 0) || !Double.isFinite(circle.radius())) {
      return Optional.empty();
    }
    Vec3 centre = frame.point(circle.u(), circle.v(), 0);
    return Optional.of(
        finish(facets, new Cylinder(centre, frame.u(), frame.v(), axis, circle.radius()), step));
  }

  /** Measures facets of which a cylinder is known roughly. */
  WallModel again(IndexSet facets, WallModel known) {
    double step = collectCorners(facets);
    if (corners.size() < 6) {
      return known;
    }
    return finish(facets, known.cylinder(), step);
  }

  /** True if the corners of the last measurement lie on a cylinder but for noise. */
  boolean isCylinder(Cylinder cylinder, double negligible) {
    return Roundness.isCylinder(mesh, corners.items(), corners.size(), cylinder, negligible);
  }

  private WallModel finish(IndexSet facets, Cylinder start, double step) {
    int count = corners.size();
    Cylinder fitted = CylinderFit.refine(start, mesh, corners.items(), count);
    double[] off = room(count);
    double sum = 0;
    double first = fitted.angle(mesh.point(corners.get(0)));
    double low = 0;
    double high = 0;
    for (int k = 0; k < count; k++) {
      Vec3 point = mesh.point(corners.get(k));
      double residual = fitted.distance(point) - fitted.radius();
      off[k] = Math.abs(residual);
      sum += residual * residual;
      double angle = Angles.wrapped(fitted.angle(point) - first);
      low = Math.min(low, angle);
      high = Math.max(high, angle);
    }
    double noise =
        1.4826 * Selection.median(off, count); // median to standard deviation of a normal law
    double width = widths.median(facets, fitted);
    return new WallModel(fitted, step, width, noise, Math.sqrt(sum / count), high - low, count);
  }

  /** Direction square to which the facets' normals lie, weighted by area. */
  private Vec3 axisOf(IndexSet facets) {
    double[] m = new double[6];
    for (int k = 0; k < facets.size(); k++) {
      int facet = facets.get(k);
      double area = surface.twiceArea(facet);
      double x = surface.nx(facet);
      double y = surface.ny(facet);
      double z = surface.nz(facet);
      m[0] += area * x * x;
      m[1] += area * x * y;
      m[2] += area * x * z;
      m[3] += area * y * y;
      m[4] += area * y * z;
      m[5] += area * z * z;
    }
    return new SymmetricEigen(m[0], m[1], m[2], m[3], m[4], m[5]).vector(0);
  }

  /**
   * Collects the vertices at bends and gives the typical bend: the mean turn of inner edges
   * weighted by the smaller facet's area and by the turn itself, so that neither edges inside flat
   * strips nor needles count.
   *
   * <p>A vertex is at a bend if the normals around it differ: two that differ by β, in shares p and
   * 1 − p, add up to a vector whose square falls short of one by 2 p (1 − p) (1 − cos β).
   */
  private double collectCorners(IndexSet facets) {
    double step = step(facets);
    sumNormals(facets);
    corners.clear();
    double least = LEAST_SHORTFALL * step * step;
    for (int k = 0; step > 0 && k < facets.size(); k++) {
      for (int c = 0; c < 3 && !surface.isSliver(facets.get(k)); c++) {
        int vertex = mesh.corner(facets.get(k), c);
        if (isAtBend(touched.position(surface.near(vertex)), least)) {
          corners.add(surface.welded(vertex));
        }
      }
    }
    return step;
  }

  private boolean isAtBend(int k, double least) {
    double count = sums[4 * k + 3];
    double square =
        sums[4 * k] * sums[4 * k]
            + sums[4 * k + 1] * sums[4 * k + 1]
            + sums[4 * k + 2] * sums[4 * k + 2];
    return count > 1 && 1 - square / (count * count) >= least;
  }

  private double step(IndexSet facets) {
    double first = 0;
    double second = 0;
    for (int k = 0; k < facets.size(); k++) {
      double area = surface.twiceArea(facets.get(k));
      for (int h = 3 * facets.get(k); h < 3 * facets.get(k) + 3; h++) {
        int other = surface.beyond(h);
        if (other >= 0 && facets.contains(other)) {
          double turn = Math.abs(surface.turn(facets.get(k), other));
          double weight = turn * Math.min(area, surface.twiceArea(other));
          first += weight;
          second += weight * turn;
        }
      }
    }
    return first > 0 ? second / first : 0;
  }

  /** For each vertex of the facets: the sum of the unit normals around it, and their number. */
  private void sumNormals(IndexSet facets) {
    touched.clear();
    for (int k = 0; k < facets.size(); k++) {
      int facet = facets.get(k);
      if (surface.isSliver(facet)) {
        continue;
      }
      for (int c = 0; c < 3; c++) {
        int vertex = surface.near(mesh.corner(facet, c));
        boolean fresh = touched.add(vertex);
        int at = 4 * touched.position(vertex);
        if (at + 4 > sums.length) {
          sums = Arrays.copyOf(sums, 2 * sums.length);
        }
        sums[at] = (fresh ? 0 : sums[at]) + surface.nx(facet);
        sums[at + 1] = (fresh ? 0 : sums[at + 1]) + surface.ny(facet);
        sums[at + 2] = (fresh ? 0 : sums[at + 2]) + surface.nz(facet);
        sums[at + 3] = (fresh ? 0 : sums[at + 3]) + 1;
      }
    }
  }

  private double[] room(int length) {
    if (scratch.length < length) {
      scratch = new double[2 * length];
    }
    return scratch;
  }
}

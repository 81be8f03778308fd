package gable.feature;

import gable.geom.Axis;
import gable.geom.Vec3;
import gable.mesh.Mesh;
import java.util.List;

/** Makes features of threads, and of bands that wind about an axis and belong to none. */
final class ThreadReader {

  /** Share of its cylinder that the rest of a bore covers beside a groove. */
  private static final double LEAST_BORE = 0.6;

  /** A bottom faces back into the hole by more than this, on the mean; a bore that goes on by 0. */
  private static final double FACING = 0.2;

  private final Surface surface;
  private final Mesh mesh;

  ThreadReader(Surface surface) {
    this.surface = surface;
    this.mesh = surface.mesh();
  }

  /** The thread on a wall. */
  Bore.Builder thread(ThreadWave.Found found, IndexSet wall, int[] facets) {
    Vec3 w = found.frame().w();
    // below 1e-9 a coordinate of a unit vector is rounding, and must not decide the sign
    double first = Math.abs(w.x()) > 1e-9 ? w.x() : Math.abs(w.y()) > 1e-9 ? w.y() : w.z();
    Vec3 direction = first < 0 ? w.times(-1) : w;
    Vec3 middle = found.frame().origin().along(w, (found.low() + found.high()) / 2);
    Cylinder cylinder = Cylinder.upright(new Axis(middle, direction), found.frame().radius());
    double half = (found.high() - found.low()) / 2;
    Bore.Builder builder =
        builder(
            rim(cylinder, -half, end(wall, cylinder, -half, found.pitch())),
            rim(cylinder, half, end(wall, cylinder, half, found.pitch())),
            cylinder,
            found.stray());
    builder.shape = BoreShape.THREAD;
    builder.wall = facets;
    builder.residual = found.stray();
    double step = new FacetWidths(surface).median(wall, cylinder);
    builder.facetsPerTurn = (int) Math.rint(Angles.TURN / step);
    return builder;
  }

  /** True if both ends of a wall are about as far along its axis, for it winds about it. */
  boolean winds(Bore.Builder bore) {
    double[] extent = extent(bore);
    double length = bore.high.wMin() + bore.high.wMax() - bore.low.wMin() - bore.low.wMax();
    return length < extent[1] - extent[0];
  }

  /** True if a wall does not cover most of its cylinder. */
  boolean isGappy(Bore.Builder bore) {
    return share(bore) < LEAST_BORE;
  }

  /** Share that a wall covers of the cylinder from its lowest to its highest point. */
  private double share(Bore.Builder bore) {
    double area = 0;
    for (int facet : bore.wall) {
      area += surface.twiceArea(facet) / 2;
    }
    double[] extent = extent(bore);
    return area / (Angles.TURN * bore.cylinder.radius() * (extent[1] - extent[0]));
  }

  /** Smallest and largest w of a wall. */
  private double[] extent(Bore.Builder bore) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int facet : bore.wall) {
      for (int c = 0; c < 3; c++) {
        double w = bore.cylinder.w(mesh.point(mesh.corner(facet, c)));
        low = Math.min(low, w);
        high = Math.max(high, w);
      }
    }
    return new double[] {low, high};
  }

  /**
   * What a band is without a thread: a partial bore if it covers most of a cylinder, as beside a
   * groove for oil; nothing if it covers less, as the bottom of such a groove or a coil.
   */
  List<Bore.Builder> band(Bore.Builder band) {
    double[] extent = extent(band);
    double share = share(band);
    if (share < LEAST_BORE) {
      return List.of();
    }
    double low = extent[0];
    double high = extent[1];
    Vec3 middle = band.cylinder.origin().along(band.cylinder.w(), (low + high) / 2);
    Cylinder cylinder = band.cylinder.from(middle);
    double half = (high - low) / 2;
    Bore.Builder builder =
        builder(
            rim(cylinder, -half, EndKind.OPEN_CURVED),
            rim(cylinder, half, EndKind.OPEN_CURVED),
            cylinder,
            band.section.tolerance());
    builder.shape = BoreShape.PARTIAL;
    builder.wall = band.wall;
    builder.residual = band.residual;
    builder.facetsPerTurn = band.facetsPerTurn;
    builder.coveredAngle = Math.min(1, share) * Angles.TURN;
    return List.of(builder);
  }

  private static Bore.Builder builder(Rim low, Rim high, Cylinder cylinder, double tolerance) {
    var section = new WallSection(false, List.of(), new double[0], 0, tolerance);
    return new Bore.Builder(cylinder, low, high, section);
  }

  private static Rim rim(Cylinder cylinder, double at, EndKind kind) {
    var rim = new Rim.Builder();
    rim.kind = kind;
    rim.wMin = at;
    rim.wMax = at;
    rim.crownW = at;
    rim.outerRadius = cylinder.radius();
    rim.outerW = at;
    return new Rim(rim);
  }

  /** Blind if what surrounds the wall within a pitch of its end faces back into the hole. */
  private EndKind end(IndexSet wall, Cylinder cylinder, double at, double pitch) {
    double faces = 0;
    double all = 0;
    for (int k = 0; k < wall.size(); k++) {
      for (int h = 3 * wall.get(k); h < 3 * wall.get(k) + 3; h++) {
        int other = surface.across(h);
        if (other >= 0
            && !wall.contains(other)
            && Math.abs(cylinder.w(mesh.point(mesh.origin(h))) - at) < pitch) {
          Vec3 normal = new Vec3(surface.nx(other), surface.ny(other), surface.nz(other));
          faces += surface.length(h) * Math.signum(at) * normal.dot(cylinder.w());
          all += surface.length(h);
        }
      }
    }
    return faces < -FACING * all ? EndKind.BLIND_CONE : EndKind.OPEN_CURVED;
  }
}

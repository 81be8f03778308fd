package gable.feature;

import gable.geom.Axis;
import gable.geom.Vec3;
import gable.mesh.Mesh;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Reads a grown wall: is it a bore, and if so with which ends and which section. */
final class WallReader {

  private static final int FEWEST_FACETS = 10;

  /** A wall that covers less than this is a fillet, a slot's end, a channel: no bore. */
  private static final double LEAST_ARC = Math.toRadians(200);

  /** A wall that winds about the axis by more than a turn and a quarter is a thread. */
  private static final double LEAST_THREAD = 1.25 * Angles.TURN;

  /** Facets of an arc that lean more than this, a sine, are a band of a rounding. */
  private static final double LEANING = 0.03;

  /** A roof set off from an uneven wall leaves ledges up to this width, in millimetres. */
  private static final double LEDGE = 0.06;

  private final Surface surface;
  private final Mesh mesh;
  private final IndexSet scratch;
  private final List<Note> notes;

  WallReader(Surface surface, IndexSet scratch, List<Note> notes) {
    this.surface = surface;
    this.mesh = surface.mesh();
    this.scratch = scratch;
    this.notes = notes;
  }

  /**
   * Reads a wall.
   *
   * @param facets the wall
   * @param corners vertices at which it turns
   * @param model what has been measured
   * @param tolerance how far corners may be off
   * @param isCylinder false if they follow another form
   */
  Optional<Bore.Builder> read(
      IndexSet facets, IndexSet corners, WallModel model, double tolerance, boolean isCylinder) {
    Cylinder cylinder = upright(model.cylinder());
    if (!isCylinder) {
      note(Note.Kind.NOT_A_CYLINDER, cylinder, model.extent());
      return Optional.empty();
    }
    List<BoundaryLoops.Loop> loops = new BoundaryLoops(surface, facets, cylinder).all();
    List<Integer> low = new ArrayList<>();
    List<Integer> high = new ArrayList<>();
    if (separate(loops, low, high)) {
      return Optional.of(assemble(facets, corners, model, tolerance, cylinder, low, high));
    }
    return arc(facets, corners, model, tolerance, cylinder, loops);
  }

  /** Finds the two ends of a wall that goes all the way round; false if it does not. */
  private static boolean separate(
      List<BoundaryLoops.Loop> loops, List<Integer> low, List<Integer> high) {
    int lows = 0;
    int highs = 0;
    for (BoundaryLoops.Loop loop : loops) {
      if (loop.winding() < 0) {
        lows++;
        low.addAll(loop.halfEdges());
      } else if (loop.winding() > 0) {
        highs++;
        high.addAll(loop.halfEdges());
      }
    }
    return lows == 1 && highs == 1;
  }

  /** Reads a wall with a gap along its whole length. */
  private Optional<Bore.Builder> arc(
      IndexSet facets,
      IndexSet corners,
      WallModel model,
      double tolerance,
      Cylinder cylinder,
      List<BoundaryLoops.Loop> loops) {
    Coverage coverage = Coverage.of(mesh, facets.items(), facets.size(), cylinder);
    ArcEnds ends = ArcEnds.of(mesh, cylinder, loops);
    boolean thread = ends.turns() > LEAST_THREAD;
    boolean small = coverage.covered() < LEAST_ARC && !thread;
    if (small
        || ends.low().isEmpty()
        || ends.high().isEmpty()
        || Lean.rms(surface, facets, cylinder) > LEANING) {
      note(Note.Kind.ARC, cylinder, coverage.covered());
      return Optional.empty();
    }
    Bore.Builder builder =
        assemble(facets, corners, model, tolerance, cylinder, ends.low(), ends.high());
    builder.coveredAngle = coverage.covered();
    double ledge = Math.max(LEDGE, 2 * tolerance);
    boolean roofed =
        !thread
            && new RoofTest(
                    surface, facets, scratch, builder.cylinder, coverage, model.step(), ledge)
                .isRoofed();
    builder.shape = thread ? BoreShape.THREAD : roofed ? BoreShape.PEAKED : BoreShape.PARTIAL;
    return Optional.of(builder);
  }

  private void note(Note.Kind kind, Cylinder cylinder, double covered) {
    notes.add(
        new Note(kind, new Axis(cylinder.origin(), cylinder.w()), cylinder.radius(), covered));
  }

  private Bore.Builder assemble(
      IndexSet facets,
      IndexSet corners,
      WallModel model,
      double tolerance,
      Cylinder anywhere,
      List<Integer> lowRim,
      List<Integer> highRim) {
    double middle = (middle(lowRim, anywhere) + middle(highRim, anywhere)) / 2;
    Cylinder cylinder =
        new Cylinder(
            anywhere.origin().along(anywhere.w(), middle),
            anywhere.u(),
            anywhere.v(),
            anywhere.w(),
            anywhere.radius());
    var rims = new RimMeasure(surface, facets, scratch, cylinder, tolerance, model.step());
    Rim low = rims.measure(lowRim, -1);
    Rim high = rims.measure(highRim, 1);
    int[] turning = corners.toArray();
    int[] vertices = vertices(facets);
    WallSection section =
        new SectionMeasure(surface, cylinder, tolerance)
            .measure(vertices, turning, low.loop(), high.loop());
    var builder = new Bore.Builder(cylinder, low, high, section);
    builder.wall = facets.toArray();
    Arrays.sort(builder.wall);
    builder.residual = residual(turning, cylinder);
    builder.facetsPerTurn =
        section.clean() ? section.rulings().size() : (int) Math.rint(Angles.TURN / model.step());
    boolean coarse = Directions.count(surface, builder.wall, cylinder) < FEWEST_FACETS;
    builder.shape = coarse ? BoreShape.POLYGON : BoreShape.ROUND;
    return builder;
  }

  private double middle(List<Integer> rim, Cylinder cylinder) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int h : rim) {
      double w = cylinder.w(mesh.point(mesh.origin(h)));
      low = Math.min(low, w);
      high = Math.max(high, w);
    }
    return (low + high) / 2;
  }

  private int[] vertices(IndexSet facets) {
    int[] all = new int[3 * facets.size()];
    for (int k = 0; k < facets.size(); k++) {
      for (int c = 0; c < 3; c++) {
        all[3 * k + c] = mesh.corner(facets.get(k), c);
      }
    }
    Arrays.sort(all);
    int count = 0;
    for (int k = 0; k < all.length; k++) {
      if (k == 0 || all[k] != all[k - 1]) {
        all[count++] = all[k];
      }
    }
    return Arrays.copyOf(all, count);
  }

  private double residual(int[] corners, Cylinder cylinder) {
    double most = 0;
    for (int vertex : corners) {
      double off = cylinder.distance(mesh.point(vertex)) - cylinder.radius();
      most = Math.max(most, Math.abs(off));
    }
    return most;
  }

  /** The cylinder in its section frame, its direction made the same for every run. */
  private static Cylinder upright(Cylinder cylinder) {
    Vec3 w = cylinder.w();
    // below 1e-9 a coordinate of a unit vector is rounding, and must not decide the sign
    double first = Math.abs(w.x()) > 1e-9 ? w.x() : Math.abs(w.y()) > 1e-9 ? w.y() : w.z();
    Vec3 direction = first < 0 ? w.times(-1) : w;
    return Cylinder.upright(new Axis(cylinder.origin(), direction), cylinder.radius());
  }
}

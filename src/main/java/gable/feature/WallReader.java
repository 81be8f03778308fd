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
   */
  Optional<Bore.Builder> read(
      IndexSet facets, IndexSet corners, WallModel model, double tolerance) {
    Cylinder cylinder = upright(model.cylinder());
    if (!Roundness.isCylinder(mesh, corners.items(), corners.size(), cylinder, tolerance / 3)) {
      note(Note.Kind.NOT_A_CYLINDER, cylinder, model.extent());
      return Optional.empty();
    }
    List<BoundaryLoops.Loop> low = new ArrayList<>();
    List<BoundaryLoops.Loop> high = new ArrayList<>();
    for (BoundaryLoops.Loop loop : new BoundaryLoops(surface, facets, cylinder).all()) {
      if (loop.winding() != 0) {
        (loop.winding() < 0 ? low : high).add(loop);
      }
    }
    if (low.size() != 1 || high.size() != 1) {
      note(Note.Kind.ARC, cylinder, model.extent());
      return Optional.empty();
    }
    return Optional.of(
        assemble(facets, corners, model, tolerance, cylinder, low.get(0), high.get(0)));
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
      BoundaryLoops.Loop lowLoop,
      BoundaryLoops.Loop highLoop) {
    double middle = (middle(lowLoop, anywhere) + middle(highLoop, anywhere)) / 2;
    Cylinder cylinder =
        new Cylinder(
            anywhere.origin().along(anywhere.w(), middle),
            anywhere.u(),
            anywhere.v(),
            anywhere.w(),
            anywhere.radius());
    var rims = new RimMeasure(surface, facets, scratch, cylinder, tolerance);
    Rim low = rims.measure(lowLoop.halfEdges(), -1);
    Rim high = rims.measure(highLoop.halfEdges(), 1);
    int[] turning = corners.toArray();
    int[] vertices = vertices(facets);
    WallSection section =
        new SectionMeasure(mesh, cylinder, tolerance)
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

  private double middle(BoundaryLoops.Loop loop, Cylinder cylinder) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int h : loop.halfEdges()) {
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

package gable.report;

import gable.feature.Bore;
import gable.feature.Feature;
import gable.geom.Affine3;
import gable.geom.Box3;
import gable.geom.Vec3;
import gable.mesh.Mesh;
import gable.pipeline.FeatureResult;
import gable.pipeline.Outcome;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Pictures of a plate before and after a run, as PNG, both from the same place: into the largest
 * bore that was changed, or else into the largest. New faces have a colour of their own. The same
 * surfaces give the same bytes.
 */
public final class Pictures {

  /** Width of every picture in pixels. */
  public static final int WIDTH = 360;

  /** Height of every picture in pixels. */
  public static final int HEIGHT = 270;

  private static final double MARGIN = 0.04;
  private static final double OUTLINE = 0.02; // step in depth, as a share of the whole

  private final List<Seen> all;
  private final Box3 box;
  private final Canvas kept;

  private Pictures(List<Seen> all, Box3 box) {
    this.all = all;
    this.box = box;
    this.kept = new Canvas(WIDTH, HEIGHT, OUTLINE * scale() * box.diagonal());
    for (Seen each : all) {
      toDots(each.points);
      BitSet facets = each.shape.removed();
      facets.flip(0, each.shape.before().facetCount());
      draw(kept, each, each.shape.before(), facets);
    }
  }

  /** A surface at one of its places. */
  private static final class Seen {
    final Shape shape;
    final Mesh after; // has all the vertices of the mesh before, and the new ones

    /** Coordinates in the picture of each vertex. */
    final double[] points;

    Seen(Shape shape, Mesh after, double[] points) {
      this.shape = shape;
      this.after = after;
      this.points = points;
    }
  }

  /** Pictures of the given surfaces. */
  public static Pictures of(List<Shape> shapes) {
    View view = View.into(axis(shapes));
    List<Seen> all = new ArrayList<>();
    Box3 box = Box3.EMPTY;
    for (Shape shape : shapes) {
      Mesh after = shape.after();
      for (Affine3 place : shape.places()) {
        Seen seen = new Seen(shape, after, view.seen(after, place));
        box = box.with(View.box(seen.points));
        all.add(seen);
      }
    }
    return new Pictures(all, box);
  }

  /** Out of the largest bore that was changed, or else of the largest, at an end that is open. */
  private static Vec3 axis(List<Shape> shapes) {
    Comparator<FeatureResult> changedFirst =
        Comparator.comparing(f -> f.outcome() == Outcome.RESHAPED);
    Optional<Feature> first =
        shapes.stream()
            .flatMap(shape -> Notices.features(shape.result()).stream())
            .max(changedFirst.thenComparingDouble(f -> f.feature().radius()))
            .map(FeatureResult::feature);
    return first.map(Pictures::outwards).orElse(Vec3.Y.times(-1));
  }

  private static Vec3 outwards(Feature feature) {
    Vec3 direction = feature.axis().direction();
    boolean onlyHigh =
        feature instanceof Bore bore
            && bore.low().kind().isBlind()
            && !bore.high().kind().isBlind();
    return onlyHigh ? direction : direction.times(-1);
  }

  /** The plate as it was. */
  public byte[] before() {
    Canvas canvas = new Canvas(kept);
    for (Seen each : all) {
      draw(canvas, each, each.shape.before(), each.shape.removed());
    }
    return Png.of(canvas.pixels(), WIDTH);
  }

  /** The plate as it is after the run. */
  public byte[] after() {
    Canvas canvas = new Canvas(kept);
    for (Seen each : all) {
      draw(canvas, each, each.after, each.shape.added());
    }
    return Png.of(canvas.pixels(), WIDTH);
  }

  private static void draw(Canvas canvas, Seen seen, Mesh mesh, BitSet facets) {
    double[] t = new double[9];
    double[] normal = new double[3];
    boolean after = mesh != seen.shape.before();
    for (int facet = facets.nextSetBit(0); facet >= 0; facet = facets.nextSetBit(facet + 1)) {
      for (int k = 0; k < 3; k++) {
        System.arraycopy(seen.points, 3 * mesh.corner(facet, k), t, 3 * k, 3);
      }
      if (normal(t, normal)) {
        canvas.draw(t, normal, after && seen.shape.isNew(facet));
      }
    }
  }

  private void toDots(double[] seen) {
    double scale = scale();
    Vec3 middle = box.min().plus(box.max()).times(0.5);
    for (int at = 0; at < seen.length; at += 3) {
      seen[at] = Canvas.FINE * WIDTH / 2.0 + scale * (seen[at] - middle.x());
      seen[at + 1] = Canvas.FINE * HEIGHT / 2.0 - scale * (seen[at + 1] - middle.y());
      seen[at + 2] *= scale;
    }
  }

  /** Dots to a millimetre. */
  private double scale() {
    double wide = Math.max(1e-9, box.max().x() - box.min().x());
    double high = Math.max(1e-9, box.max().y() - box.min().y());
    double room = Canvas.FINE * (1 - 2 * MARGIN);
    return Math.min(WIDTH * room / wide, HEIGHT * room / high);
  }

  /** Normal of a triangle; false if it has none. The triangle's y points down, the normal's up. */
  private static boolean normal(double[] t, double[] normal) {
    Vec3 a = new Vec3(t[3] - t[0], t[1] - t[4], t[5] - t[2]);
    Vec3 b = new Vec3(t[6] - t[0], t[1] - t[7], t[8] - t[2]);
    Vec3 n = a.cross(b);
    double length = n.norm();
    if (!(length > 0)) {
      return false;
    }
    normal[0] = n.x() / length;
    normal[1] = n.y() / length;
    normal[2] = n.z() / length;
    return true;
  }
}

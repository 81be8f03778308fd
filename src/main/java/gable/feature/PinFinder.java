package gable.feature;

import gable.geom.Axis;
import gable.geom.Tolerances;
import gable.geom.Vec3;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Finds pins. Seen from the other side a pin is a bore: the pieces of the surface that may be pins
 * ({@link Bulges}) are cut out, turned inside out and given to the finder of bores. A bore there
 * with one open end, the root, and one blind end, the tip, is a pin unless
 *
 * <ul>
 *   <li>its tip is hollow to more than half its free length: then it is the outside of a boss or of
 *       a pipe, whatever the hole is;
 *   <li>a thread lies beyond the end of its wall: then it is the shank of a bolt;
 *   <li>it is shorter than a third of its diameter: then it is a wheel, a disc or a collar.
 * </ul>
 *
 * Two open ends are a shaft between walls or a handle, two blind ones a body of its own.
 */
final class PinFinder {

  /** Share of the free length from which a hole in the tip makes a boss of a pin (estimate). */
  private static final double BOSS = 0.5;

  /** A pin is at least this long, in diameters (common practice, no source). */
  private static final double SHORTEST = 1.0 / 3;

  /**
   * Facets of failed walls that may be looked at, so that a large sculpture, which is round
   * everywhere, costs a fraction of a second more. Pins of drawn parts have long bends and are
   * tried first. The number is a count of work, so the result is the same on every machine.
   */
  private static final long LEAST_BUDGET = 100_000;

  /** The same for each facet that is searched. */
  private static final long BUDGET_PER_FACET = 4;

  private final Surface surface;
  private final Tolerances tolerances;
  private final Bulges bulges;
  private final int[] facets;

  private PinFinder(Surface surface, Tolerances tolerances, Bulges bulges) {
    this.surface = surface;
    this.tolerances = tolerances;
    this.bulges = bulges;
    this.facets = bulges.facets();
  }

  /** The pins of a part, numbered P1, P2 and so on in the order of their places. */
  static List<Pin> find(Surface surface, Tolerances tolerances) {
    Bulges bulges = Bulges.of(surface);
    return bulges.facets().length == 0
        ? List.of()
        : new PinFinder(surface, tolerances, bulges).pins();
  }

  private List<Pin> pins() {
    int[] vertices = new int[3 * facets.length];
    Mesh turned = turned(vertices);
    List<Pin> pins = new ArrayList<>();
    long budget = Math.max(LEAST_BUDGET, BUDGET_PER_FACET * facets.length);
    for (Bore bore : FeatureFinder.bores(turned, HalfEdges.of(turned), tolerances, budget)) {
      if (bore.shape() == BoreShape.ROUND
          && bore.low().kind().isBlind() != bore.high().kind().isBlind()) {
        pin(bore, vertices).ifPresent(pins::add);
      }
    }
    pins.sort(Comparator.comparing(Pin::cylinder, BoreOrder.byPlace()));
    List<Pin> named = new ArrayList<>();
    for (Pin pin : pins) {
      named.add(pin.named("P" + (named.size() + 1)));
    }
    return named;
  }

  /**
   * The facets that were cut out, inside out.
   *
   * @param vertices filled with the number that each of its vertices has in the part
   */
  private Mesh turned(int[] vertices) {
    Mesh mesh = surface.mesh();
    int[] numbers = new int[mesh.vertexCount()]; // 0 is not used yet, else the number plus one
    double[] points = new double[3 * vertices.length];
    int[] corners = new int[3 * facets.length];
    int count = 0;
    for (int k = 0; k < corners.length; k++) {
      int vertex = mesh.corner(facets[k / 3], 2 - k % 3);
      if (numbers[vertex] == 0) {
        vertices[count] = vertex;
        points[3 * count] = mesh.x(vertex);
        points[3 * count + 1] = mesh.y(vertex);
        points[3 * count + 2] = mesh.z(vertex);
        numbers[vertex] = ++count;
      }
      corners[k] = numbers[vertex] - 1;
    }
    return Mesh.of(Arrays.copyOf(points, 3 * count), corners);
  }

  private Optional<Pin> pin(Bore bore, int[] vertices) {
    boolean tipHigh = bore.high().kind().isBlind();
    Rim rim = tipHigh ? bore.high() : bore.low();
    Rim rootRim = tipHigh ? bore.low() : bore.high();
    int[] wall = Arrays.stream(bore.wall()).map(facet -> facets[facet]).toArray();
    if (!bulges.mayBeWall(wall)) {
      return Optional.empty();
    }
    int[] loop = Arrays.stream(rim.loop()).map(vertex -> vertices[vertex]).toArray();
    double tolerance = Math.max(bore.section().tolerance(), 2 * tolerances.coordinateGrid());
    double sign = tipHigh ? 1 : -1;
    double to = sign * (rim.wMin() + rim.wMax()) / 2;
    Axis measured = bore.axis();
    Axis axis = new Axis(measured.origin(), measured.direction().times(sign));
    var foot = new RootMeasure(axis, bore.radius(), points(rootRim, vertices));
    boolean ribbed = !foot.ribs().isEmpty();
    double from = ribbed ? foot.at(tolerance) : sign * (rootRim.wMin() + rootRim.wMax()) / 2;
    var measure = new TipMeasure(surface, wall, axis, bore.radius(), tolerance);
    Pin.Tip tip = measure.measure(loop, rim);
    if (tip.above() > 0 && ThreadFinder.isOutside(surface, measure.facets(), axis.direction())) {
      return Optional.empty();
    }
    double length = to + tip.above() - from;
    if (length < SHORTEST * 2 * bore.radius() || tip.below() > BOSS * length) {
      return Optional.empty();
    }
    Axis middle = new Axis(axis.at(from + length / 2), axis.direction());
    RootKind kind = ribbed ? foot.kind(tolerance) : RootKind.of(rootRim.kind());
    Pin.Root root = new Pin.Root(kind, foot.ribs(from));
    return Optional.of(new Pin("", bore, wall, middle, length, root, tip));
  }

  private List<Vec3> points(Rim rim, int[] vertices) {
    return Arrays.stream(rim.loop())
        .mapToObj(vertex -> surface.mesh().point(vertices[vertex]))
        .toList();
  }
}

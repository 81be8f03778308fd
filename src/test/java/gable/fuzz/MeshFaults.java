package gable.fuzz;

import gable.fuzz.Markup.Attribute;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;

/**
 * Faults in the numbers of a mesh. Some break it; others (noise, squeezing, turning, placing) leave
 * it closed and so send something new through finder, kernel and proof.
 */
final class MeshFaults {

  private static final List<String> POINT = List.of("x", "y", "z");

  private final Markup markup;
  private final Chance chance;
  private final List<Integer> vertices;
  private final List<Integer> triangles;

  private MeshFaults(Markup markup, Chance chance) {
    this.markup = markup;
    this.chance = chance;
    this.vertices = markup.tags("vertex");
    this.triangles = markup.tags("triangle");
  }

  /** The text of a model part with one fault more. */
  static String planted(String text, Chance chance) {
    Markup markup = Markup.of(text);
    MeshFaults faults = new MeshFaults(markup, chance);
    if (!faults.vertices.isEmpty() && !faults.triangles.isEmpty()) {
      faults.plant();
    }
    return markup.text();
  }

  private void plant() {
    switch (chance.below(16)) {
      case 0 -> oneCoordinate();
      case 1 -> oneIndex();
      case 2 -> noise(Math.pow(10, -chance.below(9)));
      case 3 -> someNoise();
      case 4 -> squeeze();
      case 5 -> turn();
      case 6 -> onto();
      case 7 -> rounded(chance.below(6));
      case 8 -> oneTriangle();
      case 9 -> reversed(chance.oneIn(2));
      case 10 -> shifted();
      case 11, 12 -> placed();
      case 13 -> shuffled();
      case 14 -> ulps();
      default -> unit();
    }
  }

  private void oneCoordinate() {
    attribute(chance.of(vertices), chance.of(POINT))
        .ifPresent(a -> markup.set(a, chance.of(Telling.NUMBERS)));
  }

  private void oneIndex() {
    attribute(chance.of(triangles), chance.either("v1", "v2", "v3"))
        .ifPresent(
            a ->
                markup.set(
                    a,
                    chance.oneIn(2)
                        ? chance.of(Telling.INDICES)
                        : Integer.toString(chance.below(vertices.size()))));
  }

  private Optional<Attribute> attribute(int piece, String name) {
    return markup.attributes(piece).stream().filter(a -> a.name().equals(name)).findFirst();
  }

  private void map(List<Integer> pieces, String axis, DoubleUnaryOperator map) {
    for (int piece : pieces) {
      attribute(piece, axis).ifPresent(a -> markup.set(a, mapped(a.value(), map)));
    }
  }

  /** A coordinate after a map; one that is none stays as it is. */
  private static String mapped(String value, DoubleUnaryOperator map) {
    try {
      double number = map.applyAsDouble(Double.parseDouble(value));
      return Double.isFinite(number) ? Double.toString(number) : value;
    } catch (NumberFormatException e) {
      return value;
    }
  }

  private void noise(double size) {
    POINT.forEach(axis -> map(vertices, axis, c -> c + size * chance.signed()));
  }

  private void someNoise() {
    double size = Math.pow(10, -chance.below(7));
    List<Integer> some = vertices.stream().filter(v -> chance.oneIn(4)).toList();
    map(some, chance.of(POINT), c -> c + size * chance.signed());
  }

  private void squeeze() {
    double factor =
        chance.either(0.0, -1.0, 0.5, 0.999, 1.001, 2.0, 10.0, 0.1, 1e-3, 1e3, 1e-6, 1e6, -1e-3);
    if (chance.oneIn(2)) {
      POINT.forEach(axis -> map(vertices, axis, c -> c * factor));
    } else {
      map(vertices, chance.of(POINT), c -> c * factor);
    }
  }

  /** Names of the axes change places: a turn when all three move, a mirror when two do. */
  private void turn() {
    boolean all = chance.oneIn(2);
    for (int piece : vertices) {
      String text = markup.pieces().get(piece).replace(" x=", " q=").replace(" y=", " x=");
      markup
          .pieces()
          .set(
              piece,
              all ? text.replace(" z=", " y=").replace(" q=", " z=") : text.replace(" q=", " y="));
    }
  }

  private void onto() {
    markup.pieces().set(chance.of(vertices), markup.pieces().get(chance.of(vertices)));
  }

  private void rounded(int decimals) {
    double step = Math.pow(10, -decimals);
    POINT.forEach(axis -> map(vertices, axis, c -> Math.rint(c / step) * step));
  }

  private void ulps() {
    POINT.forEach(axis -> map(vertices, axis, c -> chance.oneIn(3) ? c + Math.ulp((float) c) : c));
  }

  private void oneTriangle() {
    int piece = chance.of(triangles);
    List<String> pieces = markup.pieces();
    switch (chance.below(4)) {
      case 0 -> pieces.set(piece, "");
      case 1 -> pieces.set(piece, pieces.get(piece).repeat(1 + chance.below(70)));
      case 2 -> Collections.swap(pieces, piece, chance.of(triangles));
      default -> reverse(piece);
    }
  }

  private void reversed(boolean all) {
    for (int piece : triangles) {
      if (all || chance.oneIn(8)) {
        reverse(piece);
      }
    }
  }

  private void reverse(int piece) {
    String text = markup.pieces().get(piece);
    markup
        .pieces()
        .set(piece, text.replace("v1=", "q=").replace("v2=", "v1=").replace("q=", "v2="));
  }

  /** Moves a run of vertices, often those of one ring or face. */
  private void shifted() {
    int from = chance.below(vertices.size());
    int to = Math.min(vertices.size(), from + 1 + chance.small(vertices.size()));
    double by = chance.either(0.001, 0.1, 1.0, 5.0, 100.0) * chance.signed();
    map(vertices.subList(from, to), chance.of(POINT), c -> c + by);
  }

  private void placed() {
    List<Integer> uses = new ArrayList<>(markup.tags("item"));
    uses.addAll(markup.tags("component"));
    if (uses.isEmpty()) {
      return;
    }
    int piece = chance.of(uses);
    String transform = chance.oneIn(2) ? chance.of(Telling.TRANSFORMS) : anyTransform();
    Optional<Attribute> old = attribute(piece, "transform");
    if (old.isPresent()) {
      markup.set(old.get(), transform);
    } else {
      String text = markup.pieces().get(piece);
      markup.pieces().set(piece, text.replaceFirst("(?=/?>)", " transform=\"" + transform + "\""));
    }
    if (chance.oneIn(4)) {
      markup.pieces().add(piece, markup.pieces().get(piece));
    }
  }

  private String anyTransform() {
    StringBuilder text = new StringBuilder();
    double size = chance.either(1.0, 1.0, 0.01, 30.0);
    for (int i = 0; i < 12; i++) {
      double number = size * chance.signed() * (i < 9 ? 1 : 100);
      text.append(i == 0 ? "" : " ").append(new BigDecimal(number, MathContext.DECIMAL32));
    }
    return text.toString().toLowerCase(Locale.ROOT);
  }

  private void shuffled() {
    List<String> texts = new ArrayList<>(triangles.stream().map(markup.pieces()::get).toList());
    for (int i = texts.size() - 1; i > 0; i--) {
      Collections.swap(texts, i, chance.below(i + 1));
    }
    for (int i = 0; i < texts.size(); i++) {
      markup.pieces().set(triangles.get(i), texts.get(i));
    }
  }

  private void unit() {
    for (int piece : markup.tags("model")) {
      attribute(piece, "unit")
          .ifPresent(
              a ->
                  markup.set(
                      a,
                      chance.either(
                          "micron", "centimeter", "inch", "foot", "meter", "Inch", "", "furlong")));
    }
  }
}

package gable.report;

import static org.assertj.core.api.Assertions.assertThat;

import gable.feature.Feature;
import gable.geom.Affine3;
import gable.geom.Vec3;
import gable.mesh.Mesh;
import gable.pairs.Evidence;
import gable.pipeline.Choice;
import gable.pipeline.FeatureResult;
import gable.pipeline.FileResult;
import gable.pipeline.Gable;
import gable.pipeline.Input;
import gable.pipeline.Observer;
import gable.pipeline.Outcome;
import gable.pipeline.Settings;
import gable.section.Window;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/**
 * The demonstration: an invented lamp with a lying pair, a standing one, a pin that is captive in
 * its bore, and seats of screws. Draws the picture of the README, cuts along the axes before and
 * after; {@code -Dgolden.update=true} writes it.
 */
class LampPictureTest {

  private static final Path LAMP = Path.of("fixtures/parts/lamp.3mf");
  private static final Path PICTURE = Path.of("fixtures/parts/lamp.svg");
  private static final double SCALE = 7;
  private static final int WIDTH = 196;
  private static final int HEIGHT = 168;
  private static final int COLUMNS = 4;

  /**
   * A run.
   *
   * @param result what it gave
   * @param parts the surfaces of foot, latch, arm and cap
   */
  private record Run(FileResult result, List<Shape> parts) {
    static Run with(Set<String> reshapers) {
      Shapes shapes = new Shapes(Observer.NONE);
      Choice choice = new Choice(Set.of(), Set.of(), reshapers, Set.of());
      Settings settings = Settings.usual().withChoice(choice);
      FileResult result = Gable.installed().inspect(Input.file(LAMP), settings, shapes);
      return new Run(result, shapes.of(result));
    }
  }

  private final Run plain = Run.with(Set.of());
  private final Run keyed = Run.with(Set.of("gusset"));

  @Test
  void everyPinHasItsBoreAndNoScrewDoes() {
    assertThat(
            plain.result.joints().pairs().stream()
                .map(joint -> joint.pin().ids() + " in " + joint.bore().ids() + " " + joint.by()))
        .containsExactly(
            "[1.P1] in [4.B1] " + Evidence.PATTERN,
            "[1.P2] in [4.B2] " + Evidence.PATTERN,
            "[1.P3] in [2.B1] " + Evidence.POSITION,
            "[1.P4] in [3.B1] " + Evidence.SIZE);
    assertThat(plain.result.joints().doubts()).isEmpty();
    assertThat(
            features().stream()
                .map(feature -> FeatureView.of(feature.feature(), Affine3.IDENTITY))
                .filter(view -> view.screw().equals("M4")))
        .hasSize(4);
  }

  @Test
  void everyMouthOfAJointIsEasedAndNoSeat() {
    List<FeatureResult> eased =
        features().stream()
            .filter(
                feature ->
                    feature.changes().stream()
                        .anyMatch(
                            change ->
                                change.by().equals("lead-in")
                                    && change.outcome() == Outcome.RESHAPED))
            .toList();

    assertThat(eased).hasSize(4);
  }

  private List<FeatureResult> features() {
    return plain.parts.stream()
        .flatMap(shape -> Notices.features(shape.result()).stream())
        .collect(Collectors.toList());
  }

  @Test
  void onlyTheJointWithRoomForASlotBecomesAKeyhole() {
    List<String> webs =
        keyed.parts.stream()
            .flatMap(
                shape ->
                    Notices.features(shape.result()).stream()
                        .filter(
                            feature ->
                                feature.changes().stream()
                                    .anyMatch(
                                        change ->
                                            change.by().equals("gusset")
                                                && change.outcome() == Outcome.RESHAPED))
                        .map(
                            feature -> shape.result().place().featureId(feature.feature().id(), 0)))
            .toList();

    assertThat(webs).containsExactly("1.P4", "3.B1");
  }

  @Test
  void thePictureOfTheReadmeShowsWhatTheProgramDoes() throws IOException {
    String svg =
        head()
            + panel(0, plain, "lying pin P4 of the foot", "P4", 0)
            + panel(1, plain, "bore B1 of the arm", "B1", 2)
            + panel(2, keyed, "P4, --with gusset", "P4", 0)
            + panel(3, keyed, "B1, --with gusset", "B1", 2)
            + panel(4, plain, "standing pin P1 of the foot", "P1", 0)
            + panel(5, plain, "bore B1 of the cap", "B1", 3)
            + panel(6, plain, "latch on its captive pin P3", "P3", 0)
            + panel(7, plain, "seat for an M4 screw, B3", "B3", 0)
            + "</svg>\n";

    if (Boolean.getBoolean("golden.update")) {
      Files.writeString(PICTURE, svg);
    }
    assertThat(PICTURE).content().isEqualTo(svg);
    assertThat(svg.length()).isLessThan(20_000);
  }

  private static String head() {
    return String.format(
        Locale.ROOT,
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" font-family=\"sans-serif\""
            + " font-size=\"11\"><style>.is{fill:#9db4c8;stroke:#24425c;stroke-width:1}.was{fill:"
            + "none;stroke:#b8460e;stroke-width:1;stroke-dasharray:3 2}</style><rect width=\"%d\""
            + " height=\"%d\" fill=\"#fff\"/>\n",
        COLUMNS * (WIDTH + 8),
        2 * (HEIGHT + 24),
        COLUMNS * (WIDTH + 8),
        2 * (HEIGHT + 24));
  }

  /**
   * A cut upright along the axis of a feature through all parts that are there.
   *
   * @param at which panel
   * @param id of the feature within its part
   * @param part number of the object, from 0
   */
  private static String panel(int at, Run run, String words, String id, int part) {
    Shape shape = run.parts.get(part);
    Feature feature =
        Notices.features(shape.result()).stream()
            .map(FeatureResult::feature)
            .filter(each -> each.id().equals(id))
            .findFirst()
            .orElseThrow();
    Vec3 axis = feature.axis().direction();
    boolean standing = Math.abs(axis.z()) > 0.5;
    Vec3 u = standing ? Vec3.X : axis;
    Vec3 w = u.cross(Vec3.Z);
    SectionPlane plane = new SectionPlane(u, Vec3.Z, w, feature.axis().origin().dot(w));
    double x = feature.axis().origin().dot(u);
    double z = feature.axis().origin().z();
    double half = WIDTH / SCALE / 2;
    double high = HEIGHT / SCALE / 2;
    Window window = new Window(x - half, z - high, x + half, z + high);
    int left = at % COLUMNS * (WIDTH + 8) + 4;
    int top = at / COLUMNS * (HEIGHT + 24);
    StringBuilder svg = new StringBuilder();
    svg.append(
        String.format(
            Locale.ROOT,
            "<text x=\"%d\" y=\"%d\">%s</text><svg x=\"%d\" y=\"%d\" width=\"%d\" height=\"%d\">",
            left,
            top + 15,
            words,
            left,
            top + 22,
            WIDTH,
            HEIGHT));
    for (Shape each : run.parts) {
      path(svg, "is", each.after(), plane, window);
      path(svg, "was", each.before(), plane, window);
    }
    return svg.append("</svg>\n").toString();
  }

  private static void path(
      StringBuilder svg, String kind, Mesh mesh, SectionPlane plane, Window window) {
    StringBuilder path = new StringBuilder();
    for (double[] ring : Slice.of(mesh, plane).rings()) {
      for (double[] seen : window.clipped(ring)) {
        for (int k = 0; k < seen.length; k += 2) {
          path.append(
              String.format(
                  Locale.ROOT,
                  "%s%.1f %.1f",
                  k == 0 ? "M" : "L",
                  (seen[k] - window.left()) * SCALE,
                  (window.top() - seen[k + 1]) * SCALE));
        }
        path.append('Z');
      }
    }
    if (path.length() > 0) {
      svg.append("<path class=\"").append(kind).append("\" d=\"").append(path).append("\"/>");
    }
  }
}

package gable.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gable.feature.Feature;
import gable.pipeline.FeatureResult;
import gable.pipeline.FileResult;
import gable.pipeline.Gable;
import gable.pipeline.Input;
import gable.pipeline.Observer;
import gable.pipeline.Settings;
import gable.plan.Measure;
import gable.section.Window;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Sections through meshes. Areas are derived from the closed forms of the shapes. */
class SliceTest {

  private static Shape shape(String fixture) {
    Shapes shapes = new Shapes(Observer.NONE);
    Input input = Input.file(Path.of("fixtures", fixture));
    FileResult result = Gable.installed().inspect(input, Settings.usual(), shapes);
    return shapes.of(result).get(0);
  }

  private static FeatureResult feature(Shape shape) {
    return Notices.features(shape.result()).get(0);
  }

  private static double area(List<double[]> rings) {
    return rings.stream().mapToDouble(Window::twiceArea).sum() / 2;
  }

  @Test
  void aBlockWithABoreIsASquareLessAPolygon() {
    Shape shape = shape("bore/through-d8.3mf");
    Slice slice = Slice.of(shape.before(), SectionPlane.of(feature(shape).feature()));

    // side 20; 40 corners on radius 4 (derived); coordinates have six decimals
    double polygon = 0.5 * 40 * 16 * Math.sin(2 * Math.PI / 40);
    assertThat(slice.rings()).hasSize(2);
    assertThat(area(slice.rings())).isCloseTo(400 - polygon, within(1e-4));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"bore/through-d8.3mf", "bore/low-roof-d12.3mf", "bore/vertices-repeated-d8.3mf"})
  void whatARoofTakesFromTheSectionOfAStraightBoreTimesItsLengthIsItsVolume(String fixture) {
    Shape shape = shape(fixture);
    Feature feature = feature(shape).feature();
    SectionPlane plane = SectionPlane.of(feature);

    double before = area(Slice.of(shape.before(), plane).rings());
    double after = area(Slice.of(shape.after(), plane).rings());

    double removed =
        feature(shape).changes().stream()
            .flatMap(change -> change.measures().stream())
            .filter(measure -> measure.name().equals("removed-volume"))
            .mapToDouble(Measure::value)
            .sum();
    // the bores are 20 long; area and volume come from other sums over the same facets
    assertThat((before - after) * 20).isCloseTo(removed, within(1e-3));
    assertThat(removed).isPositive();
  }

  @Test
  void everySegmentBelongsToAClosedRing() {
    Shape shape = shape("parts/bracket.3mf");
    for (FeatureResult each : Notices.features(shape.result())) {
      Slice slice = Slice.of(shape.after(), SectionPlane.of(each.feature()));

      int corners = slice.rings().stream().mapToInt(ring -> ring.length / 2).sum();
      assertThat(corners).isEqualTo(slice.segments().size());
    }
  }

  @Test
  void aWindowShowsItsPartOfARingAndKeepsItsTurn() {
    Window window = new Window(0, 0, 2, 1);
    double[] square = {-1, -1, 1, -1, 1, 3, -1, 3};
    double[] hole = {-1, 3, 1, 3, 1, -1, -1, -1};

    assertThat(area(window.clipped(square))).isCloseTo(1, within(1e-12));
    assertThat(area(window.clipped(hole))).isCloseTo(-1, within(1e-12));
    assertThat(window.clipped(new double[] {5, 5, 6, 5, 6, 6})).isEmpty();
  }

  @Test
  void aRingAroundAWindowFillsIt() {
    Window window = new Window(0, 0, 2, 1);

    assertThat(area(window.clipped(new double[] {-9, -9, 9, -9, 9, 9, -9, 9})))
        .isCloseTo(2, within(1e-12));
  }

  @Test
  void aSegmentIsCutAtTheEdgesOfAWindow() {
    Window window = new Window(0, 0, 2, 1);

    assertThat(window.clipped(-1, 0.5, 3, 0.5)).containsExactly(0, 0.5, 2, 0.5);
    assertThat(window.clipped(1, -1, 1, 0.25)).containsExactly(1, 0, 1, 0.25);
    assertThat(window.clipped(-1, 0.5, -0.5, 0.5)).isEmpty();
    assertThat(window.clipped(0.5, 2, 1.5, 2)).isEmpty();
  }
}

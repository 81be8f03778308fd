package gable.report;

import static org.assertj.core.api.Assertions.assertThat;

import gable.fixture.HoleBlock;
import gable.fixture.MeshSketch;
import gable.fixture.ModelSketch;
import gable.geom.Affine3;
import gable.geom.Vec3;
import gable.pipeline.FileResult;
import gable.pipeline.Gable;
import gable.pipeline.Input;
import gable.pipeline.Observer;
import gable.pipeline.Settings;
import java.io.ByteArrayInputStream;
import java.nio.file.Path;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Reports for people in their formats. What they say is decided by this project. */
class HtmlReportTest {

  private static final Settings USUAL = Settings.usual();

  private record Told(Account account, Shapes shapes, FileResult result) {
    String page() {
      return new HtmlReport(account, shapes.of(result), USUAL, true).page();
    }
  }

  private static Told told(Input input) {
    Shapes shapes = new Shapes(Observer.NONE);
    FileResult result = Gable.installed().inspect(input, USUAL, shapes);
    return new Told(Account.of(result, USUAL, true, shapes.of(result), ""), shapes, result);
  }

  private static Told told(String fixture) {
    return told(Input.file(Path.of("fixtures", fixture)));
  }

  private static int count(String text, String pattern) {
    Matcher matcher = Pattern.compile(pattern).matcher(text);
    int count = 0;
    while (matcher.find()) {
      count++;
    }
    return count;
  }

  @Test
  void everyFeatureHasARowAndASectionAndAChangedOneHasTwo() {
    String page = told("parts/bracket.3mf").page();

    assertThat(count(page, "<tr data-outcome=\"left\">")).isEqualTo(4);
    assertThat(count(page, "<tr data-outcome=\"planned\">")).isEqualTo(3);
    assertThat(count(page, "<article id=\"f-B[1-7]\"")).isEqualTo(7);
    assertThat(count(page, "<svg class=\"section\"")).isEqualTo(4 + 2 * 3);
    assertThat(count(page, "class=\"hangs\" d=")).as("crowns before").isEqualTo(3);
    assertThat(count(page, "class=\"fresh\" d=")).as("roofs after").isEqualTo(3);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "parts/hinge.3mf",
        "bore/low-roof-d12.3mf",
        "build/several-ways-up.3mf",
        "build/no-bore.3mf",
        "broken/truncated.3mf",
        "broken/open-mesh.3mf"
      })
  void thePageAsksForNothingFromElsewhere(String fixture) {
    // the library in it names pages in its comments; that nothing is loaded is tested in a browser
    String page =
        told(fixture).page().replaceAll("(?s)<script type=\"text/plain\".*?</script>", "");

    assertThat(page).doesNotContain("http:", "https:", "//cdn", "@import", "url(");
    assertThat(count(page, "(src|href)=\"(?!data:|#)")).isZero();
    assertThat(page).as("every place of the template is filled").doesNotContainPattern("@[a-z]+@");
  }

  @Test
  void textOfTheFileIsShownAndNotObeyed() {
    MeshSketch block =
        HoleBlock.ofHalfWidth(10)
            .ring(HoleBlock.Ring.round(4, 40, 0.1, 0))
            .ring(HoleBlock.Ring.round(4, 40, 0.1, 20))
            .through();
    byte[] file =
        new ModelSketch()
            .object(1, "&lt;img src=x onerror=alert(1)&gt; \u202eevil \u05d0", block)
            .item(1, Affine3.layingUp(new Vec3(0, 1, 0)))
            .packed()
            .bytes();
    Told told = told(Input.stream("a\"><script>alert(2)</script>", new ByteArrayInputStream(file)));

    assertThat(told.page())
        .contains("&lt;img src=x onerror=alert(1)&gt; \\u{202E}evil \u05d0")
        .contains("&lt;script&gt;alert(2)")
        .doesNotContain("<img src=x", "<script>alert", "\u202e");
    assertThat(MarkdownReport.of(told.account())).contains("\\<img src=x").doesNotContain("\u202e");
    assertThat(PlainReport.of(told.account())).doesNotContain("\u202e");
  }

  @Test
  void allFormatsNameTheSameFeaturesReasonsAndRemedies() {
    Told told = told("bore/no-roof-d16.3mf");
    String why = "less than the least roof of 1.20 mm";
    String remedy = "thicken the part above";

    assertThat(told.page()).contains("B1", why, remedy);
    assertThat(MarkdownReport.of(told.account())).contains("B1", why, remedy);
    assertThat(PlainReport.of(told.account())).contains("B1", why, remedy);
  }

  /** Reasons of reshapers that share a word must not share its remedy. */
  @Test
  void aBoreThatIsNotRoundIsToldHowItPrints() {
    assertThat(PlainReport.of(told("truth/d-shape-0.3mf").account()))
        .contains("the round wall covers only 276 of 360 degrees", "Print it with support")
        .doesNotContain("ease the edge");
  }

  @Test
  void aRejectedFileIsExplained() {
    Told told = told("broken/truncated.3mf");

    assertThat(told.page()).contains("Nothing was done: ", "level-error");
  }

  @Test
  void theSameResultGivesTheSameBytes() {
    assertThat(told("parts/clamp.3mf").page()).isEqualTo(told("parts/clamp.3mf").page());
  }

  @Test
  void aTemplateIsFilledOnceAndNotTwice() {
    assertThat(Look.fill("@media x @a@ b@c.d", Map.of("a", "@a@"))).isEqualTo("@media x @a@ b@c.d");
  }
}

package gable.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gable.fixture.Fixtures;
import gable.pipeline.FileResult;
import gable.pipeline.Gable;
import gable.pipeline.Input;
import gable.pipeline.Observer;
import gable.pipeline.Settings;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;

/**
 * Pictures, read by the image reader of the Java platform. Colours are decisions of this project.
 */
class PicturesTest {

  private static List<Shape> shapes(Input input) {
    Shapes shapes = new Shapes(Observer.NONE);
    FileResult result = Gable.installed().inspect(input, Settings.usual(), shapes);
    return shapes.of(result);
  }

  private static List<Shape> fixture(String name) {
    byte[] bytes = Optional.ofNullable(Fixtures.all().get(name)).orElseThrow();
    return shapes(Input.stream(name, new ByteArrayInputStream(bytes)));
  }

  private static BufferedImage image(byte[] png) throws IOException {
    return Optional.ofNullable(ImageIO.read(new ByteArrayInputStream(png))).orElseThrow();
  }

  /** Orange has much more red than blue; plain facets and paper are nearly grey. */
  private static long orange(BufferedImage image) {
    long count = 0;
    for (int y = 0; y < image.getHeight(); y++) {
      for (int x = 0; x < image.getWidth(); x++) {
        int rgb = image.getRGB(x, y);
        count += (rgb >> 16 & 0xFF) - (rgb & 0xFF) > 60 ? 1 : 0;
      }
    }
    return count;
  }

  @Test
  void aRoofShowsInColourOnlyInThePictureAfterTheRun() throws IOException {
    Pictures pictures = Pictures.of(fixture("bore/through-d8.3mf"));

    BufferedImage before = image(pictures.before());
    BufferedImage after = image(pictures.after());

    assertThat(before.getWidth()).isEqualTo(Pictures.WIDTH);
    assertThat(before.getHeight()).isEqualTo(Pictures.HEIGHT);
    assertThat(orange(before)).isZero();
    assertThat(orange(after)).isPositive();
  }

  @Test
  void thePartFillsThePictureAndLeavesAMargin() throws IOException {
    BufferedImage image = image(Pictures.of(fixture("bore/through-d8.3mf")).before());
    int paper = image.getRGB(0, 0);
    int middle = image.getRGB(image.getWidth() / 2, image.getHeight() / 4);

    assertThat(middle).isNotEqualTo(paper);
    for (int x = 0; x < image.getWidth(); x++) {
      assertThat(image.getRGB(x, 2)).isEqualTo(paper);
    }
  }

  @Test
  void theSameSurfacesGiveTheSameBytes() {
    assertThat(Pictures.of(fixture("build/several-ways-up.3mf")).after())
        .isEqualTo(Pictures.of(fixture("build/several-ways-up.3mf")).after());
  }

  @Test
  void anOpenMeshHasAPictureToo() throws IOException {
    List<Shape> shapes = fixture("build/two-objects-one-open.3mf");

    assertThat(shapes).hasSize(2);
    assertThat(image(Pictures.of(shapes).before()).getWidth()).isEqualTo(Pictures.WIDTH);
  }

  @Test
  void nothingOnThePlateGivesEmptyPaper() throws IOException {
    BufferedImage image = image(Pictures.of(List.of()).before());

    assertThat(image.getRGB(180, 135)).isEqualTo(image.getRGB(0, 0));
  }

  @Test
  void overhangOfABlockWithARoundBoreIsThatOfItsCrown() {
    List<Shape> shapes = shapes(Input.file(Path.of("fixtures/bore/through-d8.3mf")));

    Overhang overhang = Overhang.of(shapes, Settings.usual());

    // 40 sides of 2 r sin(4.5 degrees), r = 4: facets whose normals lie within 45 degrees of
    // straight up, nine or ten of them (a facet at 45 degrees is at the limit); length 20 (derived)
    double side = 2 * 4 * Math.sin(Math.PI / 40) * 20;
    assertThat(overhang.before() / side).isCloseTo(9, within(1e-3));
    assertThat(overhang.after()).isZero();
  }
}

package gable.opc;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.SplittableRandom;
import java.util.zip.Deflater;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The JDK's deflater at a known level makes what the level is to be told from. */
class EffortTest {

  @ParameterizedTest(name = "{0} bytes deflated at level {1}: level {2}")
  @CsvSource({
    "3000, 1, 1",
    "3000, 6, 6",
    "400000, 1, 1",
    "400000, 9, 6",
    "5000000, 1, 1",
    "5000000, 2, 1",
    "5000000, 6, 6",
    "5000000, 9, 6"
  })
  void tellsTheLevelFromTheSize(int size, int level, int expected) {
    byte[] bytes = model(size);
    assertThat(Effort.level(PartContent.of(bytes), deflated(bytes, level) / size))
        .isEqualTo(expected);
  }

  private static double deflated(byte[] bytes, int level) {
    Deflater deflater = new Deflater(level, true);
    deflater.setInput(bytes);
    deflater.finish();
    int count = deflater.deflate(new byte[2 * bytes.length + 100]);
    deflater.end();
    return count;
  }

  /** Text like a model part: vertices in the first third, then triangles. */
  private static byte[] model(int size) {
    SplittableRandom random = new SplittableRandom(size);
    StringBuilder text = new StringBuilder(size + 80);
    while (text.length() < size / 3) {
      text.append("<vertex x=\"").append(random.nextInt(100_000) / 1000.0);
      text.append("\" y=\"").append(random.nextInt(100_000) / 1000.0).append("\" z=\"0\"/>\n");
    }
    for (int k = 0; text.length() < size; k++) {
      text.append("<triangle v1=\"").append(k).append("\" v2=\"").append(k + 1);
      text.append("\" v3=\"").append(k + random.nextInt(200)).append("\"/>\n");
    }
    text.setLength(size);
    return text.toString().getBytes(StandardCharsets.US_ASCII);
  }
}

package gable.threemf;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.Random;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The usual forms of elements; the reference for numbers is the JDK's own reader of decimals. */
class ListCursorTest {

  private static final String ROOM = " ".repeat(80);

  private static ListCursor cursor(String text) {
    byte[] bytes = (text + ROOM).getBytes(StandardCharsets.US_ASCII);
    return new ListCursor(bytes, 0, bytes.length);
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3})
  void readsUsualVerticesAsTheJdkReadsTheirNumbers(long seed) {
    Random random = new Random(seed);
    double[] point = new double[3];
    for (int round = 0; round < 2000; round++) {
      String[] n = {number(random), number(random), number(random)};
      ListCursor cursor = cursor(" x=\"" + n[0] + "\" y=\"" + n[1] + "\" z=\"" + n[2] + "\"/>");
      assertThat(cursor.usualVertex(point)).as(String.join(" ", n)).isTrue();
      for (int axis = 0; axis < 3; axis++) {
        assertThat(point[axis]).as(n[axis]).isEqualTo(Double.parseDouble(n[axis]));
      }
      assertThat(cursor.space()).isTrue();
    }
  }

  /** A decimal of at most fifteen digits, in plain notation. */
  private static String number(Random random) {
    long digits = (long) (random.nextDouble() * Math.pow(10, 1 + random.nextInt(15)));
    BigDecimal value = BigDecimal.valueOf(digits, random.nextInt(14));
    String text = value.toPlainString();
    String sign = random.nextBoolean() ? "-" : "";
    return sign + (text.length() > 16 ? text.substring(0, 16) : text);
  }

  @ParameterizedTest(name = "{0}")
  @ValueSource(
      strings = {
        " x=\"1\" y=\"2\" z=\"1e3\"/>",
        " x=\"1\" y=\"2\" z=\"3.\"/>",
        " x=\"1\" y=\"2\" z=\"\"/>",
        " x=\"1\" y=\"2\" z=\"-\"/>",
        " x=\"1\" y=\"2\" z=\"+3\"/>",
        " x=\"1\" y=\"2\" z=\"1.2.3\"/>",
        " x=\"1\" y=\"2\" z=\"1234567890123456\"/>",
        " x=\"1\" z=\"2\" y=\"3\"/>",
        " x='1' y=\"2\" z=\"3\"/>",
        " x=\"1\" y=\"2\" z=\"3\" />",
        "  x=\"1\" y=\"2\" z=\"3\"/>",
        " x=\"1\" y=\"2\" z=\"3\" w=\"4\"/>",
        " x=\"1\" y=\"2\" z=\"NaN\"/>"
      })
  void takesNothingOfAnUnusualVertex(String text) {
    ListCursor cursor = cursor(text);
    assertThat(cursor.usualVertex(new double[3])).isFalse();
    assertThat(cursor.at()).isZero();
  }

  @Test
  void readsAUsualTriangle() {
    int[] corners = new int[3];
    ListCursor cursor = cursor(" v1=\"0\" v2=\"123456789\" v3=\"42\"/>\n<");
    assertThat(cursor.usualTriangle(corners)).isTrue();
    assertThat(corners).containsExactly(0, 123456789, 42);
    assertThat(cursor.peek()).isEqualTo('\n');
  }

  @ParameterizedTest(name = "{0}")
  @ValueSource(
      strings = {
        " v1=\"0\" v2=\"1\" v3=\"2\" pid=\"3\"/>",
        " v1=\"0\" v2=\"1\" v3=\"1234567890\"/>",
        " v1=\"0\" v2=\"1\" v3=\"-2\"/>",
        " v1=\"0\" v2=\"1\" v3=\"\"/>",
        " v1=\"0\" v2=\"1\" v3='2'/>",
        " v1=\"0\" v3=\"1\" v2=\"2\"/>",
        " v1=\"0\" v2=\"1\" v3=\"2\" />",
        " v1=\"0\" v2=\"1\" v3=\"2\"></triangle>"
      })
  void takesNothingOfAnUnusualTriangle(String text) {
    ListCursor cursor = cursor(text);
    assertThat(cursor.usualTriangle(new int[3])).isFalse();
    assertThat(cursor.at()).isZero();
  }

  @Test
  @DisplayName("near the end of the text the usual way steps back instead of reading beyond it")
  void stepsBackNearTheEnd() {
    byte[] bytes = " v1=\"0\" v2=\"1\" v3=\"2\"/>".getBytes(StandardCharsets.US_ASCII);
    assertThat(new ListCursor(bytes, 0, bytes.length).usualTriangle(new int[3])).isFalse();
  }
}

package gable.threemf;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Source of the pattern: 3MF core specification 1.4, appendix B.1, ST_Number. */
class NumberTextTest {

  private static double both(String literal) {
    byte[] bytes = (literal + '"').getBytes(StandardCharsets.UTF_8);
    double fast = new ListCursor(bytes, 0, bytes.length).number('"');
    double general = NumberText.number(literal);
    assertThat(Double.doubleToLongBits(fast))
        .as("fast and general way, " + literal)
        .isEqualTo(Double.doubleToLongBits(general));
    return general;
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "0",
        "-0",
        "+1",
        ".5",
        "-.5",
        "1.5",
        "+1E+2",
        ".1e3",
        "80000E-5",
        "1e-400",
        "007",
        "9007199254740993",
        "123456789012345678",
        "0.000000000000000001",
        "179769313486231570000000000000000",
        "5e-324"
      })
  void takesWhatTheSchemaTakesWithTheValueOfJava(String literal) {
    assertThat(both(literal)).isEqualTo(Double.parseDouble(literal));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "-",
        "+",
        ".",
        "1.",
        "1,5",
        "1d",
        "0x10",
        "NaN",
        "INF",
        "Infinity",
        "1e",
        "1e+",
        "--1",
        "1 2",
        "1e999",
        "e5",
        "1.2.3",
        "٣"
      })
  void refusesWhatTheSchemaRefusesAndWhatIsNotFinite(String literal) {
    assertThat(both(literal)).isNaN();
  }

  @Test
  void refusesLiteralsOfMoreThan64Characters() {
    assertThat(both("0".repeat(64))).isZero();
    assertThat(both("0".repeat(65))).isNaN();
  }

  @Test
  void roundsLikeJavaOnRandomLiterals() {
    Random random = new Random(20240601);
    for (int i = 0; i < 40_000; i++) {
      int digits = random.nextInt(20);
      String literal = String.format(Locale.ROOT, "%." + digits + "f", value(random));
      if (literal.length() <= NumberText.LONGEST) {
        assertThat(both(literal)).as(literal).isEqualTo(Double.parseDouble(literal));
      }
    }
  }

  @Test
  void roundsLikeJavaNearTheMiddleBetweenTwoDoubles() {
    Random random = new Random(20240602);
    for (int i = 0; i < 8_000; i++) {
      double value = 1 + random.nextInt(9000) + random.nextDouble();
      BigDecimal middle = new BigDecimal(value).add(new BigDecimal(Math.ulp(value) / 2));
      for (int digits = 12; digits <= 17; digits++) {
        String literal = middle.setScale(digits, RoundingMode.HALF_EVEN).toPlainString();
        assertThat(both(literal)).as(literal).isEqualTo(Double.parseDouble(literal));
      }
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "9007199254740993", "9007199254740992.5", "9007199254740993.5", "18014398509481985",
        "4503599627370496.5", "4503599627370497.5", "144115188075855873", "1152921504606846.97",
        "999999999999999999", "0.999999999999999999", "0.99999999999999999", "1.00000000000000011",
        "1.0000000000000001110", "8.99999999999999911", "0.1000000000000000055"
      })
  void roundsLikeJavaAtTiesAndAtTheEndsOfBinades(String literal) {
    assertThat(both(literal)).isEqualTo(Double.parseDouble(literal));
  }

  private static double value(Random random) {
    return (random.nextDouble() - 0.5) * Math.pow(10, random.nextInt(12) - 4);
  }

  @Test
  void readsIndicesWithoutWrappingAround() {
    assertThat(NumberText.index("0")).isZero();
    assertThat(NumberText.index(" +7 ")).isEqualTo(7);
    assertThat(NumberText.index("2147483647")).isEqualTo(Integer.MAX_VALUE);
    assertThat(NumberText.index("2147483648")).isEqualTo(-1);
    assertThat(NumberText.index("4294967297")).isEqualTo(-1);
    assertThat(NumberText.index("18446744073709551617")).isEqualTo(-1);
    assertThat(NumberText.index("-1")).isEqualTo(-1);
    assertThat(NumberText.index("1.0")).isEqualTo(-1);
    assertThat(NumberText.index("")).isEqualTo(-1);
  }
}

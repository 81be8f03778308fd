package gable.pairs;

import static org.assertj.core.api.Assertions.assertThat;

import gable.geom.Affine3;
import gable.geom.Vec3;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Laws: what belongs together depends neither on where the parts are nor on their order. */
class PairingPropertyTest {

  private static final double SLOPE = Math.PI / 4;

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
  void motionsOfThePartsChangeNothing(int seed) {
    Random random = new Random(seed);
    Set<String> asDrawn = names(Pairing.of(parts(seed, new Random(99)), SLOPE));
    assertThat(asDrawn).isNotEmpty();
    for (int k = 0; k < 3; k++) {
      assertThat(names(Pairing.of(parts(seed, random), SLOPE))).isEqualTo(asDrawn);
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
  void theOrderOfThePartsChangesNothing(int seed) {
    List<Part> parts = parts(seed, new Random(seed));
    Set<String> inOrder = places(Pairing.of(parts, SLOPE), parts);
    for (int k = 0; k < 4; k++) {
      List<Part> mixed = new ArrayList<>(parts);
      Collections.shuffle(mixed, new Random(10 * seed + k));
      assertThat(places(Pairing.of(mixed, SLOPE), mixed)).isEqualTo(inOrder);
    }
  }

  /** The pairs of a reflected build are none unless the pattern is its own mirror. */
  @ParameterizedTest(name = "seed {0}")
  @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
  void aReflectionOfOnePartLeavesNoPattern(int seed) {
    Random random = new Random(seed);
    double[][] points = scalene(random);
    Sketch pins = Sketch.lower();
    Sketch bores = Sketch.upper();
    for (double[] p : points) {
      pins.pin(p[0], p[1], 5, 7);
      bores.bore(-p[0], p[1], 5.2, 8);
    }
    List<Part> parts = List.of(pins.part(), bores.moved(Sketch.motion(random)).part(1));

    assertThat(Pairing.of(parts, SLOPE).pairs()).isEmpty();
  }

  /** Three places whose sides differ by more than twice the play, all near the middle. */
  private static double[][] scalene(Random random) {
    double lean = random.nextDouble() * 4;
    return new double[][] {{-15, -8}, {12 + lean, -10}, {-5, 9 + lean}};
  }

  /** A base with a pattern and a single pin, two parts that go on it, and one that does not. */
  private static List<Part> parts(int seed, Random random) {
    Random drawing = new Random(seed);
    Sketch base = Sketch.lower();
    Sketch lid = Sketch.upper();
    int count = 2 + drawing.nextInt(3);
    for (int k = 0; k < count; k++) {
      double x = -30 + 20 * k + 4 * drawing.nextDouble();
      double y = 30 * drawing.nextDouble() - 15;
      base.pin(x, y, 5, 7);
      lid.bore(x, y, 5.3, 8);
    }
    base.pin(40, 40, 8, 10);
    Sketch cap = Sketch.upper().bore(3, 4, 8.3, 11);
    Sketch stranger = Sketch.lower().pin(0, 0, 11, 12);
    lid.through(40, 40, 12.5);
    return List.of(
        base.moved(Sketch.motion(random)).part(0),
        lid.moved(Sketch.motion(random)).part(0),
        cap.moved(Sketch.motion(random)).part(0),
        stranger.moved(Sketch.motion(random)).part(1));
  }

  private static Set<String> names(Pairing result) {
    Set<String> names = new TreeSet<>();
    result.pairs().forEach(pair -> names.add(pair.pin() + pair.pinHalf().id() + pair.bore()));
    return names;
  }

  /** Pairs by the places of their features, whatever the numbers of the parts. */
  private static Set<String> places(Pairing result, List<Part> parts) {
    Set<String> names = new TreeSet<>();
    for (Pair pair : result.pairs()) {
      assertThat(parts.get(pair.pin().part()).pins()).contains(pair.pinHalf());
      names.add(word(pair.pinHalf().axis().origin()) + word(pair.boreHalf().axis().origin()));
    }
    return names;
  }

  private static String word(Vec3 point) {
    return Math.round(1000 * point.x()) + "," + Math.round(1000 * point.y()) + " ";
  }

  /** Kept beside the laws: the identity is a motion, too. */
  @ParameterizedTest(name = "seed {0}")
  @ValueSource(ints = {1, 2, 3, 4, 5})
  void thePlaceOfAnotherFileIsNoPosition(int seed) {
    List<Part> parts = parts(seed, new Random(seed));
    assertThat(Pairing.of(parts, SLOPE).pairs())
        .allSatisfy(pair -> assertThat(pair.by()).isNotEqualTo(Evidence.POSITION));
    assertThat(parts).allSatisfy(part -> assertThat(part.places()).contains(Affine3.IDENTITY));
  }
}

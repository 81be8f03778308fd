package gable.pairs;

import static org.assertj.core.api.Assertions.assertThat;

import gable.geom.Affine3;
import gable.geom.Vec3;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Which pin belongs to which bore. Clearances are those of common practice for printed parts (no
 * single source): press fit −0.1 to printed in place 1.2 mm; clearance holes those of ISO 273.
 */
class PairingTest {

  private static final double SLOPE = Math.PI / 4;
  private static final Affine3 FAR = shift(200, 0, 0);

  @Test
  void theOnlyBoreThatFitsTakesThePin() {
    Pairing result =
        pairing(
            Sketch.lower().pin(5, 5, 6, 8),
            Sketch.upper().bore(-10, 3, 6.3, 9).bore(10, 3, 9, 9).moved(FAR));

    assertThat(words(result)).containsExactly("P1 B1 SIZE");
    assertThat(result.pairs().get(0).clearance()).isCloseTo(0.3, within(1e-9));
    assertThat(result.doubts()).isEmpty();
  }

  @Test
  void theWindowOfClearancesEndsAtAPressFitAndAtALooseOne() {
    assertThat(pairing(1, -0.1).pairs()).hasSize(1);
    assertThat(pairing(1, -0.15).pairs()).isEmpty();
    assertThat(pairing(8, 0.8).pairs()).hasSize(1);
    assertThat(pairing(8, 0.85).pairs()).isEmpty();
    // 0.2 of the diameter is the step to the next size of parallel pins (ISO 2338)
    assertThat(pairing(2.5, 0.48).pairs()).hasSize(1);
    assertThat(pairing(2.5, 0.55).pairs()).isEmpty();
  }

  private static Pairing pairing(double diameter, double clearance) {
    return pairing(
        Sketch.lower().pin(0, 0, diameter, diameter),
        Sketch.upper().bore(0, 0, diameter + clearance, diameter + 1).moved(FAR));
  }

  @Test
  void aBoreThatIsTooShallowTakesNoPin() {
    assertThat(shallow(8.0).pairs()).hasSize(1);
    assertThat(shallow(7.8).pairs()).isEmpty();
  }

  private static Pairing shallow(double depth) {
    return pairing(
        Sketch.lower().pin(0, 0, 6, 8), Sketch.upper().bore(0, 0, 6.3, depth).moved(FAR));
  }

  @Test
  void aPinMayStandOutOfABoreThatGoesThrough() {
    Pairing result =
        pairing(Sketch.lower().pin(0, 0, 6, 30), Sketch.upper().through(0, 0, 6.3).moved(FAR));

    assertThat(words(result)).containsExactly("P1 B1 SIZE");
  }

  @Test
  void onePinAndTwoBoresAlikeIsADoubt() {
    Pairing result =
        pairing(
            Sketch.lower().pin(0, 0, 6, 8),
            Sketch.upper().bore(-10, 0, 6.3, 9).bore(10, 0, 6.3, 9).moved(FAR));

    assertThat(result.pairs()).isEmpty();
    assertThat(result.doubts())
        .singleElement()
        .satisfies(
            d -> {
              assertThat(d.kind()).isEqualTo(Doubt.Kind.SEVERAL);
              assertThat(d.bores()).hasSize(2);
            });
  }

  @Test
  void positionTellsWhichOfTwoBoresAlikeItIs() {
    Pairing result =
        pairing(
            Sketch.lower().pin(10, 0, 6, 8),
            Sketch.upper().bore(-10, 0, 6.3, 9).bore(10, 0, 6.3, 9));

    assertThat(words(result)).containsExactly("P1 B2 POSITION");
  }

  @Test
  void positionsOfTwoFilesSayNothing() {
    Pairing result =
        Pairing.of(
            List.of(
                Sketch.lower().pin(10, 0, 6, 8).part(0),
                Sketch.upper().bore(-10, 0, 6.3, 9).bore(10, 0, 6.3, 9).part(1)),
            SLOPE);

    assertThat(result.pairs()).isEmpty();
    assertThat(result.doubts()).hasSize(1);
  }

  @Test
  void spacingTellsWhichOfManyBoresTheyAre() {
    Pairing result =
        pairing(
            Sketch.lower().pin(0, 0, 6, 8).pin(25, 0, 6, 8),
            Sketch.upper()
                .bore(0, 0, 6.3, 9)
                .bore(18, 0, 6.3, 9)
                .bore(18, 25, 6.3, 9)
                .bore(-20, 25, 6.3, 9)
                .moved(FAR));

    assertThat(words(result)).containsExactly("P1 B2 PATTERN", "P2 B3 PATTERN");
  }

  @Test
  void anotherPitchIsNoPattern() {
    Pairing result =
        pairing(
            Sketch.lower().pin(0, 0, 6, 8).pin(25, 0, 6, 8),
            Sketch.upper().bore(0, 0, 6.3, 9).bore(26, 0, 6.3, 9).moved(FAR));

    assertThat(result.pairs()).isEmpty();
    assertThat(result.doubts().get(0).kind()).isEqualTo(Doubt.Kind.SPACING);
  }

  @Test
  void thePitchMayBeOffByThePlayOfBothPins() {
    Pairing result =
        pairing(
            Sketch.lower().pin(0, 0, 6, 8).pin(25, 0, 6, 8),
            Sketch.upper().bore(0, 0, 6.3, 9).bore(25.25, 0, 6.3, 9).moved(FAR));

    assertThat(result.pairs()).hasSize(2);
  }

  @Test
  void aMirroredPatternIsNone() {
    Sketch pins = Sketch.lower().pin(-18, -10, 6, 8).pin(14, -12, 6, 8).pin(-6, 11, 6, 8);
    Sketch mirror = Sketch.upper().bore(18, -10, 6.3, 9).bore(-14, -12, 6.3, 9).bore(6, 11, 6.3, 9);
    Sketch same = Sketch.upper().bore(-18, -10, 6.3, 9).bore(14, -12, 6.3, 9).bore(-6, 11, 6.3, 9);

    assertThat(pairing(pins, mirror.moved(FAR)).pairs()).isEmpty();
    assertThat(words(pairing(pins, same.moved(FAR))))
        .containsExactly("P1 B1 PATTERN", "P2 B2 PATTERN", "P3 B3 PATTERN");
  }

  @Test
  void aThirdPinThatWouldStandInSolidForbidsTheOthers() {
    Sketch pins = Sketch.lower().pin(-18, -10, 6, 8).pin(14, -12, 6, 8).pin(-6, 5, 6, 8);
    Sketch two = Sketch.upper().bore(-18, -10, 6.3, 9).bore(14, -12, 6.3, 9);

    assertThat(pairing(pins, two.moved(FAR)).pairs()).isEmpty();
  }

  @Test
  void pinsOfOneLengthMayChangePlacesAndOthersMayNot() {
    Sketch bores = Sketch.upper().bore(0, 0, 6.3, 12).bore(25, 0, 6.3, 12).moved(FAR);

    Pairing alike = pairing(Sketch.lower().pin(0, 0, 6, 8).pin(25, 0, 6, 8), bores);
    Pairing unlike = pairing(Sketch.lower().pin(0, 0, 6, 8).pin(25, 0, 6, 10), bores);

    assertThat(words(alike)).containsExactly("P1 B1 PATTERN", "P2 B2 PATTERN");
    assertThat(unlike.pairs()).isEmpty();
    assertThat(unlike.doubts().get(0).kind()).isEqualTo(Doubt.Kind.SEVERAL_WAYS);
  }

  @Test
  void depthTellsWhichWayRoundItIs() {
    Sketch bores = Sketch.upper().bore(0, 0, 6.3, 9).bore(25, 0, 6.3, 12).moved(FAR);

    Pairing result = pairing(Sketch.lower().pin(0, 0, 6, 11).pin(25, 0, 6, 8), bores);

    assertThat(words(result)).containsExactly("P1 B2 PATTERN", "P2 B1 PATTERN");
  }

  @Test
  void asManyPegsAsBoresFillThemAndFewerDoNot() {
    Sketch plate = Sketch.upper().bore(0, 0, 6.3, 9).bore(25, 0, 6.3, 9).bore(0, 30, 6.3, 9);
    Sketch peg = Sketch.lower().pin(0, 0, 6, 8).moved(FAR);
    Affine3 first = Affine3.IDENTITY;

    Pairing three =
        Pairing.of(
            List.of(peg.part(0, first, shift(0, 99, 0), shift(0, 198, 0)), plate.part()), SLOPE);
    Pairing two = Pairing.of(List.of(peg.part(0, first, shift(0, 99, 0)), plate.part()), SLOPE);
    Pairing ofTheirOwn = pairing(peg, peg, peg, plate);

    assertThat(words(three)).containsExactly("P1 B1 SIZE", "P1 B2 SIZE", "P1 B3 SIZE");
    assertThat(two.pairs()).isEmpty();
    assertThat(two.doubts()).hasSize(1);
    assertThat(ofTheirOwn.pairs()).hasSize(3);
  }

  @Test
  void aPartDoesNotGoIntoItselfButIntoItsCopy() {
    Sketch brick = Sketch.lower().pin(0, 0, 6, 8).bore(20, 0, 6.3, 9);

    assertThat(Pairing.of(List.of(brick.part()), SLOPE).pairs()).isEmpty();
    assertThat(words(Pairing.of(List.of(brick.part(0, Affine3.IDENTITY, shift(0, 200, 0))), SLOPE)))
        .containsExactly("P1 B1 PATTERN");
  }

  @Test
  void aClearanceHoleOfTheScrewsOwnSizeIsADoubt() {
    Sketch pin = Sketch.lower().pin(0, 0, 5, 8);

    Pairing medium = pairing(pin, Sketch.upper().through(9, 0, 5.5).moved(FAR));
    Pairing blind = pairing(pin, Sketch.upper().bore(9, 0, 5.5, 9).moved(FAR));

    assertThat(medium.pairs()).isEmpty();
    assertThat(medium.doubts().get(0).kind()).isEqualTo(Doubt.Kind.SCREW);
    assertThat(blind.pairs()).hasSize(1);
  }

  @Test
  void aWebBelowALyingPinComesWithTheMotion() {
    // the parts lie on their backs: pins along +y, bores that open towards -y
    Affine3 lying = new Affine3(1, 0, 0, 0, 0, -1, 0, 1, 0, 0, 0, 50);
    Sketch pins = Sketch.lower().pin(-18, -10, 6, 8).pin(14, -12, 6, 8).pin(-6, 11, 6, 8);
    Sketch bores = Sketch.upper().bore(-18, -10, 6.3, 9).bore(14, -12, 6.3, 9).bore(-6, 11, 6.3, 9);
    // the second part is turned by 90 degrees about the pins' direction besides
    Affine3 turned = new Affine3(0, 0, -1, 0, 1, 0, 1, 0, 0, 200, 0, 0);

    Pairing result = pairing(pins.moved(lying), bores.moved(lying).moved(turned));

    assertThat(result.pairs()).hasSize(3);
    assertThat(result.pairs())
        .allSatisfy(
            pair -> {
              Pair.Webs webs = pair.webs().orElseThrow();
              assertThat(webs.ofPin().distance(new Vec3(0, 0, -1))).isLessThan(1e-9);
              // down goes where the turn takes it
              assertThat(webs.ofBore().distance(new Vec3(-1, 0, 0))).isLessThan(1e-3);
            });
  }

  @Test
  void uprightPinsHaveNoWeb() {
    Pairing result =
        pairing(Sketch.lower().pin(0, 0, 6, 8), Sketch.upper().bore(0, 0, 6.3, 9).moved(FAR));

    assertThat(result.pairs().get(0).webs()).isEmpty();
  }

  @Test
  void ofTwoWaysThatWithTheWebBelowIsTaken() {
    Affine3 lying = new Affine3(1, 0, 0, 0, 0, -1, 0, 1, 0, 0, 0, 50);
    Affine3 overHead = new Affine3(-1, 0, 0, 0, 1, 0, 0, 0, -1, 200, 0, 100);

    Pairing result =
        pairing(
            Sketch.lower().pin(-10, 0, 6, 8).pin(10, 0, 6, 8).moved(lying),
            Sketch.upper().bore(-10, 0, 6.3, 9).bore(10, 0, 6.3, 9).moved(lying).moved(overHead));

    assertThat(result.pairs())
        .hasSize(2)
        .allSatisfy(pair -> assertThat(pair.webs().orElseThrow().ofBore().z()).isLessThan(-0.999));
  }

  @Test
  void manyPinsInManyBoresTakeBoundedWork() {
    Sketch pins = Sketch.lower();
    Sketch bores = Sketch.upper();
    Random random = new Random(5);
    for (int k = 0; k < 120; k++) {
      pins.pin(random.nextInt(90) - 45, random.nextInt(90) - 45, 2, 3);
      bores.bore(random.nextInt(90) - 45, random.nextInt(90) - 45, 2.2, 4);
    }

    Pairing result = pairing(pins, bores.moved(FAR));

    assertThat(result.pairs()).isEmpty();
    assertThat(result.doubts()).isNotEmpty();
  }

  private static Pairing pairing(Sketch... sketches) {
    return Pairing.of(java.util.Arrays.stream(sketches).map(Sketch::part).toList(), SLOPE);
  }

  private static List<String> words(Pairing result) {
    return result.pairs().stream()
        .map(pair -> pair.pinHalf().id() + " " + pair.boreHalf().ids().get(0) + " " + pair.by())
        .toList();
  }

  private static Affine3 shift(double x, double y, double z) {
    return new Affine3(1, 0, 0, 0, 1, 0, 0, 0, 1, x, y, z);
  }

  private static org.assertj.core.data.Offset<Double> within(double most) {
    return org.assertj.core.data.Offset.offset(most);
  }
}

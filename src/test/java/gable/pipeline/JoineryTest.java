package gable.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import gable.feature.Bore;
import gable.feature.Feature;
import gable.feature.Partner;
import gable.feature.Pin;
import gable.feature.Surroundings;
import gable.fixture.HoleBlock;
import gable.fixture.HoleBlock.Ring;
import gable.fixture.Lathe;
import gable.fixture.MeshSketch;
import gable.fixture.ModelSketch;
import gable.geom.Affine3;
import gable.geom.Vec3;
import gable.mesh.Mesh;
import gable.mesh.MeshEdit;
import gable.pairs.Evidence;
import gable.plan.LeftAlone;
import gable.plan.Limits;
import gable.plan.Proposal;
import gable.plan.Reason;
import gable.plan.Reshaper;
import gable.reshaper.LeadIn;
import gable.reshaper.TipChamfer;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;

/** From features to joints, and what the joints do to what becomes of both halves. */
class JoineryTest {

  /** Takes w to +y and v to +z. */
  private static final Affine3 LYING = new Affine3(-1, 0, 0, 0, 0, 1, 0, 1, 0, 0, 0, 20);

  private static final Affine3 AS_IT_IS = Affine3.IDENTITY;

  /** Stands for one half of a joint with a web: changes a feature if a web is allowed there. */
  private record Half(String name, Reshaper like, Predicate<Feature> kind, double widest)
      implements Reshaper {
    @Override
    public Phase phase() {
      return Phase.SLOT;
    }

    @Override
    public String summary() {
      return "one half of a web for tests";
    }

    @Override
    public Optional<Proposal> propose(Feature feature, Surroundings around, Limits limits) {
      if (!kind.test(feature)) {
        return Optional.empty();
      }
      if (around.partner(feature).flatMap(Partner::web).isEmpty()) {
        return Optional.of(new LeftAlone(new Reason("no-web", "no web is allowed here")));
      }
      return feature.radius() > widest
          ? Optional.of(new LeftAlone(new Reason("too-wide", "there is no room for it")))
          : like.propose(feature, around, limits);
    }
  }

  private static Reshaper web(double widest) {
    return new Half("web", new TipChamfer(), Pin.class::isInstance, widest);
  }

  private static Reshaper slot(double widest) {
    return new Half("slot", new LeadIn(), Bore.class::isInstance, widest);
  }

  private static MeshSketch pin(double radius, double length) {
    return Lathe.ofSides(24, 0.1)
        .ring(-5, 12)
        .ring(0, 12)
        .ring(0, radius)
        .ring(length, radius)
        .sketch()
        .placed(LYING);
  }

  private static MeshSketch bore(double radius, double depth) {
    return HoleBlock.ofHalfWidth(14)
        .ring(Ring.round(radius, 32, 0.05, 0))
        .ring(Ring.round(radius, 32, 0.05, depth))
        .blind(depth + 6)
        .placed(LYING);
  }

  private static ModelSketch model() {
    return new ModelSketch()
        .object(1, "pin", pin(3, 8))
        .object(2, "bore", bore(3.15, 9))
        .item(1)
        .item(2, shift(60, 0, 0));
  }

  private static Affine3 shift(double x, double y, double z) {
    return new Affine3(1, 0, 0, 0, 1, 0, 0, 0, 1, x, y, z);
  }

  private static FileResult run(ModelSketch model, Settings settings, Reshaper... reshapers) {
    return new Gable(List.of(reshapers)).inspect(input(model), settings, Observer.NONE);
  }

  private static Input input(ModelSketch model) {
    return Input.stream("model", new ByteArrayInputStream(model.packed().bytes()));
  }

  /** Which reshapers changed which features: such as {@code 1.P1 web}. */
  private static List<String> made(FileResult result) {
    List<String> made = new ArrayList<>();
    for (ObjectResult object : result.objects()) {
      for (FeatureResult feature :
          object.fold(ObjectResult.Examined::features, skipped -> List.<FeatureResult>of())) {
        String id = object.place().featureId(feature.feature().id(), 0);
        feature.changes().stream()
            .filter(change -> change.outcome() == Outcome.RESHAPED)
            .forEach(change -> made.add(id + " " + change.by()));
      }
    }
    return made;
  }

  @Test
  void aPinAndABoreOfTwoObjectsAreAJoint() {
    FileResult result = run(model(), Settings.usual());

    assertThat(result.joints().pairs())
        .singleElement()
        .satisfies(
            joint -> {
              assertThat(joint.pin().ids()).containsExactly("1.P1");
              assertThat(joint.bore().ids()).containsExactly("2.B1");
              assertThat(joint.clearance())
                  .isCloseTo(0.3, org.assertj.core.api.Assertions.within(1e-4));
              assertThat(joint.by()).isEqualTo(Evidence.SIZE);
            });
  }

  @Test
  void aLeadInComesByItselfForHalvesOfJointsOnly() {
    ModelSketch joint = model();
    ModelSketch alone = new ModelSketch().object(2, "bore", bore(3.15, 9)).item(2);

    assertThat(made(run(joint, Settings.usual(), new LeadIn()))).containsExactly("2.B1 lead-in");
    assertThat(made(run(alone, Settings.usual(), new LeadIn()))).isEmpty();
    assertThat(made(run(alone, Settings.usual().withChoice(with("lead-in")), new LeadIn())))
        .containsExactly("B1 lead-in");
    assertThat(made(run(joint, Settings.usual().withChoice(without("lead-in")), new LeadIn())))
        .isEmpty();
  }

  private static Choice with(String name) {
    return new Choice(Set.of(), Set.of(), Set.of(name), Set.of());
  }

  private static Choice without(String name) {
    return new Choice(Set.of(), Set.of(), Set.of(), Set.of(name));
  }

  @Test
  void bothHalvesOfAWebAreMadeWhereBothCanBe() {
    assertThat(made(run(model(), Settings.usual(), web(9), slot(9))))
        .containsExactly("1.P1 web", "2.B1 slot");
  }

  @Test
  void aWebWithoutItsSlotIsTakenBack() {
    assertThat(made(run(model(), Settings.usual(), web(9), slot(1)))).isEmpty();
    assertThat(made(run(model(), Settings.usual(), web(9)))).isEmpty();
  }

  @Test
  void theHalfThatFailedKeepsItsReason() {
    FileResult result = run(model(), Settings.usual(), web(9), slot(1));

    assertThat(reasons(result)).containsExactly("no-web", "too-wide");
  }

  private static List<String> reasons(FileResult result) {
    return result.objects().stream()
        .flatMap(
            object ->
                object
                    .fold(ObjectResult.Examined::features, skipped -> List.<FeatureResult>of())
                    .stream())
        .flatMap(feature -> feature.changes().stream())
        .flatMap(change -> change.reason().stream())
        .map(Reason::code)
        .toList();
  }

  @Test
  void aSlotWithoutItsWebIsTakenBack() {
    assertThat(made(run(model(), Settings.usual(), web(1), slot(9)))).isEmpty();
  }

  @Test
  void aHalfThatWasSkippedTakesTheOtherWithIt() {
    Settings skipped =
        Settings.usual().withChoice(new Choice(Set.of(), Set.of("2.B1"), Set.of(), Set.of()));

    assertThat(made(run(model(), skipped, web(9), slot(9)))).isEmpty();
  }

  @Test
  void otherChangesStayWhenAWebIsTakenBack() {
    assertThat(made(run(model(), Settings.usual(), web(9), slot(1), new LeadIn())))
        .containsExactly("2.B1 lead-in");
  }

  @Test
  void oneSlotThatFailsTakesAllOfAPegThatIsDrawnOnce() {
    // two pegs of one object; the second bore is a little wider, and there is no room for its slot
    ModelSketch model =
        new ModelSketch()
            .object(1, "peg", pin(3, 8))
            .object(2, "one", bore(3.15, 9))
            .object(3, "other", bore(3.2, 9))
            .item(1)
            .item(1, shift(0, 0, 40))
            .item(2, shift(60, 0, 0))
            .item(3, shift(120, 0, 0));

    assertThat(run(model, Settings.usual()).joints().pairs()).hasSize(2);
    assertThat(made(run(model, Settings.usual(), web(9), slot(9))))
        .containsExactly("1.P1 web", "2.B1 slot", "3.B1 slot");
    assertThat(made(run(model, Settings.usual(), web(9), slot(3.17)))).isEmpty();
  }

  @Test
  void anUprightPairHasNoWeb() {
    Affine3 up = Affine3.layingUp(Vec3.Y);
    ModelSketch model =
        new ModelSketch()
            .object(1, "pin", pin(3, 8).placed(up))
            .object(2, "bore", bore(3.15, 9).placed(up))
            .item(1, shift(0, 0, 50))
            .item(2, shift(60, 0, 50));

    FileResult result = run(model, Settings.usual(), web(9), slot(9));

    assertThat(result.joints().pairs()).hasSize(1);
    assertThat(made(result)).isEmpty();
  }

  @Test
  void theObserverSeesEachObjectOnceAndAsItIsInTheEnd() {
    List<String> seen = Collections.synchronizedList(new ArrayList<>());
    Observer observer =
        new Observer() {
          @Override
          public void seen(ObjectResult result, Mesh mesh, MeshEdit edit) {
            seen.add(result.place().prefix() + " " + edit.isEmpty());
          }
        };

    FileResult result =
        new Gable(List.of(web(9), slot(1))).inspect(input(model()), Settings.usual(), observer);

    assertThat(made(result)).isEmpty();
    assertThat(seen).containsExactlyInAnyOrder("1. true", "2. true");
  }

  @Test
  void neitherThreadsNorTheOrderOfObjectsChangeWhatBecomesOfThem() {
    Reshaper[] all = {web(9), slot(9), new LeadIn()};
    ModelSketch turnedRound =
        new ModelSketch()
            .object(1, "bore", bore(3.15, 9))
            .object(2, "pin", pin(3, 8))
            .item(1, shift(60, 0, 0))
            .item(2);

    assertThat(bytes(model(), 4, all)).isEqualTo(bytes(model(), 1, all));
    assertThat(made(run(turnedRound, Settings.usual(), all)))
        .containsExactly("1.B1 lead-in", "1.B1 slot", "2.P1 web");
  }

  private static byte[] bytes(ModelSketch model, int threads, Reshaper... reshapers) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    new Gable(List.of(reshapers))
        .reshape(
            input(model), Output.stream(out), Settings.usual().withThreads(threads), Observer.NONE);
    return out.toByteArray();
  }

  @Test
  void positionsOfComponentsTellWhichBoreItIs() {
    ModelSketch model =
        new ModelSketch()
            .object(1, "pin", pin(3, 8))
            .object(2, "bore", bore(3.15, 9))
            .resource(
                "<object id=\"3\" type=\"model\"><components><component objectid=\"1\"/><component"
                    + " objectid=\"2\"/><component objectid=\"2\""
                    + ModelSketch.transform(shift(60, 0, 0))
                    + "/></components></object>")
            .item(3, AS_IT_IS);

    assertThat(run(model, Settings.usual()).joints().pairs())
        .singleElement()
        .satisfies(
            joint -> {
              assertThat(joint.by()).isEqualTo(Evidence.POSITION);
              assertThat(joint.bore().use()).isZero();
            });
  }

  @Test
  void twoFilesArePairedTogether() {
    ModelSketch pin = new ModelSketch().object(7, "pin", pin(3, 8)).item(7);
    ModelSketch bore = new ModelSketch().object(7, "bore", bore(3.15, 9)).item(7);

    PairsResult result =
        Gable.pairs(List.of(input(pin), input(bore)), Settings.usual(), Observer.NONE);

    assertThat(result.joints().pairs())
        .singleElement()
        .satisfies(
            joint -> {
              assertThat(joint.pin().file()).isZero();
              assertThat(joint.bore().file()).isEqualTo(1);
              assertThat(joint.by()).isEqualTo(Evidence.SIZE);
            });
  }
}

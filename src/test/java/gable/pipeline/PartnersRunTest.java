package gable.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import gable.fixture.HoleBlock;
import gable.fixture.HoleBlock.Ring;
import gable.fixture.Lathe;
import gable.fixture.MeshSketch;
import gable.fixture.ModelSketch;
import gable.geom.Affine3;
import gable.plan.Reason;
import gable.plan.Reshaper;
import gable.reshaper.GableRoof;
import gable.reshaper.Gusset;
import gable.reshaper.LeadIn;
import gable.reshaper.TipChamfer;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Joints whose halves are in two files: each is reshaped with the other as its partner. */
class PartnersRunTest {

  /** Takes w to +y and v to +z. */
  private static final Affine3 LYING = new Affine3(-1, 0, 0, 0, 0, 1, 0, 1, 0, 0, 0, 40);

  private static final Settings SETTINGS =
      Settings.usual().withChoice(new Choice(Set.of(), Set.of(), Set.of("gusset"), Set.of()));

  @TempDir Path folder;

  private static MeshSketch pin() {
    return Lathe.ofSides(24, 0.1)
        .ring(-5, 30)
        .ring(0, 30)
        .ring(0, 3)
        .ring(8, 3)
        .sketch()
        .placed(LYING);
  }

  private static MeshSketch bore(double half) {
    return HoleBlock.ofHalfWidth(half)
        .ring(Ring.round(3.15, 32, 0.05, 0))
        .ring(Ring.round(3.15, 32, 0.05, 9))
        .blind(15)
        .placed(LYING);
  }

  private Path file(String name, MeshSketch mesh) throws IOException {
    ModelSketch model = new ModelSketch().object(1, name, mesh).item(1);
    return Files.write(folder.resolve(name + ".3mf"), model.packed().bytes());
  }

  private static Gable gable(Path... partners) {
    List<Reshaper> all = List.of(new GableRoof(), new LeadIn(), new Gusset(), new TipChamfer());
    return new Gable(all).withPartners(List.of(partners));
  }

  private FileResult reshaped(Path file, String to, Path... partners) {
    return gable(partners).reshape(file, folder.resolve(to), SETTINGS);
  }

  private static Stream<Change> changes(FileResult result) {
    return result.objects().stream()
        .flatMap(
            each ->
                each.fold(ObjectResult.Examined::features, s -> List.<FeatureResult>of()).stream())
        .flatMap(feature -> feature.changes().stream());
  }

  private static Set<String> made(FileResult result) {
    return changes(result)
        .filter(change -> change.outcome() == Outcome.RESHAPED)
        .map(Change::by)
        .collect(Collectors.toSet());
  }

  private static List<String> why(FileResult result, String by) {
    return changes(result)
        .filter(change -> change.by().equals(by))
        .flatMap(change -> change.reason().stream())
        .map(Reason::code)
        .toList();
  }

  @Test
  void eachHalfKnowsTheOtherAndOnlyWithItsPartner() throws IOException {
    Path pin = file("pin", pin());
    Path bore = file("bore", bore(24));
    byte[] before = Files.readAllBytes(bore);

    FileResult ofPin = reshaped(pin, "pin-done.3mf", bore);
    FileResult ofBore = reshaped(bore, "bore-done.3mf", pin);

    assertThat(made(ofPin)).containsExactlyInAnyOrder("gusset", "tip");
    assertThat(made(ofBore)).containsExactlyInAnyOrder("roof", "lead-in", "gusset");
    assertThat(made(reshaped(bore, "alone.3mf"))).containsExactly("roof");
    assertThat(Files.readAllBytes(bore)).isEqualTo(before);
    assertThat(ofPin.joints().pairs())
        .singleElement()
        .satisfies(joint -> assertThat(joint.bore().file()).isEqualTo(1));
    assertThat(ofPin.notices()).extracting(Notice::code).contains("partner");
  }

  /** So each file may replace itself, one after the other. */
  @Test
  void thePartnerMayBeReshapedAlready() throws IOException {
    Path pin = file("pin", pin());
    Path bore = file("bore", bore(24));
    reshaped(pin, "pin-done.3mf", bore);
    reshaped(bore, "bore-done.3mf", pin);

    reshaped(bore, "late.3mf", folder.resolve("pin-done.3mf"));
    FileResult again =
        reshaped(folder.resolve("pin-done.3mf"), "again.3mf", folder.resolve("late.3mf"));

    assertThat(folder.resolve("late.3mf")).hasSameBinaryContentAs(folder.resolve("bore-done.3mf"));
    assertThat(folder.resolve("again.3mf")).hasSameBinaryContentAs(folder.resolve("pin-done.3mf"));
    assertThat(why(again, "gusset")).containsExactly(Reason.HAS_WEB);
  }

  /** The bore's block ends 2 mm below where the web would be. */
  @Test
  void noWebIsMadeWhereThePartnerCanHaveNoSlot() throws IOException {
    Path pin = file("pin", pin());
    Path bore = file("bore", bore(9.5));

    FileResult ofPin = reshaped(pin, "pin-done.3mf", bore);
    FileResult ofBore = reshaped(bore, "bore-done.3mf", pin);

    assertThat(made(ofPin)).containsExactly("tip");
    assertThat(why(ofPin, "gusset")).containsExactly("no-slot");
    assertThat(why(ofBore, "gusset")).containsExactly("thin-wall");
  }

  @Test
  void withoutAPartnerThatCanBeReadNothingIsWritten() throws IOException {
    Path pin = file("pin", pin());
    Path broken = Files.writeString(folder.resolve("broken.3mf"), "no package");

    for (Path partner : List.of(broken, folder.resolve("missing.3mf"))) {
      FileResult result = reshaped(pin, "out.3mf", partner);
      assertThat(result)
          .isInstanceOfSatisfying(
              FileResult.Rejected.class,
              rejected -> assertThat(rejected.reason().code()).isEqualTo("partner-unread"));
      assertThat(folder.resolve("out.3mf")).doesNotExist();
    }
  }

  /** Ids that are left out are those of the model, not of its partner. */
  @Test
  void aChoiceOfIdsIsNotForThePartner() throws IOException {
    Path pin = file("pin", pin());
    Path bore = file("bore", bore(24));
    Choice skip = new Choice(Set.of(), Set.of("B1"), Set.of("gusset"), Set.of());

    FileResult result =
        gable(bore).reshape(pin, folder.resolve("out.3mf"), SETTINGS.withChoice(skip));

    assertThat(made(result)).containsExactlyInAnyOrder("gusset", "tip");
  }
}

package gable.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import gable.feature.Feature;
import gable.feature.Surroundings;
import gable.fixture.Fixtures;
import gable.geom.Vec3;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import gable.opc.OpcLimits;
import gable.opc.OpcPackage;
import gable.opc.PackageException;
import gable.place.Placements;
import gable.plan.Limits;
import gable.plan.Measure;
import gable.plan.Proposal;
import gable.plan.Reshaper;
import gable.threemf.ModelLimits;
import gable.threemf.ModelPackage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The library's door. Fixtures are made in memory. */
class GableTest {

  private static final Map<String, byte[]> FIXTURES = Fixtures.all();

  @TempDir private Path temporary;

  private final Gable gable = Gable.installed();

  private static Input input(String name) {
    return Input.stream(name, new ByteArrayInputStream(bytes(name)));
  }

  private static byte[] bytes(String name) {
    return Optional.ofNullable(FIXTURES.get(name)).orElseThrow();
  }

  private FileResult inspect(String name, Settings settings) {
    return gable.inspect(input(name), settings, Observer.NONE);
  }

  private byte[] reshaped(String name, Settings settings) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    gable.reshape(input(name), Output.stream(out), settings, Observer.NONE);
    return out.toByteArray();
  }

  private static List<ObjectResult.Examined> examined(FileResult result) {
    return result.objects().stream()
        .flatMap(o -> o.fold(List::of, s -> List.<ObjectResult.Examined>of()).stream())
        .toList();
  }

  private static FeatureResult only(FileResult result) {
    return examined(result).get(0).features().get(0);
  }

  private static double measure(Change change, String name) {
    return change.measures().stream()
        .filter(measure -> measure.name().equals(name))
        .mapToDouble(Measure::value)
        .findFirst()
        .orElseThrow();
  }

  @Test
  void theVolumeThatGoesIsThatBetweenTheRoofAndTheOldCrown() {
    // derived by shoelace over the 40-gon of radius 4 whose corners lie at (k + 1/2) 9 degrees:
    // triangle from the contacts at 40.5 degrees to the ridge, minus the crown above the contacts
    Change roof = only(inspect("bore/through-d8.3mf", Settings.usual())).changes().get(0);

    assertThat(measure(roof, "removed-volume")).isCloseTo(67.7350, within(1e-3));
    assertThat(measure(roof, "ridge-height")).isCloseTo(5.639416, within(1e-5));
  }

  @Test
  void threadsDoNotChangeTheBytes() {
    for (String name : List.of("build/two-objects-one-open.3mf", "build/placed-twice.3mf")) {
      assertThat(reshaped(name, Settings.usual().withThreads(4)))
          .isEqualTo(reshaped(name, Settings.usual()));
    }
  }

  @Test
  void pathsAndStreamsGiveTheSameBytes() throws IOException {
    Path in = Files.write(temporary.resolve("in.3mf"), bytes("bore/blind-d8.3mf"));
    Path out = temporary.resolve("out.3mf");

    FileResult result = gable.reshape(in, out, Settings.usual());

    assertThat(result).isInstanceOf(FileResult.Changed.class);
    assertThat(out).hasBinaryContent(reshaped("bore/blind-d8.3mf", Settings.usual()));
  }

  @Test
  void anInspectionFindsWhatAReshapingDoes() {
    for (Map.Entry<String, byte[]> each : FIXTURES.entrySet()) {
      FileResult seen = inspect(each.getKey(), Settings.usual());
      FileResult done =
          gable.reshape(
              input(each.getKey()),
              Output.stream(OutputStream.nullOutputStream()),
              Settings.usual(),
              Observer.NONE);

      assertThat(outcomes(done)).as(each.getKey()).isEqualTo(outcomes(seen));
    }
  }

  private static List<List<Change>> outcomes(FileResult result) {
    return examined(result).stream()
        .flatMap(object -> object.features().stream())
        .map(FeatureResult::changes)
        .toList();
  }

  @Test
  void everyPlaceOfAnObjectHasItsOwnIdForTheSameFeature() {
    ObjectPlace place = examined(inspect("build/nested.3mf", Settings.usual())).get(0).place();

    assertThat(place.uses()).hasSize(2);
    assertThat(place.featureId("B1", 0)).isEqualTo("B1");
    assertThat(place.featureId("B1", 1)).isEqualTo("B1.2");
  }

  @Test
  void theIdOfAnyPlaceChoosesTheFeature() {
    Choice second = new Choice(Set.of("B1.2"), Set.of(), Set.of(), Set.of());

    FileResult result = inspect("build/nested.3mf", Settings.usual().withChoice(second));

    assertThat(result).isInstanceOf(FileResult.Changed.class);
  }

  @Test
  void anObjectThatLiesSeveralWaysUpIsClonedOrLeft() {
    String name = "build/several-ways-up.3mf";
    Settings leave = Settings.usual().withMixedOrientation(Settings.MixedOrientation.LEAVE);

    FileResult cloned = inspect(name, Settings.usual());
    FileResult left = inspect(name, leave);

    assertThat(cloned.notices()).extracting(Notice::code).contains("object-cloned");
    assertThat(examined(cloned))
        .extracting(object -> object.features().get(0).outcome())
        .containsExactly(Outcome.RESHAPED, Outcome.RESHAPED, Outcome.LEFT);
    assertThat(left).isInstanceOf(FileResult.Unchanged.class);
    assertThat(only(left).reason().orElseThrow().code()).isEqualTo("mixed-orientation");
  }

  @Test
  void repeatedVerticesStayRepeatedWithAHintOrAreJoined() throws PackageException {
    String name = "bore/vertices-repeated-d8.3mf";
    Settings join = Settings.usual().withJoinVertices(true);

    FileResult hinted = inspect(name, Settings.usual());
    assertThat(hinted.notices()).extracting(Notice::message).anyMatch(m -> m.contains("--join-v"));
    Mesh apart = mesh(reshaped(name, Settings.usual()));
    Mesh shared = mesh(reshaped(name, join));

    assertThat(HalfEdges.of(apart).closed()).isFalse();
    assertThat(HalfEdges.of(shared).closed()).isTrue();
    assertThat(shared.copyOfPoints()).isEqualTo(apart.copyOfPoints());
    for (int f = 0; f < apart.facetCount(); f++) {
      for (int k = 0; k < 3; k++) {
        assertThat(shared.point(shared.corner(f, k))).isEqualTo(apart.point(apart.corner(f, k)));
      }
    }
  }

  @Test
  void joiningHappensEvenWhereNoBoreIsChangedAndOnlyOnce() {
    String name = "bore/vertices-repeated-d8.3mf";
    Settings onlyJoin =
        Settings.usual()
            .withJoinVertices(true)
            .withLimits(new Limits(Math.toRadians(45), 20, Double.POSITIVE_INFINITY, 1.2, 5));

    byte[] once = reshaped(name, onlyJoin);
    ByteArrayOutputStream twice = new ByteArrayOutputStream();
    gable.reshape(
        Input.stream(name, new ByteArrayInputStream(once)),
        Output.stream(twice),
        onlyJoin,
        Observer.NONE);

    assertThat(only(inspect(name, onlyJoin)).outcome()).isEqualTo(Outcome.LEFT);
    assertThat(once).isNotEqualTo(bytes(name));
    assertThat(twice.toByteArray()).isEqualTo(once);
  }

  private static Mesh mesh(byte[] file) throws PackageException {
    OpcPackage content = OpcPackage.open(file, OpcLimits.DEFAULT);
    ModelPackage model = ModelPackage.read(content, ModelLimits.USUAL);
    return Placements.of(model, Vec3.Z, ModelLimits.USUAL).placed().get(0).object().mesh();
  }

  @Test
  void anObjectInASignedPartIsLeft() {
    // 3MF Core 1.4, section 6.3: a change of a signed part breaks the signature
    FileResult result = inspect("package/signed.3mf", Settings.usual());

    assertThat(result).isInstanceOf(FileResult.Unchanged.class);
    assertThat(only(result).reason().orElseThrow().code()).isEqualTo("signed-part");
  }

  @Test
  void anObserverStopsTheRunAndNothingIsWritten() {
    Path out = temporary.resolve("out.3mf");
    Observer stops =
        new Observer() {
          @Override
          public boolean cancelled() {
            return true;
          }
        };

    assertThatThrownBy(
            () ->
                gable.reshape(
                    input("bore/through-d8.3mf"), Output.file(out), Settings.usual(), stops))
        .isInstanceOf(CancellationException.class);
    assertThat(out).doesNotExist();
    assertThat(temporary).isEmptyDirectory();
  }

  @Test
  void anObserverHearsOfEveryObject() {
    AtomicInteger heard = new AtomicInteger();
    Observer counts =
        new Observer() {
          @Override
          public void progress(int done, int total) {
            heard.incrementAndGet();
            assertThat(total).isEqualTo(2);
          }
        };

    gable.inspect(input("build/two-objects-one-open.3mf"), Settings.usual(), counts);

    assertThat(heard).hasValue(2);
  }

  @ParameterizedTest
  @ValueSource(strings = {"throws", "nothing"})
  void aReshaperThatFailsCostsOnlyItsOwnChanges(String how) {
    Reshaper failing = new Failing(how.equals("throws"));
    Gable alone = new Gable(List.of(failing));

    FileResult result =
        alone.inspect(input("bore/through-d8.3mf"), Settings.usual(), Observer.NONE);

    String code = how.equals("throws") ? "reshaper-failed" : "no-reshaper";
    assertThat(only(result).reason().orElseThrow().code()).isEqualTo(code);
  }

  private record Failing(boolean loud) implements Reshaper {
    @Override
    public String name() {
      return "failing";
    }

    @Override
    public Phase phase() {
      return Phase.ROOF;
    }

    @Override
    public String summary() {
      return "fails";
    }

    @Override
    public Optional<Proposal> propose(Feature feature, Surroundings around, Limits limits) {
      if (loud) {
        throw new UnsupportedOperationException("no idea");
      }
      return Optional.empty();
    }
  }

  @Test
  void twoReshapersOfOneNameAreRefused() {
    List<Reshaper> twice = List.of(new Failing(true), new Failing(false));

    assertThatThrownBy(() -> new Gable(twice))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("'failing'");
  }

  @Test
  void anOutputThatTakesNoBytesIsARefusalNotAnException() {
    OutputStream full =
        new OutputStream() {
          @Override
          public void write(int value) throws IOException {
            throw new IOException("no room");
          }
        };

    FileResult result =
        gable.reshape(
            input("bore/through-d8.3mf"), Output.stream(full), Settings.usual(), Observer.NONE);

    assertThat(result)
        .isInstanceOfSatisfying(
            FileResult.Rejected.class,
            rejected -> {
              assertThat(rejected.cause()).isEqualTo(FileResult.Rejected.Cause.NOT_WRITTEN);
              assertThat(rejected.reason().message()).contains("no room");
            });
  }
}

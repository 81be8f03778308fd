package gable.plugin;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gable.pipeline.Change;
import gable.pipeline.FeatureResult;
import gable.pipeline.FileResult;
import gable.pipeline.Gable;
import gable.pipeline.Input;
import gable.pipeline.Notice;
import gable.pipeline.Observer;
import gable.pipeline.Outcome;
import gable.pipeline.Output;
import gable.pipeline.Settings;
import gable.pipeline.Validated;
import gable.validate.Verdict;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Reshapers of other people. What they may cost is a decision of this project. */
class PlugInsTest {

  private static final Path BLOCK = Path.of("fixtures/bore/through-d8.3mf");
  private static final Duration PATIENCE = Duration.ofMillis(1500);
  private static final String START =
      "public String name() { return \"odd\"; }"
          + "public Phase phase() { return Phase.SLOT; }"
          + "public String summary() { return \"does odd things\"; }";
  private static final String PROPOSE =
      "public Optional<Proposal> propose(Feature f, Surroundings s, Limits l) ";
  private static final String BOX =
      "static Proposal box(Operation how, double size) { List<ToolPlane> planes = new ArrayList<>();"
          + "for (Vec3 n : List.of(Vec3.X, Vec3.Y, Vec3.Z)) for (int side : new int[] {-1, 1})"
          + "planes.add(new ToolPlane(new Plane(n.times(side), size), 0, ToolPlane.Role.FLANK));"
          + "return new Reshape(List.of(new Variant(\"box\", List.of(new Cut(how,"
          + "ConvexTool.of(planes, Vec3.ZERO, 4 * size))), List.of())),"
          + "new Reason(\"odd\", \"no box\")); }";

  @TempDir private Path folder;

  private Gable gable() throws IOException {
    return PlugIns.added(Gable.installed(), folder, PATIENCE);
  }

  private FileResult run(Gable gable) {
    Output output = Output.file(folder.resolve("out.3mf"));
    return gable.reshape(Input.file(BLOCK), output, Settings.usual(), Observer.NONE);
  }

  private static List<Change> changes(FileResult result) {
    return result.objects().stream()
        .flatMap(o -> o.fold(e -> e.features().stream(), s -> Stream.<FeatureResult>empty()))
        .flatMap(feature -> feature.changes().stream())
        .toList();
  }

  private void assertSoundAndRoofed(FileResult result) {
    assertThat(changes(result).get(0).by()).isEqualTo("roof");
    assertThat(changes(result).get(0).outcome()).isEqualTo(Outcome.RESHAPED);
    Validated out = Gable.validate(Input.file(folder.resolve("out.3mf")));
    assertThat(out.validation().verdict()).isEqualTo(Verdict.PASS);
  }

  @Test
  void theExampleIsBuiltLoadedAndCutsItsGroove() throws IOException {
    Jars.example(folder);
    FileResult result = run(gable());

    assertSoundAndRoofed(result);
    Change groove = changes(result).get(1);
    assertThat(groove.by()).isEqualTo("drain");
    assertThat(groove.outcome()).as(groove.toString()).isEqualTo(Outcome.RESHAPED);
    // derived: the apex lies 0.2 radii below the wall; the file has its radius in single precision
    assertThat(groove.measures().get(0).value()).isCloseTo(0.2 * 4, within(1e-6));
    assertThat(groove.measures().get(1).value()).isPositive();
    assertThat(result.notices()).extracting(Notice::code).containsExactly("plug-in");
  }

  @Test
  void theExampleHasABuildOfItsOwnThatNamesThisVersion() throws IOException {
    String theirs = Files.readString(Path.of("src/test/plugin/drain/pom.xml"));
    String ours = Files.readString(Path.of("pom.xml"));
    String version = ours.replaceFirst("(?s).*?<version>([^<]*)</version>.*", "$1");

    assertThat(theirs.replaceAll("\\s", ""))
        .contains("<artifactId>gable</artifactId><version>" + version + "</version>");
  }

  /** Hears no interruption, but leaves the processor to the tests that follow. */
  private static final String DEAF =
      "try { Thread.sleep(1000); } catch (InterruptedException e) { Thread.interrupted(); }";

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "throw new IllegalStateException(\"no idea\");           | no idea",
        "throw new StackOverflowError();                         | StackOverflowError",
        "throw new OutOfMemoryError(\"all of it\");              | all of it",
        "return null;                                            | it answered null",
        "return Optional.of(new LeftAlone(null));                | no code",
        "return Optional.of(new LeftAlone(new Reason(\"A B\", \"x\"))); | no code",
        "return Optional.of(box(null, 1));                       | no tool",
        "return Optional.of(box(Operation.ADD, -1));             | no solid",
        "throw new RuntimeException() { public String getMessage() { throw this; } }; | Odd",
        "System.getProperty(Class.forName(\"gable.cli.Main\").getName()); return null;"
            + " | unknown",
        "while (true) { s.winding(Vec3.ZERO); }                  | within 1.5 s",
        "while (!Thread.interrupted()) { } return null;          | within 1.5 s",
      })
  void whatFailsCostsItsOwnFeaturesAndIsNamed(String body, String words) throws IOException {
    String guarded = body.contains("forName") ? forName() : body;
    Jars.of(folder, "Odd", START + BOX + PROPOSE + "{" + guarded + "}");
    FileResult result = run(gable());

    assertSoundAndRoofed(result);
    assertThat(changes(result).get(1).by()).isEqualTo("odd");
    assertThat(changes(result).get(1).reason().orElseThrow().sentence()).contains("'odd'");
    String all = result.notices().toString();
    assertThat(all).contains("the reshaper 'odd' failed");
    assertThat(all).contains(body.contains("forName") ? "ClassNotFoundException" : words);
    assertThat(result.dependsOnTime()).isEqualTo(words.startsWith("within"));
  }

  /** A plug-in does not see the inside of the program. */
  private static String forName() {
    return "try { Class.forName(\"gable.cli.Main\"); } catch (ClassNotFoundException e) {"
        + " throw new IllegalStateException(e); } return Optional.empty();";
  }

  @Test
  void oneThatCannotBeInterruptedIsLeftToItselfAndAskedNoMoreInTheEnd() throws IOException {
    Jars.of(folder, "Odd", START + PROPOSE + "{ while (true) { " + DEAF + " } }");
    Gable gable = PlugIns.added(Gable.installed(), folder, Duration.ofMillis(100));
    FileResult first = run(gable);
    run(gable);
    run(gable);
    FileResult fourth = run(gable);

    assertSoundAndRoofed(first);
    assertSoundAndRoofed(fourth);
    assertThat(first.notices().toString()).contains("within 0.1 s");
    assertThat(fourth.notices().toString()).contains("not asked any more");
  }

  @ParameterizedTest
  @CsvSource({"SUBTRACT, 1000", "ADD, 1000", "SUBTRACT, 3", "ADD, 3", "ADD, 1e-7"})
  void nonsensicalBodiesNeverMakeAnUnsoundFile(String how, double size) throws IOException {
    String body = "{ return Optional.of(box(Operation." + how + ", " + size + ")); }";
    Jars.of(folder, "Odd", START + BOX + PROPOSE + body);

    assertSoundAndRoofed(run(gable()));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "public Odd() { throw new IllegalStateException(\"not today\"); } | not today",
        "static int k = 1 / Integer.parseInt(\"0\");                      | by zero",
        "static { while (true) { if (new Random(1).nextInt() == 7) break; "
            + DEAF
            + " } } | within 0.3 s",
      })
  void oneThatCannotBeLoadedIsNamedAndTheOthersWork(String body, String words) throws IOException {
    Jars.of(folder, "Odd", START + PROPOSE + "{ return Optional.empty(); }" + body);
    Jars.example(folder);
    Files.writeString(folder.resolve("text.jar"), "no jar at all");
    Gable gable = PlugIns.added(Gable.installed(), folder, Duration.ofMillis(300));

    assertThat(gable.names()).contains("drain").doesNotContain("odd");
    assertThat(gable.notices().toString()).contains("odd.jar", "text.jar").contains(words);
  }

  @Test
  void aNameThatIsTakenIsRefused() throws IOException {
    String roof = START.replace("odd", "roof");
    Jars.of(folder, "Odd", roof + PROPOSE + "{ return Optional.empty(); }");

    assertThat(gable().names()).isEqualTo(Gable.installed().names());
    assertThat(gable().notices().toString()).contains("odd.jar", "'roof' already");
  }

  @Test
  void aNameThatNobodyCanTypeIsRefused() throws IOException {
    String odd = START.replace("\"odd\"", "\"\\u001b[2J\"");
    Jars.of(folder, "Odd", odd + PROPOSE + "{ return Optional.empty(); }");

    assertThat(gable().notices().toString()).contains("must have a short name");
  }
}

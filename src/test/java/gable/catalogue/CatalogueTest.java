package gable.catalogue;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import gable.feature.Feature;
import gable.feature.Surroundings;
import gable.pipeline.Gable;
import gable.pipeline.Settings;
import gable.plan.Limits;
import gable.plan.Proposal;
import gable.plan.Reshaper;
import gable.report.Digest;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Runs over folders. What is expected of them is decided by this project. */
class CatalogueTest {

  private static final long PLENTY = 1L << 30;
  private static final Duration LONG = Duration.ofMinutes(5);
  private static final Path FIXTURES = Path.of("fixtures");

  @TempDir private Path temporary;

  private Path in;
  private Path out;

  @BeforeEach
  void fillTheInputFolder() throws IOException {
    in = Files.createDirectories(temporary.resolve("in"));
    out = temporary.resolve("out");
    put("bore/through-d8.3mf", "a.3mf");
    put("bore/no-roof-d16.3mf", "deep/er/thin.3MF");
    put("build/no-bore.3mf", "deep/plain <b> & ünï.3mf");
    put("broken/truncated.3mf", "broken.3mf");
    Files.writeString(in.resolve("readme.txt"), "no model");
  }

  private void put(String fixture, String name) throws IOException {
    Path target = in.resolve(name);
    Files.createDirectories(target.getParent());
    Files.copy(FIXTURES.resolve(fixture), target);
  }

  private static Plan plan(int threads) {
    return new Plan(Settings.usual(), threads, PLENTY, LONG, false, false);
  }

  private Tally run() throws Refusal {
    return run(out, plan(2));
  }

  private Tally run(Path target, Plan plan) throws Refusal {
    return new Catalogue(Gable.installed(), plan).run(in, target, Follower.NONE);
  }

  private static Map<String, String> contents(Path folder) throws IOException {
    Map<String, String> contents = new TreeMap<>();
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        contents.put(folder.relativize(file).toString(), Digest.of(file));
      }
    }
    return contents;
  }

  @Test
  void everyModelHasItsOutcomeAndEveryOutputTheNameOfItsInput() throws Exception {
    Tally tally = run();

    assertThat(tally.models()).isEqualTo(4);
    assertThat(tally.changed()).isEqualTo(1);
    assertThat(tally.unchanged()).isEqualTo(2);
    assertThat(tally.rejected()).isEqualTo(1);
    assertThat(tally.open()).isEqualTo(1);
    assertThat(tally.causes()).containsExactly("invalid");
    assertThat(contents(out).keySet())
        .contains("a.3mf", "deep/er/thin.3MF", "deep/plain <b> & ünï.3mf")
        .doesNotContain("broken.3mf");
    assertThat(out.resolve("deep/er/thin.3MF"))
        .hasSameBinaryContentAs(in.resolve("deep/er/thin.3MF"));
  }

  @Test
  void eachModelGetsItsReportIfWantedAndThePageLeadsThere() throws Exception {
    run();
    Tally tally = run(out, new Plan(Settings.usual(), 2, PLENTY, LONG, true, false));

    assertThat(tally.reused()).isZero();
    assertThat(Files.readString(out.resolve("index.html"))).contains("\"report\":true");
    String line = Files.readAllLines(out.resolve("catalogue.jsonl")).get(0);
    Path report = out.resolve(line.replaceFirst(".*\"report\":\"([^\"]*)\".*", "$1"));
    assertThat(Files.readString(report)).contains(Digest.of(out.resolve("a.3mf")), "B1");
    Files.delete(report);
    assertThat(run(out, new Plan(Settings.usual(), 2, PLENTY, LONG, true, false)).reused())
        .isEqualTo(3);
    assertThat(report).exists();
    run();
    assertThat(report).doesNotExist();
  }

  @Test
  void anOutputIsWhatASingleRunWouldWrite() throws Exception {
    run();
    Path single = temporary.resolve("single.3mf");
    Gable.installed().reshape(in.resolve("a.3mf"), single, Settings.usual());

    assertThat(out.resolve("a.3mf")).hasSameBinaryContentAs(single);
  }

  @Test
  void theListsHoldEveryModelOnce() throws Exception {
    run();

    assertThat(Files.readAllLines(out.resolve("catalogue.jsonl")))
        .hasSize(4)
        .allMatch(line -> line.startsWith("{\"schema\":\"gable-report/1\""));
    List<String> table = Files.readAllLines(out.resolve("catalogue.csv"));
    assertThat(table).hasSize(5);
    assertThat(table.get(1)).startsWith("a.3mf,changed,,1,0,0,0,");
    assertThat(table.get(2)).startsWith("broken.3mf,rejected,invalid,");
  }

  @Test
  void thePageShowsNamesAsDataThatCannotEndItsScript() throws Exception {
    put("build/no-bore.3mf", "x <script>alert(1)<");

    Files.move(in.resolve("x <script>alert(1)<"), in.resolve("x <script>alert(1)<.3mf"));
    run();

    String page = Files.readString(out.resolve("index.html"));
    assertThat(page).contains("x \\u003cscript\\u003ealert(1)\\u003c.3mf");
    assertThat(page).doesNotContain("x <script");
  }

  @Test
  void aModelThatWasChangedHasTwoPicturesAndOthersOne() throws Exception {
    run();

    try (Stream<Path> files = Files.list(out.resolve("gable-catalogue/models"))) {
      List<String> names = files.map(file -> file.getFileName().toString()).toList();
      assertThat(names.stream().filter(name -> name.endsWith("-before.png"))).hasSize(3);
      assertThat(names.stream().filter(name -> name.endsWith("-after.png"))).hasSize(1);
    }
  }

  @Test
  void aSecondRunDoesNothingAndLeavesEveryByte() throws Exception {
    run();
    Map<String, String> first = contents(out);
    FileTime written = Files.getLastModifiedTime(out.resolve("a.3mf"));

    Tally second = run();

    assertThat(second.reused()).isEqualTo(4);
    assertThat(contents(out)).isEqualTo(first);
    assertThat(Files.getLastModifiedTime(out.resolve("a.3mf"))).isEqualTo(written);
  }

  @Test
  void aSecondRunDoesWhatIsNewOrChangedOrLost() throws Exception {
    run();
    put("bore/blind-d8.3mf", "new.3mf");
    Files.delete(in.resolve("broken.3mf"));
    put("bore/through-d8.3mf", "broken.3mf");
    Files.writeString(out.resolve("a.3mf"), "somebody wrote here");

    Tally second = run();

    assertThat(second.reused()).isEqualTo(2);
    assertThat(second.changed()).isEqualTo(3);
    assertThat(contents(out)).isEqualTo(contents(afresh()));
  }

  @Test
  void otherSettingsMakeEverythingAnew() throws Exception {
    run();
    Settings steep = Settings.usual().withLimits(Limits.usual().withSlope(1));

    Tally second = run(out, new Plan(steep, 2, PLENTY, LONG, false, false));

    assertThat(second.reused()).isZero();
  }

  @Test
  void otherJointsMakeEverythingAnew() throws Exception {
    run();
    Limits.Joint joint =
        new Limits.Joint(OptionalDouble.empty(), 0.4, 0.8, 0.25, Limits.Joint.Webs.BELOW);
    Settings loose = Settings.usual().withLimits(Limits.usual().withJoint(joint));

    Tally second = run(out, new Plan(loose, 2, PLENTY, LONG, false, false));

    assertThat(second.reused()).isZero();
  }

  @Test
  void anOutputOfAnEarlierRunGoesWhenItsInputIsRejectedNow() throws Exception {
    run();
    Files.copy(in.resolve("broken.3mf"), temporary.resolve("broken.3mf"));
    Files.move(
        temporary.resolve("broken.3mf"), in.resolve("a.3mf"), StandardCopyOption.REPLACE_EXISTING);

    run();

    assertThat(out.resolve("a.3mf")).doesNotExist();
    assertThat(contents(out)).isEqualTo(contents(afresh()));
  }

  private Path afresh() throws Refusal {
    Path other = temporary.resolve("afresh");
    run(other, plan(1));
    return other;
  }

  @Test
  void aTornLastLineOfTheJournalCostsOnlyItsOwnModel() throws Exception {
    run();
    Map<String, String> first = contents(out);
    Path journal = out.resolve("gable-catalogue/journal.jsonl");
    byte[] whole = Files.readAllBytes(journal);
    Files.write(journal, Arrays.copyOf(whole, whole.length - 40));

    Tally second = run();

    assertThat(second.reused()).isEqualTo(3);
    assertThat(contents(out)).isEqualTo(first);
  }

  @Test
  void rubbishInTheJournalIsPassedOver() throws Exception {
    run();
    Path journal = out.resolve("gable-catalogue/journal.jsonl");
    Files.writeString(journal, "\u0000{}\n[1,2\n{\"file\":1}\n", StandardOpenOption.APPEND);

    assertThat(run().reused()).isEqualTo(4);
    assertThat(Files.readString(journal, StandardCharsets.UTF_8)).doesNotContain("[1,2");
  }

  @Test
  void theNumberOfThreadsMakesNoDifference() throws Exception {
    run(out, plan(4));

    assertThat(contents(out)).isEqualTo(contents(afresh()));
  }

  @Test
  void linksAreFollowedOnlyToFilesOfTheSameFolder() throws Exception {
    Path outside = Files.createDirectories(temporary.resolve("outside"));
    Files.copy(in.resolve("a.3mf"), outside.resolve("secret.3mf"));
    Files.createSymbolicLink(in.resolve("folder"), outside);
    Files.createSymbolicLink(in.resolve("file.3mf"), outside.resolve("secret.3mf"));
    Files.createSymbolicLink(in.resolve("loop"), in);
    Files.createSymbolicLink(in.resolve("same.3mf"), in.resolve("a.3mf"));

    Tally tally = run();

    assertThat(tally.models()).isEqualTo(5);
    assertThat(tally.skipped()).containsExactly("file.3mf", "folder", "loop");
    assertThat(out.resolve("same.3mf")).hasSameBinaryContentAs(out.resolve("a.3mf"));
    assertThat(Files.isSymbolicLink(out.resolve("same.3mf"))).isFalse();
  }

  @Test
  void aModelOutOfTimeIsRejectedAndTheRunGoesOn() throws Exception {
    Plan hasty = new Plan(Settings.usual(), 2, PLENTY, Duration.ofSeconds(1), false, false);
    Catalogue catalogue =
        new Catalogue(new Gable(List.of(new Bad("endless", CatalogueTest::never))), hasty);

    Tally tally = catalogue.run(in, out, Follower.NONE);

    assertThat(tally.done()).isEqualTo(4);
    assertThat(tally.causes()).containsExactlyInAnyOrder("invalid", "time-limit");
    assertThat(out.resolve("a.3mf")).doesNotExist();
    assertThat(out.resolve("deep/plain <b> & ünï.3mf")).exists();
    assertThat(catalogue.run(in, out, Follower.NONE).reused())
        .as("what was out of time is tried again")
        .isEqualTo(2);
  }

  /** One that does what it should not. */
  private record Bad(String name, Supplier<Optional<Proposal>> act) implements Reshaper {
    @Override
    public Phase phase() {
      return Phase.ROOF;
    }

    @Override
    public String summary() {
      return name;
    }

    @Override
    public Optional<Proposal> propose(Feature feature, Surroundings around, Limits limits) {
      return act.get();
    }
  }

  /** Does not come back for a quarter of an hour, whoever asks. */
  private static Optional<Proposal> never() {
    long end = System.nanoTime() + Duration.ofMinutes(15).toNanos();
    while (System.nanoTime() < end) {
      LockSupport.parkNanos(1_000_000);
    }
    return Optional.empty();
  }

  @Test
  void aFaultOfTheProgramCostsOnlyItsOwnModel() throws Exception {
    Reshaper faulty =
        new Bad(
            "faulty",
            () -> {
              throw new StackOverflowError("on purpose");
            });

    Tally tally = new Catalogue(new Gable(List.of(faulty)), plan(2)).run(in, out, Follower.NONE);

    assertThat(tally.done()).isEqualTo(4);
    assertThat(tally.causes()).containsExactlyInAnyOrder("invalid", "fault");
  }

  @Test
  void aRunThatIsStoppedGoesOnLater() throws Exception {
    AtomicInteger dealtWith = new AtomicInteger();
    Follower impatient =
        new Follower() {
          @Override
          public boolean stopped() {
            return dealtWith.get() > 0;
          }

          @Override
          public void done(Row row, boolean reused, int total) {
            dealtWith.incrementAndGet();
          }
        };

    Tally first = new Catalogue(Gable.installed(), plan(1)).run(in, out, impatient);
    Tally second = run();

    assertThat(first.complete()).isFalse();
    assertThat(first.done()).isEqualTo(1);
    assertThat(second.reused()).isEqualTo(1);
    assertThat(contents(out)).isEqualTo(contents(afresh()));
  }

  @Test
  void aDryRunWritesNothing() throws Exception {
    Tally tally = run(out, new Plan(Settings.usual(), 2, PLENTY, LONG, false, true));

    assertThat(tally.changed()).isEqualTo(1);
    assertThat(out).doesNotExist();
  }

  @Test
  void foldersWithinEachOtherAreRefused() {
    assertThatThrownBy(() -> run(in.resolve("out"), plan(1)))
        .isInstanceOfSatisfying(
            Refusal.class, e -> assertThat(e.kind()).isEqualTo(Refusal.Kind.CALL));
    assertThatThrownBy(() -> run(temporary, plan(1))).isInstanceOf(Refusal.class);
    assertThatThrownBy(() -> run(in, plan(1))).isInstanceOf(Refusal.class);
  }

  @Test
  void aFileInThePlaceOfTheOutputFolderIsNamed() throws IOException {
    Files.writeString(out, "a file");

    assertThatThrownBy(this::run)
        .isInstanceOfSatisfying(
            Refusal.class, e -> assertThat(e.kind()).isEqualTo(Refusal.Kind.OUTPUT))
        .hasMessageContaining("out");
  }

  @Test
  void oneFolderIsWrittenByOneRunAtATime() throws Exception {
    Files.createDirectories(out.resolve("gable-catalogue"));
    try (Journal other = Journal.open(out.resolve("gable-catalogue/journal.jsonl"))) {
      assertThatThrownBy(this::run).hasMessageContaining("another run");
      assertThat(other.of("a.3mf")).isEmpty();
    }
  }

  @Test
  void aModelUnderANameOfTheCatalogueIsRejected() throws Exception {
    put("bore/through-d8.3mf", "index.html/x.3mf");

    Tally tally = run();

    assertThat(tally.causes()).contains("reserved-name");
    assertThat(out.resolve("index.html")).isRegularFile();
  }
}

package gable;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.core.domain.JavaPackage;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.NullMarked;

/**
 * Holds the package table of DEVELOPERS.md: who may name whom, where each library has its one door,
 * and what no package may do. All rules are decisions of this project.
 */
@AnalyzeClasses(packages = "gable", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {

  /** Each package of ours and the packages of ours that it may name. */
  private static final Map<String, Set<String>> MAY_NAME =
      Map.ofEntries(
          row("geom"),
          row("mesh", "geom"),
          row("section", "geom"),
          row("opc"),
          row("threemf", "geom", "mesh", "opc"),
          row("place", "geom", "mesh", "opc", "threemf"),
          row("validate", "geom", "mesh", "opc", "threemf"),
          row("feature", "geom", "mesh", "section"),
          row("pairs", "geom", "feature"),
          row("plan", "geom", "section", "feature"),
          row("reshaper", "geom", "section", "feature", "plan"),
          row("edit", "geom", "mesh", "section", "feature", "plan"),
          row("verify", "geom", "mesh", "section", "feature", "plan"),
          row(
              "pipeline",
              "geom",
              "mesh",
              "section",
              "opc",
              "threemf",
              "place",
              "validate",
              "feature",
              "pairs",
              "plan",
              "edit",
              "verify"),
          row(
              "report",
              "geom",
              "mesh",
              "section",
              "opc",
              "place",
              "validate",
              "feature",
              "pairs",
              "plan",
              "pipeline",
              "compare"),
          row("compare", "geom", "mesh", "feature", "opc", "threemf", "pipeline"),
          row("catalogue", "pipeline", "report"),
          row("plugin", "opc", "feature", "plan", "pipeline"),
          row(
              "cli",
              "geom",
              "validate",
              "pairs",
              "plan",
              "pipeline",
              "report",
              "catalogue",
              "plugin",
              "compare"));

  /** Packages that decide about geometry; the same input must give the same result in them. */
  private static final String[] KERNEL =
      packages("geom", "mesh", "section", "feature", "pairs", "plan", "reshaper", "edit", "verify");

  private static final Set<String> SEEDED =
      Set.of("java.util.Random", "java.util.SplittableRandom");

  private static final Set<String> CHANGING =
      Set.of(
          "java.lang.StringBuilder",
          "java.lang.ThreadLocal",
          "java.util.ArrayList",
          "java.util.HashMap",
          "java.util.HashSet",
          "java.util.Random",
          "java.util.TreeMap",
          "java.util.concurrent.ConcurrentHashMap");

  @ArchTest
  static final ArchRule packagesFormNoCycle =
      slices().matching("gable.(*)..").should().beFreeOfCycles();

  @ArchTest
  static final ArchRule commonsCompressEntersThroughOpc =
      onlyThrough("org.apache.commons.compress..", "opc");

  @ArchTest
  static final ArchRule jaxbEntersThroughOpcAndThreemf =
      onlyThrough("jakarta.xml.bind..", "opc", "threemf");

  @ArchTest
  static final ArchRule staxEntersThroughOpcAndThreemf =
      noClasses()
          .that(not(resideInAnyPackage(packages("opc", "threemf"))))
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("javax.xml.stream..", "com.ctc.wstx..", "org.codehaus.stax2..");

  @ArchTest
  static final ArchRule jtsEntersThroughSection = onlyThrough("org.locationtech.jts..", "section");

  @ArchTest
  static final ArchRule commonsCliEntersThroughCli = onlyThrough("org.apache.commons.cli..", "cli");

  @ArchTest
  static final ArchRule jacksonEntersThroughReportCatalogueAndCli =
      onlyThrough("com.fasterxml.jackson..", "report", "catalogue", "cli");

  @ArchTest
  static final ArchRule nothingElseIsDependedOn =
      noClasses()
          .should()
          .dependOnClassesThat(
              not(
                  resideInAnyPackage(
                      "gable..",
                      "java..",
                      "javax.xml..",
                      "org.w3c.dom..",
                      "org.xml.sax..",
                      "org.jspecify.annotations..",
                      "org.apache.commons.compress..",
                      "jakarta.xml.bind..",
                      "com.ctc.wstx..",
                      "org.codehaus.stax2..",
                      "org.locationtech.jts..",
                      "org.apache.commons.cli..",
                      "com.fasterxml.jackson..")))
          .because("each library is chosen, and has one door");

  @ArchTest
  static final ArchRule onlyCliTouchesTheStandardStreams =
      noClasses()
          .that(resideInAPackage("gable..").and(not(resideInAPackage("gable.cli.."))))
          .should(
              access(
                  "the standard streams",
                  access ->
                      access.getTargetOwner().isEquivalentTo(System.class)
                          && Set.of("out", "err", "in", "setOut", "setErr", "setIn", "console")
                              .contains(access.getName())));

  @ArchTest
  static final ArchRule nobodyPrintsStackTraces =
      noClasses()
          .should(access("printStackTrace", access -> access.getName().equals("printStackTrace")));

  @ArchTest
  static final ArchRule onlyMainEndsTheProcess =
      noClasses()
          .that()
          .doNotHaveFullyQualifiedName("gable.cli.Main")
          .should(
              access(
                  "an end of the process",
                  access ->
                      Set.of("java.lang.System", "java.lang.Runtime")
                              .contains(access.getTargetOwner().getName())
                          && Set.of("exit", "halt").contains(access.getName())));

  @ArchTest
  static final ArchRule theKernelKnowsNoClock =
      noClasses().that().resideInAnyPackage(KERNEL).should(access("the clock", clock()));

  @ArchTest
  static final ArchRule nobodyUsesUnseededChance =
      noClasses().should(access("unseeded chance", chance()));

  @ArchTest
  static final ArchRule onlyThoseThatRunWorkKnowThreads =
      noClasses()
          .that(
              resideInAPackage("gable..")
                  .and(
                      not(
                          resideInAnyPackage(
                              packages("pipeline", "catalogue", "plugin", "cli", "opc")))))
          .should()
          .dependOnClassesThat(
              resideInAPackage("java.util.concurrent..")
                  .or(DescribedPredicate.describe("Thread", c -> c.isEquivalentTo(Thread.class))));

  @ArchTest
  static final ArchRule nothingStaticChanges =
      fields().that().areStatic().should().beFinal().andShould(holdNothingThatChanges());

  @ArchTest
  static final ArchRule theKernelOpensNoFiles =
      noClasses()
          .that()
          .resideInAnyPackage(KERNEL)
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("java.io..", "java.nio.file..", "java.net..");

  @ArchTest
  static void eachPackageHasARow(JavaClasses all) {
    assertThat(all.stream().map(ArchitectureTest::home))
        .as("packages with a row in the table")
        .isSubsetOf(MAY_NAME.keySet());
  }

  @ArchTest
  static void eachPackageNamesOnlyThoseOfItsRow(JavaClasses all) {
    MAY_NAME.forEach((from, allowed) -> rowRule(from, allowed).check(all));
  }

  @ArchTest
  static void eachPackageIsNullMarked(JavaClasses all) {
    Set<String> unmarked =
        all.stream()
            .map(JavaClass::getPackage)
            .filter(p -> !p.isAnnotatedWith(NullMarked.class))
            .map(JavaPackage::getName)
            .collect(Collectors.toCollection(TreeSet::new));
    assertThat(unmarked).as("packages without @NullMarked").isEmpty();
  }

  @ArchTest
  static void theDevelopersPageShowsTheSameTable(JavaClasses all) throws IOException {
    assertThat(tableIn(Path.of("DEVELOPERS.md"))).isEqualTo(new TreeMap<>(MAY_NAME));
  }

  private static Map<String, Set<String>> tableIn(Path page) throws IOException {
    Pattern line = Pattern.compile("\\| `([a-z0-9]+)` \\|.*\\| ([^|]*) \\|");
    Map<String, Set<String>> table = new TreeMap<>();
    try (Stream<String> lines = Files.lines(page)) {
      lines
          .map(line::matcher)
          .filter(Matcher::matches)
          .forEach(m -> table.put(m.group(1), names(m.group(2))));
    }
    return table;
  }

  private static Set<String> names(String cell) {
    if (cell.startsWith("all above but ")) {
      Set<String> all = new TreeSet<>(MAY_NAME.keySet());
      all.removeAll(
          List.of(
              "pipeline",
              "report",
              "catalogue",
              "compare",
              "plugin",
              "cli",
              cell.substring(14).replace("`", "")));
      return all;
    }
    return Arrays.stream(cell.split(" "))
        .filter(name -> !name.equals("–"))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private static ArchRule rowRule(String from, Set<String> allowed) {
    String[] others =
        packages(
            MAY_NAME.keySet().stream()
                .filter(name -> !name.equals(from) && !allowed.contains(name))
                .toArray(String[]::new));
    return noClasses()
        .that()
        .resideInAPackage("gable." + from + "..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage(others)
        .because(from + " may name only " + new TreeSet<>(allowed))
        .allowEmptyShould(true);
  }

  private static ArchRule onlyThrough(String library, String... doors) {
    return noClasses()
        .that(not(resideInAnyPackage(packages(doors))))
        .should()
        .dependOnClassesThat()
        .resideInAPackage(library)
        .because("its door is " + String.join(", ", doors));
  }

  private static DescribedPredicate<JavaAccess<?>> clock() {
    Set<String> readings = Set.of("currentTimeMillis", "nanoTime", "now");
    return DescribedPredicate.describe("clock", access -> readings.contains(access.getName()));
  }

  private static DescribedPredicate<JavaAccess<?>> chance() {
    return DescribedPredicate.describe(
        "chance",
        access ->
            access.getTargetOwner().isEquivalentTo(java.util.concurrent.ThreadLocalRandom.class)
                || access.getTargetOwner().isEquivalentTo(java.security.SecureRandom.class)
                || (access.getTargetOwner().isEquivalentTo(Math.class)
                    && access.getName().equals("random"))
                || access.getName().equals("randomUUID")
                || (SEEDED.contains(access.getTargetOwner().getName())
                    && access.getDescription().contains("<init>()")));
  }

  private static ArchCondition<JavaClass> access(String what, Predicate<JavaAccess<?>> wanted) {
    return new ArchCondition<>("access " + what) {
      @Override
      public void check(JavaClass owner, ConditionEvents events) {
        owner.getAccessesFromSelf().stream()
            .filter(wanted)
            .forEach(a -> events.add(SimpleConditionEvent.satisfied(a, a.getDescription())));
      }
    };
  }

  private static ArchCondition<JavaField> holdNothingThatChanges() {
    return new ArchCondition<>("hold nothing that changes") {
      @Override
      public void check(JavaField field, ConditionEvents events) {
        String type = field.getRawType().getName();
        boolean changes =
            CHANGING.contains(type) || type.startsWith("java.util.concurrent.atomic.");
        events.add(
            new SimpleConditionEvent(field, !changes, field.getDescription() + " holds a " + type));
      }
    };
  }

  private static String home(JavaClass owner) {
    String name = owner.getPackageName();
    return name.equals("gable") ? "" : name.split("\\.", -1)[1];
  }

  private static Map.Entry<String, Set<String>> row(String name, String... allowed) {
    return Map.entry(name, Set.of(allowed));
  }

  private static String[] packages(String... names) {
    return Arrays.stream(names).map(name -> "gable." + name + "..").toArray(String[]::new);
  }
}

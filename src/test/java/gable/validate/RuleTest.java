package gable.validate;

import static org.assertj.core.api.Assertions.assertThat;

import gable.opc.OpcLimits;
import gable.opc.OpcPackage;
import gable.opc.PackageException;
import gable.opc.Problem;
import gable.opc.Rule;
import java.io.IOException;
import java.lang.reflect.Field;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * One case or more for each rule: the section of the standard and what is wrong stand in the name.
 * Sections are those of the specifications that the package comment names.
 */
class RuleTest {

  static List<RuleCase> cases() throws IOException {
    return RuleCase.all();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("cases")
  void findsThisAndNothingElse(RuleCase example) throws IOException {
    Validation validation = validate(example);
    Set<String> found =
        validation.findings().stream()
            .map(Problem::code)
            .collect(Collectors.toCollection(TreeSet::new));
    assertThat(found).as("%s", validation.findings()).isEqualTo(example.codes());
  }

  @Test
  void everyRuleHasACase() throws Exception {
    Set<String> shown = new TreeSet<>();
    cases().forEach(example -> shown.addAll(example.codes()));
    Set<String> bare = new TreeSet<>();
    for (Class<?> home : List.of(XmlRules.class, CoreRules.class, ExtensionRules.class)) {
      for (Field field : home.getDeclaredFields()) {
        if (field.getType() == Rule.class && !shown.contains(((Rule) field.get(null)).code())) {
          bare.add(field.getName());
        }
      }
    }
    assertThat(bare).as("rules without a case").isEmpty();
  }

  @Test
  void everyFindingSaysWhereItIsAndWhatToDo() throws IOException {
    for (RuleCase example : cases()) {
      for (Problem finding : validate(example).findings()) {
        assertThat(finding.place().part()).as("%s", finding).isNotEmpty();
        assertThat(finding.sentence())
            .contains("; expected ", " (", "To do: ")
            .doesNotContain("null", "Optional", "..", " )");
      }
    }
  }

  private static Validation validate(RuleCase example) throws IOException {
    try (OpcPackage source = OpcPackage.open(example.bytes(), OpcLimits.DEFAULT)) {
      return Validation.of(source);
    } catch (PackageException e) {
      return Validation.refused(e);
    }
  }
}

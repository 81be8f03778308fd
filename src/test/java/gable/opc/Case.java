package gable.opc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.List;

/**
 * A package and what must be said about it.
 *
 * @param rule the rule and its section, shown as the name of the test
 * @param packageBytes makes the package
 * @param code code of the problem; empty if there must be none
 */
record Case(String rule, Source packageBytes, String code) {

  /** Makes a package; called in the test, so that a fault in it fails that test alone. */
  interface Source {
    byte[] make();
  }

  @Override
  public String toString() {
    return rule;
  }

  /** The package must be refused with the code, and the message must be one clear line. */
  void checkRefused() {
    PackageException refused =
        catchThrowableOfType(
            PackageException.class,
            () -> {
              try (OpcPackage opened = OpcPackage.open(packageBytes.make(), OpcLimits.DEFAULT)) {
                opened.requireSound();
              }
            });
    assertThat(refused).as("refused").isNotNull();
    assertThat(refused.problems()).extracting(Problem::code).contains(code);
    checkSentences(refused.problems());
  }

  /** The package must open, with a warning or note of the code, or with none. */
  void checkOpens() throws Exception {
    try (OpcPackage opened = OpcPackage.open(packageBytes.make(), OpcLimits.DEFAULT)) {
      opened.requireSound();
      assertThat(opened.rootModelPart().name()).isEqualTo("/3D/3dmodel.model");
      List<String> codes = opened.problems().stream().map(Problem::code).toList();
      assertThat(codes).isEqualTo(code.isEmpty() ? List.of() : List.of(code));
      checkSentences(opened.problems());
    }
  }

  private static void checkSentences(List<Problem> problems) {
    for (Problem problem : problems) {
      assertThat(problem.sentence())
          .as("one printable line that says what to do")
          .contains("; expected ", " (", "To do: ")
          .endsWith(".")
          .doesNotEndWith("..")
          .doesNotContainPattern("\\p{Cntrl}")
          .doesNotContain("null", "Exception", " )");
    }
  }
}

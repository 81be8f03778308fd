package gable.opc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;

class ProblemTest {

  private static final Rule RULE = Rule.error("no-thing", "Book 1.2", "bring one");
  private static final Rule NOTE = Rule.note("odd-thing", "Book 1.3", "nothing");

  @Test
  void tellsPlaceFindingExpectationSourceAndRemedyInOneSentence() {
    Place place = Place.of("3D/a.model", 3, 7).at("model/object 2");
    Problem problem = new Problem(RULE, place, "there is nothing", "a thing");
    assertThat(problem.sentence())
        .isEqualTo(
            "3D/a.model, model/object 2, line 3, column 7: there is nothing; expected a thing"
                + " (Book 1.2). To do: bring one.");
  }

  @Test
  void leavesOutWhatIsNotKnownAboutThePlace() {
    assertThat(new Problem(RULE, Place.FILE, "x", "y").sentence()).startsWith("x; expected y");
    assertThat(Place.of("a", 0, 0).words()).isEqualTo("a");
    assertThat(Place.of("", 4, 0).words()).isEqualTo("line 4");
    assertThat(Place.FILE.inPart("b").within("mesh").within("object 1").words())
        .isEqualTo("b, object 1/mesh");
  }

  @Test
  void spellsOutCharactersThatATerminalWouldObey() {
    String escape = "red\u001B[31m\u202Eright\uD800\u0000";
    assertThat(Printable.text(escape)).isEqualTo("red\\u{1B}[31m\\u{202E}right\\u{D800}\\u{0}");
    assertThat(Printable.text("größe 😀")).isEqualTo("größe 😀");
  }

  @Test
  void cutsTextThatIsTooLongForAMessage() {
    assertThat(Printable.text("x".repeat(1_000_000)))
        .hasSizeLessThan(250)
        .endsWith("... (1000000 characters)");
    assertThat(Printable.text("x".repeat(200))).isEqualTo("x".repeat(200));
  }

  @Test
  void givesTheFirstErrorAsTheReasonOfAnException() {
    Problem note = new Problem(NOTE, Place.FILE, "odd", "even");
    Problem error = new Problem(RULE, Place.of("p"), "none", "one");
    PackageException thrown = new PackageException(List.of(note, error));
    assertThat(thrown.problem()).isEqualTo(error);
    assertThat(thrown.problems()).containsExactly(note, error);
    assertThat(thrown).hasMessage(error.sentence());
    assertThatThrownBy(() -> new PackageException(List.of(note)))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void gathersThePathStepByStepWhileUnwinding() {
    Problem error = new Problem(RULE, Place.of("p", 2, 5), "none", "one");
    PackageException thrown =
        new PackageException(error).within("mesh").within("object 3").within("resources");
    assertThat(thrown.problem().place().words())
        .isEqualTo("p, resources/object 3/mesh, line 2, column 5");
  }

  @Test
  void refusesWhatSaysNothing() {
    assertThatThrownBy(() -> new Problem(RULE, Place.FILE, " ", "y"))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Rule.error("No Code", "Book", "x"))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Place("a", "", -1, 0))
        .isInstanceOf(IllegalArgumentException.class);
  }
}

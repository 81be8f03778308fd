package gable.fuzz;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import gable.pipeline.Gable;
import gable.pipeline.Settings;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The fuzzer is no better than its judge: mutants can be made again, and spoiled outputs show. */
class FuzzTest {

  private static final List<Path> FOLDERS = List.of(Path.of("fixtures", "truth"));

  @TempDir private Path folder;

  @Test
  void theSameNumbersMakeTheSameMutant() throws Exception {
    Mutator first = new Mutator(Seeds.of(FOLDERS), 5);
    Mutator second = new Mutator(Seeds.of(FOLDERS), 5);
    Mutator other = new Mutator(Seeds.of(FOLDERS), 6);
    int differ = 0;
    for (long number = 0; number < 50; number++) {
      byte[] mutant = first.mutant(number).bytes();
      assertThat(second.mutant(49 - number).bytes()).isEqualTo(first.mutant(49 - number).bytes());
      differ += mutant.length == other.mutant(number).bytes().length ? 0 : 1;
    }
    assertThat(differ).isGreaterThan(25);
  }

  @Test
  void aPackageTakenApartAndPackedAgainIsSoundEitherWay() throws Exception {
    for (Seeds.Seed seed : Seeds.of(List.of())) {
      for (boolean deflated : new boolean[] {true, false}) {
        byte[] packed = seed.draft().packed(deflated);
        assertThat(Draft.of(packed).items()).isEqualTo(seed.draft().items());
        String outcome = new Oracle(folder).check(packed, Chance.of(1, 1));
        assertThat(outcome).as(seed.name()).isIn("changed", "unchanged");
      }
    }
  }

  @Test
  void someMutantsOfEveryKindAreHandledRightly() throws Exception {
    Mutator mutator = new Mutator(Seeds.of(FOLDERS), 1);
    Oracle oracle = new Oracle(folder);
    for (long number = 0; number < 200; number++) {
      Mutator.Mutant mutant = mutator.mutant(number);
      assertThat(oracle.check(mutant.bytes(), Chance.of(2, number))).isNotBlank();
    }
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      value = {
        "a triangle is missing | <triangle v1=\"0\"[^>]*> | '' | closed",
        "a triangle is reversed | (<triangle) v1=(\"0\") v2= | $1 v2=$2 v1= | closed",
        "a vertex was moved | (<vertex x=\")([^\"]*) | ${1}1 | old vertices were moved",
        "a new vertex reaches out | (y=\"[^\"]*\" z=\")[^\"]*(\"/>\\s*</vertices>) | ${1}90$2 | cross",
        "it is no XML | </model> | '' | readable",
      })
  void aSpoiledOutputIsSeen(String what, String pattern, String other, String words)
      throws Exception {
    byte[] input = Seeds.of(List.of()).get(1).bytes();
    byte[] output = reshaped(input);
    assertThat(Soundness.check(input, output)).isEqualTo(1);
    byte[] spoiled =
        spoiled(output, text -> text.replaceFirst(pattern, other.replace("${1}", "$1")));

    assertThatThrownBy(() -> Soundness.check(input, spoiled))
        .as(what)
        .isInstanceOf(Soundness.Unsound.class)
        .hasMessageContaining(words);
  }

  @Test
  void anItemThatIsLostOrChangedIsSeen() throws Exception {
    byte[] input = Seeds.of(List.of()).get(1).bytes();
    Draft output = Draft.of(reshaped(input));
    Draft.Item first = output.items().get(0);
    output.items().set(0, new Draft.Item(first.name(), first.content() + ' '));

    assertThatThrownBy(() -> Soundness.check(input, output.packed(true)))
        .hasMessageContaining("was changed");
    output.items().remove(0);
    assertThatThrownBy(() -> Soundness.check(input, output.packed(true)))
        .hasMessageContaining("items");
  }

  private static byte[] reshaped(byte[] input) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    Gable.installed().reshape(new ByteArrayInputStream(input), out, Settings.usual());
    return out.toByteArray();
  }

  private static byte[] spoiled(byte[] output, UnaryOperator<String> fault) throws Exception {
    Draft draft = Draft.of(output);
    draft.changeModel(Chance.of(0, 0), fault::apply);
    return draft.packed(true);
  }
}

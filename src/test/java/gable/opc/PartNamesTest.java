package gable.opc;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Source: ECMA-376 Part 2, first edition, 8.1.1, 8.3.3.2, 8.3.4 and Annex A. */
class PartNamesTest {

  @ParameterizedTest
  @CsvSource({
    "/3D/3dmodel.model, /3d/3DMODEL.Model",
    "/a%20b, /a b",
    "/%C3%BC, /ü",
    "/a%2Fb, /A%2fB",
    "/%7Ex, /~x"
  })
  void giveOneKeyToNamesThatMeanOnePart(String one, String other) {
    assertThat(PartNames.key(one)).isEqualTo(PartNames.key(other));
  }

  @ParameterizedTest
  @CsvSource({"/a%2Fb, /a/b", "/a%5Cb, /a\\b", "/Ü, /ü", "/a%00, /a", "/%FF, /ÿ", "/a%25b, /a%b"})
  void giveTwoKeysToNamesThatMeanTwoParts(String one, String other) {
    assertThat(PartNames.key(one)).isNotEqualTo(PartNames.key(other));
  }

  @ParameterizedTest
  @ValueSource(strings = {"/a", "/3D/3dmodel.model", "/a/b-c_d~e!$&'()*+,;=:@", "/%C3%BC", "/.b/c"})
  void findNoFaultInValidNames(String name) {
    assertThat(PartNames.fault(name)).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "", "/", "a", "//a", "/a/", "/a//b", "/a.", "/./a", "/../a", "/a b", "/ü", "/a?b", "/a#b",
        "/a%2Fb", "/a%5cb", "/a%41", "/a%4", "/a%zz", "/a\\b", "/.png", "/a[1]"
      })
  void findTheFaultInInvalidNames(String name) {
    assertThat(PartNames.fault(name)).isPresent();
  }

  @ParameterizedTest
  @CsvSource({
    "/3D/3dmodel.model, /a/b.png, /a/b.png",
    "/3D/3dmodel.model, b.png, /3D/b.png",
    "/3D/3dmodel.model, ./b.png, /3D/b.png",
    "/3D/3dmodel.model, ../b.png, /b.png",
    "/3D/x/y.model, ../../b.png, /b.png",
    "/, 3D/a.model, /3D/a.model",
    "/, ./3D/../3D/a.model, /3D/a.model",
    "/3D/a.model, b.png#top, /3D/b.png",
    "/3D/a.model, b.png?x=1, /3D/b.png"
  })
  void resolveATargetAgainstTheFolderOfItsSource(String source, String target, String part) {
    assertThat(PartNames.resolve(source, target)).contains(part);
  }

  @ParameterizedTest
  @CsvSource({"/, ../a", "/3D/a.model, ../../a", "/3D/a.model, /../a", "/3D/a.model, x/../../../a"})
  void giveNothingForATargetAboveTheRoot(String source, String target) {
    assertThat(PartNames.resolve(source, target)).isEqualTo(Optional.empty());
  }

  @ParameterizedTest
  @CsvSource({"/, /_rels/.rels", "/a.b, /_rels/a.b.rels", "/3D/a.b, /3D/_rels/a.b.rels"})
  void knowWhereTheRelationshipsOfAPartAre(String source, String relationships) {
    assertThat(PartNames.relationships(source)).isEqualTo(relationships);
    assertThat(PartNames.source(relationships)).isEqualTo(source);
    assertThat(PartNames.isRelationships(relationships)).isTrue();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/a.rels",
        "/_rels",
        "/_rels.rels",
        "/_rels/a.xml",
        "/x_rels/a.rels",
        "/_rels/b/a.rels"
      })
  void takeOtherPartsForWhatTheyAre(String name) {
    assertThat(PartNames.isRelationships(name)).isFalse();
  }

  @Test
  void chooseTheFirstFreeId() {
    assertThat(PartNames.freshId(Set.of())).isEqualTo("rel0");
    assertThat(PartNames.freshId(Set.of("rel0", "rel2"))).isEqualTo("rel1");
  }
}

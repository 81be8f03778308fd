package gable.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gable.geom.Vec3;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import gable.pipeline.FileResult;
import gable.pipeline.Gable;
import gable.pipeline.Settings;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What differs between a file and its result, and between files that have little in common. */
class ComparisonTest {

  private static final Path BRACKET = Path.of("fixtures/parts/bracket.3mf");
  private static final Path PLAIN = Path.of("fixtures/build/no-bore.3mf");

  @TempDir private Path temporary;
  private Path roofed = BRACKET;

  @BeforeEach
  void roof() {
    roofed = temporary.resolve("roofed.3mf");
    FileResult result = Gable.installed().reshape(BRACKET, roofed, Settings.usual());
    assertThat(result).isInstanceOf(FileResult.Changed.class);
  }

  private static Comparison held(Path before, Path after) throws UnreadableException {
    return Comparison.of(before, after, Vec3.Z);
  }

  @Test
  void theEditTurnsOneSurfaceIntoTheOther() throws UnreadableException {
    ObjectPair pair = held(BRACKET, roofed).objects().get(0);
    Mesh made = pair.edit().applied(pair.before().orElseThrow().mesh());
    Mesh wanted = pair.after().orElseThrow().mesh();

    assertThat(HalfEdges.of(made).closed()).isTrue();
    assertThat(made.facetCount()).isEqualTo(wanted.facetCount());
    // derived: places are rounded to 1e-4 mm, over a surface of at most 40,000 square millimetres
    assertThat(made.volume()).isCloseTo(wanted.volume(), within(4.0));
    assertThat(Surfaces.edit(made, wanted).isEmpty()).isTrue();
  }

  @Test
  void onlyTheRoofsLieOnNewFaces() throws UnreadableException {
    ObjectPair pair = held(BRACKET, roofed).objects().get(0);
    Mesh before = pair.before().orElseThrow().mesh();
    Mesh after = pair.edit().applied(before);
    int kept = before.facetCount() - pair.edit().removedCount();

    for (int index = 0; index < pair.edit().facetCount(); index++) {
      Vec3 normal = after.facetNormal(kept + index).unit();
      // derived: roofs at 45 degrees face down by cos 45; the rest of what is new goes along x, y
      boolean roof = Math.abs(normal.z() + Math.sqrt(0.5)) < 1e-3;
      assertThat(pair.edit().onNewFace(index)).as(normal.toString()).isEqualTo(roof);
    }
  }

  @Test
  void theSameFeaturesAreFoundWhicheverFileComesFirst() throws UnreadableException {
    List<FeaturePair> there = held(BRACKET, roofed).features();
    List<FeaturePair> back = held(roofed, BRACKET).features();

    assertThat(there).extracting(FeaturePair::kind).filteredOn(Kind.CHANGED::equals).hasSize(3);
    assertThat(back).extracting(FeaturePair::kind).filteredOn(Kind.CHANGED::equals).hasSize(3);
    assertThat(there).hasSize(7).allMatch(pair -> pair.before().isPresent());
  }

  @Test
  void aPartThatIsInOneFileOnlyIsNamed() throws UnreadableException {
    Path more = Path.of("fixtures/package/unknown-part.3mf");

    assertThat(held(PLAIN, more).parts()).extracting(Value::kind).contains(Kind.ADDED);
    assertThat(held(more, PLAIN).parts()).extracting(Value::kind).contains(Kind.REMOVED);
    assertThat(held(more, more).parts()).allMatch(part -> part.kind() == Kind.SAME);
  }

  @Test
  void metadataAreComparedByTheirPlacesAndNames() throws Exception {
    Path renamed = Files.copy(BRACKET, temporary.resolve("renamed.3mf"));
    try (FileSystem zip = FileSystems.newFileSystem(renamed)) {
      Path model = zip.getPath("/3D/3dmodel.model");
      String text = Files.readString(model);
      Files.writeString(
          model, text.replaceFirst("(<metadata[^>]*>)[^<]*", "$1a &lt;b> &amp; \u0646"));
    }
    Value value = held(BRACKET, renamed).metadata().get(0);

    assertThat(value.kind()).isEqualTo(Kind.CHANGED);
    assertThat(value.name()).startsWith("/3D/3dmodel.model: ");
    assertThat(value.after()).isEqualTo("a <b> & \u0646");
    assertThat(held(BRACKET, renamed).objects()).allMatch(pair -> pair.kind() == Kind.SAME);
  }
}

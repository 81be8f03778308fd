package gable.place;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gable.geom.Vec3;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import gable.opc.Compression;
import gable.opc.Corpus;
import gable.opc.OpcLimits;
import gable.opc.OpcPackage;
import gable.opc.PackageException;
import gable.opc.PackageWriter;
import gable.threemf.Changes;
import gable.threemf.Edits;
import gable.threemf.MeshObject;
import gable.threemf.ModelLimits;
import gable.threemf.ModelObject;
import gable.threemf.ModelPackage;
import gable.threemf.ModelPart;
import gable.threemf.ModelWriter;
import gable.threemf.ObjectEdit;
import gable.threemf.VertexGrid;
import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** Files of others. Sources: trade table, part 6, checks 12 to 15; the index of the corpus. */
class ModelCorpusTest {

  private static Corpus.Entry entry(String ending) {
    return Corpus.entries().stream()
        .filter(entry -> entry.file().getFileName().toString().endsWith(ending))
        .findFirst()
        .orElseThrow();
  }

  private static List<PlacedObject> placed(Corpus.Entry entry) throws Exception {
    try (OpcPackage source = OpcPackage.open(entry.file(), OpcLimits.DEFAULT)) {
      ModelPackage model = ModelPackage.read(source, ModelLimits.USUAL);
      return Placements.of(model, Vec3.Z, ModelLimits.USUAL).placed();
    }
  }

  private static Mesh only(String ending) throws Exception {
    List<PlacedObject> placed = placed(entry(ending));
    assertThat(placed).hasSize(1);
    return placed.get(0).printMesh();
  }

  private static double area(Mesh mesh) {
    double twice = 0;
    for (int facet = 0; facet < mesh.facetCount(); facet++) {
      twice += mesh.facetNormal(facet).norm();
    }
    return twice / 2;
  }

  /** V - E + F of a closed mesh. */
  private static int euler(Mesh mesh) {
    assertThat(HalfEdges.of(mesh).closed()).isTrue();
    return mesh.vertexCount() - 3 * mesh.facetCount() / 2 + mesh.facetCount();
  }

  @Test
  @DisplayName("Check 12: the sample box, exactly")
  void readsTheBox() throws Exception {
    Mesh box = only("samples_core_box.3mf");
    assertThat(box.vertexCount()).isEqualTo(8);
    assertThat(box.facetCount()).isEqualTo(12);
    assertThat(box.volume()).isEqualTo(6000);
    assertThat(area(box)).isEqualTo(2200);
    assertThat(box.box().min()).isEqualTo(Vec3.ZERO);
    assertThat(box.box().max()).isEqualTo(new Vec3(10, 20, 30));
  }

  @Test
  @DisplayName("Check 13: the sample cylinder")
  void readsTheCylinder() throws Exception {
    Mesh cylinder = only("samples_core_cylinder.3mf");
    assertThat(cylinder.vertexCount()).isEqualTo(46);
    assertThat(cylinder.facetCount()).isEqualTo(88);
    assertThat(cylinder.volume()).isCloseTo(6198.101851, within(1e-6));
    assertThat(area(cylinder)).isCloseTo(1872.179307, within(1e-6));
    assertThat(euler(cylinder)).isEqualTo(2);
  }

  @Test
  @DisplayName("Check 14: the sample sphere and torus")
  void readsTheSphereAndTheTorus() throws Exception {
    Mesh sphere = only("samples_core_sphere.3mf");
    assertThat(List.of(sphere.vertexCount(), sphere.facetCount())).containsExactly(1442, 2880);
    assertThat(sphere.volume()).isCloseTo(4172.802690, within(1e-6));
    assertThat(euler(sphere)).isEqualTo(2);
    Mesh torus = only("samples_core_torus.3mf");
    assertThat(List.of(torus.vertexCount(), torus.facetCount())).containsExactly(1100, 2200);
    assertThat(torus.volume()).isCloseTo(776.830795, within(1e-6));
    assertThat(euler(torus)).isZero();
  }

  @Test
  @DisplayName("Notes 9: the wheels of the wagon stand in four places and lie in one")
  void tellsStandingWheelsFromTheLyingOne() throws Exception {
    List<PlacedObject> wagon = placed(entry("BuildItems_WagonWithWheels.3mf"));
    assertThat(wagon).hasSize(3);
    assertThat(wagon).extracting(placed -> placed.uses().size()).containsExactly(1, 4, 1);
    assertThat(wagon.get(1).object()).isSameAs(wagon.get(2).object());
  }

  @Test
  @DisplayName("Index: no file that a conforming reader takes is rejected, none crashes")
  void readsEveryFileThatAConformingReaderTakes() {
    List<String> wrong = new ArrayList<>();
    for (Corpus.Entry entry : Corpus.entries()) {
      try {
        placed(entry);
      } catch (PackageException e) {
        if (!entry.verdict().equals("fail")) {
          wrong.add(entry + ": " + e.getMessage());
        }
      } catch (Exception e) {
        wrong.add(entry + ": " + e);
      }
    }
    assertThat(wrong).isEmpty();
  }

  @Test
  @DisplayName("Index: what an editor refuses has no mesh that may be edited")
  void locksWhatAnEditorRefuses() throws Exception {
    List<String> wrong = new ArrayList<>();
    for (Corpus.Entry entry : Corpus.entries()) {
      if (entry.verdict().equals("fail") || !entry.editor().startsWith("refuse")) {
        continue;
      }
      boolean partly = entry.editor().contains("edit the other");
      List<PlacedObject> placed = placed(entry);
      long free = placed.stream().filter(each -> each.object().locked().isEmpty()).count();
      if (partly ? free != 1 || placed.size() == 1 : free > 0) {
        wrong.add(entry + ": " + free + " of " + placed.size() + " may be edited");
      }
    }
    assertThat(wrong).isEmpty();
  }

  @Test
  @DisplayName("Index: what may be edited can be, and what is not edited keeps text and number")
  void editsWhatMayBeEdited() throws Exception {
    int edited = 0;
    for (Corpus.Entry entry : Corpus.entries()) {
      if (!entry.verdict().equals("fail") && entry.editor().startsWith("edit")) {
        edited += edited(entry);
      }
    }
    assertThat(edited).as("edited objects").isGreaterThan(40);
  }

  private static int edited(Corpus.Entry entry) throws Exception {
    int count = 0;
    try (OpcPackage source = OpcPackage.open(entry.file(), OpcLimits.DEFAULT)) {
      ModelPackage model = ModelPackage.read(source, ModelLimits.USUAL);
      List<ObjectEdit> edits = new ArrayList<>();
      for (PlacedObject placed : Placements.of(model, Vec3.Z, ModelLimits.USUAL).placed()) {
        if (placed.object().locked().isEmpty()) {
          edits.add(Edits.split(placed.object(), 3, placed.grid(), placed.uses()));
          count++;
        }
      }
      Changes changes = ModelWriter.splice(model, edits);
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      PackageWriter.write(source, changes.packageEdit(), Compression.serial(6), out);
      try (OpcPackage result = OpcPackage.open(out.toByteArray(), OpcLimits.DEFAULT)) {
        ModelPackage again = ModelPackage.read(result, ModelLimits.USUAL);
        compare(entry, model, again, changes.clones().size());
        assertThat(Placements.of(again, Vec3.Z, ModelLimits.USUAL).placed()).hasSize(count);
      }
    }
    return count;
  }

  private static void compare(
      Corpus.Entry entry, ModelPackage before, ModelPackage after, int clones) {
    int objects = 0;
    for (ModelPart part : before.parts()) {
      ModelPart other = after.part(part.name()).orElseThrow();
      objects += other.objects().size() - part.objects().size();
      for (ModelObject object : part.objects().values()) {
        if (object instanceof MeshObject mesh && mesh.problem().isEmpty()) {
          ModelObject same = other.object(object.id()).orElseThrow();
          assertThat(same.problem()).as(entry + " " + same).isEmpty();
          checkSame(mesh.mesh(), ((MeshObject) same).mesh());
        }
      }
    }
    assertThat(objects).as(entry + ": clones").isEqualTo(clones);
  }

  private static void checkSame(Mesh before, Mesh after) {
    boolean changed = after.facetCount() != before.facetCount();
    assertThat(after.facetCount()).isEqualTo(before.facetCount() + (changed ? 2 : 0));
    assertThat(after.vertexCount()).isEqualTo(before.vertexCount() + (changed ? 1 : 0));
    for (int vertex = 0; vertex < before.vertexCount(); vertex++) {
      assertThat(after.point(vertex)).isEqualTo(before.point(vertex));
    }
    for (int facet = 0; facet < before.facetCount(); facet++) {
      if (facet != 3 || !changed) {
        for (int k = 0; k < 3; k++) {
          assertThat(after.corner(facet, k)).isEqualTo(before.corner(facet, k));
        }
      }
    }
  }

  @Test
  void knowsTheGridOfAnInchPart() throws Exception {
    assertThat(placed(entry("3mfbase11_AdjMount.3mf")).get(0).grid()).isEqualTo(new VertexGrid(8));
  }
}

package gable.threemf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import gable.opc.PackageException;
import gable.opc.Problem;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Meshes that can be read and must not be changed. B beam lattice, BO boolean operations, S slice,
 * P production, V volumetric extension; notes 18 is this project's table of an editor's duties.
 */
class LocksTest {

  private static final String NAMESPACES =
      "xmlns:b=\"http://schemas.microsoft.com/3dmanufacturing/beamlattice/2017/02\""
          + " xmlns:s=\"http://schemas.microsoft.com/3dmanufacturing/slice/2015/07\""
          + " xmlns:p=\"http://schemas.microsoft.com/3dmanufacturing/production/2015/06\""
          + " xmlns:pa=\"http://schemas.microsoft.com/3dmanufacturing/production/alternatives/2021/04\""
          + " xmlns:bo=\"http://schemas.3mf.io/3dmanufacturing/booleanoperations/2023/07\""
          + " xmlns:v=\"http://schemas.3mf.io/3dmanufacturing/volumetric/2022/01\""
          + " xmlns:i=\"http://schemas.3mf.io/3dmanufacturing/implicit/2023/12\""
          + " xmlns:x=\"urn:x\"";

  private static String model(String resources) {
    return Models.model(NAMESPACES, resources, "<item objectid=\"1\"/>");
  }

  private static Optional<String> lock(ModelPackage model, int id) {
    return ((MeshObject) model.root().object(id).orElseThrow()).locked().map(Problem::code);
  }

  private static Optional<String> lock(String resources, int id) throws PackageException {
    return lock(Models.open(model(resources)), id);
  }

  private static String inMesh(String element) {
    return Models.box(1).replace("</mesh>", element + "</mesh>");
  }

  private static String inObject(String element) {
    return Models.box(1).replace("</object>", element + "</object>");
  }

  @Test
  void locksNothingOfAPlainModel() throws PackageException {
    assertThat(lock(Models.box(1), 1)).isEmpty();
    assertThat(lock(inObject("<x:note/>"), 1)).isEmpty();
    assertThat(lock(Models.box(1) + "<x:field id=\"9\"><x:mesh>1</x:mesh></x:field>", 1)).isEmpty();
  }

  @Test
  @DisplayName("B 2, 2.1.1: beams hang on the vertices of their mesh")
  void locksAMeshWithALattice() throws PackageException {
    String lattice =
        "<b:beamlattice radius=\"1\" minlength=\"1\"><b:beams><b:beam v1=\"0\" v2=\"1\"/></b:beams>"
            + "</b:beamlattice>";
    assertThat(lock(inMesh(lattice), 1)).contains("object-lattice");
    assertThat(lock(inMesh(lattice) + Models.box(2), 2)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"clippingmesh", "representationmesh"})
  @DisplayName("B 2.1: a lattice is clipped by, or shown as, another mesh")
  void locksTheMeshesThatALatticeNames(String attribute) throws PackageException {
    String lattice = "<b:beamlattice radius=\"1\" minlength=\"1\" " + attribute + "=\"2\"/>";
    assertThat(lock(inMesh(lattice) + Models.box(2) + Models.box(3), 2))
        .contains("object-referred");
    assertThat(lock(Models.box(2) + Models.box(3) + inMesh(lattice), 3)).isEmpty();
  }

  @Test
  @DisplayName("S 1, 2: slices carry the shape, or go stale")
  void locksSlicedMeshes() throws PackageException {
    for (String attribute : List.of("s:slicestackid=\"9\"", "s:meshresolution=\"lowres\"")) {
      String sliced = Models.box(1).replace("id=\"1\"", "id=\"1\" " + attribute);
      assertThat(lock(sliced, 1)).contains("object-slices");
    }
    String full = Models.box(1).replace("id=\"1\"", "id=\"1\" s:meshresolution=\"fullres\"");
    assertThat(lock(full, 1)).isEmpty();
  }

  @Test
  @DisplayName("S 2: a stack on components outranks the meshes below, however deep")
  void locksMeshesBelowASlicedObject() throws PackageException {
    String inner = "<object id=\"3\"><components><component objectid=\"1\"/></components></object>";
    String outer =
        "<object id=\"4\" s:slicestackid=\"9\"><components><component objectid=\"3\"/></components>"
            + "</object>";
    ModelPackage model = Models.open(model(Models.box(1) + Models.box(2) + inner + outer));
    assertThat(lock(model, 1)).contains("object-slices");
    assertThat(lock(model, 2)).isEmpty();
  }

  @Test
  @DisplayName("C 2.3.3.1, notes 18: unknown elements in a mesh may hold numbers of triangles")
  void locksAMeshWithUnknownElements() throws PackageException {
    assertThat(lock(inMesh("<x:welds><x:weld at=\"3\"/></x:welds>"), 1))
        .contains("mesh-unknown-element");
    String between = Models.box(1).replaceFirst("<triangle ", "<x:seam/><triangle ");
    assertThat(lock(between, 1)).contains("mesh-unknown-element");
    String within = Models.box(1).replaceFirst("<vertex([^/]*)/>", "<vertex$1><x:n/></vertex>");
    assertThat(lock(within, 1)).contains("mesh-unknown-element");
    assertThat(lock(Models.box(2) + inMesh("<x:a/>"), 2)).isEmpty();
  }

  @Test
  @DisplayName("V 5.2: a volume is a field that the mesh clips, which may be edited")
  void leavesAMeshWithAVolumeFree() throws PackageException {
    assertThat(lock(inMesh("<v:volumedata volumeid=\"9\"/>"), 1)).isEmpty();
  }

  @Test
  @DisplayName("V 4.1.1: the mesh of a level set only bounds it")
  void locksTheMeshOfALevelSet() throws PackageException {
    String level = "<object id=\"2\"><v:levelset functionid=\"9\" meshid=\"1\"/></object>";
    ModelPackage model = Models.open(model(Models.box(1) + level));
    assertThat(lock(model, 1)).contains("object-referred");
    assertThat(model.root().object(2).orElseThrow().problem().map(Problem::code))
        .contains("object-shape");
  }

  @Test
  @DisplayName("V II.5: a mesh that a function reads shapes something else")
  void locksAMeshThatAFunctionReads() throws PackageException {
    String function =
        "<i:implicitfunction id=\"9\"><i:mesh identifier=\"a\" objectid=\"1\"/>"
            + "<i:resourceid value=\"2\"/></i:implicitfunction>";
    ModelPackage model =
        Models.open(model(Models.box(1) + Models.box(2) + Models.box(3) + function));
    assertThat(lock(model, 1)).contains("object-referred");
    assertThat(lock(model, 2)).contains("object-referred");
    assertThat(lock(model, 3)).isEmpty();
  }

  @Test
  @DisplayName("BO 2.1.1: base and operands of a boolean shape are plain meshes of it")
  void locksTheOperandsOfABooleanShape() throws PackageException {
    String shape =
        "<object id=\"4\"><bo:booleanshape objectid=\"1\" operation=\"difference\">"
            + "<bo:boolean objectid=\"2\"/></bo:booleanshape></object>";
    ModelPackage model = Models.open(model(Models.box(1) + Models.box(2) + Models.box(3) + shape));
    assertThat(lock(model, 1)).contains("object-referred");
    assertThat(lock(model, 2)).contains("object-referred");
    assertThat(lock(model, 3)).isEmpty();
    assertThat(model.root().object(4).orElseThrow().problem()).isPresent();
  }

  @Test
  @DisplayName("P 4.2.2: alternatives stand for one object and must agree, in whichever part")
  void locksAlternatives() throws PackageException {
    String alternatives =
        "<pa:alternatives><pa:alternative objectid=\"2\" UUID=\"u\" modelresolution=\"lowres\"/>"
            + "<pa:alternative objectid=\"7\" path=\"/3D/a.model\" UUID=\"w\"/></pa:alternatives>";
    String root =
        Models.model(
            NAMESPACES,
            inObject(alternatives) + Models.box(2) + Models.box(3),
            "<item objectid=\"1\"/><item objectid=\"8\" p:path=\"/3D/a.model\"/>");
    String part = Models.model(Models.box(7) + Models.box(8), "");
    ModelPackage model = Models.open(root, Map.of("/3D/a.model", part));
    assertThat(lock(model, 1)).contains("object-referred");
    assertThat(lock(model, 2)).contains("object-referred");
    assertThat(lock(model, 3)).isEmpty();
    ModelPart other = model.part("/3D/a.model").orElseThrow();
    assertThat(((MeshObject) other.object(7).orElseThrow()).locked()).isPresent();
    assertThat(((MeshObject) other.object(8).orElseThrow()).locked()).isEmpty();
  }

  @Test
  @DisplayName("C 3.4: where the root part is refused, so is what it uses of other parts")
  void refusesAllPartsWithTheRoot() throws PackageException {
    String root =
        Models.model(
            NAMESPACES + " requiredextensions=\"x\"",
            "",
            "<item objectid=\"1\" p:path=\"/3D/a.model\"/>");
    ModelPackage model = Models.open(root, Map.of("/3D/a.model", Models.model(Models.box(1), "")));
    ModelObject object = model.part("/3D/a.model").orElseThrow().object(1).orElseThrow();
    assertThat(object.problem().map(Problem::code)).contains("extension-required");
  }

  @Test
  @DisplayName("P 2, 3: a path is for the root part, to a part that it is related to")
  void namesPathsThatLeadNowhere() throws PackageException {
    String build = "<item objectid=\"1\" p:path=\"/3D/b.model\"/><item objectid=\"1\"/>";
    ModelPackage model = Models.open(Models.model(NAMESPACES, Models.box(1), build));
    assertThat(model.problems()).extracting(Problem::code).containsExactly("production-path");
    String inner =
        "<object id=\"2\"><components><component objectid=\"1\" p:path=\"/3D/3dmodel.model\"/>"
            + "</components></object>";
    String root = Models.model(NAMESPACES, Models.box(1), "<item objectid=\"2\" p:path=\"/a\"/>");
    ModelPackage nested = Models.open(root, Map.of("/a", Models.model(NAMESPACES, inner, "")));
    ModelObject object = nested.part("/a").orElseThrow().object(2).orElseThrow();
    assertThat(object.problem().map(Problem::code)).contains("production-path");
  }

  @Test
  void refusesToWriteAnEditOfALockedMesh() throws PackageException {
    ModelPackage model = Models.open(model(inMesh("<x:a/>")));
    ObjectEdit edit = Edits.split((MeshObject) model.root().object(1).orElseThrow(), 3);
    assertThatThrownBy(() -> ModelWriter.splice(model, List.of(edit)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("mesh-unknown".substring(0, 4));
  }
}

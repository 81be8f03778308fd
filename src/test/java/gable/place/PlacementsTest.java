package gable.place;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gable.geom.Affine3;
import gable.geom.Vec3;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import gable.mesh.MeshEdit;
import gable.opc.PackageException;
import gable.threemf.ModelLimits;
import gable.threemf.ModelPackage;
import gable.threemf.Models;
import gable.threemf.Use;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** C is the 3MF core specification 1.4. */
class PlacementsTest {

  private static Placements placements(String resources, String build) throws PackageException {
    return placements(Models.open(Models.model(resources, build)), Vec3.Z);
  }

  private static Placements placements(ModelPackage model, Vec3 up) {
    return Placements.of(model, up, ModelLimits.USUAL);
  }

  private static String item(int id, String transform) {
    return "<item objectid=\"" + id + "\" transform=\"" + transform + "\"/>";
  }

  private static String group(int id, String... components) {
    return "<object id=\""
        + id
        + "\"><components>"
        + String.join("", components)
        + "</components></object>";
  }

  private static String component(int id, String transform) {
    return "<component objectid=\"" + id + "\" transform=\"" + transform + "\"/>";
  }

  private static PlacedObject only(Placements placements) {
    assertThat(placements.problems()).isEmpty();
    assertThat(placements.placed()).hasSize(1);
    return placements.placed().get(0);
  }

  @Test
  @DisplayName("C 3.3: points are row vectors (check 16)")
  void placesAPointAsTheStandardSays() throws PackageException {
    PlacedObject placed = only(placements(Models.box(1), item(1, "1 0 0 0 0 1 0 -1 0 5 6 7")));
    assertThat(placed.toPrint().apply(new Vec3(1, 2, 3))).isEqualTo(new Vec3(6, 3, 9));
    Affine3 other = new Affine3(0, 1, 0, -1, 0, 0, 0, 0, 1, 10, 20, 30);
    PlacedObject second = only(placements(Models.box(1), item(1, "0 1 0 -1 0 0 0 0 1 10 20 30")));
    assertThat(second.toPrint()).isEqualTo(other);
    assertThat(second.toPrint().apply(Vec3.X)).isEqualTo(new Vec3(10, 21, 30));
  }

  @Test
  @DisplayName("C 3.3: a mirrored placement keeps the sign of the volume (check 16)")
  void keepsTheOutsideOutsideInAMirror() throws PackageException {
    PlacedObject placed = only(placements(Models.box(1), item(1, "-1 0 0 0 1 0 0 0 1 0 0 0")));
    assertThat(placed.mirrored()).isTrue();
    assertThat(placed.printMesh().volume()).isEqualTo(6000);
    assertThat(HalfEdges.of(placed.printMesh()).closed()).isTrue();
  }

  @Test
  @DisplayName("C 3.4.3.1, 4.2.1: the innermost transform comes first")
  void nestsFromTheInsideOut() throws PackageException {
    String turn = "0 1 0 -1 0 0 0 0 1 0 0 0"; // a quarter about z
    String shift = "1 0 0 0 1 0 0 0 1 100 0 0";
    String resources = Models.box(1) + group(2, component(1, shift)) + group(3, component(2, turn));
    PlacedObject placed = only(placements(resources, item(3, "1 0 0 0 1 0 0 0 1 0 0 5")));
    // (0,0,0) -> (100,0,0) -> (0,100,0) -> (0,100,5)
    assertThat(placed.toPrint().apply(Vec3.ZERO)).isEqualTo(new Vec3(0, 100, 5));
    assertThat(placed.uses().get(0).words()).isEqualTo("item 0/component 0/component 0");
  }

  @ParameterizedTest
  @CsvSource({"micron, 0.001", "inch, 25.4", "foot, 304.8", "meter, 1000", "centimeter, 10"})
  @DisplayName("C 3.4: shape and place are in the unit of the model (check 17)")
  void scalesShapeAndPlaceByTheUnit(String unit, double scale) throws PackageException {
    String text =
        Models.model("unit=\"" + unit + '"', Models.box(1), item(1, "1 0 0 0 1 0 0 0 1 1 2 3"));
    PlacedObject placed = only(placements(Models.open(text), Vec3.Z));
    Vec3 far = placed.toPrint().apply(new Vec3(10, 20, 30));
    assertThat(far.distance(new Vec3(11, 22, 33).times(scale))).isLessThan(1e-12 * scale * 33);
  }

  @Test
  @DisplayName("P 3: an object of another part is scaled by that part's unit")
  void scalesTheShapeByTheUnitOfItsPart() throws PackageException {
    String root =
        Models.model(
            "unit=\"inch\" xmlns:p=\"http://schemas.microsoft.com/3dmanufacturing/production/2015/06\"",
            "",
            "<item objectid=\"1\" p:path=\"/3D/a.model\" transform=\"1 0 0 0 1 0 0 0 1 1 0 0\"/>");
    String part = Models.model("unit=\"micron\"", Models.box(1), "");
    ModelPackage model = Models.open(root, Map.of("/3D/a.model", part));
    PlacedObject placed = only(placements(model, Vec3.Z));
    assertThat(placed.object().part()).isEqualTo("/3D/a.model");
    Vec3 far = placed.toPrint().apply(new Vec3(10, 20, 30));
    assertThat(far.distance(new Vec3(25.41, 0.02, 0.03))).isLessThan(1e-12);
  }

  @Test
  void laysTheGivenDirectionUp() throws PackageException {
    ModelPackage model = Models.open(Models.model(Models.box(1), "<item objectid=\"1\"/>"));
    Mesh mesh = only(placements(model, Vec3.X)).printMesh();
    assertThat(mesh.box().max().z() - mesh.box().min().z()).isCloseTo(10, within(1e-12));
    Mesh upsideDown = only(placements(model, Vec3.Z.times(-2))).printMesh();
    assertThat(upsideDown.volume()).isEqualTo(6000);
    assertThat(upsideDown.box().min().z()).isEqualTo(-30);
  }

  @Test
  @DisplayName("Decision: placements that differ by a shift and a turn about z are one")
  void joinsUsesThatDifferByAShiftAndATurnAboutTheVertical() throws PackageException {
    StringBuilder build = new StringBuilder(item(1, "1 0 0 0 0 1 0 -1 0 0 0 0"));
    for (int degrees = 0; degrees < 360; degrees += 37) {
      Affine3 turn = new Affine3(1, 0, 0, 0, 0, 1, 0, -1, 0, 0, 0, 0).then(about(degrees));
      build.append(item(1, text(turn)));
    }
    PlacedObject placed = only(placements(Models.box(1), build.toString()));
    assertThat(placed.uses())
        .extracting(Use::item)
        .containsExactly(0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10);
  }

  @ParameterizedTest
  @CsvSource({
    "1 0 0 0 0 1 0 -1 0 0 0 0, a quarter about x",
    "-1 0 0 0 1 0 0 0 1 0 0 0, a mirror",
    "1 0 0 0 1 0 0 0 -1 0 0 0, a mirror upside down",
    "1 0 0 0 -1 0 0 0 -1 0 0 0, upside down",
    "2 0 0 0 2 0 0 0 2 0 0 0, a scale",
    "1 0 0 0 1 0 0 0 1.0001 0 0 0, a stretch upwards",
    "1 0 0 0.0001 1 0 0 0 1 0 0 0, a shear in the plane",
    "1 0 0.00001 0 1 0 0 0 1 0 0 0, a tilt of two seconds"
  })
  void keepsUsesApartThatDifferOtherwise(String transform, String what) throws PackageException {
    Placements placements =
        placements(Models.box(1), "<item objectid=\"1\"/>" + item(1, transform));
    assertThat(placements.placed()).as(what).hasSize(2);
    assertThat(placements.placed().get(1).uses().get(0).item()).isEqualTo(1);
  }

  @Test
  void joinsTheUsesOfAComponentThatIsUsedTwice() throws PackageException {
    String shift = "1 0 0 0 1 0 0 0 1 50 0 0";
    String resources = Models.box(1) + group(2, "<component objectid=\"1\"/>", component(1, shift));
    Placements placements = placements(resources, "<item objectid=\"2\"/>" + item(2, shift));
    assertThat(only(placements).uses())
        .extracting(Use::words)
        .containsExactly(
            "item 0/component 0", "item 0/component 1", "item 1/component 0", "item 1/component 1");
  }

  @Test
  @DisplayName("C 3.4.3: only objects that the build reaches are printed")
  void namesWhatIsNotPrinted() throws PackageException {
    Placements placements = placements(Models.box(1) + Models.box(2), "<item objectid=\"2\"/>");
    assertThat(only(placements).object().id()).isEqualTo(2);
    assertThat(placements.unplaced()).hasSize(1);
    assertThat(placements.unplaced().get(0).object().id()).isEqualTo(1);
    assertThat(placements.unplaced().get(0).reason().code()).isEqualTo("object-not-printed");
  }

  @ParameterizedTest
  @CsvSource({
    "support, object-not-model",
    "solidsupport, object-not-model",
    "surface, object-not-model",
    "other, object-other-built",
    "mystery, object-type"
  })
  @DisplayName("C 4: only objects of type model are reshaped")
  void namesObjectsOfOtherTypes(String type, String code) throws PackageException {
    String object = Models.box(1).replace("type=\"model\"", "type=\"" + type + '"');
    Placements placements = placements(object, "<item objectid=\"1\"/>");
    assertThat(placements.placed()).isEmpty();
    assertThat(placements.unplaced()).extracting(u -> u.reason().code()).containsExactly(code);
  }

  @Test
  @DisplayName("C 3.3: a transform without an inverse is refused, other uses go on")
  void refusesASingularPlacement() throws PackageException {
    String flat = item(1, "1 0 0 0 1 0 0 0 1e-7 0 0 0");
    Placements placements = placements(Models.box(1), flat + "<item objectid=\"1\"/>");
    assertThat(only(placements).uses()).extracting(Use::item).containsExactly(1);
    assertThat(placements.unplaced().get(0).reason().code()).isEqualTo("transform-singular");
  }

  @Test
  @DisplayName("C 4.2.1: an object that is made of itself is an error, others go on")
  void refusesCycles() throws PackageException {
    String resources =
        Models.box(1)
            + group(2, "<component objectid=\"3\"/>")
            + group(3, "<component objectid=\"1\"/>", "<component objectid=\"2\"/>")
            + group(4, "<component objectid=\"4\"/>");
    Placements placements =
        placements(
            resources,
            "<item objectid=\"2\"/><item objectid=\"3\"/><item objectid=\"4\"/><item objectid=\"1\"/>");
    assertThat(placements.problems())
        .extracting(p -> p.code())
        .containsExactly("component-cycle", "component-cycle", "component-cycle");
    assertThat(placements.placed()).hasSize(1);
    assertThat(placements.placed().get(0).uses()).extracting(Use::item).containsExactly(3);
  }

  @Test
  @DisplayName("C 3.4: components are defined before the object that is made of them")
  void refusesComponentsThatAreDefinedFurtherDown() throws PackageException {
    String resources =
        Models.box(1)
            + group(2, "<component objectid=\"3\"/>")
            + Models.box(3)
            + group(4, "<component objectid=\"3\"/>");
    Placements placements = placements(resources, "<item objectid=\"2\"/><item objectid=\"4\"/>");
    assertThat(placements.problems()).extracting(p -> p.code()).containsExactly("component-order");
    assertThat(placements.placed()).hasSize(1);
    assertThat(placements.placed().get(0).uses()).extracting(Use::item).containsExactly(1);
  }

  @Test
  @DisplayName("Limit: 1e6 mm on the plate; the mesh is left out wherever it is used")
  void refusesMeshesThatReachTooFarOnThePlate() throws PackageException {
    for (String far :
        new String[] {
          "1 0 0 0 1 0 0 0 1 999991 0 0",
          "1e5 0 0 0 1e5 0 0 0 1e5 0 0 0",
          "1e300 0 0 0 1e300 0 0 0 1e300 0 0 0"
        }) {
      Placements placements =
          placements(
              Models.box(1) + Models.box(2),
              "<item objectid=\"1\"/>" + item(1, far) + "<item objectid=\"2\"/>");
      assertThat(only(placements).object().id()).isEqualTo(2);
      assertThat(placements.unplaced())
          .extracting(u -> u.reason().code())
          .containsExactly("coordinate-range");
    }
    assertThat(placements(Models.box(1), item(1, "1 0 0 0 1 0 0 0 1 999990 0 0")).placed())
        .hasSize(1);
  }

  @Test
  @DisplayName("Limit: 1,000 directions of one mesh, and 50 million triangles in all directions")
  void refusesMeshesThatLieInEndlesslyManyDirections() throws PackageException {
    StringBuilder build = new StringBuilder();
    for (int k = 0; k < 1_001; k++) {
      build.append(item(1, "1 0 " + k / 1000.0 + " 0 1 0 0 0 1 0 0 0"));
    }
    Placements placements = placements(Models.box(1), build.toString());
    assertThat(placements.placed()).isEmpty();
    assertThat(placements.unplaced())
        .extracting(u -> u.reason().code())
        .containsExactly("object-ways");

    ModelPackage model = Models.open(Models.model(Models.box(1), item(1, FLAT) + item(1, TILTED)));
    ModelLimits few = new ModelLimits(23, 100, 1e6, 64, 100);
    assertThat(Placements.of(model, Vec3.Z, few).unplaced())
        .extracting(u -> u.reason().code())
        .containsExactly("mesh-count");
    assertThat(Placements.of(model, Vec3.Z, ModelLimits.USUAL).placed()).hasSize(2);
  }

  private static final String FLAT = "1 0 0 0 1 0 0 0 1 0 0 0";
  private static final String TILTED = "1 0 0.5 0 1 0 0 0 1 0 0 0";

  @Test
  @DisplayName("C 3.4.3.1: an item or component of an object that does not exist is an error")
  void refusesReferencesThatLeadNowhere() throws PackageException {
    String resources = Models.box(1) + group(2, "<component objectid=\"9\"/>");
    String build =
        "<item objectid=\"7\"/><item objectid=\"2\"/><item objectid=\"1\"/>"
            + "<item objectid=\"x\"/><item/><item objectid=\"1\" transform=\"1 2 3\"/>";
    ModelPackage model = Models.open(Models.model(resources, build));
    Placements placements = placements(model, Vec3.Z);
    assertThat(placements.problems())
        .extracting(p -> p.code())
        .containsExactly("object-reference", "object-reference");
    assertThat(model.problems())
        .extracting(p -> p.code())
        .containsExactly("object-reference", "object-reference", "transform");
    assertThat(placements.placed()).hasSize(1);
  }

  @Test
  @DisplayName("Limit: components may nest 64 deep, however many there are")
  void refusesComponentsThatNestTooDeeply() throws PackageException {
    StringBuilder resources = new StringBuilder(Models.box(1));
    for (int id = 2; id <= 20_000; id++) {
      resources.append(group(id, "<component objectid=\"" + (id - 1) + "\"/>"));
    }
    String build = "<item objectid=\"64\"/><item objectid=\"65\"/><item objectid=\"20000\"/>";
    Placements placements = placements(resources.toString(), build);
    assertThat(placements.problems())
        .extracting(p -> p.code())
        .containsExactly("component-depth", "component-depth");
    assertThat(placements.placed()).hasSize(1);
  }

  @Test
  @DisplayName("Limit: 100,000 meshes on the plate, counted before anything is expanded")
  void refusesComponentsThatMultiplyBeyondMeasure() throws PackageException {
    StringBuilder resources = new StringBuilder(Models.box(1));
    for (int id = 2; id <= 60; id++) {
      String half = "<component objectid=\"" + (id - 1) + "\"/>";
      resources.append(group(id, half, half));
    }
    Placements placements =
        placements(resources.toString(), "<item objectid=\"60\"/><item objectid=\"17\"/>");
    assertThat(placements.problems()).extracting(p -> p.code()).contains("component-instances");
  }

  @Test
  void bringsAnEditOfAMirroredAndScaledUseBackToTheObject() throws PackageException {
    PlacedObject placed = only(placements(Models.box(1), item(1, "0 2 0 2 0 0 0 0 2 7 8 9")));
    assertThat(placed.mirrored()).isTrue();
    Mesh print = placed.printMesh();
    Vec3 middle = placed.printGrid().apply(placed.toPrint().apply(new Vec3(1.0 / 3, 2, 30)));
    int[] corners = {print.corner(2, 0), print.corner(2, 1), print.vertexCount()};
    MeshEdit edit =
        new MeshEdit(
            new int[] {2},
            new double[] {middle.x(), middle.y(), middle.z()},
            corners,
            new int[] {2},
            new boolean[1]);
    MeshEdit object = placed.toObject(edit);
    assertThat(List.of(object.coordinate(0, 0), object.coordinate(0, 1), object.coordinate(0, 2)))
        .containsExactly(0.3333333, 2.0, 30.0);
    Mesh mesh = placed.object().mesh();
    assertThat(object.corner(0, 0)).isEqualTo(mesh.corner(2, 0));
    assertThat(object.corner(0, 2)).isEqualTo(mesh.corner(2, 2));
    assertThat(object.corner(0, 1)).isEqualTo(mesh.vertexCount());
  }

  private static Affine3 about(double degrees) {
    double c = Math.cos(Math.toRadians(degrees));
    double s = Math.sin(Math.toRadians(degrees));
    return new Affine3(c, s, 0, -s, c, 0, 0, 0, 1, degrees, -degrees, 0);
  }

  private static String text(Affine3 map) {
    double[] m = {
      map.m00(), map.m01(), map.m02(), map.m10(), map.m11(), map.m12(), map.m20(), map.m21(),
      map.m22(), map.m30(), map.m31(), map.m32()
    };
    StringBuilder text = new StringBuilder();
    for (double value : m) {
      text.append(String.format(Locale.ROOT, "%.7f ", value));
    }
    return text.toString().strip();
  }
}

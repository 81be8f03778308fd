package gable.threemf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import gable.geom.Vec3;
import gable.mesh.Aside;
import gable.mesh.Mesh;
import gable.opc.PackageException;
import gable.opc.Place;
import gable.opc.Problem;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** C is the 3MF core specification 1.4. */
class ModelPartTest {

  private static final String ITEM = "<item objectid=\"1\"/>";

  private static MeshObject only(String text) throws PackageException {
    return (MeshObject) Models.part(text).object(1).orElseThrow();
  }

  private static MeshObject mesh(String vertices, String triangles) throws PackageException {
    return only(
        Models.model("<object id=\"1\">" + Models.mesh(vertices, triangles) + "</object>", ITEM));
  }

  private static void assertIsBox(MeshObject object) {
    assertThat(object.problem()).isEmpty();
    Mesh mesh = object.mesh();
    assertThat(mesh.vertexCount()).isEqualTo(8);
    assertThat(mesh.facetCount()).isEqualTo(12);
    assertThat(mesh.volume()).isEqualTo(6000);
    assertThat(mesh.point(6)).isEqualTo(new Vec3(10, 20, 30));
  }

  @Test
  void readsABox() throws PackageException {
    assertIsBox(only(Models.model(Models.box(1), ITEM)));
  }

  @Test
  void readsTheSameInEverySpellingThatXmlAllows() throws PackageException {
    String vertices = Models.BOX_VERTICES;
    String triangles = Models.boxTriangles("");
    String[] spellings = {
      vertices.replace("\"", "'"),
      vertices.replace("/>", "  />\r\n\t"),
      vertices.replace("/>", "></vertex>"),
      vertices.replace("<vertex x", "<!-- <vertex/> --><vertex x"),
      vertices.replace("x=\"10\"", "x=\"&#49;0\""),
      vertices.replace("x=\"10\"", "x=\" 10 \""),
      vertices.replace("x=\"10\" y=\"20\"", "y=\"20\" x=\"1e1\""),
      vertices.replace("<vertex", "<c:vertex xmlns:c=\"" + Names.CORE + "\""),
      vertices.replace("<vertex", "<vertex xmlns:v=\"urn:v\" v:weight=\"1\""),
      "<?pi <vertex x='1'?>" + vertices + "<![CDATA[ ]]>",
    };
    for (String spelling : spellings) {
      assertThat(spelling).isNotEqualTo(vertices);
      assertIsBox(mesh(spelling, triangles));
    }
  }

  @Test
  void readsTrianglesTheSameInEverySpelling() throws PackageException {
    String triangles = Models.boxTriangles("");
    String[] spellings = {
      triangles.replace("v1=\"3\"", "v1=\"+3\""),
      triangles.replace("v1=\"3\"", "v1=\"03\""),
      triangles.replace("v1=\"3\"", "v1=\"0000000000003\""),
      triangles.replace("<triangle", "\n<!-- x -->\n<triangle"),
      triangles.replace("/>", " p1=\"0\" pid=\"5\" />"),
      triangles.replace("/>", "> </triangle>"),
    };
    for (String spelling : spellings) {
      assertThat(spelling).isNotEqualTo(triangles);
      assertIsBox(mesh(Models.BOX_VERTICES, spelling));
    }
  }

  @Test
  void knowsTheByteOfEveryTriangleBehindTextThatIsNotAscii() throws PackageException {
    String text =
        "\uFEFF"
            + Models.model(
                    "<!-- äöü € 𝄞 <mesh><vertices><vertex/></vertices></mesh> -->\r\n"
                        + Models.box(1).replace("<triangle ", "\r\n  <triangle "),
                    ITEM)
                .replace("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n", "");
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    MeshObject object =
        (MeshObject)
            ModelPart.read("/m", bytes, ModelLimits.USUAL, ModelVisitor.NONE, Aside.NOBODY)
                .object(1)
                .orElseThrow();
    assertIsBox(object);
    for (int facet = 0; facet < 12; facet++) {
      TagText tag = TagText.at(bytes, object.source().place(facet));
      assertThat(tag.name()).isEqualTo("triangle");
      assertThat(tag.value("v2")).isEqualTo(Integer.toString(object.mesh().corner(facet, 1)));
    }
  }

  @Test
  void takesOnlyListsOfCoreMeshes() throws PackageException {
    String stranger =
        "<x:y xmlns:x=\"urn:x\"><x:vertices><x:vertex/></x:vertices>"
            + "<vertices xmlns=\"urn:z\"><vertex x=\"1\" y=\"2\" z=\"3\"/></vertices></x:y>";
    assertIsBox(only(Models.model(Models.box(1) + stranger, ITEM)));
  }

  @ParameterizedTest
  @CsvSource({
    "micron, 0.001",
    "millimeter, 1",
    "centimeter, 10",
    "inch, 25.4",
    "foot, 304.8",
    "meter, 1000"
  })
  @DisplayName("C 3.4: units and their lengths (check 17)")
  void knowsTheUnits(String word, double millimetres) throws PackageException {
    ModelPart part = Models.part(Models.model("unit=\"" + word + '"', Models.box(1), ITEM));
    assertThat(part.unit().millimetres()).isEqualTo(millimetres);
    assertThat(part.unit().word()).isEqualTo(word);
  }

  @Test
  @DisplayName("C 3.4: the unit is millimetres unless the model says otherwise")
  void takesMillimetresByDefault() throws PackageException {
    assertThat(Models.part(Models.model("", Models.box(1), ITEM)).unit())
        .isEqualTo(LengthUnit.MILLIMETER);
  }

  private static Problem rejection(String text) {
    return rejection(text.getBytes(StandardCharsets.UTF_8));
  }

  private static Problem rejection(byte[] bytes) {
    try {
      ModelPart.read("/m", bytes, ModelLimits.USUAL, ModelVisitor.NONE, Aside.NOBODY);
    } catch (PackageException e) {
      return e.problem();
    }
    throw new AssertionError("it was read");
  }

  @Test
  @DisplayName("C 2.3.2(2): a document type is an error, at its line and column")
  void refusesADocumentType() {
    String text = Models.model(Models.box(1), ITEM).replace("<model", "<!DOCTYPE model>\n<model");
    Problem problem = rejection(text);
    assertThat(problem.code()).isEqualTo("xml-doctype");
    assertThat(problem.place()).isEqualTo(Place.of("/m", 2, 1));
  }

  @Test
  void refusesEntitiesThatADocumentTypeWouldMake() {
    String text =
        Models.model(Models.box(1), ITEM)
            .replace("<model", "<!DOCTYPE m [<!ENTITY x SYSTEM 'file:///etc/passwd'>]>\n<model")
            .replace("<build>", "<build>&x;");
    assertThat(rejection(text).code()).isEqualTo("xml-doctype");
    String undeclared = Models.model(Models.box(1), ITEM).replace("<build>", "<build>&x;");
    assertThat(rejection(undeclared).code()).isEqualTo("xml-not-well-formed");
  }

  @Test
  @DisplayName("C 2.3: a CDATA section without end behind the build rejects the part")
  void refusesTextThatDoesNotEnd() {
    String text =
        Models.model(Models.box(1), ITEM)
            .replace("</build>", "</build><metadata name=\"Title\"><![CDATA[a");
    assertThat(rejection(text).code()).isEqualTo("xml-not-well-formed");
  }

  @Test
  @DisplayName("C 2.3: a fault behind the lists is reported at its line and column in the part")
  void placesAFaultBehindTheLists() {
    String text =
        Models.model(Models.box(1).replace("<vertex ", "\r\n<vertex "), "\n  ä<item objectid=1/>");
    int at = text.indexOf("1/>", text.indexOf("<build>"));
    Problem problem = rejection(text);
    assertThat(problem.code()).isEqualTo("xml-not-well-formed");
    long line = 1 + text.substring(0, at).chars().filter(c -> c == '\n').count();
    assertThat(problem.place().line()).isEqualTo((int) line);
    assertThat(problem.place().column()).isEqualTo(at - text.lastIndexOf('\n', at));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "<mesh><vertices><vertex x=\"1\" y=\"2\" z=\"3\"/></vertices>",
        "<mesh><vertices><vertex x=\"1\" y=\"2\" z=\"3\" x=\"1\"/></vertices></mesh>",
        "<mesh><vertices><vertex x=\"1\" y=\"2\" z=\"3\"/></triangles></mesh>",
        "<mesh><vertices><vertex x=\"1\" y=\"2\"z=\"3\"/></vertices></mesh>",
        "<mesh><vertices><vertex x=\"<\" y=\"2\" z=\"3\"/></vertices></mesh>",
        "<mesh><vertices><vertex x=\"1\" y=\"2\" z=\"3\"/>&bad;</vertices></mesh>",
        "<mesh><vertices><vertex x=\"1\" y=\"2\" z=\"3\"",
        "<mesh><vertices><vertex x='1' y='2' z='3'></vertex>",
        "<mesh><vertices><vertex x='1' y='2' z='3'></triangles></vertices></mesh>",
        "<mesh><vertices><!-- <vertex x=\"1\" y=\"2\" z=\"3\"/></vertices></mesh>",
      })
  @DisplayName("C 2.3: a list that is not well-formed rejects the part")
  void refusesListsThatAreNotWellFormed(String mesh) {
    String text = Models.model("<object id=\"1\">" + mesh + "</object>", ITEM);
    assertThat(rejection(text).code()).isEqualTo("xml-not-well-formed");
  }

  @Test
  @DisplayName("C 2.3.2(1): UTF-8 only, and only well-formed UTF-8")
  void refusesOtherEncodings() {
    String text = Models.model("<!-- ä -->" + Models.box(1), ITEM);
    assertThat(rejection(text.getBytes(StandardCharsets.UTF_16)).code()).isEqualTo("xml-encoding");
    assertThat(rejection(text.getBytes(StandardCharsets.UTF_16LE)).code())
        .isEqualTo("xml-encoding");
    Problem latin = rejection(text.getBytes(StandardCharsets.ISO_8859_1));
    assertThat(latin.code()).isEqualTo("xml-encoding");
    assertThat(latin.place()).isEqualTo(Place.of("/m", 3, 17));
    assertThat(rejection(text.replace("\"UTF-8\"", "\"ISO-8859-1\"")).code())
        .isEqualTo("xml-encoding");
  }

  @Test
  void refusesOverlongAndSurrogateBytes() {
    byte[] overlong =
        Models.model("<!-- @@ -->" + Models.box(1), ITEM).getBytes(StandardCharsets.UTF_8);
    int at = new String(overlong, StandardCharsets.ISO_8859_1).indexOf("@@");
    overlong[at] = (byte) 0xC0;
    overlong[at + 1] = (byte) 0xAF;
    assertThat(rejection(overlong).code()).isEqualTo("xml-encoding");
  }

  @Test
  void refusesAnotherRootAndNoXml() {
    assertThat(rejection("<model/>").code()).isEqualTo("model-root");
    assertThat(rejection("").code()).isEqualTo("xml-not-well-formed");
    assertThat(rejection("%3McF").code()).isEqualTo("xml-not-well-formed");
  }

  @Test
  @DisplayName("Limits: depth 64, 256 attributes, attribute 1 MiB")
  void refusesWhatIsBeyondTheXmlLimits() {
    String deep = "<x:a xmlns:x=\"urn:x\">".repeat(70) + "</x:a>".repeat(70);
    assertThat(rejection(Models.model(Models.box(1) + deep, ITEM)).code()).isEqualTo("xml-limit");
    StringBuilder many = new StringBuilder("<object id=\"2\"");
    for (int i = 0; i < 300; i++) {
      many.append(" a" + i + "=\"\"");
    }
    String object = many + "/>";
    assertThat(rejection(Models.model(Models.box(1) + object, ITEM)).code()).isEqualTo("xml-limit");
    String wide = "<metadata name=\"" + "x".repeat(1 << 21) + "\"/>";
    assertThat(rejection(Models.model(wide + Models.box(1), ITEM)).code()).isEqualTo("xml-limit");
  }

  private static Problem badMesh(String vertices, String triangles) throws PackageException {
    String bad = "<object id=\"1\">" + Models.mesh(vertices, triangles) + "</object>";
    ModelPart part = Models.part(Models.model(bad + "\n" + Models.box(2), ITEM));
    assertThat(part.object(2).orElseThrow().problem()).as("the object beside it").isEmpty();
    Optional<Problem> problem = part.object(1).orElseThrow().problem();
    assertThat(problem).isPresent();
    return problem.get();
  }

  @Test
  @DisplayName("C 4.1.4.1: a vertex that does not exist refuses its object and no other")
  void namesTheTriangleWithAVertexThatDoesNotExist() throws PackageException {
    for (String index : new String[] {"8", "2147483647"}) {
      String triangles =
          Models.boxTriangles("")
              .replace("v1=\"6\" v2=\"7\"", "v1=\"" + index + "\" v2=\"7\"")
              .replace("<triangle", "\n<triangle");
      Problem problem = badMesh(Models.BOX_VERTICES, triangles);
      assertThat(problem.code()).isEqualTo("triangle-index");
      assertThat(problem.place().path()).endsWith("triangle 3");
      assertThat(problem.place().line()).isEqualTo(7);
      assertThat(problem.message()).contains(index, "8 vertices");
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"-1", "4294967297", "1.5", "0x1", ""})
  @DisplayName("B.1.1: an index that is none refuses its object and no other")
  void namesTheTriangleWithAnIndexThatIsNone(String index) throws PackageException {
    String triangles = Models.boxTriangles("").replace("v1=\"6\" v2=\"7\"", "v1=\"6\" v2=\"X\"");
    Problem problem = badMesh(Models.BOX_VERTICES, triangles.replace("X", index));
    assertThat(problem.code()).isEqualTo("triangle");
    assertThat(problem.place().path()).endsWith("triangle 3");
  }

  @ParameterizedTest
  @ValueSource(strings = {"NaN", "INF", "1.", "1,5", "1e999", "0x1", ""})
  @DisplayName("B.1.1: a coordinate that is none refuses its object and no other")
  void namesTheVertexWithACoordinateThatIsNone(String number) throws PackageException {
    String vertices = Models.BOX_VERTICES.replace("x=\"10\" y=\"20\" z=\"0\"", "x=\"X\" y=\"20\"");
    Problem problem = badMesh(vertices.replace("X", number), Models.boxTriangles(""));
    assertThat(problem.code()).isEqualTo("vertex");
    assertThat(problem.place().path()).endsWith("vertex 2");
  }

  @Test
  @DisplayName("C 4.1.4.1: the corners of a triangle are distinct")
  void namesTheTriangleWithTwoEqualCorners() throws PackageException {
    String triangles = Models.boxTriangles("").replace("v1=\"6\" v2=\"7\"", "v1=\"7\" v2=\"7\"");
    Problem problem = badMesh(Models.BOX_VERTICES, triangles);
    assertThat(problem.code()).isEqualTo("triangle-corners");
    assertThat(problem.place().path()).endsWith("triangle 3");
  }

  @Test
  @DisplayName("Limit: no coordinate beyond 1e6 mm, whatever the unit")
  void refusesCoordinatesThatReachTooFar() throws PackageException {
    String far =
        Models.box(1).replace("x=\"10\" y=\"20\" z=\"30\"", "x=\"1001\" y=\"20\" z=\"30\"");
    assertThat(only(Models.model(far, ITEM)).problem()).isEmpty();
    Optional<Problem> problem = only(Models.model("unit=\"meter\"", far, ITEM)).problem();
    assertThat(problem.map(Problem::code)).contains("coordinate-range");
    assertThat(problem.orElseThrow().place().path()).endsWith("vertex 6");
  }

  @Test
  @DisplayName("C 4.1.4: an object of type model has at least four triangles")
  void refusesAModelWithThreeTriangles() throws PackageException {
    String three = "<triangle v1=\"0\" v2=\"1\" v3=\"2\"/>".repeat(3);
    assertThat(badMesh(Models.BOX_VERTICES, three).code()).isEqualTo("mesh-too-small");
    assertThat(badMesh("", "").code()).isEqualTo("mesh-too-small");
  }

  @ParameterizedTest
  @ValueSource(strings = {"0", "-1", "2147483648", "x", "1"})
  @DisplayName("C 3.4.2: resource ids are unique in the part and within 1 to 2^31 - 1")
  void refusesIdsThatAreNone(String id) {
    String second = Models.box(1).replace("id=\"1\"", "id=\"" + id + '"');
    assertThatThrownBy(() -> Models.part(Models.model(Models.box(1) + second, ITEM)))
        .isInstanceOf(PackageException.class)
        .hasMessageContaining('"' + id + '"');
  }

  @Test
  @DisplayName("C 3.4: an undeclared prefix of a required extension is an error")
  void refusesAnUndeclaredExtension() {
    Problem problem = rejection(Models.model("requiredextensions=\"q\"", Models.box(1), ITEM));
    assertThat(problem.code()).isEqualTo("extension-prefix");
  }

  @Test
  @DisplayName("C 2.3.1, 3.4: a part that requires an unknown extension is not edited")
  void refusesObjectsOfAPartThatRequiresAnUnknownExtension() throws PackageException {
    String root = "xmlns:q=\"urn:q\" requiredextensions=\"q\"";
    Optional<Problem> problem = only(Models.model(root, Models.box(1), ITEM)).problem();
    assertThat(problem.map(Problem::code)).contains("extension-required");
    assertThat(problem.orElseThrow().message()).contains("q (urn:q)");
  }

  @Test
  @DisplayName("C 3.4: an unknown recommended extension is a warning")
  void warnsOfAnUnknownRecommendedExtension() throws PackageException {
    String root = "xmlns:q=\"urn:q\" recommendedextensions=\"q\"";
    ModelPart part = Models.part(Models.model(root, Models.box(1), ITEM));
    assertThat(part.problems()).extracting(Problem::code).containsExactly("extension-recommended");
    assertThat(part.object(1).orElseThrow().problem()).isEmpty();
  }
}

package gable.threemf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import gable.geom.Vec3;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import gable.mesh.MeshEdit;
import gable.opc.PackageException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/**
 * The rules are this project's own: bytes outside the lists stay, text and number of what stays.
 */
class ModelWriterTest {

  private static final String ITEM = "<item objectid=\"1\"/>";

  private static String after(ModelPackage model, ObjectEdit... edits) {
    List<SplicedPart> parts = ModelWriter.splice(model, List.of(edits)).parts();
    assertThat(parts).hasSize(1);
    byte[] bytes = parts.get(0).content().toBytes();
    return new String(bytes, StandardCharsets.UTF_8);
  }

  private static MeshObject mesh(ModelPackage model, int id) {
    return (MeshObject) model.root().object(id).orElseThrow();
  }

  @Test
  void writesNothingWithoutEdits() throws PackageException {
    ModelPackage model = Models.open(Models.model(Models.box(1), ITEM));
    assertThat(ModelWriter.splice(model, List.of()).parts()).isEmpty();
  }

  @Test
  void changesNothingButTheTwoLists() throws PackageException {
    String text = Models.model(Models.box(1) + Models.box(2), ITEM);
    ModelPackage model = Models.open(text);
    String changed = after(model, Edits.split(mesh(model, 2), 3));
    int first = text.indexOf("<object id=\"2\"");
    String old = text.substring(first);
    String expected =
        text.substring(0, first)
            + old.replace(
                    "</vertices>", "<vertex x=\"3.333333\" y=\"13.333333\" z=\"30\"/></vertices>")
                .replace(
                    "<triangle v1=\"6\" v2=\"7\" v3=\"4\"/>",
                    "<triangle v1=\"6\" v2=\"7\" v3=\"8\"/>")
                .replace(
                    "</triangles>",
                    "<triangle v1=\"7\" v2=\"4\" v3=\"8\"/><triangle v1=\"4\" v2=\"6\" v3=\"8\"/>"
                        + "</triangles>");
    assertThat(changed).isEqualTo(expected);
  }

  @Test
  void looksLikeTheElementsBesideIt() throws PackageException {
    String text =
        "\uFEFF"
            + Models.model(
                    "<!-- é\u20AC -->"
                        + Models.box(1)
                            .replace("/>", " />")
                            .replace("<vertex", "\r\n\t<vertex")
                            .replace("<triangle ", "\r\n    <triangle ")
                            .replace("</", "\r\n</"),
                    ITEM)
                .substring("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n".length());
    ModelPackage model = Models.open(text);
    String changed = after(model, Edits.split(mesh(model, 1), 3));
    assertThat(changed)
        .isEqualTo(
            text.replace(
                    "\r\n</vertices>",
                    "\r\n\t<vertex x=\"3.333333\" y=\"13.333333\" z=\"30\" />\r\n</vertices>")
                .replace(
                    "<triangle v1=\"6\" v2=\"7\" v3=\"4\" />",
                    "<triangle v1=\"6\" v2=\"7\" v3=\"8\" />")
                .replace(
                    "\r\n</triangles>",
                    "\r\n    <triangle v1=\"7\" v2=\"4\" v3=\"8\" />"
                        + "\r\n    <triangle v1=\"4\" v2=\"6\" v3=\"8\" />\r\n</triangles>"));
  }

  @Test
  void writesElementsWithThePrefixOfTheirList() throws PackageException {
    String text =
        Models.model(Models.box(1), ITEM)
            .replace("xmlns=", "xmlns:c=")
            .replaceAll("<(/?)(\\w)", "<$1c:$2");
    ModelPackage model = Models.open(text);
    String changed = after(model, Edits.split(mesh(model, 1), 0));
    assertThat(changed).contains("<c:vertex x=\"6.666667\" y=\"13.333333\" z=\"0\"/></c:vertices>");
    assertThat(changed).contains("<c:triangle v1=\"1\" v2=\"3\" v3=\"8\"/></c:triangles>");
    assertThat(((MeshObject) Models.part(changed).object(1).orElseThrow()).problem()).isEmpty();
  }

  @Test
  void keepsCommentsAndStrangeSpellingsInAnEditedList() throws PackageException {
    String text =
        Models.model(
            Models.box(1)
                .replace("<triangle v1=\"6\"", "<!-- <triangle/> --><triangle v1='6'")
                .replace("v3=\"4\"/>", "v3=\"4\"> <!-- in --> </triangle>")
                .replace("</vertices>", "<!-- last --></vertices>"),
            ITEM);
    ModelPackage model = Models.open(text);
    String changed = after(model, Edits.split(mesh(model, 1), 3));
    assertThat(changed)
        .contains("<!-- <triangle/> --><triangle v1=\"6\" v2=\"7\" v3=\"8\"/><triangle")
        .contains("<!-- last --><vertex x=\"3.333333\" y=\"13.333333\" z=\"30\"/></vertices>")
        .contains("v1='6' v2=\"5\" v3=\"1\"");
  }

  @Test
  void readsBackAsTheEditedMesh() throws PackageException {
    ModelPackage model = Models.open(Models.model(Models.box(1), ITEM));
    String changed = after(model, Edits.split(mesh(model, 1), 5));
    MeshObject again = (MeshObject) Models.part(changed).object(1).orElseThrow();
    Mesh mesh = again.mesh();
    assertThat(mesh.vertexCount()).isEqualTo(9);
    assertThat(mesh.facetCount()).isEqualTo(14);
    assertThat(HalfEdges.of(mesh).closed()).isTrue();
    assertThat(mesh.volume()).isEqualTo(6000);
    assertThat(mesh.point(8)).isEqualTo(new Vec3(3.333333, 0, 20));
    Mesh before = mesh(model, 1).mesh();
    for (int facet = 0; facet < 12; facet++) {
      for (int k = 0; k < 3 && facet != 5; k++) {
        assertThat(mesh.corner(facet, k)).isEqualTo(before.corner(facet, k));
      }
    }
  }

  @Test
  void fillsThePlacesOfRemovedTrianglesInAscendingOrder() throws PackageException {
    ModelPackage model = Models.open(Models.model(Models.box(1), ITEM));
    MeshEdit swap =
        new MeshEdit(
            new int[] {2, 7},
            new double[0],
            new int[] {6, 5, 1, 4, 5, 6},
            new int[] {7, 2},
            new boolean[2]);
    String changed =
        after(model, new ObjectEdit(mesh(model, 1), swap, new VertexGrid(6), List.of()));
    Mesh mesh = ((MeshObject) Models.part(changed).object(1).orElseThrow()).mesh();
    assertThat(List.of(mesh.corner(2, 0), mesh.corner(2, 2))).isEqualTo(List.of(6, 1));
    assertThat(List.of(mesh.corner(7, 0), mesh.corner(7, 2))).isEqualTo(List.of(4, 6));
  }

  @Test
  void refusesAnEditThatLeavesPlacesEmptyOrPointsOffTheGrid() throws PackageException {
    MeshObject object = mesh(Models.open(Models.model(Models.box(1), ITEM)), 1);
    MeshEdit fewer =
        new MeshEdit(
            new int[] {2, 7}, new double[0], new int[] {6, 5, 1}, new int[] {7}, new boolean[1]);
    assertThatThrownBy(() -> new ObjectEdit(object, fewer, new VertexGrid(6), List.of()))
        .isInstanceOf(IllegalArgumentException.class);
    MeshEdit off =
        new MeshEdit(
            new int[0], new double[] {1.0 / 3, 0, 0}, new int[0], new int[0], new boolean[0]);
    assertThatThrownBy(() -> new ObjectEdit(object, off, new VertexGrid(6), List.of()))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("0.333");
  }

  @Test
  @DisplayName("C 2.3.2(5): numbers do not depend on the machine's locale (tests run with commas)")
  void writesNumbersWithAPoint() {
    VertexGrid grid = new VertexGrid(6);
    assertThat(grid.text(-12.3456784)).isEqualTo("-12.345678");
    assertThat(grid.text(0.05)).isEqualTo("0.05");
    assertThat(grid.text(-0.0000001)).isEqualTo("0");
    assertThat(grid.text(-0.5)).isEqualTo("-0.5");
    assertThat(grid.text(100)).isEqualTo("100");
    assertThat(new VertexGrid(0).text(123.4)).isEqualTo("123");
  }
}

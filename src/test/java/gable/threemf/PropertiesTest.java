package gable.threemf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gable.geom.Vec3;
import gable.opc.PackageException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** C is the 3MF core specification 1.4, M the materials and properties extension. */
class PropertiesTest {

  private static final String M =
      "xmlns:m=\"http://schemas.microsoft.com/3dmanufacturing/material/2015/02\"";
  private static final String COLORS =
      "<m:colorgroup id=\"2\">\n <m:color color=\"#FF0000\"/>\n <m:color color=\"#00FF0080\"/>\n"
          + " <m:color color=\"#0000FF\"/>\n</m:colorgroup>";

  /** A box whose fourth triangle has the attributes; its corners are vertices 6, 7 and 4. */
  private static String box(String attributes) {
    String box = Models.box(1).replace("id=\"1\"", "id=\"1\" pid=\"2\" pindex=\"0\"");
    return box.replace("v2=\"7\" v3=\"4\"/>", "v2=\"7\" v3=\"4\" " + attributes + "/>");
  }

  private static String model(String group, String attributes) {
    return Models.model(M, group + box(attributes), "<item objectid=\"1\"/>");
  }

  private static String after(String text, boolean onNewFace) throws PackageException {
    return new String(
        changes(text, onNewFace).parts().get(0).content().toBytes(), StandardCharsets.UTF_8);
  }

  private static Changes changes(String text, boolean onNewFace) throws PackageException {
    ModelPackage model = Models.open(text);
    MeshObject object = (MeshObject) model.root().object(1).orElseThrow();
    return ModelWriter.splice(model, List.of(Edits.split(object, 3, onNewFace, List.of())));
  }

  private static Entries entries(String text) throws PackageException {
    return Optional.ofNullable(Models.part(text).groups().get(2)).orElseThrow().entries();
  }

  private static List<String> triangles(String text) throws PackageException {
    MeshObject object = (MeshObject) Models.part(text).object(1).orElseThrow();
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    return List.of(3, 12, 13).stream()
        .map(facet -> TagText.at(bytes, object.source().place(facet)))
        .map(tag -> text.substring(tag.nameEnd(), tag.end()).replaceAll(" v.=\"\\d+\"|/>", ""))
        .map(String::strip)
        .toList();
  }

  @ParameterizedTest
  @CsvSource({"pid=\"2\" p1=\"1\"", "p1=\"2\"", "pid=\"2\" p1=\"1\" p2=\"1\" p3=\"1\""})
  @DisplayName("C 4.1.4.1: one value for the triangle is the value of all inside it")
  void copiesAValueThatDoesNotVary(String attributes) throws PackageException {
    String text = model(COLORS, attributes);
    assertThat(triangles(after(text, false))).containsExactly(attributes, attributes, attributes);
    assertThat(after(text, false)).contains(COLORS);
  }

  @Test
  @DisplayName("M 2: colours blend in sRGB by channel, with 8 bits, and are appended")
  void blendsColors() throws PackageException {
    String text = after(model(COLORS, "pid=\"2\" p1=\"0\" p2=\"1\" p3=\"2\""), false);
    // the middle of red, half transparent green and blue: 85, 85, 85 and (255 + 128 + 255) / 3
    assertThat(text).contains(COLORS.replace("\n</", "\n <m:color color=\"#555555D5\"/>\n</"));
    assertThat(triangles(text))
        .containsExactly(
            "pid=\"2\" p1=\"0\" p2=\"1\" p3=\"3\"",
            "pid=\"2\" p1=\"1\" p2=\"2\" p3=\"3\"",
            "pid=\"2\" p1=\"2\" p2=\"0\" p3=\"3\"");
  }

  @Test
  @DisplayName("C 4.1.4.1: corners that the new triangle shares keep their entries")
  void namesTheOldEntriesAtOldCorners() throws PackageException {
    String group = COLORS.replace("#00FF0080", "#FF0000").replace("#0000FF", "#FF0000");
    String text = after(model(group, "pid=\"2\" p1=\"0\" p2=\"1\" p3=\"2\""), false);
    assertThat(triangles(text))
        .containsExactly(
            "pid=\"2\" p1=\"0\" p2=\"1\" p3=\"3\"",
            "pid=\"2\" p1=\"1\" p2=\"2\" p3=\"3\"",
            "pid=\"2\" p1=\"2\" p2=\"0\" p3=\"3\"");
    assertThat(text).contains("<m:color color=\"#FF0000\"/>\n</m:colorgroup>");
  }

  @Test
  @DisplayName("C 4.1.4.1: base materials never blend")
  void copiesTheFirstOfBaseMaterials() throws PackageException {
    String group =
        "<basematerials id=\"2\"><base name=\"a\" displaycolor=\"#FF0000\"/>"
            + "<base name=\"b\" displaycolor=\"#00FF00\"/></basematerials>";
    String text = after(model(group, "pid=\"2\" p1=\"1\" p2=\"0\" p3=\"0\""), false);
    assertThat(triangles(text))
        .containsExactly("pid=\"2\" p1=\"1\"", "pid=\"2\" p1=\"1\"", "pid=\"2\" p1=\"1\"");
    assertThat(text).contains(group);
  }

  @Test
  @DisplayName("M 3.1: texture coordinates blend, also outside of 0 to 1")
  void blendsTextureCoordinates() throws PackageException {
    String group =
        "<m:texture2d id=\"9\" path=\"/3D/a.png\" contenttype=\"image/png\"/>"
            + "<m:texture2dgroup id=\"2\" texid=\"9\"><m:tex2coord u=\"0\" v=\"3\" />"
            + "<m:tex2coord u=\"1\" v=\"-6\" /><m:tex2coord u=\"0\" v=\"0\" /></m:texture2dgroup>";
    String text = after(model(group, "pid=\"2\" p1=\"0\" p2=\"1\" p3=\"2\""), false);
    // a third of the sums, at the centre that was rounded to the grid: hence the sixth decimal
    assertThat(text).containsPattern("u=\"0.33333\\d+\" v=\"-(1|1.00000\\d*|0.99999\\d+)\" />");
    MeshObject object = (MeshObject) Models.part(text).object(1).orElseThrow();
    Entries entries = entries(text);
    assertThat(entries.count()).isEqualTo(4);
    assertThat(entries.value(3, 0)).isCloseTo(1.0 / 3, within(1e-6));
    assertThat(entries.value(3, 1)).isCloseTo(-1, within(1e-6));
    assertThat(object.problem()).isEmpty();
  }

  @Test
  @DisplayName("M 4.1: composites blend after their values are normalised")
  void blendsComposites() throws PackageException {
    String group =
        "<basematerials id=\"9\"><base name=\"a\" displaycolor=\"#FF0000\"/>"
            + "<base name=\"b\" displaycolor=\"#00FF00\"/></basematerials>"
            + "<m:compositematerials id=\"2\" matid=\"9\" matindices=\"0 1\">"
            + "<m:composite values=\"2 2\"/><m:composite values=\"1\"/>"
            + "<m:composite values=\"0 5\"/></m:compositematerials>";
    String text = after(model(group, "pid=\"2\" p1=\"0\" p2=\"1\" p3=\"2\""), false);
    Entries entries = entries(text);
    assertThat(entries.count()).isEqualTo(4);
    assertThat(entries.value(3, 0)).isCloseTo(0.5, within(1e-6)); // (0.5 + 1 + 0) / 3
    assertThat(entries.value(3, 1)).isCloseTo(0.5, within(1e-6));
  }

  @Test
  @DisplayName("M 5, 5.1: each layer of multiproperties blends on its own, missing indices are 0")
  void blendsMultipropertiesLayerByLayer() throws PackageException {
    String group =
        COLORS.replace("id=\"2\"", "id=\"8\"")
            + "<basematerials id=\"9\"><base name=\"a\" displaycolor=\"#FF0000\"/>"
            + "<base name=\"b\" displaycolor=\"#00FF00\"/></basematerials>"
            + "<m:multiproperties id=\"2\" pids=\"9 8\">"
            + "<m:multi pindices=\"1 0\"/><m:multi pindices=\"0 1\"/><m:multi pindices=\"1\"/>"
            + "</m:multiproperties>";
    String text = after(model(group, "pid=\"2\" p1=\"0\" p2=\"1\" p3=\"2\""), false);
    // colours 0, 1 and (missing) 0: two thirds red, one third half transparent green
    assertThat(text).contains("<m:color color=\"#AA5500D5\"/>\n</m:colorgroup>");
    assertThat(text).contains("<m:multi pindices=\"1\"/><m:multi pindices=\"1 3\"/></m:multi");
    assertThat(triangles(text).get(0)).isEqualTo("pid=\"2\" p1=\"0\" p2=\"1\" p3=\"3\"");
  }

  @Test
  @DisplayName("M 7: what has display properties does not blend")
  void copiesTheFirstWhereDisplayPropertiesHang() throws PackageException {
    String group =
        "<m:pbmetallicdisplayproperties id=\"9\">"
            + "<m:pbmetallic name=\"x\"/>".repeat(3)
            + "</m:pbmetallicdisplayproperties>"
            + COLORS.replace("id=\"2\"", "id=\"2\" displaypropertiesid=\"9\"");
    String text = after(model(group, "pid=\"2\" p1=\"2\" p2=\"1\" p3=\"0\""), false);
    assertThat(triangles(text)).containsOnly("pid=\"2\" p1=\"2\"");
    assertThat(text).contains(group);
  }

  @Test
  @DisplayName("Notes 7: a new face has one value, that of the nearest point, and it is reported")
  void givesANewFaceOneValue() throws PackageException {
    String text = model(COLORS, "pid=\"2\" p1=\"0\" p2=\"1\" p3=\"2\"");
    for (String triangle : triangles(after(text, true))) {
      assertThat(triangle).matches("pid=\"2\" p1=\"[3-5]\"");
    }
    assertThat(changes(text, true).notices())
        .extracting(notice -> notice.code())
        .containsExactly("property-borrowed");
    assertThat(changes(text, false).notices()).isEmpty();
  }

  @Test
  @DisplayName("C 4: groups and entries that do not exist are carried as they are")
  void carriesReferencesThatLeadNowhere() throws PackageException {
    for (String attributes : List.of("pid=\"77\" p1=\"1\"", "pid=\"2\" p1=\"99\"")) {
      assertThat(triangles(after(model(COLORS, attributes), false))).containsOnly(attributes);
    }
    String beyond = after(model(COLORS, "pid=\"2\" p1=\"0\" p2=\"1\" p3=\"99\""), false);
    assertThat(triangles(beyond)).hasSize(3);
    assertThat(beyond).contains(COLORS);
    String selfish =
        "<m:multiproperties id=\"2\" pids=\"2 2\">"
            + "<m:multi pindices=\"0 1\"/>".repeat(3)
            + "</m:multiproperties>";
    assertThat(triangles(after(model(selfish, "pid=\"2\" p1=\"0\" p2=\"1\" p3=\"2\""), false)))
        .hasSize(3);
  }

  @Test
  @DisplayName("Notes 18: attributes of extensions go to all triangles inside, with a warning")
  void copiesAttributesOfExtensions() throws PackageException {
    String attributes = "xmlns:v=\"urn:v\" v:finish=\"matt &amp; grey\"";
    String text = model(COLORS, attributes);
    assertThat(triangles(after(text, false))).containsOnly(attributes);
    assertThat(changes(text, false).notices())
        .extracting(notice -> notice.code())
        .containsExactly("triangle-attributes-copied");
    assertThat(triangles(after(text, true))).containsOnly("");
  }

  @Test
  @DisplayName("C 2.3.2(3): an attribute of nobody is broken once and not on every triangle inside")
  void dropsAttributesThatBelongToNothing() throws PackageException {
    String text = model(COLORS, "pid=\"2\" p1=\"0\" shine=\"1\"");
    assertThat(triangles(after(text, false))).hasSize(3).noneMatch(each -> each.contains("shine"));
    assertThat(changes(text, false).notices())
        .extracting(notice -> notice.code())
        .containsExactly("triangle-attributes-dropped");
  }

  @Test
  void findsTheSharesOfTheNearestPoint() {
    Vec3 a = new Vec3(0, 0, 0);
    Vec3 b = new Vec3(4, 0, 0);
    Vec3 c = new Vec3(0, 4, 0);
    assertThat(Barycentric.nearest(a, b, c, new Vec3(1, 1, 9))).containsExactly(0.5, 0.25, 0.25);
    assertThat(Barycentric.nearest(a, b, c, new Vec3(2, -5, 0))).containsExactly(0.5, 0.5, 0);
    assertThat(Barycentric.nearest(a, b, c, new Vec3(9, -1, 0))).containsExactly(0, 1, 0);
    assertThat(Barycentric.nearest(a, b, c, new Vec3(4, 4, 0))).containsExactly(0, 0.5, 0.5);
    assertThat(Barycentric.nearest(a, a, a, new Vec3(4, 4, 0))).containsExactly(1, 0, 0);
  }

  @Test
  void agreesWithASearchOverTheTriangle() {
    Random random = new Random(7);
    for (int i = 0; i < 200; i++) {
      Vec3[] t = {point(random), point(random), point(random)};
      Vec3 p = point(random);
      double[] shares = Barycentric.nearest(t[0], t[1], t[2], p);
      Vec3 found = t[0].times(shares[0]).plus(t[1].times(shares[1])).plus(t[2].times(shares[2]));
      double least = Double.POSITIVE_INFINITY;
      for (int u = 0; u <= 100; u++) {
        for (int v = 0; u + v <= 100; v++) {
          Vec3 q =
              t[0].times((100.0 - u - v) / 100)
                  .plus(t[1].times(u / 100.0))
                  .plus(t[2].times(v / 100.0));
          least = Math.min(least, q.distance(p));
        }
      }
      assertThat(found.distance(p)).isLessThanOrEqualTo(least + 1e-12);
    }
  }

  private static Vec3 point(Random random) {
    return new Vec3(random.nextDouble(), random.nextDouble(), random.nextDouble());
  }
}

package gable.threemf;

import static org.assertj.core.api.Assertions.assertThat;

import gable.opc.PackageException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** C is the 3MF core specification 1.4. */
class TriangleSetsTest {

  private static final String T =
      "xmlns:t=\"http://schemas.microsoft.com/3dmanufacturing/trianglesets/2021/07\"";

  private static String model(String... sets) {
    StringBuilder all = new StringBuilder("<t:trianglesets>");
    for (int i = 0; i < sets.length; i++) {
      all.append("\n<t:triangleset name=\"s" + i + "\" identifier=\"x:s" + i + "\">" + sets[i]);
      all.append("</t:triangleset>");
    }
    String box = Models.box(1).replace("</triangles>", "</triangles>" + all + "</t:trianglesets>");
    return Models.model(T, box, "<item objectid=\"1\"/>");
  }

  private static String after(String text, boolean onNewFace) throws PackageException {
    ModelPackage model = Models.open(text);
    MeshObject object = (MeshObject) model.root().object(1).orElseThrow();
    ObjectEdit edit = Edits.split(object, 3, onNewFace, List.of());
    byte[] bytes = ModelWriter.splice(model, List.of(edit)).parts().get(0).content().toBytes();
    return new String(bytes, StandardCharsets.UTF_8);
  }

  private static String set(String text, int number) {
    String tag = "identifier=\"x:s" + number + "\">";
    int from = text.indexOf(tag) + tag.length();
    return text.substring(from, text.indexOf("</t:triangleset>", from));
  }

  @Test
  @DisplayName("C 4.1.5: a set without the triangle keeps its text")
  void keepsSetsThatAreNotConcerned() throws PackageException {
    String set = "<!-- a --><t:ref index=\"7\" /><t:refrange startindex=\"0\" endindex=\"2\"/>";
    assertThat(set(after(model(set), false), 0)).isEqualTo(set);
  }

  @Test
  @DisplayName("C 4.1.5, decision: triangles inside a member are members; refs before ranges")
  void addsTheTrianglesInsideAMember() throws PackageException {
    String text = after(model("\n <t:ref index=\"1\"/>\n <t:ref index=\"3\"/>\n"), false);
    assertThat(set(text, 0))
        .isEqualTo(
            "\n <t:ref index=\"1\"/>\n <t:ref index=\"3\"/>"
                + "\n <t:refrange startindex=\"12\" endindex=\"13\"/>\n");
  }

  @Test
  @DisplayName("Decision: a place inside a range that a new face takes leaves the set")
  void takesANewFaceOutOfARange() throws PackageException {
    String range = "<t:refrange startindex=\"2\" endindex=\"5\"/>";
    String text = after(model(range, range + "<!-- x -->"), true);
    String expected = "<t:ref index=\"2\"/><t:refrange startindex=\"4\" endindex=\"5\"/>";
    assertThat(set(text, 0)).isEqualTo(expected);
    assertThat(set(text, 1)).isEqualTo(expected);
  }

  @Test
  void leavesAnEmptiedSetInPlace() throws PackageException {
    assertThat(set(after(model("<t:ref index=\"3\"/>"), true), 0)).isEmpty();
  }

  @Test
  @DisplayName("Notes 19: ranges are clipped to the mesh, however many and however large")
  void clipsRangesToTheMesh() throws PackageException {
    String huge = "<t:refrange startindex=\"0\" endindex=\"2147483647\"/>".repeat(20_000);
    String far = "<t:ref index=\"2147483647\"/><t:ref index=\"3\"/>";
    String bad = "<t:refrange startindex=\"9\" endindex=\"3\"/><t:ref index=\"-3\"/><t:ref/>";
    String text = after(model(huge, far, bad), false);
    assertThat(set(text, 0)).isEqualTo("<t:refrange startindex=\"0\" endindex=\"13\"/>");
    assertThat(set(text, 1))
        .isEqualTo("<t:ref index=\"3\"/><t:refrange startindex=\"12\" endindex=\"13\"/>");
    assertThat(set(text, 2)).isEqualTo(bad);
  }
}

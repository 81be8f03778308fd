package gable.pipeline;

import static gable.pipeline.Subject.BLOCK;
import static gable.pipeline.Subject.ROOT;
import static gable.pipeline.Subject.block;
import static gable.pipeline.Subject.blockWith;
import static gable.pipeline.Subject.dressed;
import static gable.pipeline.Subject.object;
import static gable.pipeline.Subject.triangles;
import static gable.pipeline.Texts.HALF_RED;
import static gable.pipeline.Texts.all;
import static gable.pipeline.Texts.between;
import static gable.pipeline.Texts.number;
import static gable.pipeline.Texts.scaled;
import static org.assertj.core.api.Assertions.assertThat;

import gable.opc.RelationshipTypes;
import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What an editor of meshes owes to the mesh that it changes, its properties and its uses: one case
 * or more for each rule, through the whole program. C core 1.4, M materials and properties, P
 * production, S slices, B beam lattice, BO booleans, D displacement, V volumetric, SC secure
 * content, OPC the packaging conventions, first edition. What the texts leave open is a decision of
 * this project.
 */
class MeshDutiesTest {

  @Test
  @DisplayName("C 4.1.3, B 2.1.1.1: vertices are appended, the old ones keep text and number")
  void appendsVerticesAndKeepsTheOldOnes() throws Exception {
    SubjectRun run = dressed("", block(1, "")).run().changed().keepsAllBut(ROOT);
    String before = between(run.before(ROOT), "<vertices>", "      </vertices>");
    String after = between(run.after(ROOT), "<vertices>", "      </vertices>");
    assertThat(after).startsWith(before).hasSizeGreaterThan(before.length());
  }

  @Test
  @DisplayName("C 4.1.2: triangles that stay keep text and place, so that the last one still wins")
  void keepsTextAndPlaceOfTrianglesThatStay() throws Exception {
    SubjectRun run = dressed("", block(1, "")).run().changed();
    List<String> before = all("<triangle [^>]*>", run.before(ROOT));
    List<String> after = all("<triangle [^>]*>", run.after(ROOT));
    int kept = 0;
    for (int k = 0; k < before.size(); k++) {
      kept += before.get(k).equals(after.get(k)) ? 1 : 0;
    }
    assertThat(after).hasSizeGreaterThanOrEqualTo(before.size());
    assertThat(kept).isGreaterThan(before.size() / 2).isLessThan(before.size());
  }

  @Test
  @DisplayName("C 3.4, 4.1.3.1: an inch stays an inch")
  void writesInTheUnitOfThePart() throws Exception {
    SubjectRun run =
        dressed("unit=\"centimeter\"", object(1, "", scaled(BLOCK, 0.1))).run().changed();
    for (String z : all("z=\"([^\"]*)\"", run.after(ROOT))) {
      assertThat(Double.parseDouble(z)).isBetween(0.0, 2.0);
    }
    assertThat(run.after(ROOT)).contains("unit=\"centimeter\"");
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      value = {
        "M 2, C 4.1.4.1: colours | color |"
            + " <m:colorgroup id=\"5\"><m:color color=\"#FF0000\"/><m:color color=\"#0000FF80\"/>"
            + "</m:colorgroup>",
        "M 3.1: texture coordinates | tex2coord |"
            + " <m:texture2d id=\"6\" path=\"/3D/a.png\" contenttype=\"image/png\"/>"
            + "<m:texture2dgroup id=\"5\" texid=\"6\"><m:tex2coord u=\"-1\" v=\"0\"/>"
            + "<m:tex2coord u=\"3\" v=\"0.5\"/></m:texture2dgroup>",
        "M 4.1: composites | composite |"
            + " <basematerials id=\"6\"><base name=\"a\" displaycolor=\"#FF0000\"/>"
            + "<base name=\"b\" displaycolor=\"#00FF00\"/></basematerials>"
            + "<m:compositematerials id=\"5\" matid=\"6\" matindices=\"0 1\">"
            + "<m:composite values=\"1 0\"/><m:composite values=\"0 1\"/></m:compositematerials>",
        "M 5.1: multiproperties | multi |"
            + " <m:colorgroup id=\"6\"><m:color color=\"#FF0000\"/><m:color color=\"#0000FF\"/>"
            + "</m:colorgroup><m:multiproperties id=\"5\" pids=\"6\"><m:multi pindices=\"0\"/>"
            + "<m:multi pindices=\"1\"/></m:multiproperties>"
      })
  void interpolatesPropertiesIntoEntriesThatAreAppended(String rule, String entry, String group)
      throws Exception {
    String mesh = triangles("p1=\"0\" p2=\"1\" p3=\"1\"");
    Subject subject = dressed("m", group + object(1, " pid=\"5\" pindex=\"0\"", mesh));
    if (group.contains("texture2d")) {
      subject
          .types("<Default Extension=\"png\" ContentType=\"image/png\"/>")
          .related(RelationshipTypes.TEXTURE, "3D/a.png", "not looked at");
    }
    SubjectRun run = subject.run().changed();
    List<String> before = all("<m:" + entry + " [^>]*>", run.before(ROOT));
    List<String> after = all("<m:" + entry + " [^>]*>", run.after(ROOT));
    assertThat(after).as(rule).startsWith(before.toArray(String[]::new));
    assertThat(after).as(rule).hasSizeGreaterThan(before.size());
    for (String index : all("p[123]=\"([0-9]+)\"", run.after(ROOT))) {
      assertThat(Integer.parseInt(index)).isLessThan(after.size());
    }
  }

  @Test
  @DisplayName("C 4.1.4.1: base materials never blend, p1 is copied")
  void copiesBaseMaterials() throws Exception {
    String group =
        "<basematerials id=\"5\"><base name=\"a\" displaycolor=\"#FF0000\"/>"
            + "<base name=\"b\" displaycolor=\"#00FF00\"/></basematerials>";
    SubjectRun run =
        dressed("", group + object(1, " pid=\"5\" pindex=\"0\"", triangles("p1=\"1\"")))
            .run()
            .changed();
    assertThat(run.after(ROOT)).contains(group);
    assertThat(all("<triangle [^>]*>", run.after(ROOT))).allMatch(tag -> tag.contains("p1=\"1\""));
  }

  @Test
  @DisplayName(
      "Decision on C 4.1.4.1: a new face has the value of the nearest point, and it is said")
  void saysWhereNewFacesTookTheirColourFrom() throws Exception {
    String mesh = triangles("p1=\"0\" p2=\"1\" p3=\"1\"");
    SubjectRun run =
        dressed("m", HALF_RED + object(1, " pid=\"5\" pindex=\"0\"", mesh)).run().changed();
    assertThat(run.codes()).contains("property-borrowed");
  }

  @Test
  @DisplayName("C 4.1.5: triangles inside a member are members, those on new faces are not")
  void keepsTriangleSetsTrue() throws Exception {
    int count = all("<triangle ", BLOCK).size();
    String sets =
        "<t:trianglesets><t:triangleset name=\"all\" identifier=\"x:all\"><t:refrange"
            + " startindex=\"0\" endindex=\""
            + (count - 1)
            + "\"/></t:triangleset>"
            + "<t:triangleset name=\"none\" identifier=\"x:none\"/></t:trianglesets>";
    SubjectRun run = dressed("t;x", blockWith(1, sets)).run().changed();
    String after = run.after(ROOT);
    assertThat(after).contains("<t:triangleset name=\"none\" identifier=\"x:none\"/>");
    int members = 0;
    for (String range : all("<t:refrange [^>]*>", after)) {
      members += number(range, "endindex") - number(range, "startindex") + 1;
    }
    members += all("<t:ref ", after).size();
    int triangles = all("<triangle ", after).size();
    // the two flanks of the roof are new faces of two triangles at least
    assertThat(members).isLessThanOrEqualTo(triangles - 4).isGreaterThan(triangles / 2);
    assertThat(after.lastIndexOf("<t:ref ")).isLessThan(after.indexOf("<t:refrange "));
  }

  @Test
  @DisplayName("C 3.3: a mirrored use is looked at as it lies, and written as it was turned")
  void writesMirroredMeshesUnmirrored() throws Exception {
    dressed("", block(1, ""), "<item objectid=\"1\" transform=\"-1 0 0 0 1 0 0 0 1 40 0 0\"/>")
        .run()
        .changed(); // inside out would be a new finding
  }

  @Test
  @DisplayName("C 3.3: a transform without an inverse: that use is refused")
  void refusesSingularTransforms() throws Exception {
    dressed("", block(1, ""), "<item objectid=\"1\" transform=\"1 0 0 0 1 0 0 0 0 0 0 0\"/>")
        .run()
        .refused("transform-singular");
  }

  @ParameterizedTest
  @ValueSource(strings = {"support", "solidsupport", "surface", "other"})
  @DisplayName("C 4: only objects of type model are changed")
  void leavesOtherTypes(String type) throws Exception {
    SubjectRun run =
        dressed(
                "",
                block(1, " type=\"" + type + "\"") + block(2, ""),
                "<item objectid=\"1\"/><item objectid=\"2\"/>")
            .run()
            .changed();
    assertThat(run.after(ROOT)).contains(block(1, " type=\"" + type + "\""));
  }

  @Test
  @DisplayName("C 4.1: an open mesh is left as it is, others go on")
  void leavesOpenMeshes() throws Exception {
    String open = BLOCK.replaceFirst("        <triangle [^>]*>\n", "");
    SubjectRun run =
        dressed(
                "",
                object(1, "", open) + block(2, ""),
                "<item objectid=\"1\"/><item objectid=\"2\"/>")
            .run()
            .changed();
    assertThat(run.after(ROOT)).contains(object(1, "", open));
  }
}

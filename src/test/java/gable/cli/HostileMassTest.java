package gable.cli;

import static org.assertj.core.api.Assertions.assertThat;

import gable.fixture.HoleBlock;
import gable.fixture.HoleBlock.Ring;
import gable.fixture.MeshSketch;
import gable.fixture.ModelSketch;
import gable.geom.Affine3;
import gable.geom.Vec3;
import gable.threemf.Models;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Files that hold so much of one thing that whatever takes the square of it does not come to an
 * end. All numbers are our own choice.
 */
@Tag("slow")
class HostileMassTest {

  private static final int MANY = 100_000;

  @TempDir private Path folder;

  private Call reshape(byte[] file) throws IOException {
    Path input = Files.write(folder.resolve("in.3mf"), file);
    return Call.of(
        "reshape", input.toString(), "-o", folder.resolve("out.3mf").toString(), "--quiet");
  }

  private void assertDone(String model) throws IOException {
    Call call = reshape(Attack.packed(model));
    assertThat(call.code()).as(call.err()).isZero();
  }

  private static String many(IntFunction<String> each) {
    return IntStream.range(0, MANY).mapToObj(each).collect(Collectors.joining());
  }

  /** A bore of 12 sides and 6 mm through a block, along y. */
  private static MeshSketch bored() {
    Ring ring = Ring.round(3, 12, 0, 0);
    return HoleBlock.ofHalfWidth(8)
        .ring(ring)
        .ring(ring.at(10))
        .through()
        .placed(new Affine3(1, 0, 0, 0, 0, 1, 0, -1, 0, 0, 10, 8));
  }

  private static String block(String more) {
    return new ModelSketch().object(1, "block", bored()).item(1).text().replace("</mesh>", more);
  }

  @Test
  void aMillionTrianglesAtOneVertex() throws IOException {
    MeshSketch cone = new MeshSketch();
    int count = 500_000;
    int top = cone.point(new Vec3(0, 0, 50));
    int bottom = cone.point(Vec3.ZERO);
    int[] ring = new int[count];
    for (int k = 0; k < count; k++) {
      double angle = 2 * Math.PI * k / count;
      ring[k] = cone.point(new Vec3(1e5 * Math.cos(angle), 1e5 * Math.sin(angle), 0));
    }
    for (int k = 0; k < count; k++) {
      cone.facet(top, ring[k], ring[(k + 1) % count]);
      cone.facet(bottom, ring[(k + 1) % count], ring[k]);
    }
    assertDone(new ModelSketch().object(1, "cone", cone).item(1).text());
  }

  @Test
  void aHundredThousandRangesInATriangleSet() throws IOException {
    String sets =
        "<t:trianglesets xmlns:t="
            + "\"http://schemas.microsoft.com/3dmanufacturing/trianglesets/2021/07\">"
            + "<t:triangleset name=\"a\" identifier=\"b\">"
            + many(i -> "<t:refrange startindex=\"" + i % 90 + "\" endindex=\"2147483647\"/>")
            + "</t:triangleset></t:trianglesets></mesh>";
    assertDone(block(sets));
  }

  @Test
  void aHundredThousandPlacesOfOneMesh() throws IOException {
    String items =
        many(i -> "<item objectid=\"1\" transform=\"1 0 0 0 1 0 0 0 1 " + i + " 0 0\"/>");
    assertDone(block("</mesh>").replace("</build>", items + "</build>").replace(Attack.ITEM, ""));
  }

  @Test
  void aHundredThousandDirectionsOfOneMesh() throws IOException {
    String items =
        many(i -> "<item objectid=\"1\" transform=\"1 0 " + i / 1e5 + " 0 1 0 0 0 1 0 0 0\"/>");
    Call call = reshape(Attack.packed(block("</mesh>").replace("</build>", items + "</build>")));
    assertThat(call.code()).isEqualTo(ExitCode.NOTHING_EXAMINED);
    assertThat(call.err()).contains("more than 1000 ways up");
  }

  @Test
  void aHundredThousandObjects() throws IOException {
    String vertices = "<vertex x=\"0\" y=\"0\" z=\"0\"/>".repeat(3);
    String mesh = Models.mesh(vertices, "<triangle v1=\"0\" v2=\"1\" v3=\"2\"/>".repeat(4));
    String objects = many(i -> "<object id=\"" + (i + 2) + "\">" + mesh + "</object>");
    String items = many(i -> "<item objectid=\"" + (i + 2) + "\"/>");
    assertDone(Models.model(Models.box(1) + objects, Attack.ITEM + items));
  }

  @Test
  void aHundredThousandComponentsNamesGroupsAndStrangers() throws IOException {
    String group =
        "<object id=\"2\"><components>" + many(i -> COMPONENT) + "</components></object>";
    String strangers = many(i -> "<x" + i + ":y xmlns:x" + i + "=\"urn:" + i + "\"/>");
    String colours =
        many(
            i ->
                "<basematerials id=\""
                    + (i + 9)
                    + "\"><base name=\"a\" displaycolor=\"#FF0000\"/></basematerials>");
    String model = Models.model(colours + Models.box(1) + group + strangers, Attack.ITEM);
    assertDone(model.replace("<resources>", many(i -> NAME) + "<resources>"));
  }

  private static final String COMPONENT = "<component objectid=\"1\"/>";
  private static final String NAME = "<metadata name=\"Title\">a</metadata>";

  /** Twenty million bytes of XML from two hundred thousand: they do not fit into so little. */
  @Test
  void lessMemoryThanAFileNeedsIsSaidInOneLine() throws Exception {
    String items = "<item objectid=\"1\"/>".repeat(1_500_000);
    Path input = Files.write(folder.resolve("in.3mf"), Attack.packed(Models.model("", items)));
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-Xmx80m", "-cp", System.getProperty("java.class.path")));
    command.addAll(List.of(Main.class.getName(), "reshape", input.toString(), "-o"));
    command.add(folder.resolve("out.3mf").toString());
    File told = folder.resolve("told.txt").toFile();

    Process process =
        new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(told).start();

    assertThat(process.waitFor()).as(Files.readString(told.toPath())).isEqualTo(ExitCode.INVALID);
    assertThat(Files.readString(told.toPath(), StandardCharsets.UTF_8))
        .hasLineCount(1)
        .contains("memory", "To do: ")
        .doesNotContain("Exception");
    assertThat(folder.resolve("out.3mf")).doesNotExist();
  }
}

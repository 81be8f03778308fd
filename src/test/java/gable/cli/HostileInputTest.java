package gable.cli;

import static org.assertj.core.api.Assertions.assertThat;

import gable.threemf.Models;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Models made to do harm, against the whole command: the exit code is right, one line says what was
 * found and where, what was expected and what to do, and there is no output and nothing else. C is
 * the 3MF core specification 1.4; where no section is named the limit is our own choice. Faults of
 * archives, names and relationships have their cases in {@code opc}.
 */
class HostileInputTest {

  private static final String NAME = "<object id=\"1\"";

  @TempDir private Path folder;

  @ParameterizedTest(name = "{0}")
  @MethodSource({"markup", "sizes", "encodings", "numbers", "references", "masses"})
  void isRefusedWithOneClearLineAndNothingIsLeft(Attack attack) throws IOException {
    Path input = Files.write(folder.resolve("in.3mf"), attack.file().get());

    Call call = Call.of("reshape", input.toString(), "-o", folder.resolve("out.3mf").toString());

    assertThat(call.code()).as(call.err()).isEqualTo(attack.code());
    assertThat(call.err()).startsWith("gable: " + input + ": ").hasLineCount(1).endsWith(".\n");
    assertThat(call.err()).contains("expected ", "To do: ").contains(attack.words());
    assertThat(call.err().strip()).doesNotContainPattern("\\p{Cntrl}").doesNotContain("Exception");
    try (Stream<Path> files = Files.list(folder)) {
      assertThat(files).containsExactly(input);
    }
  }

  static Stream<Attack> markup() {
    String bomb = "<!DOCTYPE m [<!ENTITY a \"aaaa\"><!ENTITY b \"&a;&a;&a;&a;\">]>\n<model";
    return Stream.of(
        Attack.text("C 2.3.2(2): a document type", "<model", "<!DOCTYPE m>\n<model", "type"),
        Attack.text("C 2.3.2(2): entities made of entities", "<model", bomb, "document type"),
        Attack.text("XML 4.1: an entity nobody declared", Attack.ITEM, "&x;", "line "),
        Attack.text("XML 2.1: two roots", "</model>", "</model><model/>", "line "),
        Attack.text("XML 2.1: text behind the root", "</model>", "</model>x", "line "),
        Attack.text("XML 3.1: an attribute twice", NAME, NAME + " id=\"1\"", "line "),
        Attack.text("Namespaces in XML 5: an unbound prefix", "<build>", "<build><q:a/>", "line "),
        Attack.text("XML 2.2: a NUL", NAME, NAME + " name=\"\0\"", "line "),
        Attack.text("XML 4.1: a NUL by number", NAME, NAME + " name=\"&#0;\"", "line "),
        Attack.text("XML 4.1: half a character", NAME, NAME + " name=\"&#xD800;\"", "line "),
        Attack.text("C 3.4: build twice", "<build>", "<build/><build>", "2 build elements"),
        Attack.text("C 3.4: another root", "model", "modell", "root"));
  }

  static Stream<Attack> sizes() {
    String deep = "<a>".repeat(65) + "</a>".repeat(65) + "</resources>";
    return Stream.of(
        Attack.text("elements 67 deep", "</resources>", deep, "64"),
        Attack.text("257 attributes", Attack.ITEM, "<item" + attributes(257) + "/>", "256"),
        Attack.text("258 namespaces in scope", Attack.ITEM, scopes(3, 86), "256"),
        Attack.text("an attribute beyond 1 MiB", NAME, NAME + named("name", 1 << 20), "1048576"),
        Attack.text("an element with a name of 1,025 letters", Attack.ITEM, element(1025), "1024"),
        Attack.text(
            "an attribute with such a name", NAME, NAME + named("x".repeat(1025), 1), "1024"),
        Attack.text(
            "a text beyond 16 MiB",
            "<resources>",
            "<metadata name=\"a\">" + "x".repeat(17 << 20) + "</metadata><resources>",
            "16777216"));
  }

  private static String attributes(int count) {
    StringBuilder all = new StringBuilder();
    for (int i = 0; i < count; i++) {
      all.append(" a").append(i).append("=''");
    }
    return all.toString();
  }

  private static String scopes(int levels, int each) {
    StringBuilder all = new StringBuilder();
    for (int i = 0; i < levels * each; i++) {
      all.append(i % each == 0 ? "<a" : "").append(" xmlns:n").append(i).append("='urn:n'");
      all.append(i % each == each - 1 ? ">" : "");
    }
    return all.append("</a>".repeat(levels)).toString();
  }

  private static String named(String attribute, int length) {
    return ' ' + attribute + "=\"" + "x".repeat(length + 1) + '"';
  }

  private static String element(int length) {
    return "<" + "x".repeat(length) + "/>";
  }

  static Stream<Attack> encodings() {
    return Stream.of(
        coded("C 2.3.2(1): UTF-16", StandardCharsets.UTF_16),
        coded("C 2.3.2(1): UTF-16 without its mark", StandardCharsets.UTF_16LE),
        coded("C 2.3.2(1): UTF-32", Charset.forName("UTF-32BE")),
        Attack.text("C 2.3.2(1): another encoding declared", "UTF-8", "KOI8-R", "KOI8-R"),
        broken("RFC 3629, 3: half a character", 0xC3),
        broken("RFC 3629, 3: an overlong character", 0xC0, 0xAF),
        broken("RFC 3629, 3: a surrogate", 0xED, 0xA0, 0x80));
  }

  private static Attack coded(String danger, Charset charset) {
    return Attack.part(danger, Attack.box().getBytes(charset), "UTF-8");
  }

  private static Attack broken(String danger, int... bytes) {
    ByteArrayOutputStream model = new ByteArrayOutputStream();
    model.writeBytes(Attack.box().getBytes(StandardCharsets.UTF_8));
    model.writeBytes("<!-- ".getBytes(StandardCharsets.UTF_8));
    for (int value : bytes) {
      model.write(value);
    }
    model.writeBytes(" -->".getBytes(StandardCharsets.UTF_8));
    return Attack.part(danger, model.toByteArray(), "UTF-8", "line ");
  }

  static Stream<Attack> numbers() {
    return Stream.of(
        corner("B.1.1: a coordinate that is none", "NaN", "NaN"),
        corner("B.1.1: an endless coordinate", "INF", "INF"),
        corner("a coordinate beyond double precision", "1e999", "1e999"),
        corner("a coordinate of 400 digits", "1".repeat(400), "at most 64 characters"),
        corner("B.1.1: a comma", "1,5", "1,5"),
        corner("B.1.1: a hexadecimal number", "0x10", "0x10"),
        corner("a coordinate beyond 1e6 mm", "1000001", "1000001"),
        placed("a place beyond 1e6 mm", "1 0 0 0 1 0 0 0 1 1e7 0 0", "1000000"),
        placed("a scale that leads there", "1e6 0 0 0 1e6 0 0 0 1e6 0 0 0", "1000000"),
        placed("a scale beyond double precision", "1e300 0 0 0 1e300 0 0 0 1e300 0 0 0", "1000000"),
        placed("C 3.3: a transform without inverse", "1 0 0 0 1 0 0 0 0 0 0 0", "inverse"),
        index("C 4.1.4.1: a negative index", "-1"),
        index("C 4.1.4.1: an index behind the last vertex", "8"),
        index("an index beyond 2^31 - 1", "2147483648"),
        index("an index that wraps to 1", "4294967297"),
        index("an index that wraps twice", "18446744073709551617"));
  }

  private static Attack corner(String danger, String number, String words) {
    String vertex = "<vertex x=\"10\" y=\"0\" z=\"0\"/>";
    String[] all = {words, "object 1", "vertex 1", "line 3"};
    return Attack.object(danger, vertex, vertex.replace("10", number), all);
  }

  private static Attack placed(String danger, String transform, String words) {
    String item = "<item objectid=\"1\" transform=\"" + transform + "\"/>";
    return Attack.object(danger, Attack.ITEM, item, words, "object 1");
  }

  private static Attack index(String danger, String index) {
    return Attack.object(
        danger, "v1=\"3\"", "v1=\"" + index + '"', index, "object 1", "triangle 0", "line 3");
  }

  static Stream<Attack> references() {
    return Stream.of(
        Attack.text("C 3.4.2: an id of 0", NAME, "<object id=\"0\"", "\"0\""),
        Attack.text("C 3.4.2: a negative id", NAME, "<object id=\"-1\"", "\"-1\""),
        Attack.text("an id beyond 2^31 - 1", NAME, "<object id=\"2147483648\"", "2147483648"),
        Attack.text(
            "C 3.4.2: an id twice", "</resources>", Models.box(1) + "</resources>", "\"1\""),
        Attack.object("C 3.4.3.1: an item of nothing", "objectid=\"1\"", "objectid=\"9\"", "9"),
        Attack.built("C 4.2: a component of nothing", group(2, 9), 2, "object 9"),
        Attack.built("C 4.2: components in a circle", group(2, 3) + group(3, 2), 2, "itself"),
        Attack.built("C 4.2: a component of itself", group(2, 2), 2, "itself"),
        Attack.built("components 65 deep", chain(65, 1), 66, "64"),
        Attack.built("2^40 meshes in 40 levels of two", chain(40, 2), 41, "100000"));
  }

  private static String group(int id, int... components) {
    StringBuilder group = new StringBuilder("<object id=\"" + id + "\"><components>");
    for (int component : components) {
      group.append("<component objectid=\"").append(component).append("\"/>");
    }
    return group.append("</components></object>").toString();
  }

  /** Groups 2, 3, 4 ... each of which holds the one before so many times. */
  private static String chain(int levels, int times) {
    StringBuilder chain = new StringBuilder();
    for (int id = 2; id < levels + 2; id++) {
      int[] components = new int[times];
      java.util.Arrays.fill(components, id - 1);
      chain.append(group(id, components));
    }
    return chain.toString();
  }

  static Stream<Attack> masses() {
    String flat = "<vertex x=\"1\" y=\"1\" z=\"1\"/>".repeat(8);
    return Stream.of(
        Attack.mesh(
            "C 4.1: all points equal", () -> Models.mesh(flat, Models.boxTriangles("")), "volume"),
        Attack.mesh("C 4.1: an edge in 100,000 triangles", () -> book(100_000), "closed"),
        Attack.mesh("C 4.1.4.1: one triangle 200,000 times", () -> pile(200_000), "closed"),
        Attack.mesh("C 4.1.4: no triangle", () -> Models.mesh(flat, ""), "0 triangles"));
  }

  /** Pages between the vertices 0 and 1. */
  private static String book(int pages) {
    StringBuilder vertices = new StringBuilder("<vertex x=\"0\" y=\"0\" z=\"0\"/>");
    vertices.append("<vertex x=\"0\" y=\"0\" z=\"1\"/>");
    StringBuilder triangles = new StringBuilder();
    for (int page = 2; page < pages + 2; page++) {
      vertices.append("<vertex x=\"1\" y=\"").append(page).append("\" z=\"0\"/>");
      triangles.append("<triangle v1=\"0\" v2=\"1\" v3=\"").append(page).append("\"/>");
    }
    return Models.mesh(vertices.toString(), triangles.toString());
  }

  private static String pile(int times) {
    String triangle = "<triangle v1=\"0\" v2=\"1\" v3=\"2\"/>";
    return Models.mesh(Models.BOX_VERTICES, triangle.repeat(times));
  }
}

package gable.threemf;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gable.fixture.AtOnce;
import gable.mesh.Aside;
import gable.mesh.Mesh;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** A list read from two sides is the list, wherever the guess begins. */
final class TrianglesAheadTest {

  /** What is usual is read up to some bytes before the end of the text only. */
  private static final String MORE = " ".repeat(100);

  private static final String USUAL =
      """

        <triangle v1="0" v2="1" v3="2"/>
        <triangle v1="3" v2="4" v3="5"/><triangle v1="6" v2="7" v3="8"/>
      <triangle v1="9" v2="10" v3="11"/>
      """;

  private static final String WITH_PROPERTIES =
      """
      <triangle v1="0" v2="1" v3="2"/>
      <triangle v1="3" v2="4" v3="5" pid="7" p1="1"/>
      <triangle v3="6" v2="7" v1="8"/>
      <triangle v1="9" v2="10" v3="11" />
      <triangle v1="12" v2="13" v3="14"/>
      """;

  @Test
  void usualTrianglesFromAnyByte() {
    everyStartGivesTheSame(USUAL + "</triangles>", 4);
  }

  @Test
  void otherTrianglesBetweenThem() {
    everyStartGivesTheSame(WITH_PROPERTIES + "</triangles>", 5);
  }

  @Test
  void aListThatEndsBeforeTheGuess() {
    String another = "<x/><triangles><triangle v1=\"1\" v2=\"2\" v3=\"3\"/></triangles>";
    everyStartGivesTheSame(USUAL + "</triangles>" + another, 4);
  }

  @Test
  void triangleInACommentOfThePlaceThatTheListNeverReaches() {
    everyStartGivesTheSame(
        USUAL + "</triangles><!-- <triangle v1=\"1\" v2=\"1\" v3=\"1\"/> -->", 4);
  }

  private static void everyStartGivesTheSame(String list, int count) {
    byte[] text = (list + MORE).getBytes(StandardCharsets.UTF_8);
    MeshList alone = read(text, TrianglesAhead.NONE).orElseThrow();
    assertEquals(3 * count, alone.corners().length);
    for (int at = 0; at < text.length; at++) {
      int start = at;
      ListCursor cursor = new ListCursor(text, 0, text.length);
      TrianglesAhead ahead = TrianglesAhead.from(text, start, new AtOnce());
      MeshList both = PlainList.triangles(cursor, "", ahead).orElseThrow();
      assertArrayEquals(alone.corners(), both.corners(), "from byte " + start);
      assertArrayEquals(alone.places(), both.places(), "from byte " + start);
      assertEquals(alone.properties().count(), both.properties().count());
      assertEquals(alone.properties().byGroup().keySet(), both.properties().byGroup().keySet());
      both.properties()
          .byGroup()
          .forEach(
              (group, use) -> assertEquals(1, use.first(), "group " + group + " from " + start));
      assertEquals(list.indexOf("</triangles>") + "</triangles>".length(), cursor.at());
    }
  }

  private static Optional<MeshList> read(byte[] text, TrianglesAhead ahead) {
    return PlainList.triangles(new ListCursor(text, 0, text.length), "", ahead);
  }

  @Test
  void theGuessIsUsed() {
    String list = USUAL + "</triangles>";
    byte[] text = (list + MORE).getBytes(StandardCharsets.UTF_8);
    TrianglesAhead ahead = TrianglesAhead.from(text, list.length() / 2, new AtOnce());
    int place = list.indexOf("<triangle", list.length() / 2);
    assertTrue(ahead.startsAt(place));
    assertTrue(ahead.run().orElseThrow().corners().length > 0);
    assertEquals(list.indexOf("</triangles>"), ahead.run().orElseThrow().end());
  }

  @Test
  void nothingIsReadForAListOfAnotherPrefix() {
    String list = "<m:triangle v1=\"0\" v2=\"1\" v3=\"2\"/></m:triangles>";
    byte[] text = (list + USUAL).getBytes(StandardCharsets.UTF_8);
    TrianglesAhead ahead = TrianglesAhead.from(text, 0, new AtOnce());
    ListCursor cursor = new ListCursor(text, 0, text.length);
    assertEquals(3, PlainList.triangles(cursor, "m:", ahead).orElseThrow().corners().length);
  }

  @Test
  void aLongPartReadWithHelp() throws Exception {
    List<String> triangles = new ArrayList<>();
    for (int k = 0; k < 20_000; k++) {
      String more = k % 997 == 0 ? " pid=\"1\" p1=\"0\"" : "";
      triangles.add(
          "<triangle v1=\""
              + k % 4
              + "\" v2=\""
              + (k + 1) % 4
              + "\" v3=\""
              + (k + 2) % 4
              + '"'
              + more
              + "/>");
    }
    String part =
        Models.model(
            """
            <basematerials id="1"><base name="a" displaycolor="#FFFFFF"/></basematerials>
            <object id="2"><mesh><vertices><vertex x="0" y="0" z="0"/><vertex x="1" y="0" z="0"/>
            <vertex x="0" y="1" z="0"/><vertex x="0" y="0" z="1"/></vertices><triangles>
            """
                + String.join("\n", triangles)
                + "</triangles></mesh></object>",
            "<item objectid=\"2\"/>");
    byte[] text = part.getBytes(StandardCharsets.UTF_8);
    assertFalse(
        TrianglesAhead.of(text, Aside.NOBODY)
            .startsAt(part.indexOf("<triangle ", text.length / 2)));
    assertTrue(
        TrianglesAhead.of(text, new AtOnce())
            .startsAt(part.indexOf("<triangle ", text.length / 2)));
    assertSame(mesh(text, Aside.NOBODY), mesh(text, new AtOnce()));
  }

  private static MeshObject mesh(byte[] text, Aside aside) throws Exception {
    ModelPart part = ModelPart.read("/m", text, ModelLimits.USUAL, ModelVisitor.NONE, aside);
    return (MeshObject) part.object(2).orElseThrow();
  }

  private static void assertSame(MeshObject one, MeshObject other) {
    Mesh mesh = one.mesh();
    assertEquals(20_000, mesh.facetCount());
    assertEquals(mesh.facetCount(), other.mesh().facetCount());
    for (int facet = 0; facet < mesh.facetCount(); facet++) {
      for (int k = 0; k < 3; k++) {
        assertEquals(mesh.corner(facet, k), other.mesh().corner(facet, k));
      }
    }
  }
}

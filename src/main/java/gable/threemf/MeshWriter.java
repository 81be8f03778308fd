package gable.threemf;

import gable.geom.Vec3;
import gable.mesh.Mesh;
import gable.mesh.MeshEdit;
import java.util.Set;
import java.util.TreeSet;

/**
 * Writes a mesh edit into the text of its lists. Vertices and triangles that stay keep text and
 * number; new triangles take the places of removed ones in ascending order and the rest follow at
 * the end; new vertices follow at the end.
 */
final class MeshWriter {

  private static final String[] CORNERS = {"v1", "v2", "v3"};
  private static final Set<String> OWN = Set.of("v1", "v2", "v3", "pid", "p1", "p2", "p3");

  private final byte[] text;
  private final MeshObject object;
  private final MeshEdit edit;
  private final VertexGrid grid;
  private final ByteSplices splices;
  private final PropertyWriter properties;
  private final Set<String> foreign = new TreeSet<>();
  private final Set<String> nameless = new TreeSet<>();
  private int borrowed;

  MeshWriter(byte[] text, ObjectEdit change, ByteSplices splices, PropertyWriter properties) {
    this.text = text;
    this.object = change.object();
    this.edit = change.edit();
    this.grid = change.grid();
    this.splices = splices;
    this.properties = properties;
  }

  void write() {
    vertices();
    triangles();
    TriangleSets.write(text, object, edit, splices);
  }

  /** Attributes of extensions that were copied from triangles to those that take their place. */
  Set<String> foreign() {
    return foreign;
  }

  /**
   * Attributes that belong to nothing, which triangles that are replaced had, and new ones lack.
   */
  Set<String> nameless() {
    return nameless;
  }

  /** Number of triangles on new faces that took properties from one beside them. */
  int borrowed() {
    return borrowed;
  }

  private void vertices() {
    ListStyle style = ListStyle.of(text, object.source().vertices(), "vertex");
    StringBuilder added = new StringBuilder();
    for (int i = 0; i < edit.pointCount(); i++) {
      added.append(style.separator()).append('<').append(style.name());
      added.append(" x=\"").append(grid.text(edit.coordinate(i, 0)));
      added.append("\" y=\"").append(grid.text(edit.coordinate(i, 1)));
      added.append("\" z=\"").append(grid.text(edit.coordinate(i, 2)));
      added.append('"').append(style.closing());
    }
    if (edit.pointCount() > 0) {
      splices.insert(style.end(), added);
    }
  }

  private void triangles() {
    ListStyle style = ListStyle.of(text, object.source().triangles(), "triangle");
    StringBuilder added = new StringBuilder();
    for (int i = 0; i < edit.facetCount(); i++) {
      if (i < edit.removedCount()) {
        StringBuilder triangle = new StringBuilder();
        triangle(triangle, style, i);
        int place = object.source().place(edit.removed(i));
        splices.replace(place, endOf(place), triangle);
      } else {
        triangle(added.append(style.separator()), style, i);
      }
    }
    if (!added.isEmpty()) {
      splices.insert(style.end(), added);
    }
  }

  /** End of the element whose tag starts at a place; its content, if it has any, goes with it. */
  private int endOf(int place) {
    TagText tag = TagText.at(text, place);
    if (tag.empty()) {
      return tag.end();
    }
    TagScanner tags = new TagScanner(text, tag.end(), object.source().triangles().contentEnd());
    for (int depth = 0; tags.next(); ) {
      depth += tags.closing() ? -1 : tags.empty() ? 0 : 1;
      if (depth < 0) {
        return tags.tagEnd();
      }
    }
    throw new IllegalStateException("a triangle without an end, byte " + place);
  }

  private void triangle(StringBuilder to, ListStyle style, int facet) {
    to.append('<').append(style.name());
    for (int k = 0; k < 3; k++) {
      to.append(' ').append(CORNERS[k]).append("=\"").append(edit.corner(facet, k)).append('"');
    }
    TagText source = TagText.at(text, object.source().place(edit.source(facet)));
    if (source.attributes().size() > 3) {
      inherited(to, facet, source);
    }
    to.append(style.closing());
  }

  private void inherited(StringBuilder to, int facet, TagText source) {
    CornerProperties corners = new CornerProperties(object, edit.source(facet), source, properties);
    Vec3[] points = {point(facet, 0), point(facet, 1), point(facet, 2)};
    if (edit.onNewFace(facet)) {
      borrowed += corners.given() ? 1 : 0;
      corners.near(to, points[0].plus(points[1]).plus(points[2]).times(1.0 / 3));
      return;
    }
    int[] vertices = {edit.corner(facet, 0), edit.corner(facet, 1), edit.corner(facet, 2)};
    corners.inside(to, points, vertices);
    for (TagText.Attribute attribute : source.attributes()) {
      if (OWN.contains(attribute.name())) {
        continue;
      }
      if (isNameless(attribute.name())) {
        nameless.add(attribute.name());
        continue;
      }
      to.append(' ').append(source.whole(attribute));
      foreign.add(attribute.name());
    }
  }

  /** The standard has no such attribute: a copy on each piece would break its rule more often. */
  private static boolean isNameless(String attribute) {
    return attribute.indexOf(':') < 0 && !attribute.equals("xmlns");
  }

  private Vec3 point(int facet, int k) {
    Mesh mesh = object.mesh();
    int vertex = edit.corner(facet, k);
    int added = vertex - mesh.vertexCount();
    return added < 0
        ? mesh.point(vertex)
        : new Vec3(edit.coordinate(added, 0), edit.coordinate(added, 1), edit.coordinate(added, 2));
  }
}

package gable.threemf;

import gable.mesh.MeshEdit;

/**
 * Writes a mesh edit into the text of its lists. Vertices and triangles that stay keep text and
 * number; new triangles take the places of removed ones in ascending order and the rest follow at
 * the end; new vertices follow at the end.
 */
final class MeshWriter {

  private static final String[] CORNERS = {"v1", "v2", "v3"};

  private final byte[] text;
  private final MeshObject object;
  private final MeshEdit edit;
  private final VertexGrid grid;
  private final ByteSplices splices;

  MeshWriter(byte[] text, ObjectEdit change, ByteSplices splices) {
    this.text = text;
    this.object = change.object();
    this.edit = change.edit();
    this.grid = change.grid();
    this.splices = splices;
  }

  void write() {
    vertices();
    triangles();
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
    to.append(style.closing());
  }
}

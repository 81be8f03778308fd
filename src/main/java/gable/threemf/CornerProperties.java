package gable.threemf;

import gable.geom.Vec3;
import gable.mesh.Mesh;

/**
 * The properties of one triangle of the file, and what triangles that take its place have of them.
 *
 * <p>Source: core specification 1.4, section 4.1.4.1: a triangle's pid overrides its object's, p1
 * to p3 are entries at its corners, without p2 or p3 the whole triangle has p1, without p1 it has
 * what its object has. Properties belong to the corners of triangles, not to vertices.
 */
final class CornerProperties {

  private static final String[] CORNERS = {"p1", "p2", "p3"};

  private final TagText tag;
  private final int group;
  private final int[] entries = new int[3];
  private final boolean varies;
  private final PropertyWriter writer;
  private final Mesh mesh;
  private final int facet;

  CornerProperties(MeshObject object, int facet, TagText tag, PropertyWriter writer) {
    this.tag = tag;
    this.mesh = object.mesh();
    this.facet = facet;
    this.writer = writer;
    int own = NumberText.index(tag.value("pid"));
    group = own >= 0 ? own : object.source().property().group().orElse(-1);
    for (int k = 0; k < 3; k++) {
      entries[k] = NumberText.index(tag.value(CORNERS[k]));
    }
    boolean all = group >= 0 && entries[0] >= 0 && entries[1] >= 0 && entries[2] >= 0;
    varies = all && (entries[0] != entries[1] || entries[0] != entries[2]);
  }

  /** True if the triangle itself says anything of properties. */
  boolean given() {
    return tag.attribute("pid").isPresent() || tag.attribute("p1").isPresent();
  }

  /** Adds the property attributes of a triangle that lies inside this one. */
  void inside(StringBuilder to, Vec3[] points, int[] vertices) {
    if (!varies) {
      unchanged(to);
      return;
    }
    int[] own = new int[3];
    for (int k = 0; k < 3; k++) {
      own[k] = entry(points[k], vertices[k]);
    }
    attributes(to, own);
  }

  private int entry(Vec3 point, int vertex) {
    if (writer.blends(group)) {
      for (int k = 0; k < 3; k++) {
        if (mesh.corner(facet, k) == vertex) {
          return entries[k];
        }
      }
    }
    return writer.blend(group, entries, weights(point));
  }

  /**
   * Adds the property attributes of a triangle on a new face near this one: one value for it all.
   */
  void near(StringBuilder to, Vec3 middle) {
    if (!varies) {
      unchanged(to);
      return;
    }
    int own = writer.blend(group, entries, weights(middle));
    attributes(to, new int[] {own, own, own});
  }

  private void unchanged(StringBuilder to) {
    for (String name : new String[] {"pid", "p1", "p2", "p3"}) {
      tag.attribute(name).ifPresent(each -> to.append(' ').append(tag.whole(each)));
    }
  }

  private void attributes(StringBuilder to, int[] own) {
    tag.attribute("pid").ifPresent(each -> to.append(' ').append(tag.whole(each)));
    boolean flat = own[0] == own[1] && own[0] == own[2];
    for (int k = 0; k < (flat ? 1 : 3); k++) {
      to.append(' ').append(CORNERS[k]).append("=\"").append(own[k]).append('"');
    }
  }

  private double[] weights(Vec3 point) {
    return Barycentric.nearest(
        mesh.point(mesh.corner(facet, 0)),
        mesh.point(mesh.corner(facet, 1)),
        mesh.point(mesh.corner(facet, 2)),
        point);
  }
}

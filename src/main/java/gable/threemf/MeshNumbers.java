package gable.threemf;

import gable.mesh.Mesh;
import gable.opc.Place;

/**
 * A vertex or triangle list of a part as numbers. What the text of an element must be like has been
 * checked; whether the corners are vertices has not.
 */
public final class MeshNumbers {

  private final String part;
  private final PartText text;
  private final MeshList list;

  MeshNumbers(String part, PartText text, MeshList list) {
    this.part = part;
    this.text = text;
    this.list = list;
  }

  /** Number of vertices or triangles. */
  public int count() {
    return isVertices() ? list.xyz().length / 3 : list.corners().length / 3;
  }

  /** Whether the list holds vertices. */
  public boolean isVertices() {
    return list.kind() == MeshList.Kind.VERTICES;
  }

  /** A coordinate of a vertex as written; axis 0 to 2. */
  public double coordinate(int vertex, int axis) {
    return list.xyz()[3 * vertex + axis];
  }

  /** A corner of a triangle as written, 0 to 2. */
  public int corner(int triangle, int corner) {
    return list.corners()[3 * triangle + corner];
  }

  /** What the triangles say of properties. */
  public PropertyUses properties() {
    return list.properties();
  }

  /** Where a triangle stands. */
  public Place place(int triangle) {
    int offset = list.places()[triangle];
    return Place.of(part, text.line(offset), text.column(offset));
  }

  /** The mesh that vertices and triangles make, without a copy. All corners must be vertices. */
  public static Mesh mesh(MeshNumbers vertices, MeshNumbers triangles) {
    return Mesh.of(vertices.list.xyz(), triangles.list.corners());
  }
}

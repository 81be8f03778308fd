package gable.threemf;

import gable.threemf.Elements.Span;
import java.util.List;
import java.util.OptionalInt;

/** Where a mesh stands in its part, and what its object says of properties. */
final class MeshSource {

  /**
   * A triangle set.
   *
   * @param span where it stands
   * @param members first and last triangle of every reference
   */
  record TriangleSet(Span span, Entries members) {}

  /**
   * The default property of an object.
   *
   * @param group id of the group, if the object has one
   * @param index entry in the group
   */
  record Default(OptionalInt group, int index) {}

  private final Span vertices;
  private final Span triangles;
  private final int[] places;
  private final List<TriangleSet> sets;
  private final Default property;

  MeshSource(
      Span vertices, Span triangles, int[] places, List<TriangleSet> sets, Default property) {
    this.vertices = vertices;
    this.triangles = triangles;
    this.places = places;
    this.sets = List.copyOf(sets);
    this.property = property;
  }

  /** Span of the vertex list. */
  Span vertices() {
    return vertices;
  }

  /** Span of the triangle list. */
  Span triangles() {
    return triangles;
  }

  /** Byte offset of a triangle's tag. */
  int place(int triangle) {
    return places[triangle];
  }

  /** The triangle sets of the mesh. */
  List<TriangleSet> sets() {
    return sets;
  }

  /** The property of triangles that name none. */
  Default property() {
    return property;
  }
}

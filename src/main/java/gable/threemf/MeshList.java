package gable.threemf;

import java.util.Optional;

/**
 * A vertex or triangle list as read.
 *
 * <p>Of a vertex list it holds three coordinates for each vertex; of a triangle list three corners
 * and the byte offset of each triangle's tag, so that the tag can be read again or replaced.
 */
final class MeshList {

  /** What a list holds. */
  enum Kind {
    VERTICES("vertex"),
    TRIANGLES("triangle");

    private final String child;

    Kind(String child) {
      this.child = child;
    }

    /** Local name of the elements in the list. */
    String child() {
      return child;
    }
  }

  private final Kind kind;
  private final double[] xyz;
  private final int[] corners;
  private final int[] places;
  private final Optional<ListFault> fault;
  private final boolean foreign;
  private final PropertyUses properties;

  private MeshList(
      Kind kind,
      double[] xyz,
      int[] corners,
      int[] places,
      Optional<ListFault> fault,
      boolean foreign,
      PropertyUses properties) {
    this.kind = kind;
    this.xyz = xyz;
    this.corners = corners;
    this.places = places;
    this.fault = fault;
    this.foreign = foreign;
    this.properties = properties;
  }

  static MeshList vertices(double[] xyz, Optional<ListFault> fault, boolean foreign) {
    return new MeshList(
        Kind.VERTICES, xyz, new int[0], new int[0], fault, foreign, new PropertyUses());
  }

  static MeshList triangles(
      int[] corners,
      int[] places,
      Optional<ListFault> fault,
      boolean foreign,
      PropertyUses properties) {
    return new MeshList(Kind.TRIANGLES, new double[0], corners, places, fault, foreign, properties);
  }

  Kind kind() {
    return kind;
  }

  double[] xyz() {
    return xyz;
  }

  int[] corners() {
    return corners;
  }

  /** Byte offsets of the triangles' tags. */
  int[] places() {
    return places;
  }

  /** The first element that is none; the arrays then end before it. */
  Optional<ListFault> fault() {
    return fault;
  }

  /** What the triangles say of properties. */
  PropertyUses properties() {
    return properties;
  }

  /** True if elements of another kind stand in the list. */
  boolean foreign() {
    return foreign;
  }
}

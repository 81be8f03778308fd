package gable.mesh;

import java.util.Arrays;

/**
 * A change to a mesh, as data: facets taken away, vertices appended, facets added. Vertices and
 * facets that stay keep their numbers. New vertices are numbered from the vertex count of the mesh
 * on, in their order here.
 *
 * <p>Every new facet names an old one as its source. If it lies inside its source it inherits what
 * the source says of its surface, interpolated; if it lies on a quite new face (a roof) it borrows
 * the source's value at the nearest point.
 */
public final class MeshEdit {

  /** The edit that changes nothing. */
  public static final MeshEdit NONE =
      new MeshEdit(new int[0], new double[0], new int[0], new int[0], new boolean[0]);

  private final int[] removed;
  private final double[] points;
  private final int[] corners;
  private final int[] sources;
  private final boolean[] onNewFace;

  /**
   * Takes the arrays over; they must not change any more.
   *
   * @param removed facets to take away, ascending
   * @param points new vertices, three coordinates each
   * @param corners new facets, three vertices each
   * @param sources for each new facet an old facet
   * @param onNewFace for each new facet whether it lies on a quite new face
   */
  public MeshEdit(
      int[] removed, double[] points, int[] corners, int[] sources, boolean[] onNewFace) {
    if (points.length % 3 != 0
        || corners.length != 3 * sources.length
        || sources.length != onNewFace.length) {
      throw new IllegalArgumentException(
          "lengths do not agree: "
              + points.length
              + " coordinates, "
              + corners.length
              + " corners, "
              + sources.length
              + " sources, "
              + onNewFace.length
              + " flags");
    }
    this.removed = removed;
    this.points = points;
    this.corners = corners;
    this.sources = sources;
    this.onNewFace = onNewFace;
  }

  /** Number of facets taken away. */
  public int removedCount() {
    return removed.length;
  }

  /** The {@code index}-th facet taken away; ascending. */
  public int removed(int index) {
    return removed[index];
  }

  /** Number of new vertices. */
  public int pointCount() {
    return points.length / 3;
  }

  /** Coordinate {@code axis} (0, 1, 2) of the {@code index}-th new vertex. */
  public double coordinate(int index, int axis) {
    return points[3 * index + axis];
  }

  /** Number of new facets. */
  public int facetCount() {
    return sources.length;
  }

  /** Vertex at corner {@code k} of the {@code index}-th new facet. */
  public int corner(int index, int k) {
    return corners[3 * index + k];
  }

  /** Old facet from which the {@code index}-th new facet has its properties. */
  public int source(int index) {
    return sources[index];
  }

  /** True if the {@code index}-th new facet lies on a quite new face, not inside its source. */
  public boolean onNewFace(int index) {
    return onNewFace[index];
  }

  /** True if nothing changes. */
  public boolean isEmpty() {
    return removed.length == 0 && sources.length == 0;
  }

  /**
   * The edited mesh: vertices in their old order, then the new ones; facets that stay in their old
   * order, then the new ones.
   */
  public Mesh applied(Mesh mesh) {
    double[] xyz = Arrays.copyOf(mesh.copyOfPoints(), 3 * mesh.vertexCount() + points.length);
    System.arraycopy(points, 0, xyz, 3 * mesh.vertexCount(), points.length);
    int kept = mesh.facetCount() - removed.length;
    int[] all = new int[3 * kept + corners.length];
    int at = 0;
    int gone = 0;
    for (int facet = 0; facet < mesh.facetCount(); facet++) {
      if (gone < removed.length && removed[gone] == facet) {
        gone++;
        continue;
      }
      for (int k = 0; k < 3; k++) {
        all[at++] = mesh.corner(facet, k);
      }
    }
    System.arraycopy(corners, 0, all, at, corners.length);
    return Mesh.of(xyz, all);
  }

  /** The same edit with all new vertices at other places, for another frame. */
  public MeshEdit withPoints(double[] moved) {
    return new MeshEdit(removed, moved, corners, sources, onNewFace);
  }

  /** The same edit with the winding of every new facet reversed, for a mirrored frame. */
  public MeshEdit mirrored() {
    int[] turned = corners.clone();
    for (int c = 0; c < turned.length; c += 3) {
      int second = turned[c + 1];
      turned[c + 1] = turned[c + 2];
      turned[c + 2] = second;
    }
    return new MeshEdit(removed, points, turned, sources, onNewFace);
  }
}

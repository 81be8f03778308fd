package gable.edit;

import gable.mesh.WorkMesh;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The part of a facet that lies inside a tool: a convex polygon whose corners are named points and
 * whose sides lie each on an edge of the facet or on a plane of the tool.
 *
 * @param facet the facet
 * @param nodes corners, in the orientation of the facet
 * @param sides what the side from corner k to the next lies on: a plane of the tool if ≥ 0, else
 *     edge −1−side of the facet
 */
record FacetPiece(int facet, List<Node> nodes, List<Integer> sides) {

  /**
   * Cuts a facet with all planes in turn; nothing if no part of it lies inside.
   *
   * <p>Most planes have the whole facet on one side, and then nothing of it can be on the other:
   * the questions that are put to points of it have exact answers. Only the rest are cut with.
   */
  static Optional<FacetPiece> of(WorkMesh mesh, int facet, SignTable signs) {
    int[] crossed = signs.planesAcross(facet);
    if (crossed.length == 1 && crossed[0] == SignTable.OUTSIDE) {
      return Optional.empty();
    }
    List<Node> nodes = new ArrayList<>();
    for (int k = 0; k < 3; k++) {
      nodes.add(Node.vertex(mesh.corner(facet, k)));
    }
    FacetPiece piece = new FacetPiece(facet, nodes, List.of(-1, -2, -3));
    for (int plane : crossed) {
      piece = piece.inside(plane, mesh, signs);
      if (piece.nodes.size() < 3) {
        return Optional.empty();
      }
    }
    return Optional.of(piece);
  }

  private FacetPiece inside(int plane, WorkMesh mesh, SignTable signs) {
    int n = nodes.size();
    boolean[] in = new boolean[n];
    boolean all = true;
    for (int k = 0; k < n; k++) {
      in[k] = signs.inside(nodes.get(k), facet, plane);
      all &= in[k];
    }
    if (all) {
      return this;
    }
    List<Node> kept = new ArrayList<>();
    List<Integer> keptSides = new ArrayList<>();
    for (int k = 0; k < n; k++) {
      int next = (k + 1) % n;
      if (in[k]) {
        kept.add(nodes.get(k));
        keptSides.add(sides.get(k));
        if (!in[next]) {
          kept.add(meeting(sides.get(k), plane, mesh));
          keptSides.add(plane);
        }
      } else if (in[next]) {
        kept.add(meeting(sides.get(k), plane, mesh));
        keptSides.add(sides.get(k));
      }
    }
    return new FacetPiece(facet, kept, keptSides);
  }

  private Node meeting(int side, int plane, WorkMesh mesh) {
    if (side >= 0) {
      return Node.piercing(facet, side, plane);
    }
    int edge = -1 - side;
    return Node.crossing(mesh.corner(facet, edge), mesh.corner(facet, (edge + 1) % 3), plane);
  }

  /** True if the whole facet lies inside. */
  boolean whole() {
    return sides.stream().allMatch(side -> side < 0);
  }

  int size() {
    return nodes.size();
  }

  Node node(int k) {
    return nodes.get(k % nodes.size());
  }

  int side(int k) {
    return sides.get(k % sides.size());
  }

  /** The same polygon run the other way round, for the solid's complement. */
  FacetPiece reversed() {
    List<Node> turned = new ArrayList<>();
    List<Integer> turnedSides = new ArrayList<>();
    int n = nodes.size();
    for (int k = 0; k < n; k++) {
      turned.add(nodes.get((n - k) % n));
      turnedSides.add(sides.get(n - 1 - k));
    }
    return new FacetPiece(facet, turned, turnedSides);
  }
}

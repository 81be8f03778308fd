package gable.verify;

import gable.geom.Box3;
import gable.geom.Vec3;
import gable.mesh.FacetTree;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Looks at a whole mesh, whatever made it: is it the surface of a solid? Any frame and unit.
 *
 * <p>Cost: near linear in the facets; the search for crossings looks at every facet near the boxes
 * that are given, or at all.
 */
public final class MeshCheck {

  private final Mesh mesh;
  private final HalfEdges halfEdges;

  private MeshCheck(Mesh mesh) {
    this.mesh = mesh;
    this.halfEdges = HalfEdges.of(mesh);
  }

  /**
   * Two facets that meet where they must not.
   *
   * @param first the one with the lower number
   * @param second the other
   */
  public record Crossing(int first, int second) {}

  /**
   * What was found.
   *
   * @param openEdges edges of one facet only
   * @param badEdges edges of more than two facets, or of two in the same direction
   * @param flatFacets facets without area
   * @param pinchedVertices vertices whose facets form more than one fan
   * @param shells number of connected pieces of the surface
   * @param genus sum of the genus of all shells, if the surface is closed
   * @param volume enclosed volume, positive if the outside is outside
   * @param crossings number of pairs of facets that meet where they must not
   * @param firstCrossing the first of them
   */
  public record Report(
      int openEdges,
      int badEdges,
      int flatFacets,
      int pinchedVertices,
      int shells,
      OptionalInt genus,
      double volume,
      int crossings,
      Optional<Crossing> firstCrossing) {

    /** True if every edge belongs to two facets in opposite directions. */
    public boolean closed() {
      return openEdges == 0 && badEdges == 0;
    }

    /** True if nothing is wrong. */
    public boolean sound() {
      return closed() && flatFacets == 0 && pinchedVertices == 0 && crossings == 0 && volume > 0;
    }
  }

  /** Looks at everything. */
  public static Report of(Mesh mesh) {
    return new MeshCheck(mesh).report(List.of(mesh.box()));
  }

  /** Looks at everything, but for crossings only at facets whose boxes meet one of these. */
  public static Report near(Mesh mesh, List<Box3> places) {
    return new MeshCheck(mesh).report(places);
  }

  /** The mesh as a reader holds it that keeps coordinates in single precision. */
  public static Mesh inSinglePrecision(Mesh mesh) {
    double[] rounded = mesh.copyOfPoints();
    for (int k = 0; k < rounded.length; k++) {
      rounded[k] = (float) rounded[k];
    }
    return Mesh.of(rounded, mesh.copyOfCorners());
  }

  private Report report(List<Box3> places) {
    int shells = shells();
    int[] fans = fans();
    int used = 0;
    int pinched = 0;
    for (int count : fans) {
      used += count;
      pinched += count > 1 ? 1 : 0;
    }
    // a pinched vertex counts once for each fan: then each shell is a surface with V − E + F = 2−2g
    int euler = used - 3 * mesh.facetCount() / 2 + mesh.facetCount();
    OptionalInt genus =
        halfEdges.closed() ? OptionalInt.of(shells - euler / 2) : OptionalInt.empty();
    List<Crossing> crossings = crossings(places);
    return new Report(
        halfEdges.openEdges(),
        halfEdges.badEdges(),
        flatFacets(),
        pinched,
        shells,
        genus,
        mesh.volume(),
        crossings.size(),
        crossings.stream().findFirst());
  }

  private int flatFacets() {
    int flat = 0;
    for (int f = 0; f < mesh.facetCount(); f++) {
      flat += Sides.collinear(point(f, 0), point(f, 1), point(f, 2)) ? 1 : 0;
    }
    return flat;
  }

  private Vec3 point(int facet, int k) {
    return mesh.point(mesh.corner(facet, k));
  }

  private int shells() {
    boolean[] seen = new boolean[mesh.facetCount()];
    IntList waiting = new IntList();
    int shells = 0;
    for (int start = 0; start < seen.length; start++) {
      if (seen[start]) {
        continue;
      }
      shells++;
      seen[start] = true;
      waiting.add(start);
      while (waiting.size() > 0) {
        int facet = waiting.removeLast();
        for (int h = 3 * facet; h < 3 * facet + 3; h++) {
          int across = halfEdges.facetAcross(h);
          if (across >= 0 && !seen[across]) {
            seen[across] = true;
            waiting.add(across);
          }
        }
      }
    }
    return shells;
  }

  /** Number of fans at each vertex; a fan that is cut by open edges counts once for each part. */
  private int[] fans() {
    int[] fans = new int[mesh.vertexCount()];
    boolean[] seen = new boolean[3 * mesh.facetCount()];
    for (int start = 0; start < seen.length; start++) {
      if (!seen[start]) {
        fans[mesh.origin(start)]++;
        int h = start;
        while (h >= 0 && !seen[h]) {
          seen[h] = true;
          h = halfEdges.opposite(Mesh.previous(h));
        }
      }
    }
    return fans;
  }

  private List<Crossing> crossings(List<Box3> places) {
    FacetTree tree = FacetTree.of(mesh);
    IntList facets = new IntList();
    for (Box3 place : places) {
      tree.visit(place, facets::add);
    }
    facets.sort();
    List<Crossing> crossings = new ArrayList<>();
    for (int k = 0; k < facets.size(); k++) {
      if (k == 0 || facets.get(k) != facets.get(k - 1)) {
        addCrossings(facets.get(k), tree, facets, crossings);
      }
    }
    return crossings;
  }

  /** Pairs of one facet with those after it, and with those before it that are not looked at. */
  private void addCrossings(int f, FacetTree tree, IntList looked, List<Crossing> crossings) {
    Triangle triangle = triangle(f);
    if (triangle.isFlat()) {
      return;
    }
    int from = crossings.size();
    tree.visit(
        mesh.facetBox(f),
        g -> {
          if (g > f || (g < f && !looked.contains(g))) {
            Triangle other = triangle(g);
            if (!other.isFlat() && triangle.crosses(other)) {
              crossings.add(new Crossing(Math.min(f, g), Math.max(f, g)));
            }
          }
        });
    crossings.subList(from, crossings.size()).sort((a, b) -> Arrays.compare(key(a), key(b)));
  }

  private static int[] key(Crossing crossing) {
    return new int[] {crossing.first, crossing.second};
  }

  private Triangle triangle(int facet) {
    return new Triangle(
        mesh.corner(facet, 0),
        mesh.corner(facet, 1),
        mesh.corner(facet, 2),
        point(facet, 0),
        point(facet, 1),
        point(facet, 2));
  }
}

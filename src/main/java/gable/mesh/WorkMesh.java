package gable.mesh;

import gable.geom.Beam;
import gable.geom.Box3;
import gable.geom.EdgeKey;
import gable.geom.Vec3;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.DoubleSupplier;
import java.util.function.IntConsumer;

/**
 * A closed mesh on which edits are made one after the other. Facets and vertices keep their
 * numbers; facets taken away are dead, new ones get the next numbers. The mesh it starts from is
 * not changed, and {@link #total} tells what has become of it as one edit.
 *
 * <p>Not for use by several threads at once.
 */
public final class WorkMesh {

  private final Mesh base;
  private final FacetTree tree;
  private double[] points;
  private int[] corners;
  private int[] opposite;
  private int[] sources;
  private boolean[] onNewFace;
  private int vertexCount;
  private int facetCount;
  private final BitSet dead = new BitSet();
  private final List<Addition> additions = new ArrayList<>();

  /** Facets that one edit added, with the box around them. */
  private record Addition(int from, int to, Box3 box) {}

  /**
   * Starts from a mesh.
   *
   * @param mesh the mesh
   * @param halfEdges its half-edges, all matched
   * @param tree its tree
   * @throws IllegalArgumentException if the mesh is not closed
   */
  public WorkMesh(Mesh mesh, HalfEdges halfEdges, FacetTree tree) {
    if (!halfEdges.closed()) {
      throw new IllegalArgumentException("only a closed mesh can be worked on");
    }
    this.base = mesh;
    this.tree = tree;
    this.points = mesh.copyOfPoints();
    this.corners = mesh.copyOfCorners();
    this.opposite = halfEdges.copyOfOpposites();
    this.sources = new int[0];
    this.onNewFace = new boolean[0];
    this.vertexCount = mesh.vertexCount();
    this.facetCount = mesh.facetCount();
  }

  /** The mesh from which this one started. */
  public Mesh base() {
    return base;
  }

  /** Number of vertices, unused ones too. */
  public int vertexCount() {
    return vertexCount;
  }

  /** Number of facet numbers given out, dead ones too. */
  public int facetCount() {
    return facetCount;
  }

  /** True if the facet is still there. */
  public boolean alive(int facet) {
    return !dead.get(facet);
  }

  /** Vertex at corner {@code k} of a facet. */
  public int corner(int facet, int k) {
    return corners[3 * facet + k];
  }

  /** Vertex from which a half-edge starts. */
  public int origin(int halfEdge) {
    return corners[halfEdge];
  }

  /** Vertex at which a half-edge ends. */
  public int target(int halfEdge) {
    return corners[Mesh.next(halfEdge)];
  }

  /** The opposite half-edge. */
  public int opposite(int halfEdge) {
    return opposite[halfEdge];
  }

  /** Position of a vertex. */
  public Vec3 point(int vertex) {
    return new Vec3(points[3 * vertex], points[3 * vertex + 1], points[3 * vertex + 2]);
  }

  /** Outward normal of a facet, as long as twice its area. */
  public Vec3 facetNormal(int facet) {
    Vec3 a = point(corner(facet, 0));
    return point(corner(facet, 1)).minus(a).cross(point(corner(facet, 2)).minus(a));
  }

  /** Smallest box around a facet. */
  public Box3 facetBox(int facet) {
    return Box3.EMPTY
        .with(point(corner(facet, 0)))
        .with(point(corner(facet, 1)))
        .with(point(corner(facet, 2)));
  }

  /** Calls {@code visitor} once with every living facet whose box meets the given one. */
  public void visit(Box3 box, IntConsumer visitor) {
    tree.visit(box, living(visitor));
    visitAdded(box, visitor);
  }

  /**
   * Like {@link #visit}, but leaves out facets that lie wholly at or above a plane, where the
   * search can tell.
   *
   * @param normal direction that counts as up, n
   * @param bound asked again and again: places with n · p at or above it need not be visited
   */
  public void visitBelow(Box3 box, Vec3 normal, DoubleSupplier bound, IntConsumer visitor) {
    visitAdded(box, visitor);
    tree.visitBelow(box, normal, bound, living(visitor));
  }

  private IntConsumer living(IntConsumer visitor) {
    return facet -> {
      if (alive(facet)) {
        visitor.accept(facet);
      }
    };
  }

  private void visitAdded(Box3 box, IntConsumer visitor) {
    for (Addition addition : additions) {
      if (addition.box.meets(box)) {
        for (int facet = addition.from; facet < addition.to; facet++) {
          if (alive(facet) && facetBox(facet).meets(box)) {
            visitor.accept(facet);
          }
        }
      }
    }
  }

  /** Calls {@code visitor} with every living facet that a ray may meet, and some that it misses. */
  public void visitAlong(Vec3 from, Vec3 direction, double length, IntConsumer visitor) {
    tree.visitAlong(from, direction, length, living(visitor));
    Beam beam = new Beam(from, direction, length);
    for (Addition addition : additions) {
      if (beam.meets(addition.box)) {
        for (int facet = addition.from; facet < addition.to; facet++) {
          if (alive(facet)) {
            visitor.accept(facet);
          }
        }
      }
    }
  }

  /** How to take the last edit back. */
  public static final class Undo {
    private final int vertexCount;
    private final int facetCount;
    private final int[] removed;
    private final int[] exposed;
    private final int[] opposites;

    private Undo(WorkMesh mesh, MeshEdit edit, Collection<Integer> exposed) {
      this.vertexCount = mesh.vertexCount;
      this.facetCount = mesh.facetCount;
      this.removed = new int[edit.removedCount()];
      for (int k = 0; k < removed.length; k++) {
        removed[k] = edit.removed(k);
      }
      this.exposed = exposed.stream().mapToInt(Integer::intValue).toArray();
      this.opposites = new int[this.exposed.length];
      for (int k = 0; k < opposites.length; k++) {
        opposites[k] = mesh.opposite[this.exposed[k]];
      }
    }
  }

  /** Takes the last edit back; after it the one before may be taken back, and so on. */
  public void undo(Undo undo) {
    for (int facet : undo.removed) {
      dead.clear(facet);
    }
    for (int k = 0; k < undo.exposed.length; k++) {
      opposite[undo.exposed[k]] = undo.opposites[k];
    }
    dead.clear(undo.facetCount, facetCount);
    vertexCount = undo.vertexCount;
    facetCount = undo.facetCount;
    additions.remove(additions.size() - 1);
  }

  /**
   * Makes an edit.
   *
   * @return how to take it back
   * @throws IllegalStateException if it would leave an edge open; the mesh is spoiled then
   */
  public Undo apply(MeshEdit edit) {
    int firstFacet = facetCount;
    Map<Long, Integer> waiting = exposedBy(edit);
    Undo undo = new Undo(this, edit, waiting.values());
    appendPoints(edit);
    for (int k = 0; k < edit.removedCount(); k++) {
      dead.set(edit.removed(k));
    }
    appendFacets(edit);
    pair(firstFacet, waiting);
    Box3 box = Box3.EMPTY;
    for (int facet = firstFacet; facet < facetCount; facet++) {
      box = box.with(facetBox(facet));
    }
    additions.add(new Addition(firstFacet, facetCount, box));
    return undo;
  }

  private void appendPoints(MeshEdit edit) {
    int needed = 3 * (vertexCount + edit.pointCount());
    if (needed > points.length) {
      points = Arrays.copyOf(points, Math.max(needed, points.length + points.length / 8 + 1024));
    }
    for (int k = 0; k < edit.pointCount(); k++) {
      for (int axis = 0; axis < 3; axis++) {
        points[3 * (vertexCount + k) + axis] = edit.coordinate(k, axis);
      }
    }
    vertexCount += edit.pointCount();
  }

  /** Half-edges of staying facets along the removed ones, by their start and end. */
  private Map<Long, Integer> exposedBy(MeshEdit edit) {
    // a set of bits would be as long as the mesh for each of many small edits
    Set<Integer> going = new HashSet<>();
    for (int k = 0; k < edit.removedCount(); k++) {
      going.add(edit.removed(k));
    }
    Map<Long, Integer> exposed = new HashMap<>();
    for (int k = 0; k < edit.removedCount(); k++) {
      for (int h = 3 * edit.removed(k); h < 3 * edit.removed(k) + 3; h++) {
        if (!going.contains(opposite[h] / 3)) {
          exposed.put(EdgeKey.of(origin(opposite[h]), target(opposite[h])), opposite[h]);
        }
      }
    }
    return exposed;
  }

  private void appendFacets(MeshEdit edit) {
    int total = facetCount + edit.facetCount();
    if (3 * total > corners.length) {
      int room = Math.max(3 * total, corners.length + corners.length / 8 + 1024);
      corners = Arrays.copyOf(corners, room);
      opposite = Arrays.copyOf(opposite, room);
    }
    int added = total - base.facetCount();
    if (added > sources.length) {
      int room = Math.max(added, 2 * sources.length + 64);
      sources = Arrays.copyOf(sources, room);
      onNewFace = Arrays.copyOf(onNewFace, room);
    }
    for (int k = 0; k < edit.facetCount(); k++) {
      int facet = facetCount + k;
      for (int c = 0; c < 3; c++) {
        corners[3 * facet + c] = edit.corner(k, c);
      }
      int at = facet - base.facetCount();
      int source = edit.source(k);
      boolean fromNew = source >= base.facetCount();
      sources[at] = fromNew ? sources[source - base.facetCount()] : source;
      onNewFace[at] = edit.onNewFace(k) || (fromNew && onNewFace[source - base.facetCount()]);
    }
    facetCount = total;
  }

  private void pair(int firstFacet, Map<Long, Integer> waiting) {
    for (int h = 3 * firstFacet; h < 3 * facetCount; h++) {
      Integer other = waiting.remove(EdgeKey.of(target(h), origin(h)));
      if (other == null) {
        waiting.put(EdgeKey.of(origin(h), target(h)), h);
      } else {
        opposite[h] = other;
        opposite[other] = h;
      }
    }
    if (!waiting.isEmpty()) {
      throw new IllegalStateException(waiting.size() + " edges would be left open by an edit");
    }
  }

  /**
   * What is left of facets of the mesh from which this one started: those still there and the new
   * ones that lie within them.
   *
   * @param facets facets of that mesh, ascending
   * @return living facets, ascending
   */
  public int[] heirs(int[] facets) {
    return Heirs.of(this, facets);
  }

  /**
   * The same with the new faces that were made where facets were cut, and those that these lead to.
   */
  public int[] heirsAndFaces(int[] facets) {
    return Heirs.andFaces(this, facets);
  }

  /** Number of facets of the mesh from which this one started: those from it on were added. */
  int firstAdded() {
    return base.facetCount();
  }

  /** The facet of the first mesh in which an added facet lies, or from which it borrows. */
  int source(int facet) {
    return sources[facet - base.facetCount()];
  }

  /** Whether an added facet lies on a quite new face. */
  boolean isOnNewFace(int facet) {
    return onNewFace[facet - base.facetCount()];
  }

  /**
   * What has become of the mesh from which this one started, as one edit of it: facets that were
   * added and taken away again do not appear, and new vertices that nothing uses are left out.
   */
  public MeshEdit total() {
    int baseFacets = base.facetCount();
    int[] removed = dead.stream().takeWhile(facet -> facet < baseFacets).toArray();
    int[] renumbered = new int[vertexCount - base.vertexCount()];
    Arrays.fill(renumbered, -1);
    List<Integer> kept = new ArrayList<>();
    for (int facet = baseFacets; facet < facetCount; facet++) {
      if (alive(facet)) {
        kept.add(facet);
      }
    }
    int[] newCorners = new int[3 * kept.size()];
    int[] newSources = new int[kept.size()];
    boolean[] newFlags = new boolean[kept.size()];
    int used = 0;
    for (int k = 0; k < newSources.length; k++) {
      int facet = kept.get(k);
      newSources[k] = sources[facet - baseFacets];
      newFlags[k] = onNewFace[facet - baseFacets];
      for (int c = 0; c < 3; c++) {
        int vertex = corner(facet, c) - base.vertexCount();
        if (vertex >= 0 && renumbered[vertex] < 0) {
          renumbered[vertex] = used++;
        }
        newCorners[3 * k + c] =
            vertex < 0 ? corner(facet, c) : base.vertexCount() + renumbered[vertex];
      }
    }
    return new MeshEdit(removed, newPoints(renumbered, used), newCorners, newSources, newFlags);
  }

  private double[] newPoints(int[] renumbered, int used) {
    double[] kept = new double[3 * used];
    for (int k = 0; k < renumbered.length; k++) {
      if (renumbered[k] >= 0) {
        System.arraycopy(points, 3 * (base.vertexCount() + k), kept, 3 * renumbered[k], 3);
      }
    }
    return kept;
  }
}

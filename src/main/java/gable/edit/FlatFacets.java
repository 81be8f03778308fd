package gable.edit;

import gable.geom.Box3;
import gable.geom.Vec3;
import gable.mesh.MeshEdit;
import gable.mesh.WorkMesh;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;

/**
 * Takes facets without area out of a closed mesh. Programs that write solids made of cuts leave
 * them where faces meet: an edge without length between two vertices at one place, or a vertex on
 * the long side of a facet that has no height. They have no plane, and a face of a cut that runs
 * along one would touch itself.
 *
 * <p>The surface stays where it was. Vertices at one place are joined: the facets around them name
 * the lowest, and those along the edge are gone. A facet without height goes by turning its long
 * side into the facet across, which becomes two. No vertex moves and none is new. The surface stays
 * closed, or nothing is done: each edge must be run along once each way.
 */
public final class FlatFacets {

  private final WorkMesh mesh;
  private final Predicate<Vec3> within;
  private final double step;
  private final Map<Integer, Integer> parent = new HashMap<>();

  /** New facets, by number: corners and the old facet within which they lie. */
  private final Map<Integer, Piece> pieces = new TreeMap<>();

  private final Map<Long, Integer> byRun = new HashMap<>();
  private final List<Integer> removed = new ArrayList<>();
  private int made;

  /** A facet of the surface under work. */
  private record Piece(int a, int b, int c, int source) {
    int corner(int k) {
      return switch (Math.floorMod(k, 3)) {
        case 0 -> a;
        case 1 -> b;
        default -> c;
      };
    }
  }

  private FlatFacets(WorkMesh mesh, Predicate<Vec3> within, double step) {
    this.mesh = mesh;
    this.within = within;
    this.step = step;
  }

  /**
   * The edit that takes facets without area away.
   *
   * @param mesh the closed mesh
   * @param box box around the place; facets that do not meet it stay as they are
   * @param within the place: vertices there are joined, and leave the long side of a facet
   * @param step length in millimetres up to which an edge or a height is none: the step at which
   *     coordinates are told apart
   * @return the edit, or nothing if there is no such facet or the surface would not stay closed
   */
  public static Optional<MeshEdit> takenOut(
      WorkMesh mesh, Box3 box, Predicate<Vec3> within, double step) {
    return new FlatFacets(mesh, within.and(box::contains), step).edit(box);
  }

  private Optional<MeshEdit> edit(Box3 box) {
    List<Integer> near = new ArrayList<>();
    mesh.visit(box, near::add);
    near.sort(Integer::compare);
    near.forEach(this::joinCorners);
    for (int facet : near) {
      int[] c = {place(facet, 0), place(facet, 1), place(facet, 2)};
      removed.add(facet);
      if (c[0] != c[1]
          && c[1] != c[2]
          && c[2] != c[0]
          && !put(new Piece(c[0], c[1], c[2], facet))) {
        return Optional.empty();
      }
    }
    int most = 3 * made;
    boolean turned = turnLongSides(most);
    return made < most && (turned || !parent.isEmpty()) && closes()
        ? Optional.of(changed())
        : Optional.empty();
  }

  private void joinCorners(int facet) {
    for (int k = 0; k < 3; k++) {
      int a = place(facet, k);
      int b = place(facet, (k + 1) % 3);
      Vec3 p = mesh.point(a);
      Vec3 q = mesh.point(b);
      if (a != b && p.distance(q) <= step && within.test(p) && within.test(q)) {
        parent.put(Math.max(a, b), Math.min(a, b));
      }
    }
  }

  private int place(int facet, int k) {
    return place(mesh.corner(facet, k));
  }

  private int place(int vertex) {
    int at = vertex;
    for (Integer up = parent.get(at); up != null; up = parent.get(at)) {
      at = up;
    }
    return at;
  }

  /** Enters a facet; false if one of its edges is run along in this direction already. */
  private boolean put(Piece piece) {
    pieces.put(made, piece);
    for (int k = 0; k < 3; k++) {
      if (byRun.putIfAbsent(key(piece.corner(k), piece.corner(k + 1)), made) != null) {
        return false;
      }
    }
    made++;
    return true;
  }

  private void take(int number) {
    Piece piece = pieces.remove(number);
    for (int k = 0; piece != null && k < 3; k++) {
      byRun.remove(key(piece.corner(k), piece.corner(k + 1)));
    }
  }

  /**
   * Turns long sides until none is left, or until as many facets are made as there may be. A turn
   * makes two, and one turn for each facet is plenty where turning helps; but two vertices a hair
   * farther apart than the step can have flat facets between them whichever way they are turned,
   * and those would be turned for ever.
   */
  private boolean turnLongSides(int most) {
    boolean any = false;
    for (int number = 0; number < made && made < most; number++) {
      Piece piece = pieces.get(number);
      any |= piece != null && turnLongSide(number, piece);
    }
    return any;
  }

  /** Turns the long side of a facet without height into the facet across, if that has one. */
  private boolean turnLongSide(int number, Piece piece) {
    int k = longSide(piece);
    int from = piece.corner(k);
    int to = piece.corner(k + 1);
    int middle = piece.corner(k + 2);
    Integer across = byRun.get(key(to, from));
    // all facets at a corner within the box are known, so that an edge that is there twice is seen
    if (across == null || height(piece) > step || !within.test(mesh.point(middle))) {
      return false;
    }
    Piece other = pieces.get(across);
    if (other == null || height(other) <= step) {
      return false;
    }
    int far = other.corner(0) + other.corner(1) + other.corner(2) - from - to;
    if (byRun.containsKey(key(middle, far)) || byRun.containsKey(key(far, middle))) {
      return false;
    }
    take(number);
    take(across);
    return put(new Piece(from, far, middle, other.source))
        && put(new Piece(far, to, middle, other.source));
  }

  private int longSide(Piece piece) {
    int best = 0;
    for (int k = 1; k < 3; k++) {
      best = length(piece, k) > length(piece, best) ? k : best;
    }
    return best;
  }

  private double length(Piece piece, int k) {
    return mesh.point(piece.corner(k)).distance(mesh.point(piece.corner(k + 1)));
  }

  private double height(Piece piece) {
    Vec3 a = mesh.point(piece.a);
    Vec3 normal = mesh.point(piece.b).minus(a).cross(mesh.point(piece.c).minus(a));
    return normal.norm() / length(piece, longSide(piece));
  }

  /** True if new facets and the staying ones around them run along each edge once each way. */
  private boolean closes() {
    Map<Long, Integer> runs = new HashMap<>(byRun);
    Set<Integer> going = new HashSet<>(removed);
    for (int facet : removed) {
      for (int h = 3 * facet; h < 3 * facet + 3; h++) {
        int across = mesh.opposite(h);
        if (!going.contains(across / 3)
            && runs.put(key(mesh.origin(across), mesh.target(across)), across) != null) {
          return false;
        }
      }
    }
    return runs.keySet().stream().allMatch(run -> runs.containsKey(run << 32 | run >>> 32));
  }

  /** The edit, without what comes out as it went in. */
  private MeshEdit changed() {
    Set<Integer> gone = new TreeSet<>(removed);
    List<Piece> added = new ArrayList<>();
    for (Piece piece : pieces.values()) {
      boolean same = true;
      for (int k = 0; k < 3; k++) {
        same &= piece.corner(k) == mesh.corner(piece.source, k);
      }
      if (same) {
        gone.remove(piece.source);
      } else {
        added.add(piece);
      }
    }
    int[] corners = new int[3 * added.size()];
    for (int c = 0; c < corners.length; c++) {
      corners[c] = added.get(c / 3).corner(c % 3);
    }
    return new MeshEdit(
        gone.stream().mapToInt(Integer::intValue).toArray(),
        new double[0],
        corners,
        added.stream().mapToInt(Piece::source).toArray(),
        new boolean[added.size()]);
  }

  private static long key(int from, int to) {
    return (long) from << 32 | to;
  }
}

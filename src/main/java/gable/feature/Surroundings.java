package gable.feature;

import gable.geom.Box3;
import gable.geom.Plane;
import gable.geom.Vec3;
import gable.mesh.WorkMesh;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The solid around a feature, in print space, for those who plan changes: where lines leave and
 * enter it, how much of it is above a place. It shows the solid as it is now, with the changes made
 * so far. Several threads may ask as long as none changes the solid.
 */
public final class Surroundings {

  private final WorkMesh mesh;
  private final Box3 box;
  private final Map<String, Partner> partners;
  private boolean withdrawn;

  /** Shows a mesh whose vertices all lie in {@code box}. */
  public Surroundings(WorkMesh mesh, Box3 box) {
    this(mesh, box, Map.of());
  }

  /**
   * The same with the other halves of joints.
   *
   * @param partners for the id of a feature, what goes into it or what it goes into
   */
  public Surroundings(WorkMesh mesh, Box3 box, Map<String, Partner> partners) {
    this.mesh = mesh;
    this.box = box;
    this.partners = Map.copyOf(partners);
  }

  /** The same for somebody else, who may lose it. */
  public Surroundings lent() {
    return new Surroundings(mesh, box, partners);
  }

  /** The other half of the joint of which a feature is one, if it is known. */
  public Optional<Partner> partner(Feature feature) {
    return Optional.ofNullable(partners.get(feature.id()));
  }

  /**
   * Takes it back from whoever has it: after this, nothing of the solid is read through it any
   * more, so that the solid may be changed.
   */
  public synchronized void withdraw() {
    withdrawn = true;
  }

  /** Called by whatever reads the solid, holding the lock. */
  private void requireLent() {
    if (withdrawn) {
      throw new IllegalStateException("the time to ask about the surroundings is over");
    }
  }

  /**
   * Where a line crosses the surface.
   *
   * @param at distance from the start, in millimetres
   * @param leaves true if the line goes out of the solid there
   * @param normal unit normal of the facet
   */
  public record Passage(double at, boolean leaves, Vec3 normal) {}

  /**
   * The places where a ray crosses the surface, nearest first.
   *
   * @param from its start
   * @param direction its unit direction
   * @param length its length in millimetres
   */
  public synchronized List<Passage> passages(Vec3 from, Vec3 direction, double length) {
    requireLent();
    List<Passage> found = new ArrayList<>();
    mesh.visitAlong(
        from,
        direction,
        length,
        facet -> {
          OptionalDouble at = crossing(facet, from, direction);
          if (at.isPresent() && at.getAsDouble() >= 0 && at.getAsDouble() <= length) {
            Vec3 normal = mesh.facetNormal(facet).unit();
            found.add(new Passage(at.getAsDouble(), normal.dot(direction) > 0, normal));
          }
        });
    found.sort((a, b) -> Double.compare(a.at, b.at));
    return found;
  }

  /**
   * How often a point lies inside the solid: 0 outside, 1 inside, 2 where two shells overlap. The
   * ray that counts is not parallel to any likely face, so that it meets edges only by accident.
   */
  public int winding(Vec3 point) {
    Vec3 direction = new Vec3(0.2113248, 0.3660254, 0.9063078).unit();
    int count = 0;
    for (Passage passage : passages(point, direction, 2 * box.diagonal() + 1)) {
      count += passage.leaves ? 1 : -1;
    }
    return count;
  }

  /**
   * The outlines in which a plane cuts the solid, near a place.
   *
   * @param plane the plane
   * @param near where; outlines that leave it are not closed and left out
   * @return closed outlines, their corners in order, the solid to the right seen from the tip of
   *     the plane's normal: a hole runs counter-clockwise
   */
  public synchronized List<List<Vec3>> outlines(Plane plane, Box3 near) {
    requireLent();
    return new Slice(mesh, plane).loops(near);
  }

  /** Height of the lowest point of the part as it was before all changes: of its plate. */
  public double lowest() {
    return box.min().z();
  }

  /** Length of the diagonal of the part, in millimetres. */
  public double size() {
    return box.diagonal();
  }

  /**
   * Least height of solid straight above a flat patch, up to the outside or to another void.
   *
   * @param patch corners of a convex polygon that is not upright, in order
   * @return the height in millimetres; infinite if nothing that faces upwards is above the patch
   */
  public synchronized double heightAbove(List<Vec3> patch) {
    requireLent();
    return new HeightAbove(patch).over(mesh, box.max().z());
  }

  /**
   * Whether the solid fills a convex body wholly, and once: no surface is inside it.
   *
   * @param body planes that bound it, normals outwards
   * @param box around it
   * @param inside a point well inside it
   */
  public synchronized boolean fills(List<Plane> body, Box3 box, Vec3 inside) {
    requireLent();
    boolean[] met = {false};
    mesh.visit(box, facet -> met[0] |= !met[0] && reachesInto(facet, body));
    return !met[0] && winding(inside) == 1;
  }

  private boolean reachesInto(int facet, List<Plane> body) {
    List<Vec3> piece = new ArrayList<>();
    for (int k = 0; k < 3; k++) {
      piece.add(mesh.point(mesh.corner(facet, k)));
    }
    for (Plane plane : body) {
      piece = below(piece, plane);
    }
    return !piece.isEmpty();
  }

  /** What is left of a polygon behind a plane. */
  private static List<Vec3> below(List<Vec3> polygon, Plane plane) {
    List<Vec3> kept = new ArrayList<>();
    for (int k = 0; k < polygon.size(); k++) {
      Vec3 p = polygon.get(k);
      Vec3 q = polygon.get((k + 1) % polygon.size());
      double dp = plane.signedDistance(p);
      double dq = plane.signedDistance(q);
      if (dp < 0) {
        kept.add(p);
      }
      if ((dp < 0 && dq > 0) || (dp > 0 && dq < 0)) {
        kept.add(p.along(q.minus(p), dp / (dp - dq)));
      }
    }
    return kept;
  }

  private OptionalDouble crossing(int facet, Vec3 from, Vec3 direction) {
    Vec3 a = mesh.point(mesh.corner(facet, 0)).minus(from);
    Vec3 b = mesh.point(mesh.corner(facet, 1)).minus(from);
    Vec3 c = mesh.point(mesh.corner(facet, 2)).minus(from);
    double wa = direction.dot(b.cross(c));
    double wb = direction.dot(c.cross(a));
    double wc = direction.dot(a.cross(b));
    boolean through = (wa >= 0 && wb >= 0 && wc >= 0) || (wa <= 0 && wb <= 0 && wc <= 0);
    double total = wa + wb + wc;
    if (!through || total == 0) {
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(
        (a.dot(direction) * wa + b.dot(direction) * wb + c.dot(direction) * wc) / total);
  }
}

package gable.validate;

import gable.geom.Vec3;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import gable.threemf.Names;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The meshes of one part: numbers of elements, corners, edges and the outside. Source: core
 * specification 1.4, section 4.1; a displacement mesh obeys the same (displacement 4.1), a mesh
 * with a lattice may be empty (beam lattice 2).
 */
final class MeshChecks implements Checker {

  private static final List<String> SOLID = List.of("model", "solidsupport");

  private final boolean surfaces;
  private final Findings findings;
  private final Map<Element, MeshLists> byMesh = new HashMap<>();
  private final Map<Element, MeshLists> byObject = new HashMap<>();
  private final Set<Element> latticed = new HashSet<>();
  private final Map<Integer, Double> volumes = new HashMap<>();
  private MeshLists lists = new MeshLists();

  /**
   * Checks.
   *
   * @param surfaces whether the meshes themselves are looked at, not only their lists
   */
  MeshChecks(boolean surfaces, Findings findings) {
    this.surfaces = surfaces;
    this.findings = findings;
  }

  static boolean isMesh(Element element) {
    return element.isCore("mesh") || element.is(Names.DISPLACEMENT, "displacementmesh");
  }

  @Override
  public void started(Element element) {
    if (isMesh(element)) {
      lists = new MeshLists();
      byMesh.put(element, lists);
      byObject.put(element.parent(), lists);
    }
  }

  @Override
  public void ended(Element element) {
    String name = element.tag().name();
    boolean inMesh = element.ifParent().filter(MeshChecks::isMesh).isPresent();
    boolean inList =
        element.ifParent().flatMap(Element::ifParent).filter(MeshChecks::isMesh).isPresent();
    if (inList && name.equals("vertex")) {
      lists.vertex(element);
    } else if (inList && name.equals("triangle")) {
      lists.triangle(element);
    } else if (inMesh && (name.equals("vertices") || name.equals("triangles"))) {
      lists.ended(element);
    } else if (isMesh(element)) {
      check(element);
    }
  }

  /** The lists of a mesh that has ended. */
  Optional<MeshLists> lists(Element mesh) {
    return Optional.ofNullable(byMesh.get(mesh));
  }

  /** The lists of the mesh of an object. */
  Optional<MeshLists> ofObject(Element object) {
    return Optional.ofNullable(byObject.get(object));
  }

  /** Volume of an object's mesh, cubed in the unit of the part, if it is closed. */
  Optional<Double> volume(int object) {
    return Optional.ofNullable(volumes.get(object));
  }

  /** Whether the mesh of an object carries a beam lattice. */
  boolean hasLattice(Element object) {
    return latticed.contains(object);
  }

  private void check(Element mesh) {
    boolean lattice = mesh.count(Names.BEAMS, "beamlattice") > 0;
    if (lattice) {
      latticed.add(mesh.parent());
    }
    String type = mesh.parent().value("type").map(String::strip).orElse("model");
    boolean solid = SOLID.contains(type);
    int least = lattice ? 0 : solid ? 4 : 1;
    if (lists.vertexCount() < 3 && !lattice || lists.triangleCount() < least) {
      findings.add(
          CoreRules.FEW,
          mesh,
          lists.vertexCount() + " vertices and " + lists.triangleCount() + " triangles",
          "at least 3 and " + least);
    }
    if (surfaces && corners() && !lists.isFaulty() && lists.triangleCount() > 0) {
      surface(mesh, lists.mesh(), solid);
    }
  }

  private boolean corners() {
    boolean sound = true;
    int vertices = lists.vertexCount();
    for (int triangle = 0; triangle < lists.triangleCount(); triangle++) {
      int a = lists.corner(triangle, 0);
      int b = lists.corner(triangle, 1);
      int c = lists.corner(triangle, 2);
      boolean inside =
          a < vertices && b < vertices && c < vertices && Math.min(a, Math.min(b, c)) >= 0;
      if (!inside || a == b || b == c || c == a) {
        sound = false;
        findings.add(
            inside ? CoreRules.SAME_CORNERS : CoreRules.CORNER,
            lists.place(triangle),
            "the corners " + a + ", " + b + ", " + c,
            inside ? "three different vertices" : "three of the " + vertices + " vertices");
      }
    }
    return sound;
  }

  private void surface(Element mesh, Mesh surface, boolean solid) {
    flat(mesh, surface);
    HalfEdges edges = HalfEdges.of(surface);
    if (edges.closed()) {
      double volume = surface.volume();
      volumes.put(mesh.parent().index("id"), volume);
      if (solid && volume < 0) {
        String found = "the mesh is inside out: its volume is " + volume;
        findings.add(CoreRules.INSIDE_OUT, mesh, found, "normals that point outwards");
      }
    } else if (solid) {
      edges(mesh, edges);
    }
  }

  private void edges(Element mesh, HalfEdges edges) {
    String expected = "each edge in two triangles, in opposite directions";
    if (edges.openEdges() > 0) {
      String found = edges.openEdges() + " edges belong to one triangle only";
      findings.add(CoreRules.OPEN, mesh, found, expected);
    }
    if (edges.badEdges() > 0) {
      String found =
          edges.badEdges() + " edges belong to more than two triangles or twice in one direction";
      findings.add(CoreRules.TURNED, mesh, found, expected);
    }
  }

  private void flat(Element mesh, Mesh surface) {
    int flat = 0;
    for (int facet = 0; facet < surface.facetCount(); facet++) {
      Vec3 normal = surface.facetNormal(facet);
      flat += normal.x() == 0 && normal.y() == 0 && normal.z() == 0 ? 1 : 0;
    }
    if (flat > 0) {
      findings.add(CoreRules.NO_AREA, mesh, flat + " triangles without area", "none");
    }
  }
}

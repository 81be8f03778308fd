package gable.threemf;

import gable.mesh.Mesh;
import gable.opc.Problem;
import gable.opc.Rule;
import gable.threemf.MeshSource.Default;
import gable.threemf.MeshSource.TriangleSet;
import gable.threemf.ModelXml.MeshXml;
import gable.threemf.ModelXml.ObjectXml;
import gable.threemf.ModelXml.SetXml;
import gable.threemf.ModelXml.SetsXml;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** Puts a mesh object together from its lists, and says what is wrong with it. */
final class MeshReader {

  private static final Mesh NOTHING = Mesh.of(new double[0], new int[0]);

  private final PartFacts facts;
  private final ObjectHead head;
  private final ObjectXml object;
  private final MeshXml mesh;
  private final MeshLists lists;
  private final String path;

  MeshReader(PartFacts facts, ObjectHead head, ObjectXml object) {
    this.facts = facts;
    this.head = head;
    this.object = object;
    this.mesh = object.mesh.get(0);
    this.lists = MeshLists.of(facts, object);
    this.path = "model/resources/object " + head.id() + "/mesh";
  }

  /** The object; it carries the first problem of its mesh. */
  MeshObject read(Optional<Problem> before, Optional<Problem> locked) {
    Optional<Problem> problem = before.or(this::structure).or(this::content);
    if (problem.isEmpty() && locked.isEmpty()) {
      problem = few();
    }
    Mesh result = NOTHING;
    if (problem.isEmpty()) {
      result = Mesh.of(lists.vertices().xyz(), lists.triangles().corners());
    }
    return new MeshObject(head, result, source(problem.isEmpty()), problem, locked);
  }

  private Optional<Problem> structure() {
    if (mesh.vertices.size() == 1 && mesh.triangles.size() == 1 && object.mesh.size() == 1) {
      return Optional.empty();
    }
    String found =
        mesh.vertices.size() + " vertex and " + mesh.triangles.size() + " triangle lists";
    return Optional.of(
        facts.at(ModelRules.STRUCTURE, head.number(), path, found, "one mesh with one of each"));
  }

  private Optional<Problem> content() {
    MeshList vertices = lists.vertices();
    MeshList triangles = lists.triangles();
    return fault(ModelRules.VERTEX, vertices)
        .or(() -> fault(ModelRules.TRIANGLE, triangles))
        .or(() -> range(vertices.xyz()))
        .or(() -> corners(vertices.xyz().length / 3, triangles));
  }

  private Optional<Problem> few() {
    int vertices = lists.vertices().xyz().length / 3;
    int triangles = lists.triangles().corners().length / 3;
    boolean solid = head.type() == ObjectType.MODEL || head.type() == ObjectType.SOLIDSUPPORT;
    if (vertices >= 3 && triangles >= (solid ? 4 : 1)) {
      return Optional.empty();
    }
    String found = vertices + " vertices and " + triangles + " triangles";
    String expected = "at least 3 vertices and " + (solid ? 4 : 1) + " triangles";
    return Optional.of(facts.at(ModelRules.FEW, head.number(), path, found, expected));
  }

  private Optional<Problem> fault(Rule rule, MeshList list) {
    return list.fault()
        .map(
            fault ->
                facts.problem(
                    rule,
                    fault.place(),
                    path + '/' + list.kind().child() + ' ' + fault.index(),
                    fault.found(),
                    fault.expected()));
  }

  private Optional<Problem> range(double[] xyz) {
    double limit = facts.limits().coordinate() / facts.unit().millimetres();
    for (int i = 0; i < xyz.length; i++) {
      if (Math.abs(xyz[i]) > limit) {
        String found = "coordinate " + xyz[i] + ' ' + facts.unit().word();
        return Optional.of(
            facts.at(
                ModelRules.COORDINATE,
                mesh.vertices.get(0).number,
                path + "/vertex " + i / 3,
                found,
                "at most " + limit));
      }
    }
    return Optional.empty();
  }

  private Optional<Problem> corners(int vertices, MeshList triangles) {
    int[] corners = triangles.corners();
    for (int c = 0; c < corners.length; c += 3) {
      int a = corners[c];
      int b = corners[c + 1];
      int d = corners[c + 2];
      if (a >= vertices || b >= vertices || d >= vertices || a == b || b == d || d == a) {
        return Optional.of(badTriangle(c / 3, vertices, triangles));
      }
    }
    return Optional.empty();
  }

  private Problem badTriangle(int triangle, int vertices, MeshList triangles) {
    int[] corners = triangles.corners();
    String found =
        "corners "
            + corners[3 * triangle]
            + ", "
            + corners[3 * triangle + 1]
            + ", "
            + corners[3 * triangle + 2];
    boolean beyond = false;
    for (int k = 0; k < 3; k++) {
      beyond |= corners[3 * triangle + k] >= vertices;
    }
    return facts.problem(
        beyond ? ModelRules.TRIANGLE_INDEX : ModelRules.TRIANGLE_CORNERS,
        triangles.places()[triangle],
        path + "/triangle " + triangle,
        found,
        beyond ? "three of the " + vertices + " vertices" : "three different vertices");
  }

  private MeshSource source(boolean sound) {
    int[] places = sound ? lists.triangles().places() : new int[0];
    int none = head.number();
    return new MeshSource(
        facts.elements().span(mesh.vertices.isEmpty() ? none : mesh.vertices.get(0).number),
        facts.elements().span(mesh.triangles.isEmpty() ? none : mesh.triangles.get(0).number),
        places,
        sets(),
        property());
  }

  private List<TriangleSet> sets() {
    List<TriangleSet> sets = new ArrayList<>();
    for (SetsXml group : mesh.trianglesets) {
      for (SetXml set : group.triangleset) {
        sets.add(new TriangleSet(facts.elements().span(set.number), facts.entries(set.number)));
      }
    }
    return sets;
  }

  private Default property() {
    int group = object.pid == null ? -1 : NumberText.index(object.pid);
    int index = object.pindex == null ? -1 : NumberText.index(object.pindex);
    return new Default(group < 0 ? OptionalInt.empty() : OptionalInt.of(group), Math.max(0, index));
  }
}

package gable.validate;

import gable.threemf.Names;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Beam lattices of one part. Source: beam lattice extension 1.x with balls. */
final class BeamChecks implements Checker {

  private final PartModel part;
  private final MeshChecks meshes;
  private final Findings findings;
  private final Set<String> identifiers = new HashSet<>();
  private final Map<String, Integer> counts = new HashMap<>();

  BeamChecks(PartModel part, MeshChecks meshes, Findings findings) {
    this.part = part;
    this.meshes = meshes;
    this.findings = findings;
  }

  @Override
  public void started(Element element) {
    if (element.is(Names.BEAMS, "beamlattice")) {
      lattice(element);
    } else if (element.is(Names.BEAMS, "beam")) {
      beam(element);
    } else if (element.is(Names.BALLS, "ball")) {
      ball(element);
    } else if (element.is(Names.BEAMS, "beamset")) {
      set(element);
    } else if (element.is(Names.BEAMS, "ref")) {
      member(element, "beams", "beam");
    } else if (element.is(Names.BALLS, "ballref")) {
      member(element, "balls", "ball");
    }
  }

  private void lattice(Element lattice) {
    identifiers.clear();
    Element object = lattice.parent().parent();
    if (!List.of("model", "solidsupport").contains(object.value("type").orElse("model").strip())) {
      String found = "a lattice in an object of type " + object.value("type").orElse("");
      findings.add(ExtensionRules.LATTICE_TYPE, lattice, found, "type model or solidsupport");
    }
    String clipping = lattice.value("clippingmode").orElse("none").strip();
    if (!clipping.equals("none") && lattice.value("clippingmesh").isEmpty()) {
      String found = "clippingmode=\"" + clipping + "\" without a clippingmesh";
      findings.add(ExtensionRules.CLIPPING, lattice, found, "a clippingmesh");
    }
    String balls = lattice.tag().value(Names.BALLS, "ballmode").orElse("none").strip();
    if (!balls.equals("none") && lattice.tag().value(Names.BALLS, "ballradius").isEmpty()) {
      String found = "ballmode=\"" + balls + "\" without a ballradius";
      findings.add(ExtensionRules.BALL_RADIUS, lattice, found, "a ballradius");
    }
    reference(lattice, "clippingmesh");
    reference(lattice, "representationmesh");
  }

  /** At the start of the lattice only what stands before its object is known. */
  private void reference(Element lattice, String attribute) {
    int id = lattice.index(attribute);
    if (id < 0) {
      return;
    }
    Element own = lattice.parent().parent();
    Optional<Resource> target = part.resource(id).filter(each -> each.element() != own);
    boolean sound =
        target
            .filter(Resource::isMesh)
            .filter(each -> each.type().equals("model"))
            .filter(
                each ->
                    attribute.equals("representationmesh") || !meshes.hasLattice(each.element()))
            .isPresent();
    if (!sound) {
      String found =
          attribute + "=\"" + id + "\", " + target.map(Resource::words).orElse("no earlier object");
      String expected = "an earlier mesh object of type model without a lattice";
      findings.add(ExtensionRules.LATTICE_MESH, lattice, found, expected);
    }
  }

  private void beam(Element beam) {
    int first = beam.index("v1");
    int second = beam.index("v2");
    vertex(beam, first);
    vertex(beam, second);
    if (beam.value("r2").isPresent() && beam.value("r1").isEmpty()) {
      findings.add(ExtensionRules.BEAM_RADIUS, beam, "r2 without r1", "r1 as well");
    }
    length(beam, first, second);
  }

  private void length(Element beam, int first, int second) {
    MeshLists lists = lists(beam);
    int count = lists.vertexCount();
    if (first < 0 || second < 0 || first >= count || second >= count) {
      return;
    }
    double square = 0;
    for (int axis = 0; axis < 3; axis++) {
      double step = lists.coordinate(first, axis) - lists.coordinate(second, axis);
      square += step * step;
    }
    double least = beam.parent().parent().number("minlength", 0);
    if (first == second || Math.sqrt(square) < least) {
      String found =
          "a beam from vertex " + first + " to " + second + ", length " + Math.sqrt(square);
      String expected = "two vertices at least " + least + " apart";
      findings.add(ExtensionRules.BEAM_LENGTH, beam, found, expected);
    }
  }

  private void ball(Element ball) {
    vertex(ball, ball.index("vindex"));
  }

  private void vertex(Element element, int vertex) {
    int count = lists(element).vertexCount();
    if (vertex >= count) {
      String found = "vertex " + vertex;
      findings.add(ExtensionRules.BEAM_VERTEX, element, found, "one of the " + count + " vertices");
    }
  }

  private MeshLists lists(Element entry) {
    Element mesh = entry.parent().parent().parent();
    return meshes.lists(mesh).orElseGet(MeshLists::new);
  }

  private void set(Element set) {
    Optional<String> identifier = set.value("identifier");
    if (identifier.isPresent() && !identifiers.add(identifier.get().strip())) {
      String found = "the identifier '" + identifier.get() + "' a second time in the lattice";
      findings.add(ExtensionRules.BEAM_SET, set, found, "an identifier of its own");
    }
  }

  private void member(Element member, String list, String entry) {
    int count = counts.getOrDefault(entry, 0);
    int index = member.index("index");
    if (index >= count) {
      String found = entry + ' ' + index;
      String expected = "one of the " + count + ' ' + list + " of the lattice";
      findings.add(ExtensionRules.BEAM_MEMBER, member, found, expected);
    }
  }

  @Override
  public void ended(Element element) {
    if (element.is(Names.BEAMS, "beams")) {
      counts.put("beam", element.count(Names.BEAMS, "beam"));
    } else if (element.is(Names.BALLS, "balls")) {
      counts.put("ball", element.count(Names.BALLS, "ball"));
    } else if (element.is(Names.BEAMS, "beamlattice")) {
      counts.clear();
    }
  }
}

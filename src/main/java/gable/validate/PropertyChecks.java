package gable.validate;

import gable.opc.Rule;
import gable.threemf.Names;
import gable.threemf.PropertyUses;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What objects, triangles, beams and segments of one part refer to as properties. Asked once the
 * part is read. Source: core specification 1.4, sections 4 and 4.1.4.1, slices 3, beam lattice 2.1.
 */
final class PropertyChecks implements Checker {

  private record Use(Element element, int group, int entry) {}

  private final PartModel part;
  private final MeshChecks meshes;
  private final Findings findings;
  private final List<Element> objects = new ArrayList<>();
  private final List<Use> uses = new ArrayList<>();

  PropertyChecks(PartModel part, MeshChecks meshes, Findings findings) {
    this.part = part;
    this.meshes = meshes;
    this.findings = findings;
  }

  @Override
  public void started(Element element) {
    if (element.isCore("object")) {
      objects.add(element);
      use(element, element.index("pid"), element.index("pindex"));
    } else if (element.is(Names.BEAMS, "beamlattice")) {
      use(element, element.index("pid"), element.index("pindex"));
    } else if (element.is(Names.BEAMS, "beam")) {
      int group = owner(element, element.parent().parent());
      use(element, group, Math.max(element.index("p1"), element.index("p2")));
    } else if (element.is(Names.BALLS, "ball")) {
      use(element, owner(element, element.parent().parent()), element.index("p"));
    } else if (element.is(Names.SLICE, "segment") && element.index("pid") >= 0) {
      use(element, element.index("pid"), Math.max(element.index("p1"), element.index("p2")));
    }
  }

  /** The group that a beam or ball uses: its own, its lattice's or its object's. */
  private static int owner(Element element, Element lattice) {
    int own = element.index("pid");
    int wide = lattice.index("pid");
    return own >= 0 ? own : wide >= 0 ? wide : lattice.parent().parent().index("pid");
  }

  private void use(Element element, int group, int entry) {
    if (group >= 0) {
      uses.add(new Use(element, group, entry));
    }
  }

  /** Looks the references up. */
  void finish() {
    for (Use use : uses) {
      Optional<Resource> group = group(use.element, use.group);
      if (group.isPresent() && use.entry >= group.get().entries()) {
        entry(use.element, group.get(), use.entry);
      }
    }
    for (Element object : objects) {
      for (String[] shape :
          List.of(
              new String[] {Names.CORE, "mesh"},
              new String[] {Names.DISPLACEMENT, "displacementmesh"})) {
        if (object.count(shape[0], shape[1]) > 0) {
          triangles(object);
        }
      }
    }
  }

  private Optional<Resource> group(Element element, int id) {
    Optional<Resource> group = part.resource(id).filter(Resource::isProperties);
    if (group.isEmpty()) {
      String found =
          part.resource(id).map(other -> "it is " + other.words()).orElse("there is none");
      String words = "the property group " + id + ": " + found;
      findings.add(CoreRules.GROUP, element, words, "a group of this part");
    }
    return group;
  }

  private void entry(Element element, Resource group, int entry) {
    String found = "entry " + entry + " of " + group.words();
    findings.add(CoreRules.ENTRY, element, found, "one of its " + group.entries() + " entries");
  }

  private void triangles(Element object) {
    MeshLists lists = meshes.ofObject(object).orElseGet(MeshLists::new);
    lists.uses().byGroup().forEach((group, use) -> triangles(object, lists, group, use));
    boolean none = object.value("pid").isEmpty() || object.value("pindex").isEmpty();
    if (none && lists.uses().count() > 0) {
      boolean all = lists.uses().count() == lists.triangleCount();
      findings.add(
          all ? CoreRules.NO_DEFAULT_NEEDED : CoreRules.NO_DEFAULT,
          object,
          "triangles with properties in an object without pid and pindex",
          "both, as the default of triangles without properties");
    }
  }

  private void triangles(Element object, MeshLists lists, int id, PropertyUses.Use use) {
    boolean own = id != PropertyUses.OBJECT;
    int group = own ? id : object.index("pid");
    if (use.orphanAt() >= 0) {
      add(CoreRules.FIRST_CORNER, lists, use.orphanAt(), "p2 or p3 without p1", "p1 as well");
    }
    if (group < 0) {
      String found = "p1 where neither the triangle nor its object has a pid";
      add(CoreRules.GROUP, lists, use.first(), found, "a pid");
      return;
    }
    Optional<Resource> target = part.resource(group).filter(Resource::isProperties);
    if (target.isEmpty() && own) {
      String found = "the property group " + group + ", which there is not";
      add(CoreRules.GROUP, lists, use.first(), found, "a group of this part");
    }
    target.ifPresent(resource -> entries(resource, lists, use));
  }

  private void entries(Resource group, MeshLists lists, PropertyUses.Use use) {
    if (use.largest() >= group.entries()) {
      String found = "entry " + use.largest() + " of " + group.words();
      String expected = "one of its " + group.entries() + " entries";
      add(CoreRules.ENTRY, lists, use.largestAt(), found, expected);
    }
    if (group.is(Names.CORE, "basematerials") && use.gradientAt() >= 0) {
      String found = "different base materials at the corners of a triangle";
      add(CoreRules.GRADIENT, lists, use.gradientAt(), found, "one for the triangle");
    }
  }

  private void add(Rule rule, MeshLists lists, int triangle, String found, String expected) {
    findings.add(rule, lists.place(triangle), found, expected);
  }
}

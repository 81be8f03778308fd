package gable.threemf;

import gable.opc.Problem;
import gable.opc.Rule;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Which objects of a part must not be changed although their meshes can be read, and why.
 *
 * <p>Source: the rules of the extensions named with each rule in {@link ModelRules}; a mesh that
 * another shape is made from, or that other numbers point into, cannot be changed alone.
 */
final class Locks {

  /** An object in a part; the part is empty for the same part. */
  record Target(String part, int id) {}

  private final PartFacts facts;
  private final Map<Integer, Problem> byNumber = new HashMap<>();
  private final Map<Target, Problem> byTarget = new HashMap<>();

  Locks(PartFacts facts) {
    this.facts = facts;
  }

  /** Learns from an element of an extension. */
  void learn(Foreign element) {
    switch (element.name()) {
      case "beamlattice" -> {
        lock(ModelRules.LATTICE, element, "a beam lattice on the vertices of the mesh");
        refer(element, "clippingmesh", "a beam lattice is clipped by this mesh");
        refer(element, "representationmesh", "this mesh stands for a beam lattice");
      }
      case "booleanshape", "boolean" ->
          refer(element, "objectid", "a boolean shape is made from this object");
      case "levelset" -> refer(element, "meshid", "this mesh bounds a level set");
      case "alternative" -> {
        lock(ModelRules.OPERAND, element, "alternatives that stand for the same object");
        refer(element, "objectid", "this object is an alternative of another");
      }
      case "mesh", "unsignedmesh", "resourceid" -> {
        refer(element, "objectid", "an implicit function reads this mesh");
        refer(element, "value", "an implicit function reads this mesh");
      }
      default -> {
        if (element.inMesh() && !element.name().equals("volumedata")) {
          unknown(element);
        }
      }
    }
  }

  private void unknown(Foreign element) {
    Rule rule = Names.BEAMS.equals(element.namespace()) ? ModelRules.LATTICE : ModelRules.UNKNOWN;
    lock(rule, element, "elements of the namespace '" + element.namespace() + "' in the mesh");
  }

  private void lock(Rule rule, Foreign element, String found) {
    lock(element.object(), rule, found);
  }

  /** Locks the object whose element has the number. */
  void lock(int number, Rule rule, String found) {
    if (number >= 0) {
      byNumber.putIfAbsent(number, problem(rule, number, found));
    }
  }

  private void refer(Foreign element, String attribute, String found) {
    int id = NumberText.index(element.reference(attribute));
    if (id >= 0) {
      int place = Math.max(0, element.object());
      Problem problem = problem(ModelRules.OPERAND, place, found);
      byTarget.putIfAbsent(new Target(element.reference("path"), id), problem);
    }
  }

  private Problem problem(Rule rule, int number, String found) {
    return facts.at(rule, number, "model/resources/object", found, "a mesh that stands for itself");
  }

  /** Why the object must not be changed, as far as its own part says. */
  Optional<Problem> of(ObjectHead head) {
    Problem own = byNumber.get(head.number());
    return Optional.ofNullable(own != null ? own : byTarget.get(new Target("", head.id())));
  }

  /** Objects of other parts that must not be changed. */
  Map<Target, Problem> targets() {
    return byTarget;
  }
}

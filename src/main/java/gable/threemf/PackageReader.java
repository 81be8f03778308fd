package gable.threemf;

import gable.mesh.Aside;
import gable.opc.OpcPackage;
import gable.opc.PackageException;
import gable.opc.Part;
import gable.opc.Place;
import gable.opc.Problem;
import gable.opc.Relationship;
import gable.opc.RelationshipTypes;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * Reads the root part and the parts whose objects it names. Source: production extension 1.x,
 * sections 2 and 3: only the root part may name other parts, and only such as it has a relationship
 * to.
 */
final class PackageReader {

  private final OpcPackage source;
  private final ModelLimits limits;
  private final Function<String, ModelVisitor> visitors;
  private final Aside aside;
  private final Map<String, ModelPart> parts = new LinkedHashMap<>();
  private final Map<String, String> names = new HashMap<>();
  private final List<Problem> problems = new ArrayList<>();

  PackageReader(
      OpcPackage source, ModelLimits limits, Function<String, ModelVisitor> visitors, Aside aside) {
    this.source = source;
    this.limits = limits;
    this.visitors = visitors;
    this.aside = aside;
  }

  ModelPackage read() throws PackageException {
    ModelPart root = part(source.rootModelPart().name());
    Set<String> related = targets(root.name(), RelationshipTypes.MODEL);
    Set<String> encrypted = targets(root.name(), RelationshipTypes.ENCRYPTED_FILE);
    for (String path : Locking.paths(root)) {
      Optional<String> name = source.part(path).map(Part::name);
      if (name.isEmpty() || !related.contains(name.get())) {
        problems.add(
            problem(root, "the path '" + path + "'", "a model part related to the root part"));
      } else if (encrypted.contains(name.get())) {
        problems.add(problem(root, "the encrypted part " + path, "a part that can be read"));
      } else {
        names.put(path, name.get());
        if (!parts.containsKey(name.get())) {
          part(name.get());
        }
      }
    }
    Locking locking = new Locking(parts, names);
    Map<String, ModelPart> locked = locking.applied(root);
    ModelPart lockedRoot = Objects.requireNonNull(locked.get(root.name()));
    return new ModelPackage(lockedRoot, locked, names, problems);
  }

  private ModelPart part(String name) throws PackageException {
    ModelPart part = ModelPart.read(name, source.read(name), limits, visitors.apply(name), aside);
    parts.put(name, part);
    long triangles = 0;
    long vertices = 0;
    for (ModelPart each : parts.values()) {
      for (ModelObject object : each.objects().values()) {
        if (object instanceof MeshObject mesh) {
          triangles += mesh.mesh().facetCount();
          vertices += mesh.mesh().vertexCount();
        }
      }
    }
    if (triangles > limits.triangles() || vertices > limits.vertices()) {
      String found = triangles + " triangles and " + vertices + " vertices";
      String expected = "at most " + limits.triangles() + " and " + limits.vertices();
      throw PartFacts.fault(name, ModelRules.COUNT, "model", found, expected);
    }
    return part;
  }

  private static Problem problem(ModelPart root, String found, String expected) {
    return new Problem(ModelRules.PATH, Place.of(root.name()).at("model"), found, expected);
  }

  private Set<String> targets(String from, String type) {
    return source.relationships(from).stream()
        .filter(relationship -> relationship.is(type))
        .map(Relationship::part)
        .flatMap(Optional::stream)
        .collect(Collectors.toSet());
  }
}

package gable.threemf;

import gable.mesh.Aside;
import gable.opc.PackageException;
import gable.opc.Problem;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A model part: its objects, and of the root part the build items. The bytes are kept for the
 * writer and are not changed.
 */
public final class ModelPart {

  private final PartFacts facts;
  private final Map<Integer, ModelObject> objects;
  private final Map<Integer, PropertyGroup> groups;
  private final List<Reference> items;
  private final int build;
  private final List<Problem> problems;
  private final Locks locks;
  private final Optional<Problem> unsupported;

  ModelPart(
      PartFacts facts,
      Map<Integer, ModelObject> objects,
      Map<Integer, PropertyGroup> groups,
      List<Reference> items,
      int build,
      List<Problem> problems,
      Locks locks,
      Optional<Problem> unsupported) {
    this.facts = facts;
    this.objects = Collections.unmodifiableMap(new LinkedHashMap<>(objects));
    this.groups = Collections.unmodifiableMap(new LinkedHashMap<>(groups));
    this.items = List.copyOf(items);
    this.build = build;
    this.problems = List.copyOf(problems);
    this.locks = locks;
    this.unsupported = unsupported;
  }

  /**
   * Reads a part.
   *
   * @param name name of the part
   * @param bytes its content, which this object owns from now on
   * @param visitor is told of its elements in passing
   * @param aside may read a long part from two sides
   * @throws PackageException if the XML is faulty or breaks a rule that holds for the whole part
   */
  static ModelPart read(
      String name, byte[] bytes, ModelLimits limits, ModelVisitor visitor, Aside aside)
      throws PackageException {
    return PartReader.read(ModelText.of(name, bytes, aside), limits, visitor);
  }

  /** Name of the part. */
  public String name() {
    return facts.name();
  }

  /** Unit of all lengths in the part. */
  public LengthUnit unit() {
    return facts.unit();
  }

  /** Objects by id, in the order of the file. */
  public Map<Integer, ModelObject> objects() {
    return objects;
  }

  /** The object with an id. */
  public Optional<ModelObject> object(int id) {
    return Optional.ofNullable(objects.get(id));
  }

  /** Build items in the order of the file; only those of the root part are made. */
  public List<Reference> items() {
    return items;
  }

  /** Number of the build element. */
  int build() {
    return build;
  }

  /** What is wrong or worth a notice and belongs to no object. */
  public List<Problem> problems() {
    return problems;
  }

  /** The first extension that the part requires and Gable does not know. */
  Optional<Problem> unsupported() {
    return unsupported;
  }

  /**
   * The part with some meshes locked, and with all of them refused if there is a reason for that.
   *
   * @param root whether this is the root part, which alone may name other parts
   */
  ModelPart with(
      IdentityHashMap<ModelObject, Problem> locked, Optional<Problem> refused, boolean root) {
    Map<Integer, ModelObject> changed = new LinkedHashMap<>();
    objects.forEach(
        (id, object) -> {
          if (object instanceof MeshObject mesh) {
            changed.put(id, mesh.with(refused, Optional.ofNullable(locked.get(object))));
          } else if (object instanceof ComponentsObject group && !root) {
            changed.put(id, group.with(straying(group)));
          } else {
            changed.put(id, object);
          }
        });
    return new ModelPart(facts, changed, groups, items, build, problems, locks, unsupported);
  }

  private Optional<Problem> straying(ComponentsObject group) {
    return group.components().stream()
        .filter(component -> !component.part().equals(name()))
        .findFirst()
        .map(
            component ->
                facts.at(
                    ModelRules.PATH,
                    component.number(),
                    "model/resources/object " + group.id() + "/component " + component.index(),
                    "the path '" + component.part() + "' outside the root part",
                    "objects of the same part"));
  }

  PartFacts facts() {
    return facts;
  }

  Map<Integer, PropertyGroup> groups() {
    return groups;
  }

  Locks locks() {
    return locks;
  }

  byte[] bytes() {
    return facts.text().bytes();
  }
}

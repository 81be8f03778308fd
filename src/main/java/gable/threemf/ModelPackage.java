package gable.threemf;

import gable.mesh.Aside;
import gable.opc.OpcPackage;
import gable.opc.PackageException;
import gable.opc.Problem;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * The model of a package: the root part with its build, and the parts whose objects it uses.
 *
 * <p>Objects that are wrong carry a problem and spoil nothing else; only faults of the package, of
 * the XML or of a whole part make reading fail. Immutable; memory is the inflated parts, 24 bytes
 * for a vertex and 16 for a triangle.
 */
public final class ModelPackage {

  private final ModelPart root;
  private final Map<String, ModelPart> parts;
  private final Map<String, String> names;
  private final List<Problem> problems;

  ModelPackage(
      ModelPart root,
      Map<String, ModelPart> parts,
      Map<String, String> names,
      List<Problem> problems) {
    this.root = root;
    this.parts = Collections.unmodifiableMap(new LinkedHashMap<>(parts));
    this.names = Map.copyOf(names);
    this.problems = List.copyOf(problems);
  }

  /**
   * Reads the model of an open package.
   *
   * @throws PackageException if a part cannot be read, is no well-formed XML or breaks a rule that
   *     holds for the part as a whole
   */
  public static ModelPackage read(OpcPackage source, ModelLimits limits) throws PackageException {
    return read(source, limits, part -> ModelVisitor.NONE, Aside.NOBODY);
  }

  /**
   * The same, and tells visitors of the elements of each part while they are read.
   *
   * @param visitors makes the visitor of a part by its name; the root part comes first
   * @param aside may read long parts from two sides
   */
  public static ModelPackage read(
      OpcPackage source, ModelLimits limits, Function<String, ModelVisitor> visitors, Aside aside)
      throws PackageException {
    return new PackageReader(source, limits, visitors, aside).read();
  }

  /**
   * Makes ready what reading needs once for a program's life. Reading does it anyhow; it may be
   * done earlier, by somebody else, while a package is opened.
   */
  public static void warmUp(Aside aside) {
    if (aside.helps()) {
      aside.start(
          () -> {
            SkeletonReader.warmUp();
            return true;
          });
    }
  }

  /** The part with the build. */
  public ModelPart root() {
    return root;
  }

  /** All parts, the root first. */
  public List<ModelPart> parts() {
    return List.copyOf(parts.values());
  }

  /** The part with a name as its package spells it. */
  public Optional<ModelPart> part(String name) {
    return Optional.ofNullable(parts.get(name));
  }

  /** The object that an item or component uses. */
  public Optional<ModelObject> target(Reference reference) {
    ModelPart part = parts.get(names.getOrDefault(reference.part(), reference.part()));
    return part == null ? Optional.empty() : part.object(reference.objectId());
  }

  /** What is wrong or worth a notice and belongs to no object, of all parts. */
  public List<Problem> problems() {
    List<Problem> all = new ArrayList<>(problems);
    parts.values().forEach(part -> all.addAll(part.problems()));
    return all;
  }
}

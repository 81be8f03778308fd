package gable.threemf;

import gable.opc.Problem;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * Writes edits into the parts that they change, by splicing: all bytes outside the lists of edited
 * meshes are copied as they are, but for property entries that are appended, UUIDs of what changes,
 * and clones with the references to them.
 *
 * <p>An object whose uses ask for different shapes is cloned: the copy stands behind its original,
 * has an id of its own and all that the original has, and the items and components that need it are
 * pointed to it. Objects made of it are cloned likewise where that is needed.
 */
public final class ModelWriter {

  private final ModelPackage model;
  private final Map<String, PartWriter> writers = new LinkedHashMap<>();
  private final IdentityHashMap<Variant, Integer> ids = new IdentityHashMap<>();
  private final IdentityHashMap<Variant, String> keys = new IdentityHashMap<>();
  private final List<Changes.Clone> clones = new ArrayList<>();

  private ModelWriter(ModelPackage model) {
    this.model = model;
  }

  /**
   * The new content of every part that the edits change; the others need no writing.
   *
   * @param model the model that was read
   * @param edits at most one for each object and use; edits that change nothing are passed over
   */
  public static Changes splice(ModelPackage model, List<ObjectEdit> edits) {
    List<ObjectEdit> real = edits.stream().filter(edit -> !edit.edit().isEmpty()).toList();
    real.forEach(edit -> requireEditable(model, edit.object()));
    return new ModelWriter(model).write(real);
  }

  private static void requireEditable(ModelPackage model, MeshObject object) {
    boolean own =
        model.part(object.part()).flatMap(part -> part.object(object.id())).orElse(null) == object;
    if (!own) {
      throw new IllegalArgumentException(object + " is of another model");
    }
    Optional<Problem> reason = object.problem().or(object::locked);
    if (reason.isPresent()) {
      throw new IllegalArgumentException("must not be edited: " + reason.get().sentence());
    }
  }

  private Changes write(List<ObjectEdit> edits) {
    Variants variants = Variants.of(model, edits);
    List<List<Variant>> changed = variants.changed();
    changed.forEach(this::number);
    for (List<Variant> shapes : changed) { // an object comes after those it is made of
      shapes.stream().filter(Variant::changed).forEach(this::name);
    }
    for (List<Variant> shapes : changed) {
      for (Variant shape : shapes) {
        object(shape, shape != shapes.get(0));
      }
    }
    items(variants.items());
    List<SplicedPart> parts = new ArrayList<>();
    List<Problem> notices = new ArrayList<>();
    for (PartWriter writer : writers.values()) {
      writer.done().ifPresent(parts::add);
      notices.addAll(writer.notices());
    }
    return new Changes(parts, clones, notices);
  }

  /** The first shape keeps the object's id, each other gets one of its own. */
  private void number(List<Variant> shapes) {
    ModelObject object = shapes.get(0).object();
    for (Variant shape : shapes) {
      boolean first = shape == shapes.get(0);
      int id = first ? object.id() : writer(object.part()).newId();
      ids.put(shape, id);
      if (!first) {
        clones.add(new Changes.Clone(object.part(), object.id(), id));
      }
    }
  }

  private PartWriter writer(String part) {
    return writers.computeIfAbsent(part, name -> new PartWriter(model.part(name).orElseThrow()));
  }

  private int id(Variant variant) {
    return ids.getOrDefault(variant, variant.object().id());
  }

  /** Names what a variant changes, after its components; for a copy its id counts as well. */
  private void name(Variant variant) {
    List<String> parts = new ArrayList<>();
    variant.edit().ifPresent(edit -> parts.add(ChangeKey.of(edit.edit())));
    for (Optional<Variant> component : variant.components()) {
      parts.add(component.filter(Variant::changed).map(this::key).orElse(""));
    }
    if (id(variant) != variant.object().id()) {
      parts.add("copy " + id(variant));
    }
    keys.put(variant, ChangeKey.of(parts));
  }

  private String key(Variant variant) {
    return Objects.requireNonNull(keys.get(variant), "a change without a name");
  }

  private void object(Variant shape, boolean clone) {
    if (!shape.changed()) {
      return;
    }
    ModelObject object = shape.object();
    PartWriter writer = writer(object.part());
    ByteSplices target = clone ? writer.forClone() : writer.splices();
    int number = object.head().number();
    writer.uuid(number, key(shape), target);
    if (clone) {
      writer.attribute(number, "id", id(shape), target);
    }
    shape.edit().ifPresent(edit -> writer.mesh(edit, target));
    if (object instanceof ComponentsObject group) {
      for (int i = 0; i < group.components().size(); i++) {
        Reference component = group.components().get(i);
        Optional<Variant> shown = shape.components().get(i);
        if (clone || shown.map(Variant::changed).orElse(false)) {
          writer.uuid(component.number(), key(shape), target);
        }
        repoint(writer, component, shown, target);
      }
    }
    if (clone) {
      writer.insertClone(object, target);
    }
  }

  private void repoint(
      PartWriter writer, Reference use, Optional<Variant> shown, ByteSplices target) {
    shown
        .map(this::id)
        .filter(id -> id != use.objectId())
        .ifPresent(id -> writer.attribute(use.number(), "objectid", id, target));
  }

  private void items(List<Optional<Variant>> shown) {
    List<String> changes = new ArrayList<>();
    for (int i = 0; i < shown.size(); i++) {
      Optional<Variant> variant = shown.get(i).filter(Variant::changed);
      if (variant.isPresent()) {
        PartWriter root = writer(model.root().name());
        Reference item = model.root().items().get(i);
        changes.add(key(variant.get()));
        root.uuid(item.number(), key(variant.get()), root.splices());
        repoint(root, item, variant, root.splices());
      }
    }
    if (!changes.isEmpty()) {
      PartWriter root = writer(model.root().name());
      root.uuid(model.root().build(), ChangeKey.of(changes), root.splices());
    }
  }
}

package gable.threemf;

import gable.geom.Affine3;
import gable.opc.PackageException;
import gable.opc.Problem;
import gable.threemf.ModelXml.BuildXml;
import gable.threemf.ModelXml.GroupXml;
import gable.threemf.ModelXml.ObjectXml;
import gable.threemf.ModelXml.ResourcesXml;
import gable.threemf.ModelXml.UseXml;
import gable.threemf.SkeletonReader.Skeleton;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Turns what was read of a model part into its objects, and judges what holds for the whole part.
 */
final class PartReader {

  private final PartFacts facts;
  private final ModelXml model;
  private final Locks locks;
  private final List<Problem> problems = new ArrayList<>();
  private final Map<Integer, ModelObject> objects = new LinkedHashMap<>();
  private final Map<Integer, PropertyGroup> groups = new LinkedHashMap<>();
  private final Set<Integer> ids = new HashSet<>();
  private Optional<Problem> unsupported = Optional.empty();

  private PartReader(PartFacts facts, ModelXml model) {
    this.facts = facts;
    this.model = model;
    this.locks = new Locks(facts);
  }

  static ModelPart read(ModelText source, ModelLimits limits, ModelVisitor visitor)
      throws PackageException {
    String name = source.part();
    PartScan scan = source.scan();
    Skeleton skeleton = SkeletonReader.read(name, source.text(), scan, source.events(visitor));
    PartFacts facts =
        new PartFacts(
            name,
            source,
            scan.elements(),
            skeleton.stream().lists(),
            skeleton.stream().entries(),
            skeleton.stream().ids(),
            skeleton.stream().prefixes(),
            unit(name, skeleton.model().unit),
            limits);
    return new PartReader(facts, skeleton.model()).read(skeleton.stream());
  }

  private static LengthUnit unit(String part, @Nullable String word) throws PackageException {
    Optional<LengthUnit> unit = LengthUnit.of(word == null ? "millimeter" : word.strip());
    if (unit.isEmpty()) {
      throw PartFacts.fault(
          part, ModelRules.UNIT, "model", "unit=\"" + word + '"', "a unit of 3MF");
    }
    return unit.get();
  }

  private ModelPart read(SkeletonStream stream) throws PackageException {
    if (model.resources.size() != 1 || model.build.size() != 1) {
      String found =
          model.resources.size() + " resources and " + model.build.size() + " build elements";
      throw facts.fault(ModelRules.STRUCTURE, "model", found, "one of each");
    }
    Extensions extensions = Extensions.of(facts, model, stream.prefixes());
    unsupported = extensions.unsupported();
    problems.addAll(extensions.notices());
    stream.foreign().forEach(locks::learn);
    groups(model.resources.get(0));
    for (ObjectXml object : model.resources.get(0).object) {
      object(object);
    }
    List<Reference> items = items(model.build.get(0));
    int build = model.build.get(0).number;
    return new ModelPart(facts, objects, groups, items, build, problems, locks, unsupported);
  }

  private int id(@Nullable String text, String what) throws PackageException {
    int id = text == null ? -1 : NumberText.index(text);
    if (id < 1 || !ids.add(id)) {
      String found = what + " with id " + (text == null ? "missing" : '"' + text + '"');
      throw facts.fault(
          ModelRules.RESOURCE_ID,
          "model/resources",
          found,
          "an id from 1 to 2147483647 that no other resource of the part has");
    }
    return id;
  }

  private void groups(ResourcesXml resources) throws PackageException {
    for (ModelXml.ResourceXml texture : resources.texture2d) {
      id(texture.id, "texture2d");
    }
    for (List<GroupXml> kind :
        List.of(
            resources.basematerials,
            resources.colorgroup,
            resources.texture2dgroup,
            resources.compositematerials,
            resources.multiproperties)) {
      for (GroupXml group : kind) {
        group(group);
      }
    }
  }

  private void group(GroupXml xml) throws PackageException {
    int id = id(xml.id, "property group");
    Entries entries = facts.entries(xml.number);
    List<Integer> layers = new ArrayList<>();
    for (String layer : NumberText.words(xml.pids)) {
      layers.add(NumberText.index(layer));
    }
    groups.put(id, new PropertyGroup(id, facts.elements().span(xml.number), entries, layers));
    if (entries.faulty() >= 0) {
      String path = "model/resources/" + entries.kind().entry() + "s of " + id;
      problems.add(
          facts.at(
              ModelRules.GROUP_ENTRY,
              xml.number,
              path,
              entries.kind().entry() + ' ' + entries.faulty() + " has no sound value",
              "a value as the materials specification has it"));
    }
  }

  private void object(ObjectXml xml) throws PackageException {
    int id = id(xml.id, "object");
    Optional<ObjectType> type = ObjectType.of(xml.type == null ? "model" : xml.type.strip());
    String name = xml.name == null ? "" : xml.name;
    ObjectHead head =
        new ObjectHead(facts.name(), id, name, type.orElse(ObjectType.OTHER), xml.number);
    Optional<Problem> problem = unsupported;
    if (problem.isEmpty() && type.isEmpty()) {
      problem = Optional.of(at(head, ModelRules.TYPE, "type=\"" + xml.type + '"', "a type of 3MF"));
    }
    if (xml.slicestackid != null || "lowres".equals(xml.meshresolution)) {
      locks.lock(xml.number, ModelRules.SLICES, "slices that carry the shape");
    }
    objects.put(id, shape(xml, head, problem));
  }

  private Problem at(ObjectHead head, gable.opc.Rule rule, String found, String expected) {
    return facts.at(rule, head.number(), "model/resources/object " + head.id(), found, expected);
  }

  private ModelObject shape(ObjectXml xml, ObjectHead head, Optional<Problem> problem) {
    if (!xml.mesh.isEmpty() && xml.components.isEmpty()) {
      return new MeshReader(facts, head, xml).read(problem, lock(xml, head));
    }
    if (xml.mesh.isEmpty() && xml.components.size() == 1) {
      List<Reference> components = new ArrayList<>();
      Optional<Problem> broken = problem;
      for (UseXml use : xml.components.get(0).component) {
        Optional<Problem> fault = reference(use, components, "component");
        broken = broken.isPresent() ? broken : fault;
      }
      return new ComponentsObject(head, components, broken, locks.of(head));
    }
    String found =
        xml.mesh.isEmpty() && xml.components.isEmpty()
            ? "neither a mesh nor components"
            : xml.mesh.size() + " meshes and " + xml.components.size() + " component lists";
    Problem reason = at(head, ModelRules.SHAPE, found, "one mesh or one list of components");
    return new OtherObject(head, problem.orElse(reason));
  }

  private Optional<Problem> lock(ObjectXml xml, ObjectHead head) {
    MeshLists lists = MeshLists.of(facts, xml);
    if (lists.foreign()) {
      locks.lock(head.number(), ModelRules.UNKNOWN, "elements among the vertices or triangles");
    }
    return locks.of(head);
  }

  /** Adds a reference, or says why it is none. */
  private Optional<Problem> reference(UseXml xml, List<Reference> to, String kind) {
    int index = to.size();
    int id = xml.objectid == null ? -1 : NumberText.index(xml.objectid);
    Optional<Affine3> transform = TransformText.parse(xml.transform, facts.unit());
    if (id < 1) {
      String found = "objectid " + (xml.objectid == null ? "missing" : '"' + xml.objectid + '"');
      return Optional.of(
          facts.at(ModelRules.REFERENCE, xml.number, kind, found, "the id of an object"));
    }
    if (transform.isEmpty()) {
      String found = "transform=\"" + xml.transform + '"';
      return Optional.of(facts.at(ModelRules.TRANSFORM, xml.number, kind, found, "twelve numbers"));
    }
    String part = xml.path == null ? facts.name() : xml.path;
    to.add(new Reference(xml.number, part, id, transform.get(), index));
    return Optional.empty();
  }

  private List<Reference> items(BuildXml build) {
    List<Reference> items = new ArrayList<>();
    for (UseXml use : build.item) {
      reference(use, items, "model/build/item").ifPresent(problems::add);
    }
    return items;
  }
}

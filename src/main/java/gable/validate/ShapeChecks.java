package gable.validate;

import gable.threemf.Names;
import gable.threemf.NumberText;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Displacement and volumetric resources of one part. Asked once the part is read. Source:
 * displacement extension, volumetric and implicit extension.
 */
final class ShapeChecks implements Checker {

  private final PartModel part;
  private final Findings findings;
  private final List<Element> volumetric = new ArrayList<>();
  private final List<Element> displaced = new ArrayList<>();
  private final List<Element> meshes = new ArrayList<>();

  ShapeChecks(PartModel part, Findings findings) {
    this.part = part;
    this.findings = findings;
  }

  @Override
  public void started(Element element) {
    String namespace = element.tag().namespace();
    if (namespace.equals(Names.VOLUMETRIC)) {
      volumetric.add(element);
    } else if (element.isCore("mesh")) {
      meshes.add(element);
    } else if (element.is(Names.DISPLACEMENT, "normvector")) {
      vector(element);
    } else if (namespace.equals(Names.DISPLACEMENT)
        && List.of("disp2dgroup", "disp2dcoords", "triangle").contains(element.tag().name())) {
      displaced.add(element);
    } else if (element.is(Names.DISPLACEMENT, "displacementmesh")) {
      type(element);
    }
  }

  /** A length that misses 1 by a thousandth is past any rounding of the four digits usual. */
  private void vector(Element vector) {
    double x = vector.number("x", 0);
    double y = vector.number("y", 0);
    double z = vector.number("z", 0);
    double length = Math.sqrt(x * x + y * y + z * z);
    if (Math.abs(length - 1) > 1e-3) {
      String found = "a vector of the length " + length;
      findings.add(ExtensionRules.NOT_UNIT, vector, found, "the length 1");
    }
  }

  private void type(Element mesh) {
    String type = mesh.parent().value("type").orElse("model").strip();
    if (!type.equals("model")) {
      String found = "a displacement mesh in an object of type " + type;
      findings.add(ExtensionRules.DISPLACED_TYPE, mesh, found, "type model");
    }
  }

  /** Looks the references up. */
  void finish() {
    volumetric.forEach(this::volumetric);
    displaced.forEach(this::displaced);
    meshes.forEach(this::meshVolume);
  }

  private void volumetric(Element element) {
    field(element, "functionid", "functionfromimage3d", "implicitfunction");
    field(element, "image3did", "image3d");
    field(element, "volumeid", "volumedata");
    field(element, "basematerialid", "basematerials");
    field(element, "meshid", "object");
    String name = element.tag().name();
    if (name.equals("composite")) {
      mappings(element);
    } else if (name.equals("imagestack")) {
      sheets(element);
    } else if (name.equals("property")) {
      propertyName(element);
    }
  }

  private void field(Element element, String attribute, String... kinds) {
    int id = element.index(attribute);
    Optional<Resource> target = part.resource(id);
    boolean sound =
        id < 0 || target.filter(t -> List.of(kinds).contains(t.element().tag().name())).isPresent();
    if (!sound) {
      String what = target.map(Resource::words).orElse("nothing");
      String found = attribute + "=\"" + id + "\", which is " + what;
      findings.add(ExtensionRules.FIELD, element, found, "the id of " + String.join(" or ", kinds));
    }
  }

  private void mappings(Element composite) {
    int mappings = composite.count(Names.VOLUMETRIC, "materialmapping");
    Optional<Resource> base = part.resource(composite.index("basematerialid"));
    if (base.isPresent() && base.get().entries() != mappings) {
      String found = mappings + " mappings for " + base.get().entries() + " materials";
      findings.add(ExtensionRules.MAPPINGS, composite, found, "one for each");
    }
  }

  private void sheets(Element stack) {
    int sheets = stack.count(Names.VOLUMETRIC, "imagesheet");
    if (sheets != stack.index("sheetcount")) {
      String found = sheets + " sheets, sheetcount=\"" + stack.index("sheetcount") + '"';
      findings.add(ExtensionRules.SHEETS, stack, found, "as many as announced");
    }
  }

  private void propertyName(Element property) {
    String name = property.value("name").orElse("").strip();
    int colon = name.indexOf(':');
    if (colon < 0 || !part.prefixes().containsKey(name.substring(0, colon))) {
      String found = "the property name '" + name + '\'';
      findings.add(ExtensionRules.PROPERTY_NAME, property, found, "a declared prefix in front");
    }
  }

  private void meshVolume(Element mesh) {
    int id = mesh.tag().value(Names.VOLUMETRIC, "volumeid").map(NumberText::index).orElse(-1);
    if (id >= 0 && part.resource(id).filter(t -> t.is(Names.VOLUMETRIC, "volumedata")).isEmpty()) {
      String found = "volumeid=\"" + id + "\", which is no volumedata";
      findings.add(ExtensionRules.FIELD, mesh, found, "the id of volumedata");
    }
  }

  private void displaced(Element element) {
    switch (element.tag().name()) {
      case "disp2dgroup" -> {
        reference(element, "dispid", "displacement2d");
        reference(element, "nid", "normvectorgroup");
      }
      case "disp2dcoords" ->
          entry(element, "n", part.resource(element.parent().index("nid")), "normvector");
      default -> {
        int own = element.index("did");
        int group = own >= 0 ? own : element.parent().index("did");
        if (element.index("d1") >= 0) {
          triangle(element, group);
        }
      }
    }
  }

  private void reference(Element element, String attribute, String kind) {
    int id = element.index(attribute);
    if (id >= 0 && part.resource(id).filter(t -> t.is(Names.DISPLACEMENT, kind)).isEmpty()) {
      String found = attribute + "=\"" + id + "\", which is no " + kind;
      findings.add(ExtensionRules.DISPLACEMENT, element, found, "the id of a " + kind);
    }
  }

  private void triangle(Element triangle, int group) {
    Optional<Resource> target =
        part.resource(group).filter(t -> t.is(Names.DISPLACEMENT, "disp2dgroup"));
    if (target.isEmpty()) {
      String found = "d1 with the displacement group " + (group < 0 ? "missing" : group);
      findings.add(ExtensionRules.DISPLACEMENT, triangle, found, "the id of a disp2dgroup");
    }
    for (String corner : List.of("d1", "d2", "d3")) {
      entry(triangle, corner, target, "disp2dcoords");
    }
  }

  private void entry(Element element, String attribute, Optional<Resource> group, String kind) {
    int index = element.index(attribute);
    int count = group.map(t -> t.element().count(Names.DISPLACEMENT, kind)).orElse(0);
    if (group.isPresent() && index >= count) {
      String found = attribute + "=\"" + index + '"';
      String expected = "one of the " + count + ' ' + kind;
      findings.add(ExtensionRules.DISPLACEMENT_ENTRY, element, found, expected);
    }
  }
}

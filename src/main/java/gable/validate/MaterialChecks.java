package gable.validate;

import gable.threemf.Names;
import gable.threemf.NumberText;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Groups of properties of one part and what they refer to. Asked once the part is read. Source:
 * materials and properties extension 1.x.
 */
final class MaterialChecks implements Checker {

  private final PartModel part;
  private final Findings findings;
  private final List<Element> multis = new ArrayList<>();

  MaterialChecks(PartModel part, Findings findings) {
    this.part = part;
    this.findings = findings;
  }

  @Override
  public void started(Element element) {
    if (element.is(Names.MATERIAL, "multi")) {
      multis.add(element);
    } else if (element.is(Names.MATERIAL, "composite")) {
      composite(element);
    }
  }

  private void composite(Element composite) {
    for (String word : NumberText.words(composite.value("values").orElse(""))) {
      double value = NumberText.number(word);
      if (value < 0 || value > 1) {
        String found = "the share " + word;
        findings.add(ExtensionRules.COMPOSITE_VALUE, composite, found, "0 to 1");
      }
    }
  }

  /** Looks the references up. */
  void finish() {
    for (Resource resource : part.resources()) {
      if (resource.is(Names.MATERIAL, "multiproperties")) {
        layers(resource.element());
      } else if (resource.is(Names.MATERIAL, "compositematerials")) {
        base(resource.element());
      }
      for (String attribute :
          List.of(
              "texid",
              "speculartextureid",
              "glossinesstextureid",
              "metallictextureid",
              "roughnesstextureid")) {
        texture(resource.element(), attribute);
      }
      display(resource);
    }
    multis.forEach(this::multi);
  }

  private void layers(Element group) {
    int materials = 0;
    int colors = 0;
    int[] layers = group.indices("pids");
    for (int layer = 0; layer < layers.length; layer++) {
      Optional<Resource> target = part.resource(layers[layer]);
      if (target.filter(Resource::isProperties).isEmpty()) {
        String what = target.map(Resource::words).orElse("nothing");
        String found = "the layer " + layers[layer] + ", which is " + what;
        findings.add(ExtensionRules.NO_GROUP, group, found, "groups of properties");
        continue;
      }
      if (target.get().is(Names.MATERIAL, "multiproperties")) {
        String found = "multiproperties as a layer of multiproperties";
        findings.add(ExtensionRules.LAYERS, group, found, "other groups");
      }
      boolean material = isMaterial(target.get());
      materials += material ? 1 : 0;
      colors += target.get().is(Names.MATERIAL, "colorgroup") ? 1 : 0;
      if (material && layer > 0) {
        String found = "a material as layer " + layer;
        findings.add(ExtensionRules.MATERIAL_FIRST, group, found, "materials first");
      }
    }
    if (materials > 1 || colors > 1) {
      String found = materials + " material and " + colors + " colour layers";
      findings.add(ExtensionRules.LAYERS, group, found, "at most one of each");
    }
    blends(group, layers.length);
  }

  private static boolean isMaterial(Resource group) {
    return group.is(Names.CORE, "basematerials") || group.is(Names.MATERIAL, "compositematerials");
  }

  private void blends(Element group, int layers) {
    List<String> methods = NumberText.words(group.value("blendmethods").orElse(""));
    if (methods.size() >= Math.max(1, layers)) {
      String found = methods.size() + " blendmethods for " + layers + " layers";
      findings.add(ExtensionRules.BLEND, group, found, "at most one less than layers");
    }
    for (String method : methods) {
      if (!List.of("mix", "multiply").contains(method)) {
        String found = "the blendmethod '" + method + '\'';
        findings.add(ExtensionRules.BLEND, group, found, "mix or multiply");
      }
    }
  }

  private void base(Element group) {
    int id = group.index("matid");
    if (id < 0) {
      return; // the table has found it
    }
    Optional<Resource> base =
        part.resource(id).filter(target -> target.is(Names.CORE, "basematerials"));
    if (base.isEmpty()) {
      String found = "matid=\"" + id + "\", which is no base materials";
      findings.add(ExtensionRules.COMPOSITE, group, found, "the id of base materials");
      return;
    }
    for (int index : group.indices("matindices")) {
      if (index >= base.get().entries()) {
        String found = "material " + index + " of " + base.get().words();
        String expected = "one of its " + base.get().entries() + " entries";
        findings.add(CoreRules.ENTRY, group, found, expected);
      }
    }
  }

  private void texture(Element element, String attribute) {
    int id = element.index(attribute);
    boolean sound =
        id < 0 || part.resource(id).filter(t -> t.is(Names.MATERIAL, "texture2d")).isPresent();
    if (!sound) {
      String found = attribute + "=\"" + id + "\", which is no texture2d";
      findings.add(ExtensionRules.TEXTURE, element, found, "the id of a texture2d");
    }
  }

  private void display(Resource group) {
    Element element = group.element();
    int own = element.index("displaypropertiesid");
    int id =
        own >= 0
            ? own
            : element
                .tag()
                .value(Names.MATERIAL, "displaypropertiesid")
                .map(NumberText::index)
                .orElse(-1);
    if (id < 0) {
      return;
    }
    Optional<Resource> display =
        part.resource(id).filter(t -> t.element().tag().name().endsWith("displayproperties"));
    if (display.isEmpty()) {
      String found = "displaypropertiesid=\"" + id + "\", which is no display properties";
      findings.add(ExtensionRules.DISPLAY, element, found, "the id of display properties");
      return;
    }
    boolean translucent = display.get().is(Names.MATERIAL, "translucentdisplayproperties");
    if (translucent && group.is(Names.MATERIAL, "texture2dgroup")) {
      String found = "translucent display properties on textures";
      findings.add(ExtensionRules.TRANSLUCENT, element, found, "multiproperties for that");
    }
  }

  private void multi(Element multi) {
    int[] layers = multi.parent().indices("pids");
    int[] entries = multi.indices("pindices");
    for (int k = 0; k < Math.min(layers.length, entries.length); k++) {
      Optional<Resource> group = part.resource(layers[k]).filter(Resource::isProperties);
      if (group.isPresent() && entries[k] >= group.get().entries()) {
        String found = "entry " + entries[k] + " of " + group.get().words();
        String expected = "one of its " + group.get().entries() + " entries";
        findings.add(CoreRules.ENTRY, multi, found, expected);
      }
    }
  }
}

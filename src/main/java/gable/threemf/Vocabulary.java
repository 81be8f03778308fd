package gable.threemf;

import java.util.Map;
import java.util.Set;

/**
 * Elements that Gable knows and that never forbid an edit by themselves. Elements that do (a
 * lattice, a boolean shape, an alternative) are left out on purpose.
 */
final class Vocabulary {

  private static final Map<String, Set<String>> KNOWN =
      Map.of(
          Names.CORE,
          Set.of(
              "model",
              "metadata",
              "metadatagroup",
              "resources",
              "build",
              "item",
              "object",
              "mesh",
              "vertices",
              "vertex",
              "triangles",
              "triangle",
              "components",
              "component",
              "basematerials",
              "base"),
          Names.MATERIAL,
          Set.of(
              "texture2d",
              "colorgroup",
              "color",
              "texture2dgroup",
              "tex2coord",
              "compositematerials",
              "composite",
              "multiproperties",
              "multi",
              "pbspeculardisplayproperties",
              "pbspecular",
              "pbmetallicdisplayproperties",
              "pbmetallic",
              "pbspeculartexturedisplayproperties",
              "pbmetallictexturedisplayproperties",
              "translucentdisplayproperties",
              "translucent"),
          Names.SETS,
          Set.of("trianglesets", "triangleset", "ref", "refrange"),
          Names.SLICE,
          Set.of("slicestack", "sliceref", "slice", "vertices", "vertex", "polygon", "segment"),
          Names.BEAMS,
          Set.of("beams", "beam", "beamsets", "beamset", "ref", "balls", "ball", "ballref"),
          Names.BALLS,
          Set.of("balls", "ball", "ballref"));

  private Vocabulary() {}

  /** True if the element is known and harmless. */
  static boolean knows(String namespace, String local) {
    Set<String> names = namespace == null ? null : KNOWN.get(namespace);
    return names != null && names.contains(local);
  }
}

package gable.validate;

import gable.threemf.Names;

/**
 * A resource of a part: an object, a group of properties, a stack of slices and so on.
 *
 * @param element its element; once the part is read it knows its children's number
 * @param id its id
 * @param order its place among the resources of the part, from 0
 */
record Resource(Element element, int id, int order) {

  boolean is(String namespace, String name) {
    return element.is(namespace, name);
  }

  boolean isObject() {
    return element.isCore("object");
  }

  /** Whether it is a mesh object and nothing else. */
  boolean isMesh() {
    return isObject() && element.count(Names.CORE, "mesh") > 0;
  }

  boolean isComponents() {
    return isObject() && element.count(Names.CORE, "components") > 0;
  }

  /** What it is for; counts for shapes only. */
  String type() {
    return element.value("type").map(String::strip).orElse("model");
  }

  /** Whether triangles and objects may refer to it as a group of properties. */
  boolean isProperties() {
    return is(Names.CORE, "basematerials")
        || is(Names.MATERIAL, "colorgroup")
        || is(Names.MATERIAL, "texture2dgroup")
        || is(Names.MATERIAL, "compositematerials")
        || is(Names.MATERIAL, "multiproperties");
  }

  /** Number of its entries, for a group of properties. */
  int entries() {
    return element.count(Names.CORE, "base")
        + element.count(Names.MATERIAL, "color")
        + element.count(Names.MATERIAL, "tex2coord")
        + element.count(Names.MATERIAL, "composite")
        + element.count(Names.MATERIAL, "multi");
  }

  /** What it is, for people. */
  String words() {
    return element.tag().name() + ' ' + id;
  }
}

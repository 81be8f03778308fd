package gable.validate;

import static gable.validate.XmlRules.fail;
import static gable.validate.XmlRules.warn;

import gable.opc.Rule;

/** What the core specification 1.4 (C) asks of models, objects and meshes. */
final class CoreRules {

  static final Rule SAME_ID = fail("resource-id", "C 3.4.2");
  static final Rule PREFIX =
      Rule.error("extension-prefix", "C 3.4", "declare the prefix on the model element");
  static final Rule REQUIRED =
      Rule.error("extension-required", "C 2.3.1, 3.4", "export the model without that extension");
  static final Rule RECOMMENDED =
      Rule.warning(
          "extension-recommended", "C 3.4", "look at it in a program that knows the extension");
  static final Rule BOTH = warn("extension-twice", "C 3.4");
  static final Rule NOT_REQUIRED =
      Rule.warning("extension-not-required", "C 3.4", "list the extension as required");
  static final Rule METADATA_NAME = warn("metadata-name", "C 3.4.1");
  static final Rule METADATA_TWICE = warn("metadata-repeated", "C 3.4.1");

  /** The text wants one item at least, the schema allows none. */
  static final Rule NO_ITEMS = Rule.note("build-empty", "C 3.4.3, B.1.1", "add a build item");

  static final Rule SHAPE = fail("object-shape", "C 4");
  static final Rule INDEX_WITHOUT_GROUP = fail("property-index-without-group", "C 4");
  static final Rule GROUP_ON_COMPONENTS = warn("property-on-components", "C 4; BO 2");
  static final Rule REFERENCE = fail("object-reference", "C 3.4.3.1, 4.2.1");
  static final Rule DEFINED_LATER = warn("object-defined-later", "C 3.4, 4.2.1");
  static final Rule CYCLE = fail("component-cycle", "C 4.2.1");
  static final Rule OTHER = warn("object-type-other", "C 3.4.3.1, 4.1");
  static final Rule SINGULAR =
      Rule.warning("transform-singular", "C 3.3", "place it with a transform that has an inverse");
  static final Rule PICTURE = fail("thumbnail-missing", "C 2.1.1, 4");
  static final Rule PICTURE_RELATION = warn("thumbnail-relationship", "C 2.1.3, 4");

  static final Rule FEW = warn("mesh-too-small", "C 4.1.3, 4.1.4");
  static final Rule CORNER = fail("triangle-index", "C 4.1.4.1");
  static final Rule SAME_CORNERS = fail("triangle-corners", "C 4.1.4.1");
  static final Rule OPEN =
      Rule.warning("mesh-open", "C 4.1", "repair the mesh in a modelling program");
  static final Rule TURNED =
      Rule.warning("mesh-edges", "C 4.1", "repair the mesh in a modelling program");
  static final Rule INSIDE_OUT =
      Rule.warning("mesh-inside-out", "C 4.1", "turn the triangles in a modelling program");
  static final Rule NO_AREA =
      Rule.note("triangle-without-area", "C 4.1", "nothing, it is discouraged only");

  static final Rule GROUP = warn("property-group", "C 4, 4.1.4.1");
  static final Rule ENTRY = warn("property-entry", "C 4.1.4.1");
  static final Rule NO_DEFAULT = warn("property-default", "C 4");

  /** Where every triangle has properties of its own nobody needs the default. */
  static final Rule NO_DEFAULT_NEEDED =
      Rule.note("property-default-unneeded", "C 4", "nothing, no triangle needs the default");

  static final Rule GRADIENT = warn("property-gradient", "C 4.1.4.1");
  static final Rule FIRST_CORNER = warn("property-first-corner", "C 4.1.4.1");

  static final Rule SET_NAME = warn("triangle-set-name", "C 4.1.5.1");
  static final Rule SET_TWICE = warn("triangle-set-repeated", "C 4.1.5.1");
  static final Rule SET_MEMBER = warn("triangle-set-member", "C 4.1.5");

  private CoreRules() {}
}

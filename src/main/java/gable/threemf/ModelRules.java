package gable.threemf;

import gable.opc.Rule;

/** The rules of model parts that reading and placing check. C is the core specification 1.4. */
final class ModelRules {

  private static final String WELL_FORMED = "repair the XML or export the model again";
  private static final String EXPORT = "export the model again from the program that made it";

  static final Rule ENCODING =
      Rule.error("xml-encoding", "C 2.3.2(1)", "save the model part in UTF-8");
  static final Rule XML = Rule.error("xml-not-well-formed", "C 2.3", WELL_FORMED);
  static final Rule LIMIT =
      Rule.error("xml-limit", "limit on XML sizes", "use a simpler file or raise the limit");
  static final Rule DOCTYPE =
      Rule.error("xml-doctype", "C 2.3.2(2)", "remove the document type declaration");
  static final Rule ROOT = Rule.error("model-root", "C 3.4", EXPORT);
  static final Rule STRUCTURE = Rule.error("model-structure", "C 3.4, B.1.1", EXPORT);
  static final Rule UNIT = Rule.error("model-unit", "C 3.4", "set one of the units of 3MF");
  static final Rule PREFIX =
      Rule.error("extension-prefix", "C 3.4", "declare the prefix on the model element");
  static final Rule EXTENSION =
      Rule.error("extension-required", "C 2.3.1, 3.4", "export the model without that extension");
  static final Rule RECOMMENDED =
      Rule.warning("extension-recommended", "C 3.4", "check the result in a program that knows it");
  static final Rule RESOURCE_ID = Rule.error("resource-id", "C 3.4.2", EXPORT);
  static final Rule REFERENCE = Rule.error("object-reference", "C 3.4.3.1, 4.2.1", EXPORT);
  static final Rule PATH = Rule.error("production-path", "P 2, 3.1.2, 3.2", EXPORT);
  static final Rule TRANSFORM = Rule.error("transform", "C 3.3, B.1.2", EXPORT);
  static final Rule SINGULAR =
      Rule.error(
          "transform-singular", "C 3.3", "place the object with a transform that has an inverse");
  static final Rule CYCLE = Rule.error("component-cycle", "C 4.2.1", EXPORT);
  static final Rule DEPTH =
      Rule.error("component-depth", "limit on component depth", "nest components less deeply");
  static final Rule INSTANCES =
      Rule.error("component-instances", "limit on instances", "split the file");
  static final Rule TYPE = Rule.error("object-type", "C 4", EXPORT);
  static final Rule VERTEX = Rule.error("vertex", "C 4.1.3, B.1.1", EXPORT);
  static final Rule TRIANGLE = Rule.error("triangle", "C 4.1.4, B.1.1", EXPORT);
  static final Rule TRIANGLE_INDEX = Rule.error("triangle-index", "C 4.1.4.1", EXPORT);
  static final Rule TRIANGLE_CORNERS =
      Rule.error("triangle-corners", "C 4.1.4.1", "repair the mesh in a modelling program");
  static final Rule COORDINATE =
      Rule.error("coordinate-range", "limit on coordinates", "check the unit of the model");
  static final Rule COUNT = Rule.error("mesh-count", "limit on mesh sizes", "split the file");
  static final Rule FEW = Rule.error("mesh-too-small", "C 4.1.3, 4.1.4", EXPORT);
  static final Rule GROUP_ENTRY = Rule.warning("property-entry", "M 2 to 5", EXPORT);

  static final Rule LATTICE =
      Rule.note("object-lattice", "B 2", "reshape the model before the lattice is added");
  static final Rule SLICES =
      Rule.note("object-slices", "S 1, 2", "export the model without slices");
  static final Rule OPERAND =
      Rule.note("object-referred", "BO 2.1.1, B 2.1, V 4.1.1, P 4.2.2", "export the plain mesh");
  static final Rule SHAPE = Rule.note("object-shape", "C 4", "export the object as a plain mesh");
  static final Rule UNKNOWN =
      Rule.note("mesh-unknown-element", "C 2.3.3.1", "export the model without that extension");
  static final Rule NOT_PRINTED = Rule.note("object-not-printed", "C 3.4.3", "add a build item");
  static final Rule NOT_MODEL =
      Rule.note("object-not-model", "C 4", "nothing, only objects of type model are reshaped");

  static final Rule BORROWED =
      Rule.note("property-borrowed", "C 4.1.4.1", "look at the colours of the new faces");
  static final Rule COPIED =
      Rule.warning(
          "triangle-attributes-copied",
          "C 2.3.3.1",
          "check the result in the program that wrote these attributes");

  static final Rule NAMELESS =
      Rule.warning(
          "triangle-attributes-dropped",
          "C 2.3.2(3), 2.3.3.1",
          "check the result in the program that wrote these attributes");

  private ModelRules() {}
}

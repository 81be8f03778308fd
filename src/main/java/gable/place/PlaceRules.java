package gable.place;

import gable.opc.Rule;

/** The rules that the way from objects to the plate checks. C is the core specification 1.4. */
final class PlaceRules {

  static final Rule REFERENCE =
      Rule.error("object-reference", "C 3.4.3.1, 4.2.1", "export the model again from its program");
  static final Rule CYCLE =
      Rule.error("component-cycle", "C 4.2.1", "export the model again from its program");
  static final Rule ORDER =
      Rule.error("component-order", "C 3.4", "export the model again from its program");
  static final Rule DEPTH =
      Rule.error("component-depth", "limit on component depth", "nest components less deeply");
  static final Rule INSTANCES =
      Rule.error("component-instances", "limit on instances", "split the file");
  static final Rule RANGE =
      Rule.error("coordinate-range", "limit on coordinates", "check the unit and the transforms");
  static final Rule WAYS =
      Rule.error("object-ways", "limit on directions", "place the object in fewer directions");
  static final Rule COUNT = Rule.error("mesh-count", "limit on mesh sizes", "split the file");
  static final Rule SINGULAR =
      Rule.error(
          "transform-singular", "C 3.3", "place the object with a transform that has an inverse");
  static final Rule OTHER =
      Rule.error("object-other-built", "C 3.4.3.1, 4.1", "take the object out of the build");
  static final Rule NOT_MODEL =
      Rule.note("object-not-model", "C 4", "nothing, only objects of type model are reshaped");
  static final Rule NOT_PRINTED =
      Rule.note("object-not-printed", "C 3.4.3", "add a build item if it is to be printed");

  private PlaceRules() {}
}

package gable.validate;

import static gable.validate.XmlRules.fail;
import static gable.validate.XmlRules.warn;

import gable.opc.Rule;

/**
 * What the extensions ask: materials and properties (M), production (P), slices (S), beam lattices
 * (B), booleans (BO), displacement (D), volumetric and implicit (V), secure content (SC).
 */
final class ExtensionRules {

  static final Rule LAYERS = fail("multiproperties-layers", "M 5");
  static final Rule MATERIAL_FIRST = fail("multiproperties-material-first", "M 5");
  static final Rule NO_GROUP = warn("property-reference", "M 2 to 5");
  static final Rule BLEND = warn("multiproperties-blendmethods", "M 5");
  static final Rule COMPOSITE = fail("composite-base", "M 4");
  static final Rule COMPOSITE_VALUE = warn("composite-value", "M 4.1");
  static final Rule TEXTURE = fail("texture-reference", "M 3, 7.3, 7.4");
  static final Rule PICTURE = fail("picture-missing", "M 6; D 3.1; V 4.2.3");
  static final Rule PICTURE_RELATION = warn("picture-relationship", "M 6; D 3.1; V 4.2.2");
  static final Rule DISPLAY = warn("display-properties", "M 7");
  static final Rule TRANSLUCENT = warn("display-translucent", "M 3, 7.5.1");

  static final Rule NO_UUID = warn("uuid-missing", "P 4");
  static final Rule SAME_UUID = warn("uuid-repeated", "P 4.1.1, 4.2");
  static final Rule DEEP_PATH = fail("production-path-depth", "P 2, 3.1.2, 3.2; BO 2.1");
  static final Rule PATH = fail("production-path", "P 3.1, 3.3");
  static final Rule CHILD_BUILD = warn("production-child-build", "P 2");
  static final Rule CHILD_UNIT =
      Rule.note("production-child-unit", "C 3.4", "nothing, but check the sizes");
  static final Rule ALTERNATIVE = fail("alternative-reference", "P 4.2.2.1");
  static final Rule ALTERNATIVE_DEPTH = warn("alternative-in-child", "P 4.2.2.1");
  static final Rule FULL = warn("alternative-fullres", "P 4.2.2.1");

  static final Rule STACK = fail("slice-stack", "S 2");
  static final Rule STACK_KIND = fail("slice-stack-mixed", "S 2 (SliceRef)");
  static final Rule STACK_DEPTH = fail("slice-stack-depth", "S 2 (SliceRef)");
  static final Rule LOWRES = warn("slice-lowres", "S 2 (Object)");
  static final Rule FULLRES = warn("slice-fullres", "S 2 (Object)");
  static final Rule PLANAR = warn("slice-transform", "S 1");
  static final Rule HEIGHT = fail("slice-height", "S 2, 3");
  static final Rule SLICE_VERTEX = fail("slice-vertex", "S 3");
  static final Rule OPEN_POLYGON = warn("slice-polygon-open", "S 3");
  static final Rule SEGMENT = warn("slice-segment", "S 3");
  static final Rule SLICE_EMPTY = warn("slice-vertices", "S 3");

  static final Rule BEAM_VERTEX = fail("beam-vertex", "B 2.1.1.1, 2.1.2.1");
  static final Rule BEAM_LENGTH = warn("beam-length", "B 2.1, 2.1.1.1");
  static final Rule BEAM_RADIUS = warn("beam-radius", "B 2.1.1.1");
  static final Rule BALL_RADIUS = fail("ball-radius", "B 2.1");
  static final Rule BEAM_SET = warn("beam-set-repeated", "B 2.1.4");
  static final Rule BEAM_MEMBER = warn("beam-set-member", "B 2.1.4");
  static final Rule CLIPPING = fail("beam-clipping", "B 2.1");
  static final Rule LATTICE_MESH = warn("beam-mesh-reference", "B 2.1");
  static final Rule LATTICE_TYPE = warn("beam-object-type", "B 2");

  static final Rule BASE = fail("boolean-base", "BO 2.1");
  static final Rule OPERAND = fail("boolean-operand", "BO 2.1.1");
  static final Rule DISPLACED_TYPE = warn("displacement-object-type", "D 4");
  static final Rule DISPLACEMENT = fail("displacement-reference", "D 3.3, 4.1.2");
  static final Rule DISPLACEMENT_ENTRY = fail("displacement-entry", "D 3.3.1, 4.1.2.1");
  static final Rule NOT_UNIT = warn("displacement-vector", "D 3.2.1");
  static final Rule FIELD = fail("volume-reference", "V 3.2, 4.1.1, 5.2");
  static final Rule MAPPINGS = fail("volume-mappings", "V 5.2.2");
  static final Rule SHEETS = fail("image-sheets", "V 4.2");
  static final Rule PROPERTY_NAME = warn("volume-property-name", "V 5.2.4");

  static final Rule ENCRYPTED =
      Rule.error(
          "part-encrypted", "SC 1.2, 3.3; C 2.3.1", "ask the sender for an unencrypted copy");
  static final Rule KEY_STORE_TYPE = fail("key-store-content-type", "SC 3.1; OPC 9.1.2 [M2.4]");
  static final Rule KEY_STORE_ROOT = fail("key-store-root", "SC 2");
  static final Rule CONSUMER = fail("key-store-consumer", "SC 2.2.2");
  static final Rule CONSUMER_TWICE = fail("key-store-consumer-repeated", "SC 2.1");
  static final Rule KEY = fail("key-store-key", "SC 2.2.2.2");
  static final Rule PATH_TWICE = fail("key-store-path-repeated", "SC 2.2.1");
  static final Rule ENCRYPTED_ROOT = fail("part-encrypted-root", "SC 1.2");

  private ExtensionRules() {}
}

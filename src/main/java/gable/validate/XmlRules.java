package gable.validate;

import gable.opc.Rule;

/** What holds for the XML of every part. C is the core specification 1.4. */
final class XmlRules {

  static final Rule ROOT = fail("model-root", "C 2.3.1, 3.4");
  static final Rule UNKNOWN_ELEMENT =
      Rule.warning(
          "element-unexpected", "C 2.3.2(3), 2.3.3.1", "remove it, or write it where it belongs");
  static final Rule UNKNOWN_ATTRIBUTE =
      Rule.warning(
          "attribute-unexpected", "C 2.3.2(3), 2.3.3.1", "remove it, or give it its prefix");
  static final Rule XML_ATTRIBUTE =
      Rule.warning("attribute-of-xml", "C 2.3.2(4), 2.3.5, B.1.1", "remove it");
  static final Rule ORDER = warn("element-order", "C 2.3.2(3), B.1.1");
  static final Rule EMPTY = warn("element-empty", "C 2.3.2(3)");
  static final Rule MISSING_ELEMENT = fail("element-missing", "C 2.3.2(3), B.1.1");
  static final Rule REPEATED = fail("element-repeated", "C 2.3.2(3), B.1.1");
  static final Rule MISSING_ATTRIBUTE = fail("attribute-missing", "C 2.3.2(3)");
  static final Rule VALUE = fail("attribute-value", "C 2.3.2(3)");
  static final Rule UUID = warn("uuid-spelling", "P B.1");

  private static final String EXPORT = "export the model again from the program that made it";

  private XmlRules() {}

  /** A rule whose breach leaves open what is meant. */
  static Rule fail(String code, String source) {
    return Rule.error(code, source, EXPORT);
  }

  /** A rule whose breach leaves plain what is meant. */
  static Rule warn(String code, String source) {
    return Rule.warning(code, source, EXPORT);
  }

  /** The same rule as another specification has it. */
  static Rule in(Rule rule, String section) {
    return new Rule(rule.code(), rule.severity(), section + "; " + rule.source(), rule.remedy());
  }
}

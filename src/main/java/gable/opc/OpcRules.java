package gable.opc;

/** What names, content types and relationships of a package must obey. */
final class OpcRules {

  private static final String REPAIR = "repair the package with the program that made it";
  private static final String KEPT = "nothing; it is kept as it is";

  static final Rule EQUAL_NAMES =
      Rule.error("opc-equal-names", "OPC 8.1.1 [M1.12]", "rename one of the two");
  static final Rule NESTED_NAMES =
      Rule.error("opc-nested-names", "OPC 8.1.1 [M1.11]", "rename one of the two");
  static final Rule PIECES = Rule.error("opc-pieces", "OPC 9.1.4", "pack the part in one piece");
  static final Rule PART_NAME = Rule.warning("opc-part-name", "OPC 8.1.1 [M1.1-M1.10]", KEPT);
  static final Rule NO_TYPES = Rule.error("opc-no-content-types", "OPC 9.1.2 [M2.1]", REPAIR);
  static final Rule TYPE_TWICE =
      Rule.error("opc-content-type-twice", "OPC 9.1.2 [M2.5]", "leave one of the two entries");
  static final Rule TYPE_ENTRY = Rule.error("opc-content-type-entry", "OPC 9.1.2", REPAIR);
  static final Rule TYPE_NAME =
      Rule.warning(
          "opc-content-type-name", "OPC 8.1.1 [M1.4]", "write the name with a slash first");
  static final Rule NO_TYPE = Rule.warning("opc-no-content-type", "OPC 9.1.2 [M2.9]", KEPT);

  static final Rule ENCODING =
      Rule.error("opc-encoding", "OPC 8.1.4 [M1.17]", "save the part as UTF-8");
  static final Rule DTD = Rule.error("opc-dtd", "OPC 8.1.4 [M1.18]", "remove the declaration");
  static final Rule XML = Rule.error("opc-xml", "XML 1.0", REPAIR);
  static final Rule SCHEMA = Rule.error("opc-schema", "OPC Annex D", REPAIR);
  static final Rule FOREIGN = Rule.warning("opc-foreign-element", "OPC 8.1.4 [M1.19]", KEPT);
  static final Rule XML_LIMIT =
      Rule.error(
          "limit-xml", "limit xml", "raise the limit only if you trust where the file comes from");

  static final Rule RELATION = Rule.error("opc-relationship", "OPC 8.3.3, Annex D", REPAIR);
  static final Rule RELATION_ID =
      Rule.error("opc-relationship-id", "OPC 8.3.3 [M1.26]", "give each its own Id");
  static final Rule ODD_ID =
      Rule.warning("opc-relationship-odd-id", "OPC 8.3.3 [M1.26], XML Schema 2 ID", KEPT);
  static final Rule RELATION_OF_RELATIONS =
      Rule.error("opc-relationships-of-relationships", "OPC 8.3 [M1.25]", REPAIR);
  static final Rule NO_SOURCE = Rule.warning("opc-relationships-no-source", "OPC 8.3.4", KEPT);
  static final Rule ABOVE_ROOT = Rule.error("opc-target-above-root", "OPC 8.3.3.2 [M1.29]", REPAIR);
  static final Rule OUTSIDE = Rule.warning("3mf-target-outside", "3MF Core 2.1.1", KEPT);
  static final Rule DANGLING = Rule.warning("opc-target-missing", "OPC 8.3.3", KEPT);
  static final Rule DANGLING_NEEDED =
      Rule.error("3mf-target-missing", "3MF Core 2.1.1", "add the part or remove the relationship");
  static final Rule TWICE = Rule.warning("3mf-relationship-twice", "3MF Core 2.1.1", KEPT);

  static final Rule NO_START =
      Rule.error("3mf-no-model", "3MF Core 2.1.1", "export the model again as 3MF");
  static final Rule TWO_STARTS =
      Rule.error("3mf-two-models", "3MF Core 2.1, 2.1.1", "leave one StartPart relationship");
  static final Rule START_OUTSIDE =
      Rule.error("3mf-model-outside", "3MF Core 2.1.1", "put the model inside the package");
  static final Rule START_TYPE =
      Rule.error("3mf-model-content-type", "3MF Core C.1", "correct [Content_Types].xml");
  static final Rule TWO_TICKETS =
      Rule.error("3mf-two-print-tickets", "3MF Core 2.1.4", "leave one print ticket");
  static final Rule TWO_CORE_PROPERTIES =
      Rule.error("opc-two-core-properties", "OPC 10.2 [M4.1]", "leave one core properties part");
  static final Rule SIGNATURE_UNREADABLE =
      Rule.warning(
          "opc-signature-unreadable", "OPC 12.2", "take it that the signature covers every part");
  static final Rule ENCRYPTED_UNMARKED =
      Rule.error("3mf-encrypted-unmarked", "Secure Content 3.3", REPAIR);
  static final Rule MANY_RELATIONS =
      Rule.error(
          "limit-relationships",
          "limit xml.relationships",
          "raise the limit only if you trust where the file comes from");

  private OpcRules() {}
}

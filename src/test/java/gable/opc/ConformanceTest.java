package gable.opc;

import static gable.opc.Packages.relationship;
import static gable.opc.Packages.relationships;
import static gable.opc.Packages.types;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * One case for each rule about names, content types and relationships. Sources: ECMA-376 Part 2,
 * first edition (OPC), by rule id; 3MF Core Specification 1.4, by section; both in each name.
 */
class ConformanceTest {

  private static final String TYPES_ITEM = "[Content_Types].xml";
  private static final String RELS = "_rels/.rels";
  private static final String MODEL_RELS = "3D/_rels/3dmodel.model.rels";
  private static final String START =
      relationship("rel0", RelationshipTypes.MODEL, "/3D/3dmodel.model");
  private static final String ENTRIES =
      "<Default Extension=\"rels\" ContentType=\""
          + ContentTypes.RELATIONSHIPS
          + "\"/>"
          + "<Default Extension=\"model\" ContentType=\""
          + Part.MODEL_TYPE
          + "\"/>";

  @ParameterizedTest(name = "{0}")
  @MethodSource("broken")
  void refusesAPackageThatBreaksTheRule(Case broken) {
    broken.checkRefused();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("noted")
  void opensAPackageAndNamesWhatIsOdd(Case noted) throws Exception {
    noted.checkOpens();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("sound")
  void opensAPackageThatKeepsTheRule(Case sound) throws Exception {
    sound.checkOpens();
  }

  static Stream<Case> broken() {
    return Stream.of(brokenTypes(), brokenRelationships(), brokenMarkup()).flatMap(s -> s);
  }

  private static Stream<Case> brokenTypes() {
    return Stream.of(
        new Case(
            "OPC 9.1.2 [M2.1]: no content types",
            () -> {
              ZipBytes zip = new ZipBytes();
              zip.add(RELS, Packages.ROOT_RELATIONSHIPS);
              zip.add("3D/3dmodel.model", Packages.MODEL);
              return zip.bytes();
            },
            "opc-no-content-types"),
        typed(
            "OPC 9.1.2 [M2.5]: two entries for one extension",
            ENTRIES + "<Default Extension=\"MODEL\" ContentType=\"text/plain\"/>",
            "opc-content-type-twice"),
        typed(
            "OPC 9.1.2 [M2.5]: two entries for one part",
            ENTRIES + override("/a.b", "x/y") + override("/A.B", "x/z"),
            "opc-content-type-twice"),
        typed(
            "OPC Annex D: an entry without its content type",
            ENTRIES + "<Default Extension=\"png\"/>",
            "opc-content-type-entry"),
        typed(
            "OPC Annex D: an entry without its extension",
            ENTRIES + "<Default ContentType=\"image/png\"/>",
            "opc-content-type-entry"),
        typed(
            "OPC Annex D: an element that the schema does not know",
            ENTRIES + "<Fallback Extension=\"png\" ContentType=\"image/png\"/>",
            "opc-schema"),
        typed(
            "3MF Core C.1: the model has another content type",
            ENTRIES + override("/3D/3dmodel.model", "application/xml"),
            "3mf-model-content-type"),
        typed(
            "3MF Core C.1: the model has no content type",
            ENTRIES.replace("\"model\"", "\"modell\""),
            "3mf-model-content-type"));
  }

  private static Stream<Case> brokenRelationships() {
    return Stream.of(
        related(
            "3MF Core 2.1.1: no StartPart relationship",
            "3mf-no-model",
            relationship("r", "http://example.org/t", "/3D/3dmodel.model")),
        without("3MF Core 2.1.1: no relationships at all", RELS, "3mf-no-model"),
        related(
            "3MF Core 2.1.1: two StartPart relationships",
            "3mf-two-models",
            START,
            relationship("rel1", RelationshipTypes.MODEL, "/3D/3dmodel.model")),
        related(
            "3MF Core 2.1.1: StartPart to a part that is missing",
            "3mf-target-missing",
            START.replace("3dmodel.model\"", "other.model\"")),
        related(
            "3MF Core 2.1.1: StartPart outside the package",
            "3mf-model-outside",
            START.replace("Target=", "TargetMode=\"External\" Target=")),
        related(
            "3MF Core 2.1.1: StartPart by an address",
            "3mf-model-outside",
            START.replace("/3D/", "http://example.org/3D/")),
        related(
            "3MF Core 2.1.1: StartPart with a drive letter",
            "3mf-model-outside",
            START.replace("/3D/", "C:/3D/")),
        related(
            "3MF Core 2.1.1: thumbnail that is missing",
            "3mf-target-missing",
            START,
            relationship("rel1", RelationshipTypes.THUMBNAIL, "/Metadata/t.png")),
        modelRelated(
            "3MF Core 2.1.1: print ticket that is missing",
            "3mf-target-missing",
            relationship("t", RelationshipTypes.PRINT_TICKET, "/3D/ticket.xml")),
        modelRelated(
            "3MF Core 2.1.4: two print tickets on one model",
            "3mf-two-print-tickets",
            relationship("t0", RelationshipTypes.PRINT_TICKET, "/3D/3dmodel.model"),
            relationship("t1", RelationshipTypes.PRINT_TICKET, "/3D/3dmodel.model")),
        related(
            "OPC 10.2 [M4.1]: two core properties",
            "opc-two-core-properties",
            START,
            relationship("c0", RelationshipTypes.CORE_PROPERTIES, "/3D/3dmodel.model"),
            relationship("c1", RelationshipTypes.CORE_PROPERTIES, "/3D/3dmodel.model")),
        related(
            "OPC 8.3.3 [M1.26]: two relationships with one Id",
            "opc-relationship-id",
            START,
            relationship("rel0", "http://example.org/t", "/3D/3dmodel.model")),
        related(
            "OPC Annex D: relationship without Id",
            "opc-relationship",
            START.replace("Id=\"rel0\" ", "")),
        related(
            "OPC Annex D: relationship without Type",
            "opc-relationship",
            START,
            "<Relationship Id=\"x\" Target=\"/3D/3dmodel.model\"/>"),
        related(
            "OPC Annex D: TargetMode of another value",
            "opc-relationship",
            START.replace("Target=", "TargetMode=\"Elsewhere\" Target=")),
        related(
            "OPC 8.3.3.2 [M1.29]: target above the root",
            "opc-target-above-root",
            START,
            relationship("x", "http://example.org/t", "../../etc/passwd")),
        packed(
            "OPC 8.3 [M1.25]: relationships of relationships",
            zip -> zip.add("_rels/_rels/.rels.rels", relationships()),
            "opc-relationships-of-relationships"),
        related(
            "limit xml.relationships",
            "limit-relationships",
            IntStream.range(0, 100_001)
                .mapToObj(i -> relationship("r" + i, "u:t" + i, "/3D/3dmodel.model"))
                .toArray(String[]::new)));
  }

  private static Stream<Case> brokenMarkup() {
    String text = Packages.ROOT_RELATIONSHIPS;
    String depth = "<x:x xmlns:x=\"urn:x\">".repeat(70) + "</x:x>".repeat(70);
    String wide =
        IntStream.range(0, 300).mapToObj(i -> " a" + i + "=\"\"").reduce("", String::concat);
    return Stream.of(
        markup(
            "OPC [M1.18]: document type declaration",
            text.replace("\n<R", "\n<!DOCTYPE Relationships []><R"),
            "opc-dtd"),
        markup(
            "OPC [M1.18]: external document type",
            text.replace("\n<R", "\n<!DOCTYPE Relationships SYSTEM \"file:///etc/passwd\"><R"),
            "opc-dtd"),
        markup(
            "OPC [M1.17]: Latin-1 declared", text.replace("UTF-8", "ISO-8859-1"), "opc-encoding"),
        markup(
            "OPC [M1.17]: UTF-16 declared in UTF-8",
            text.replace("UTF-8", "UTF-16"),
            "opc-encoding"),
        bytes(
            "OPC [M1.17]: bytes that are not UTF-8",
            text,
            StandardCharsets.ISO_8859_1,
            "é",
            "opc-encoding"),
        bytes(
            "OPC [M1.17]: UTF-16 without its mark",
            text.replace("UTF-8", "UTF-16"),
            StandardCharsets.UTF_16BE,
            "",
            "opc-xml"),
        bytes(
            "OPC [M1.17]: UTF-32",
            text.replace("UTF-8", "UTF-32"),
            Charset.forName("UTF-32BE"),
            "",
            "opc-xml"),
        markup("XML 1.0: cut short", text.substring(0, text.length() - 9), "opc-xml"),
        markup("XML 1.0: a NUL", text.replace("rel0", "rel\0"), "opc-xml"),
        markup("XML 1.0 3.1: an attribute twice", text.replace("Id=", "Id=\"a\" Id="), "opc-xml"),
        markup("XML 1.0 2.1: two roots", text + "<b/>", "opc-xml"),
        markup(
            "XML Namespaces: a prefix that is not declared",
            text.replace("Id=", "q:a=\"\" Id="),
            "opc-xml"),
        markup(
            "XML 1.0 4.1: an entity that is not declared, in text",
            text.replace("</Rel", "&boom;</Rel"),
            "opc-xml"),
        markup(
            "XML 1.0 2.7: a CDATA section without end",
            text.replace("</Rel", "<![CDATA[</Rel"),
            "opc-xml"),
        markup(
            "XML 1.0 4.1: an entity that is not declared",
            text.replace("rel0", "&boom;"),
            "opc-xml"),
        markup(
            "OPC Annex D: another root element",
            text.replace("Relationships", "Types"),
            "opc-schema"),
        markup("limit xml.depth", text.replace("</Rel", depth + "</Rel"), "limit-xml"),
        markup("limit xml.attributes", text.replace(" Id=", wide + " Id="), "limit-xml"),
        markup("limit xml.attributeChars", text.replace("rel0", "r".repeat(70_000)), "limit-xml"),
        markup("limit xml.bytes", text + "\n".repeat(17 << 20), "limit-xml-bytes"));
  }

  static Stream<Case> noted() {
    return Stream.of(
        packed(
            "OPC 8.1.1 [M1.1-M1.10]: a blank in a name",
            zip -> zip.add("3D/my part.model", "x"),
            "opc-part-name"),
        packed(
            "OPC 8.1.1 [M1.1-M1.10]: a segment that ends in a dot",
            zip -> zip.add("3D/a./b.model", "x"),
            "opc-part-name"),
        packed(
            "3MF Core 2.2.3: a last segment that starts with a dot",
            zip -> zip.add("3D/.model", "x"),
            "opc-part-name"),
        packed(
            "OPC 8.1.1 [M1.8]: an escape that is not needed",
            zip -> zip.add("3D/%61.model", "x"),
            "opc-part-name"),
        packed(
            "OPC 9.1.2 [M2.9]: an item without content type",
            zip -> zip.add("3D/readme", "x"),
            "opc-no-content-type"),
        typed(
            "OPC 8.1.1 [M1.4]: Override without its slash",
            ENTRIES + override("a/b.c", "x/y"),
            "opc-content-type-name"),
        related(
            "3MF Core 2.1.1: a target outside is not fetched",
            "3mf-target-outside",
            START,
            relationship("x", "http://example.org/t", "http://example.org/a")),
        related(
            "OPC 8.3.3: a target that is missing",
            "opc-target-missing",
            START,
            relationship("x", "http://example.org/t", "/nothing.bin")),
        related(
            "3MF Core 2.1.1: one type twice to one target",
            "3mf-relationship-twice",
            START,
            relationship("x", "http://example.org/t", "/3D/3dmodel.model"),
            relationship("y", "http://example.org/t", "3D/3dmodel.model")),
        related(
            "OPC 8.3.3 [M1.26]: an Id that is no XML name",
            "opc-relationship-odd-id",
            START,
            relationship("1", "http://example.org/t", "/3D/3dmodel.model")),
        packed(
            "OPC 8.3.4: relationships of a part that is missing",
            zip -> zip.add("3D/_rels/other.model.rels", relationships()),
            "opc-relationships-no-source"),
        related(
            "OPC [M1.19]: an element of another namespace",
            "opc-foreign-element",
            START,
            "<n:note xmlns:n=\"urn:n\"/>"));
  }

  static Stream<Case> sound() {
    String utf16 = Packages.ROOT_RELATIONSHIPS.replace("UTF-8", "UTF-16");
    return Stream.of(
        bytes(
            "OPC [M1.17]: UTF-16, high byte first",
            "\uFEFF" + utf16,
            StandardCharsets.UTF_16BE,
            "",
            ""),
        bytes(
            "OPC [M1.17]: UTF-16, low byte first",
            "\uFEFF" + utf16,
            StandardCharsets.UTF_16LE,
            "",
            ""),
        markup("XML 1.0: byte order mark", "\uFEFF" + Packages.ROOT_RELATIONSHIPS, ""),
        markup(
            "XML 1.0: no declaration",
            Packages.ROOT_RELATIONSHIPS.substring(Packages.ROOT_RELATIONSHIPS.indexOf('\n') + 1),
            ""),
        related("OPC 8.3.3.2 [M1.29]: a relative target", "", START.replace("/3D/", "3D/")),
        related("OPC 8.3.3.2 [M1.29]: a target with dots", "", START.replace("/3D/", "x/../3D/")),
        related("OPC 8.1.1 [M1.12]: a target in another case", "", START.replace("/3D/", "/3d/")),
        related("OPC Annex A: a target with escapes", "", START.replace("/3D/", "/%33D/")),
        related(
            "OPC Annex D: TargetMode Internal",
            "",
            START.replace("Target=", "TargetMode=\"Internal\" Target=")),
        typed(
            "OPC 9.1.2 [M2.9]: Override before Default",
            ENTRIES.replace(Part.MODEL_TYPE, "text/plain")
                + override("/3d/3DMODEL.model", Part.MODEL_TYPE),
            ""),
        typed(
            "OPC 9.1.2 [M2.9]: extensions in any case",
            ENTRIES.replace("model\" C", "MODEL\" C"),
            ""));
  }

  private static String override(String part, String type) {
    return "<Override PartName=\"" + part + "\" ContentType=\"" + type + "\"/>";
  }

  private static Case typed(String rule, String entries, String code) {
    return replaced(rule, TYPES_ITEM, types(entries).getBytes(StandardCharsets.UTF_8), code);
  }

  private static Case related(String rule, String code, String... entries) {
    return markup(rule, relationships(entries), code);
  }

  private static Case modelRelated(String rule, String code, String... entries) {
    return packed(rule, zip -> zip.add(MODEL_RELS, relationships(entries)), code);
  }

  private static Case markup(String rule, String text, String code) {
    return replaced(rule, RELS, text.getBytes(StandardCharsets.UTF_8), code);
  }

  /** The text in a charset, with a comment that holds {@code odd} behind it. */
  private static Case bytes(String rule, String text, Charset charset, String odd, String code) {
    String whole = odd.isEmpty() ? text : text + "<!-- " + odd + " -->";
    return replaced(rule, RELS, whole.getBytes(charset), code);
  }

  private static Case replaced(String rule, String item, byte[] content, String code) {
    return rebuilt(rule, (name, honest) -> Optional.of(name.equals(item) ? content : honest), code);
  }

  private static Case without(String rule, String item, String code) {
    return rebuilt(
        rule, (name, honest) -> Optional.of(honest).filter(any -> !name.equals(item)), code);
  }

  private static Case rebuilt(
      String rule, BiFunction<String, byte[], Optional<byte[]>> change, String code) {
    return new Case(
        rule,
        () -> {
          ZipBytes zip = new ZipBytes();
          for (String name : new String[] {TYPES_ITEM, RELS, "3D/3dmodel.model"}) {
            change
                .apply(name, ZipBytes.minimal().item(name).content)
                .ifPresent(content -> zip.add(name, content));
          }
          return zip.bytes();
        },
        code);
  }

  private static Case packed(String rule, Consumer<ZipBytes> change, String code) {
    return new Case(
        rule,
        () -> {
          ZipBytes zip = ZipBytes.minimal();
          change.accept(zip);
          return zip.bytes();
        },
        code);
  }
}

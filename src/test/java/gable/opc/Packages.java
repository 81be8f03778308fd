package gable.opc;

import java.util.Arrays;

/** Texts of which test packages are made. */
final class Packages {

  static final String TYPES =
      types(
          "<Default Extension=\"rels\""
              + " ContentType=\"application/vnd.openxmlformats-package.relationships+xml\"/>"
              + "<Default Extension=\"model\" ContentType=\""
              + Part.MODEL_TYPE
              + "\"/>");

  static final String ROOT_RELATIONSHIPS =
      relationships(relationship("rel0", RelationshipTypes.MODEL, "/3D/3dmodel.model"));

  static final String MODEL =
      "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
          + "<model xmlns=\"http://schemas.microsoft.com/3dmanufacturing/core/2015/02\">"
          + "<resources/><build/></model>";

  private Packages() {}

  static String types(String entries) {
    return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<Types xmlns=\""
        + "http://schemas.openxmlformats.org/package/2006/content-types\">"
        + entries
        + "</Types>";
  }

  static String relationships(String... entries) {
    return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<Relationships xmlns=\""
        + "http://schemas.openxmlformats.org/package/2006/relationships\">\n  "
        + String.join("\n  ", entries)
        + "\n</Relationships>";
  }

  static String relationship(String id, String type, String target) {
    return "<Relationship Id=\"" + id + "\" Type=\"" + type + "\" Target=\"" + target + "\"/>";
  }

  static byte[] join(byte[] first, byte[] second) {
    byte[] both = Arrays.copyOf(first, first.length + second.length);
    System.arraycopy(second, 0, both, first.length, second.length);
    return both;
  }
}

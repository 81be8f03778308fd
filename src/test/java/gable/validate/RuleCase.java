package gable.validate;

import gable.opc.RelationshipTypes;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/** A package that breaks a rule, or keeps it, from the file {@code rules.txt}. */
final class RuleCase {

  private static final String HULL =
      "<vertices><vertex x=\"0\" y=\"0\" z=\"0\"/><vertex x=\"10\" y=\"0\" z=\"0\"/>"
          + "<vertex x=\"10\" y=\"20\" z=\"0\"/><vertex x=\"0\" y=\"20\" z=\"0\"/>"
          + "<vertex x=\"0\" y=\"0\" z=\"30\"/><vertex x=\"10\" y=\"0\" z=\"30\"/>"
          + "<vertex x=\"10\" y=\"20\" z=\"30\"/><vertex x=\"0\" y=\"20\" z=\"30\"/></vertices>"
          + "<triangles><triangle v1=\"3\" v2=\"2\" v3=\"1\"/><triangle v1=\"1\" v2=\"0\" v3=\"3\"/>"
          + "<triangle v1=\"4\" v2=\"5\" v3=\"6\"/><triangle v1=\"6\" v2=\"7\" v3=\"4\"/>"
          + "<triangle v1=\"0\" v2=\"1\" v3=\"5\"/><triangle v1=\"5\" v2=\"4\" v3=\"0\"/>"
          + "<triangle v1=\"1\" v2=\"2\" v3=\"6\"/><triangle v1=\"6\" v2=\"5\" v3=\"1\"/>"
          + "<triangle v1=\"2\" v2=\"3\" v3=\"7\"/><triangle v1=\"7\" v2=\"6\" v3=\"2\"/>"
          + "<triangle v1=\"3\" v2=\"0\" v3=\"4\"/><triangle v1=\"4\" v2=\"7\" v3=\"3\"/></triangles>";
  private static final String TRIANGLES =
      "<triangle v1=\"0\" v2=\"2\" v3=\"1\"/><triangle v1=\"0\" v2=\"1\" v3=\"3\"/>"
          + "<triangle v1=\"1\" v2=\"2\" v3=\"3\"/><triangle v1=\"0\" v2=\"3\" v3=\"2\"/>";
  private static final String ROOT = "/3D/3dmodel.model";
  private static final String RELATIONSHIPS = "http://schemas.openxmlformats.org/package/2006/";

  /** A part of the package. */
  private static final class Part {
    private final String name;
    private final Set<String> relationships = new TreeSet<>();
    private final StringBuilder resources = new StringBuilder();
    private String attributes = "";
    private String build = " <item objectid=\"1\"/>";
    private String whole = "";

    Part(String name) {
      this.name = name;
    }
  }

  private final String title;
  private final Set<String> codes = new TreeSet<>();
  private final List<Part> parts = new ArrayList<>();
  private String keyStore = "";
  private boolean keyStoreTyped = true;

  private RuleCase(String title) {
    this.title = title;
    parts.add(new Part(ROOT));
  }

  /** All cases of the file. */
  static List<RuleCase> all() throws IOException {
    List<RuleCase> all = new ArrayList<>();
    try (InputStream in = RuleCase.class.getResourceAsStream("rules.txt")) {
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      for (String line : text.lines().toList()) {
        if (line.startsWith("= ")) {
          all.add(new RuleCase(line.substring(2)));
        } else if (!line.isBlank() && !line.startsWith("#")) {
          all.get(all.size() - 1).line(line);
        }
      }
    }
    return all;
  }

  private void line(String line) {
    Part last = parts.get(parts.size() - 1);
    if (line.startsWith("!")) {
      codes.addAll(List.of(line.substring(1).strip().split(" +")));
      codes.remove("");
    } else if (line.startsWith("@@ ")) {
      last.whole = line.substring(3);
    } else if (line.startsWith("@k ") || line.startsWith("@x ")) {
      keyStore = line.substring(3);
      keyStoreTyped = line.startsWith("@k");
    } else if (line.startsWith("@")) {
      Part part = new Part(line.substring(line.indexOf('/')));
      boolean model = part.name.endsWith(".model");
      if (!line.startsWith("@-")) {
        part.relationships.add(model ? RelationshipTypes.MODEL : RelationshipTypes.TEXTURE);
      }
      if (line.startsWith("@!")) {
        part.relationships.add(RelationshipTypes.ENCRYPTED_FILE);
      }
      part.whole = model ? "" : "picture";
      parts.add(part);
    } else if (line.startsWith("< ")) {
      last.attributes = line.substring(2);
    } else if (line.startsWith("%")) {
      last.build = line.substring(1);
    } else {
      last.resources.append(line).append('\n');
    }
  }

  /** Codes that must be found, and no others. */
  Set<String> codes() {
    return codes;
  }

  /** The package. */
  byte[] bytes() throws IOException {
    Map<String, String> items = new LinkedHashMap<>();
    items.put("[Content_Types].xml", types());
    items.put("_rels/.rels", relationships(true));
    items.put("3D/_rels/3dmodel.model.rels", relationships(false));
    for (Part part : parts) {
      items.put(part.name.substring(1), part.whole.isEmpty() ? model(part) : part.whole);
    }
    if (!keyStore.isEmpty()) {
      items.put("Secure/keystore.xml", keyStore());
    }
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
      for (Map.Entry<String, String> item : items.entrySet()) {
        zip.putNextEntry(new ZipEntry(item.getKey()));
        zip.write(item.getValue().getBytes(StandardCharsets.UTF_8));
        zip.closeEntry();
      }
    }
    return bytes.toByteArray();
  }

  private static String model(Part part) {
    String declared = "";
    for (String[] namespace : NAMESPACES) {
      boolean own = part.attributes.contains("xmlns:" + namespace[0] + "=");
      declared += own ? "" : " xmlns:" + namespace[0] + "=\"" + namespace[1] + '"';
    }
    int start = part.build.indexOf('<');
    String attributes = start < 0 ? part.build : part.build.substring(0, start);
    String text =
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<model xmlns=\""
            + CORE
            + '"'
            + declared
            + ' '
            + part.attributes
            + "><resources>\n"
            + part.resources
            + "</resources><build "
            + attributes
            + '>'
            + (start < 0 ? "" : part.build.substring(start))
            + "</build></model>";
    return text.replaceAll("\\{box ([0-9]+)}", "<object id=\"$1\">{mesh}</object>")
        .replace("{mesh}", "<mesh>{hull}</mesh>")
        .replace("{hull}", HULL)
        .replace("{tri}", TRIANGLES);
  }

  private static final String CORE = "http://schemas.microsoft.com/3dmanufacturing/core/2015/02";

  /** Prefixes that every model here declares; production is left out, declaring is using it. */
  private static final String[][] NAMESPACES = {
    {"t", "http://schemas.microsoft.com/3dmanufacturing/trianglesets/2021/07"},
    {"m", "http://schemas.microsoft.com/3dmanufacturing/material/2015/02"},
    {"s", "http://schemas.microsoft.com/3dmanufacturing/slice/2015/07"},
    {"b", "http://schemas.microsoft.com/3dmanufacturing/beamlattice/2017/02"},
    {"bb", "http://schemas.microsoft.com/3dmanufacturing/beamlattice/balls/2020/07"},
    {"bo", "http://schemas.3mf.io/3dmanufacturing/booleanoperations/2023/07"},
    {"d", "http://schemas.3mf.io/3dmanufacturing/displacement/2023/10"},
    {"v", "http://schemas.3mf.io/3dmanufacturing/volumetric/2022/01"},
    {"i", "http://schemas.3mf.io/3dmanufacturing/implicit/2023/12"},
  };

  private String keyStore() {
    return keyStore.replaceFirst(
        "<keystore ",
        "<keystore xmlns=\"http://schemas.microsoft.com/3dmanufacturing/securecontent/2019/04\""
            + " xmlns:e=\"http://www.w3.org/2001/04/xmlenc#\" ");
  }

  private String types() {
    String types =
        "<Types xmlns=\""
            + RELATIONSHIPS
            + "content-types\"><Default Extension=\"rels\""
            + " ContentType=\"application/vnd.openxmlformats-package.relationships+xml\"/>"
            + "<Default Extension=\"png\" ContentType=\"image/png\"/>"
            + "<Default Extension=\"xml\" ContentType=\"text/xml\"/><Default Extension=\"model\""
            + " ContentType=\"application/vnd.ms-package.3dmanufacturing-3dmodel+xml\"/>";
    if (keyStoreTyped && !keyStore.isEmpty()) {
      types +=
          "<Override PartName=\"/Secure/keystore.xml\" ContentType="
              + "\"application/vnd.ms-package.3dmanufacturing-keystore+xml\"/>";
    }
    return types + "</Types>";
  }

  private String relationships(boolean ofPackage) {
    StringBuilder text = new StringBuilder("<Relationships xmlns=\"" + RELATIONSHIPS);
    text.append("relationships\">");
    int id = 0;
    if (ofPackage) {
      text.append(relationship(id++, RelationshipTypes.MODEL, ROOT));
      if (!keyStore.isEmpty()) {
        text.append(relationship(id, RelationshipTypes.KEY_STORE, "/Secure/keystore.xml"));
      }
    } else {
      for (Part part : parts) {
        for (String type : part.relationships) {
          text.append(relationship(id++, type, part.name));
        }
      }
    }
    return text.append("</Relationships>").toString();
  }

  private static String relationship(int id, String type, String target) {
    return "<Relationship Id=\"r" + id + "\" Type=\"" + type + "\" Target=\"" + target + "\"/>";
  }

  @Override
  public String toString() {
    return title + (codes.isEmpty() ? "" : " -> " + String.join(", ", codes));
  }
}

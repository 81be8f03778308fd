package gable.threemf;

import gable.mesh.Aside;
import gable.opc.OpcLimits;
import gable.opc.OpcPackage;
import gable.opc.PackageException;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/** Texts of model parts and packages around them, for tests. */
public final class Models {

  /** Name of the root part in all packages made here. */
  public static final String ROOT = "/3D/3dmodel.model";

  private static final String CORE =
      "xmlns=\"http://schemas.microsoft.com/3dmanufacturing/core/2015/02\"";

  /**
   * A box of 10 by 20 by 30 from the origin; the open sample box of trade practice has its size.
   */
  public static final String BOX_VERTICES =
      "<vertex x=\"0\" y=\"0\" z=\"0\"/><vertex x=\"10\" y=\"0\" z=\"0\"/>"
          + "<vertex x=\"10\" y=\"20\" z=\"0\"/><vertex x=\"0\" y=\"20\" z=\"0\"/>"
          + "<vertex x=\"0\" y=\"0\" z=\"30\"/><vertex x=\"10\" y=\"0\" z=\"30\"/>"
          + "<vertex x=\"10\" y=\"20\" z=\"30\"/><vertex x=\"0\" y=\"20\" z=\"30\"/>";

  private static final int[][] BOX_CORNERS = {
    {3, 2, 1}, {1, 0, 3}, {4, 5, 6}, {6, 7, 4}, {0, 1, 5}, {5, 4, 0},
    {1, 2, 6}, {6, 5, 1}, {2, 3, 7}, {7, 6, 2}, {3, 0, 4}, {4, 7, 3}
  };

  private Models() {}

  /** The triangles of the box, each with the given further attributes. */
  public static String boxTriangles(String attributes) {
    StringBuilder triangles = new StringBuilder();
    for (int[] t : BOX_CORNERS) {
      triangles.append("<triangle v1=\"" + t[0] + "\" v2=\"" + t[1] + "\" v3=\"" + t[2] + '"');
      triangles.append(attributes.isEmpty() ? "" : " " + attributes).append("/>");
    }
    return triangles.toString();
  }

  /** A mesh element. */
  public static String mesh(String vertices, String triangles) {
    return "<mesh><vertices>"
        + vertices
        + "</vertices><triangles>"
        + triangles
        + "</triangles></mesh>";
  }

  /** An object with the box. */
  public static String box(int id) {
    return "<object id=\""
        + id
        + "\" type=\"model\">"
        + mesh(BOX_VERTICES, boxTriangles(""))
        + "</object>";
  }

  /** A model in millimetres. */
  public static String model(String resources, String build) {
    return model("unit=\"millimeter\"", resources, build);
  }

  /** A model with further attributes on its root. */
  public static String model(String attributes, String resources, String build) {
    return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<model "
        + attributes
        + ' '
        + CORE
        + ">\n"
        + "<resources>"
        + resources
        + "</resources>\n<build>"
        + build
        + "</build>\n</model>\n";
  }

  /** A part read alone. */
  public static ModelPart part(String text) throws PackageException {
    return ModelPart.read(
        ROOT,
        text.getBytes(StandardCharsets.UTF_8),
        ModelLimits.USUAL,
        ModelVisitor.NONE,
        Aside.NOBODY);
  }

  /** The model of a package with one model part. */
  public static ModelPackage open(String root) throws PackageException {
    return open(root, Map.of());
  }

  /** The model of a package with a root part and others, which the root is related to. */
  public static ModelPackage open(String root, Map<String, String> others) throws PackageException {
    try (OpcPackage source = OpcPackage.open(zip(root, others), OpcLimits.DEFAULT)) {
      return ModelPackage.read(source, ModelLimits.USUAL);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A package. */
  public static byte[] zip(String root, Map<String, String> others) throws IOException {
    Map<String, String> items = new LinkedHashMap<>();
    items.put(
        "[Content_Types].xml",
        "<Types xmlns=\"http://schemas.openxmlformats.org/package/2006/content-types\">"
            + "<Default Extension=\"rels\" ContentType="
            + "\"application/vnd.openxmlformats-package.relationships+xml\"/>"
            + "<Default Extension=\"model\" ContentType="
            + "\"application/vnd.ms-package.3dmanufacturing-3dmodel+xml\"/></Types>");
    items.put("_rels/.rels", relationships(Map.of(ROOT, "").keySet()));
    items.put("3D/3dmodel.model", root);
    if (!others.isEmpty()) {
      items.put("3D/_rels/3dmodel.model.rels", relationships(others.keySet()));
      others.forEach((name, text) -> items.put(name.substring(1), text));
    }
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
      for (Map.Entry<String, String> item : items.entrySet()) {
        ZipEntry entry = new ZipEntry(item.getKey());
        entry.setTime(0);
        zip.putNextEntry(entry);
        zip.write(item.getValue().getBytes(StandardCharsets.UTF_8));
        zip.closeEntry();
      }
    }
    return bytes.toByteArray();
  }

  private static String relationships(Iterable<String> targets) {
    StringBuilder text = new StringBuilder();
    text.append(
        "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\">");
    int id = 0;
    for (String target : targets) {
      text.append("<Relationship Id=\"rel" + id++ + "\" Target=\"" + target + "\" Type=");
      text.append("\"http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel\"/>");
    }
    return text.append("</Relationships>").toString();
  }
}

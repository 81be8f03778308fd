package gable.pipeline;

import gable.fixture.Fixtures;
import gable.fixture.ModelSketch;
import gable.fixture.PackageSketch;
import gable.opc.RelationshipTypes;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A package with a block that has one bore, dressed in one way or another, and what a run does. */
final class Subject {

  /** The mesh of the block: 20 mm wide, a bore of 8 mm along y. */
  static final String BLOCK = ModelSketch.mesh(Fixtures.block(4));

  static final String ROOT = "3D/3dmodel.model";

  /** Prefixes that may be declared. */
  private static final Map<String, String> NAMESPACES =
      Map.ofEntries(
          Map.entry("m", "http://schemas.microsoft.com/3dmanufacturing/material/2015/02"),
          Map.entry("p", "http://schemas.microsoft.com/3dmanufacturing/production/2015/06"),
          Map.entry(
              "pa", "http://schemas.microsoft.com/3dmanufacturing/production/alternatives/2021/04"),
          Map.entry("s", "http://schemas.microsoft.com/3dmanufacturing/slice/2015/07"),
          Map.entry("b", "http://schemas.microsoft.com/3dmanufacturing/beamlattice/2017/02"),
          Map.entry("t", "http://schemas.microsoft.com/3dmanufacturing/trianglesets/2021/07"),
          Map.entry("bo", "http://schemas.3mf.io/3dmanufacturing/booleanoperations/2023/07"),
          Map.entry("d", "http://schemas.3mf.io/3dmanufacturing/displacement/2023/10"),
          Map.entry("v", "http://schemas.3mf.io/3dmanufacturing/volumetric/2022/01"),
          Map.entry("i", "http://schemas.3mf.io/3dmanufacturing/implicit/2023/12"),
          Map.entry("sc", "http://schemas.microsoft.com/3dmanufacturing/securecontent/2019/04"),
          Map.entry("x", "urn:example:x"));

  private final Map<String, String> items = new LinkedHashMap<>();
  private final List<String> ofPackage = new ArrayList<>();
  private final List<String> ofModel = new ArrayList<>();
  private String types = "";

  private Subject() {
    ofPackage.add(relationship(0, RelationshipTypes.MODEL, "/" + ROOT));
  }

  /** A package whose root model has these resources and one item of object 1. */
  static Subject dressed(String prefixes, String resources) {
    return dressed(prefixes, resources, "<item objectid=\"1\"/>");
  }

  static Subject dressed(String prefixes, String resources, String items) {
    return new Subject().part(ROOT, model(prefixes, resources, items));
  }

  /** The text of a model part; words are prefixes to declare, others are attributes. */
  static String model(String words, String resources, String items) {
    StringBuilder attributes = new StringBuilder();
    for (String word : words.isEmpty() ? new String[0] : words.split(";", -1)) {
      String declared = NAMESPACES.get(word);
      attributes.append(' ');
      attributes.append(declared == null ? word : "xmlns:" + word + "=\"" + declared + '"');
    }
    return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<model"
        + attributes
        + " xmlns=\"http://schemas.microsoft.com/3dmanufacturing/core/2015/02\">\n<resources>\n"
        + resources
        + "\n</resources>\n<build>"
        + items
        + "</build>\n</model>\n";
  }

  /** The block as an object. */
  static String block(int id, String attributes) {
    return object(id, attributes, BLOCK);
  }

  static String object(int id, String attributes, String mesh) {
    return "<object id=\"" + id + "\"" + attributes + ">" + mesh + "</object>";
  }

  /** The block with an element behind its triangles. */
  static String blockWith(int id, String element) {
    return object(id, "", BLOCK.replace("</mesh>", element + "</mesh>"));
  }

  /** The block with attributes on all triangles. */
  static String triangles(String attributes) {
    return BLOCK.replaceAll("(<triangle [^>]*)/>", "$1 " + attributes + "/>");
  }

  Subject part(String name, String text) {
    items.put(name, text);
    return this;
  }

  /** Adds a part that the root model is related to. */
  Subject related(String type, String name, String text) {
    ofModel.add(relationship(ofModel.size(), type, "/" + name));
    return part(name, text);
  }

  /** Adds a part that the package is related to. */
  Subject owned(String type, String name, String text) {
    ofPackage.add(relationship(ofPackage.size(), type, "/" + name));
    return part(name, text);
  }

  /** Adds any relationship of the package. */
  Subject relationship(String entry) {
    ofPackage.add(entry);
    return this;
  }

  /** Adds entries of content types. */
  Subject types(String entries) {
    types += entries;
    return this;
  }

  private static String relationship(int number, String type, String target) {
    return PackageSketch.relationship("r" + number, type, target);
  }

  byte[] bytes() {
    PackageSketch sketch =
        PackageSketch.empty()
            .item("[Content_Types].xml", PackageSketch.types(types))
            .item("_rels/.rels", PackageSketch.relationships(ofPackage.toArray(String[]::new)));
    if (!ofModel.isEmpty()) {
      String relationships = PackageSketch.relationships(ofModel.toArray(String[]::new));
      sketch.item("3D/_rels/3dmodel.model.rels", relationships);
    }
    items.forEach(sketch::item);
    return sketch.bytes();
  }

  SubjectRun run() throws Exception {
    return run(Settings.usual());
  }

  SubjectRun run(Settings settings) throws Exception {
    byte[] input = bytes();
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    Input from = Input.stream("subject", new ByteArrayInputStream(input));
    FileResult result =
        Gable.installed().reshape(from, Output.stream(out), settings, Observer.NONE);
    return new SubjectRun(input, out.toByteArray(), result);
  }
}

package gable.fuzz;

import gable.fixture.Box;
import gable.fixture.HoleBlock;
import gable.fixture.HoleBlock.Ring;
import gable.fixture.MeshSketch;
import gable.fixture.ModelSketch;
import gable.fixture.PackageSketch;
import gable.geom.Affine3;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import java.util.zip.ZipException;

/** The sound packages that mutants are made from. */
final class Seeds {

  /** Larger files are left out: one of them costs as much time as hundreds of small ones. */
  private static final long LARGEST = 40_000;

  /** A sound package. */
  static final class Seed {
    private final String name;
    private final byte[] bytes;
    private final Draft draft;

    Seed(String name, byte[] bytes) throws IOException {
      this.name = name;
      this.bytes = bytes;
      this.draft = Draft.of(bytes);
    }

    String name() {
      return name;
    }

    /** The bytes; not to be changed. */
    byte[] bytes() {
      return bytes;
    }

    /** The same taken apart; may be changed. */
    Draft draft() {
      return new Draft(draft.items());
    }

    boolean hasMesh() {
      return draft.items().stream().anyMatch(Draft.Item::isModel);
    }

    /** Size of what is in it. */
    long size() {
      return draft.items().stream().mapToLong(item -> item.content().length()).sum();
    }
  }

  private Seeds() {}

  /** Packages made here, and all small ones in the given folders, smallest first. */
  static List<Seed> of(List<Path> folders) throws IOException {
    List<Seed> seeds = new ArrayList<>(made());
    for (Path folder : folders) {
      for (Path file : files(folder)) {
        seed(file).filter(seed -> seed.hasMesh() && seed.size() <= LARGEST).ifPresent(seeds::add);
      }
    }
    seeds.sort(Comparator.comparing(Seed::size).thenComparing(Seed::name));
    return seeds;
  }

  /** The package in a file; nothing if it is one of those that cannot be taken apart. */
  private static Optional<Seed> seed(Path file) throws IOException {
    byte[] bytes = Files.readAllBytes(file);
    try {
      return Optional.of(new Seed(file.toString(), bytes));
    } catch (ZipException e) {
      return Optional.empty();
    }
  }

  private static List<Path> files(Path folder) throws IOException {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> all = Files.walk(folder)) {
      return all.filter(file -> file.toString().endsWith(".3mf")).sorted().toList();
    }
  }

  private static List<Seed> made() throws IOException {
    return List.of(
        new Seed("made: box", model(Box.of(0, 0, 0, 3, 2, 1).sketch(), "").packed().bytes()),
        new Seed("made: bored block", model(bored(), "").packed().bytes()),
        new Seed("made: two bored blocks", twice().packed().bytes()),
        new Seed("made: rich", rich()),
        new Seed("made: parts", parts()));
  }

  /** A bore of 12 sides and 6 mm through a block, along y. */
  private static MeshSketch bored() {
    Ring ring = Ring.round(3, 12, 0, 0);
    return HoleBlock.ofHalfWidth(8)
        .ring(ring)
        .ring(ring.at(10))
        .through()
        .placed(new Affine3(1, 0, 0, 0, 0, 1, 0, -1, 0, 0, 10, 8));
  }

  private static ModelSketch model(MeshSketch mesh, String more) {
    return new ModelSketch().resource(more).object(1, "block", mesh).item(1);
  }

  private static ModelSketch twice() {
    return model(bored(), "")
        .resource(
            "<object id=\"2\" type=\"model\"><components><component objectid=\"1\"/>"
                + "<component objectid=\"1\" transform=\"0 1 0 -1 0 0 0 0 1 40 0 0\"/>"
                + "</components></object>")
        .item(2, new Affine3(1, 0, 0, 0, 0, 1, 0, -1, 0, 0, 60, 30));
  }

  /** Properties of all kinds, triangle sets, metadata, another part, a thumbnail. */
  private static byte[] rich() {
    String spaces =
        "unit=\"millimeter\" xmlns:m=\"http://schemas.microsoft.com/3dmanufacturing/material/2015/02\""
            + " xmlns:t=\"http://schemas.microsoft.com/3dmanufacturing/trianglesets/2021/07\""
            + " xmlns:p=\"http://schemas.microsoft.com/3dmanufacturing/production/2015/06\""
            + " requiredextensions=\"m\"";
    String groups =
        "<basematerials id=\"11\"><base name=\"a\" displaycolor=\"#FF0000\"/><base name=\"b\""
            + " displaycolor=\"#00FF00FF\"/></basematerials>"
            + "<m:colorgroup id=\"12\"><m:color color=\"#FF0000\"/><m:color"
            + " color=\"#0000FF80\"/></m:colorgroup>"
            + "<m:compositematerials id=\"13\" matid=\"11\" matindices=\"0 1\"><m:composite"
            + " values=\"0.5 0.5\"/><m:composite values=\"1 0\"/></m:compositematerials>"
            + "<m:multiproperties id=\"14\" pids=\"11 12\"><m:multi pindices=\"0 1\"/><m:multi"
            + " pindices=\"1\"/></m:multiproperties>";
    String text =
        model(bored(), groups)
            .attributes(spaces)
            .metadata("<metadata name=\"Title\" preserve=\"1\">a block</metadata>")
            .text()
            .replace("type=\"model\">", "type=\"model\" pid=\"11\" pindex=\"0\">")
            .replace("v1=\"0\"", "pid=\"12\" p1=\"0\" p2=\"1\" p3=\"1\" v1=\"0\"")
            .replace("v1=\"1\"", "pid=\"14\" p1=\"1\" p2=\"0\" p3=\"0\" v1=\"1\"")
            .replace("v1=\"2\"", "pid=\"13\" p1=\"1\" p2=\"0\" p3=\"1\" v1=\"2\"")
            .replace(
                "</triangles>",
                "</triangles><t:trianglesets><t:triangleset name=\"s\" identifier=\"i\"><t:ref"
                    + " index=\"3\"/><t:refrange startindex=\"5\" endindex=\"30\"/></t:triangleset>"
                    + "</t:trianglesets>");
    return PackageSketch.of(text)
        .item("Metadata/note.txt", "nobody knows this part")
        .item("[Content_Types].xml", PackageSketch.types(TEXT_TYPE))
        .bytes();
  }

  private static final String TEXT_TYPE = "<Default Extension=\"txt\" ContentType=\"text/plain\"/>";

  /** The mesh in a part of its own, with the identities of the production extension. */
  private static byte[] parts() {
    String spaces =
        "unit=\"millimeter\" requiredextensions=\"p\""
            + " xmlns:p=\"http://schemas.microsoft.com/3dmanufacturing/production/2015/06\"";
    String identity = " p:UUID=\"6d1b9a5e-0000-4000-8000-00000000000";
    String root =
        new ModelSketch()
            .attributes(spaces)
            .resource(
                "<object id=\"5\" type=\"model\""
                    + identity
                    + "1\"><components><component objectid=\"1\" p:path=\"/3D/a.model\""
                    + identity
                    + "2\"/></components></object>")
            .item(5)
            .text()
            .replace("<build>", "<build" + identity + "3\">")
            .replace("objectid=\"5\"", "objectid=\"5\"" + identity + "4\"");
    String part =
        new ModelSketch()
            .attributes(spaces)
            .object(1, "block", bored())
            .text()
            .replace("type=\"model\">", "type=\"model\"" + identity + "5\">")
            .replace("<build>", "<build" + identity + "6\">");
    String type = "http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel";
    return PackageSketch.of(root)
        .item("3D/a.model", part)
        .item(
            "3D/_rels/3dmodel.model.rels",
            PackageSketch.relationships(PackageSketch.relationship("r1", type, "/3D/a.model")))
        .bytes();
  }
}

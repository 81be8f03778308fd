package gable.opc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Packages with random faults: whatever stands in the file, opening it, checking all sums and
 * writing it again end in a package exception or in a package that opens again. Nothing else may
 * come out, whatever the fault.
 */
class PackageFuzzTest {

  private static final int ROUNDS = Integer.getInteger("gable.fuzz.rounds", 400);
  private static final long[] TELLING = {0, 1, 0x7F, 0xFF, 0x7FFF, 0xFFFF, 0x7FFFFFFF, 0xFFFFFFFF};

  private static final String TEXTURES =
      Packages.relationships(
          Packages.relationship("t", RelationshipTypes.TEXTURE, "a.png"),
          Packages.relationship("u", RelationshipTypes.THUMBNAIL, "/3D/a.png"));
  private static final String[] PIECES = {
    "/>",
    "<!--",
    "-->",
    "<![CDATA[",
    "&#x0;",
    "&#65;",
    "&a;",
    "<!DOCTYPE a>",
    "<a xmlns=\"\"/>",
    "xmlns:a=\"b\" ",
    "\"",
    "../",
    "%2e%2e/",
    "TargetMode=\"External\" ",
    "</Relationships>",
    "\uFEFF",
    "<?xml version=\"1.1\"?>",
    "<Override PartName=\"/a\" ContentType=\"\"/>"
  };

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void answersEveryFaultWithAPackageExceptionOrASoundPackage(long seed) throws Exception {
    SplittableRandom random = new SplittableRandom(seed);
    List<byte[]> seeds = seeds();
    for (int round = 0; round < ROUNDS; round++) {
      byte[] mutant =
          random.nextBoolean()
              ? mutate(seeds.get(random.nextInt(seeds.size())).clone(), random)
              : packed(random);
      try {
        check(mutant);
      } catch (PackageException e) {
        assertThat(e.problem().sentence()).isNotBlank();
      } catch (Throwable e) {
        Path kept = Path.of("target", "fuzz-" + seed + "-" + round + ".3mf");
        Files.write(kept, mutant);
        fail("the mutant is kept as " + kept, e);
      }
    }
  }

  private static void check(byte[] mutant) throws Exception {
    try (OpcPackage opened = OpcPackage.open(mutant, OpcLimits.DEFAULT)) {
      opened.requireSound();
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      PackageEdit edit =
          PackageEdit.NONE.replace(
              opened.rootModelPart().name(),
              PartContent.of(opened.read(opened.rootModelPart().name())));
      PackageWriter.write(opened, edit, Compression.serial(1), out);
      try (OpcPackage again = OpcPackage.open(out.toByteArray(), OpcLimits.DEFAULT)) {
        again.requireSound();
        assertThat(again.parts()).isEqualTo(opened.parts());
      }
    }
  }

  private static List<byte[]> seeds() {
    List<byte[]> seeds = new ArrayList<>();
    seeds.add(ZipBytes.minimal().bytes());
    ZipBytes wide = ZipBytes.minimal();
    wide.zip64End = true;
    wide.item("3D/3dmodel.model").descriptor = true;
    wide.item("_rels/.rels").stored();
    wide.item("_rels/.rels").descriptor = true;
    wide.item("_rels/.rels").descriptorWide = true;
    wide.item("[Content_Types].xml").stored().extra = ZipBytes.zip64Extra(1, 2, 3);
    wide.comment = new byte[] {'h', 'i'};
    seeds.add(wide.bytes());
    ZipBytes stored = ZipBytes.minimal(); // faults hit the XML of stored items directly
    stored.item("3D/3dmodel.model").stored();
    stored.item("_rels/.rels").stored();
    stored.item("[Content_Types].xml").stored();
    seeds.add(stored.bytes());
    return seeds;
  }

  /** An honest archive around faulty relationships or content types. */
  private static byte[] packed(SplittableRandom random) {
    ZipBytes zip = ZipBytes.minimal();
    zip.add("3D/a.png", "picture");
    zip.add("3D/_rels/3dmodel.model.rels", TEXTURES);
    String[] texts = {"_rels/.rels", "[Content_Types].xml", "3D/_rels/3dmodel.model.rels"};
    String name = texts[random.nextInt(texts.length)];
    byte[] text = mutate(zip.item(name).content.clone(), random);
    if (random.nextBoolean()) {
      String spliced = new String(text, StandardCharsets.UTF_8);
      int at = random.nextInt(spliced.length() + 1);
      String piece = PIECES[random.nextInt(PIECES.length)];
      spliced = spliced.substring(0, at) + piece + spliced.substring(at);
      text = spliced.getBytes(StandardCharsets.UTF_8);
    }
    zip.replace(name, text);
    return zip.bytes();
  }

  private static byte[] mutate(byte[] bytes, SplittableRandom random) {
    byte[] mutant = bytes;
    int faults = 1 + random.nextInt(3);
    for (int i = 0; i < faults && mutant.length > 8; i++) {
      int at = random.nextInt(mutant.length - 8);
      switch (random.nextInt(5)) {
        case 0 -> mutant[at] ^= (byte) (1 << random.nextInt(8));
        case 1 -> put(mutant, at, TELLING[random.nextInt(TELLING.length)], 1 << random.nextInt(4));
        case 2 -> {
          int length = random.nextInt(Math.min(64, mutant.length - at));
          int from = random.nextInt(mutant.length - length);
          System.arraycopy(mutant.clone(), from, mutant, at, length);
        }
        case 3 -> mutant = Arrays.copyOf(mutant, at + 8);
        default -> put(mutant, at, random.nextLong(), 1 << random.nextInt(4));
      }
    }
    return mutant;
  }

  private static void put(byte[] bytes, int at, long value, int count) {
    for (int i = 0; i < count; i++) {
      bytes[at + i] = (byte) (value >> (8 * i));
    }
  }
}

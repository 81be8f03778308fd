package gable.opc;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Archives with one thing wrong each. Rules: ZIP APPNOTE 6.3.10 and ECMA-376 Part 2 (2006), named
 * in each case; where neither speaks, the reaction is our own choice and called so.
 */
class HostileArchiveTest {

  private static final byte[] NOISE = {1, 2, 3, 4, 5, 6, 7, 8, 9};

  @ParameterizedTest(name = "{0}")
  @MethodSource("broken")
  void refusesAnArchiveThatBreaksTheRule(Case broken) {
    broken.checkRefused();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("odd")
  void opensAnArchiveThatIsOddButAllowed(Case odd) throws Exception {
    odd.checkOpens();
  }

  static Stream<Case> broken() {
    return Stream.of(ends(), headers(), names(), data()).flatMap(s -> s);
  }

  private static Stream<Case> ends() {
    return Stream.of(
        raw("3MF Core 1.1: an empty file is no package", new byte[0], "zip-none"),
        raw(
            "3MF Core 1.1: text is no package",
            "solid cube".getBytes(StandardCharsets.UTF_8),
            "zip-none"),
        raw(
            "APPNOTE 4.3.16: cut in the middle",
            cut(ZipBytes.minimal().bytes(), 300),
            "zip-truncated"),
        raw(
            "APPNOTE 4.3.16: last byte missing",
            cut(ZipBytes.minimal().bytes(), -1),
            "zip-truncated"),
        raw(
            "own choice: bytes behind the end record",
            Packages.join(ZipBytes.minimal().bytes(), NOISE),
            "zip-truncated"),
        archive(
            "APPNOTE 4.3.1: an end record inside the comment of another",
            zip -> zip.comment = endRecord(),
            "zip-several-ends"),
        raw(
            "APPNOTE 4.4.24: archive moved by a prefix without its offsets",
            Packages.join(NOISE, ZipBytes.minimal().bytes()),
            "zip-item-outside"),
        archive(
            "APPNOTE 4.4.24: directory said to start later",
            zip -> zip.offsetShift = 7,
            "zip-item-outside"),
        archive(
            "APPNOTE 4.4.23: directory said to be longer",
            zip -> zip.sizeShift = 1,
            "zip-item-outside"),
        archive(
            "APPNOTE 4.4.22: more items claimed than listed",
            zip -> zip.itemsShift = 1,
            "zip-damaged"),
        archive(
            "APPNOTE 4.4.22: fewer items claimed than listed",
            zip -> zip.itemsShift = -1,
            "zip-damaged"),
        archive("OPC Annex C: one volume of several", zip -> zip.disk = 1, "zip-multi-disk"),
        archive(
            "OPC Annex C: an item in another volume", zip -> model(zip).disk = 2, "zip-multi-disk"),
        archive(
            "APPNOTE 4.3.15: ZIP64 locator points into the directory",
            zip -> {
              zip.zip64End = true;
              zip.zip64OffsetShift = -3;
            },
            "zip-bad-zip64"),
        archive(
            "APPNOTE 4.3.15: ZIP64 locator points behind itself",
            zip -> {
              zip.zip64End = true;
              zip.zip64OffsetShift = 1L << 40;
            },
            "zip-bad-zip64"),
        archive(
            "APPNOTE 4.3.14: the two end records count differently",
            zip -> {
              zip.zip64End = true;
              zip.zip64ItemsShift = 1;
            },
            "zip-bad-zip64"),
        raw(
            "APPNOTE 4.4.1.4: sizes of 0xFFFFFFFF without a ZIP64 end record",
            escapedEnd(),
            "zip-bad-zip64"));
  }

  private static Stream<Case> headers() {
    return Stream.of(
        archive(
            "OPC [M3.14]: local header with another name",
            zip -> model(zip).localName = "3D/3dmodel.MODEL".getBytes(StandardCharsets.UTF_8),
            "zip-headers-disagree"),
        archive(
            "OPC [M3.14]: local header with another method",
            zip -> model(zip).localMethod = 0,
            "zip-headers-disagree"),
        archive(
            "OPC [M3.14]: local header with other flags",
            zip -> model(zip).localFlags = 2,
            "zip-headers-disagree"),
        archive(
            "OPC [M3.14]: local header with another checksum",
            zip -> model(zip).localSum = 1,
            "zip-headers-disagree"),
        archive(
            "OPC [M3.14]: local header with another size",
            zip -> model(zip).localSize = 5,
            "zip-headers-disagree"),
        archive(
            "OPC [M3.14]: local header with another deflated size",
            zip -> model(zip).localStored = 5,
            "zip-headers-disagree"),
        archive(
            "OPC [M3.14]: descriptor with another checksum",
            zip -> {
              model(zip).descriptor = true;
              model(zip).descriptorSum = 7;
            },
            "zip-headers-disagree"),
        archive(
            "APPNOTE 4.4.16: local header said to be behind the file",
            zip -> model(zip).offsetField = 1 << 30,
            "zip-item-outside"),
        archive(
            "APPNOTE 4.4.16: no local header where the directory points",
            zip -> model(zip).offsetField = 11,
            "zip-items-overlap"),
        archive(
            "APPNOTE 4.4.16: no local header where the directory points",
            zip -> {
              zip.before = new byte[64];
              model(zip).offsetField = 0;
            },
            "zip-headers-disagree"),
        archive(
            "APPNOTE 4.3.6: two directory records for one local header",
            zip -> model(zip).offsetField = 0,
            "zip-items-overlap"),
        archive(
            "APPNOTE 4.4.8: data said to reach into the next item",
            zip -> {
              zip.item("_rels/.rels").storedField = 4000;
              zip.item("_rels/.rels").localStoredField = 4000;
            },
            "zip-items-overlap"),
        archive(
            "APPNOTE 4.5.3: a ZIP64 field too short for what it must hold",
            zip -> {
              model(zip).sizeField = 0xFFFFFFFFL;
              model(zip).extra = ZipBytes.extra(1, new byte[4]);
            },
            "zip-damaged"),
        archive(
            "APPNOTE 4.5.3: local sizes of 0xFFFFFFFF without a ZIP64 field",
            zip -> model(zip).localSizeField = 0xFFFFFFFFL,
            "zip-bad-zip64"),
        archive(
            "APPNOTE 4.5.3: sizes of 0xFFFFFFFF without a ZIP64 field",
            zip -> {
              model(zip).sizeField = 0xFFFFFFFFL;
              model(zip).localSizeField = 0xFFFFFFFFL;
            },
            "zip-bad-zip64"),
        archive("OPC [M3.9]: encrypted", zip -> model(zip).flags = 1, "zip-encrypted"),
        archive("OPC [M3.9]: strongly encrypted", zip -> model(zip).flags = 64, "zip-encrypted"),
        archive("OPC [M3.9]: headers masked", zip -> model(zip).flags = 1 << 13, "zip-encrypted"),
        archive("3MF Core 1.1: packed with Deflate64", zip -> model(zip).method = 9, "zip-method"),
        archive("3MF Core 1.1: packed with LZMA", zip -> model(zip).method = 14, "zip-method"));
  }

  private static Stream<Case> names() {
    return Stream.of(
        archive(
            "OPC [M3.3]: two items with one name",
            zip -> zip.add("3D/3dmodel.model", "x"),
            "zip-duplicate-name"),
        archive(
            "OPC [M1.12]: two items whose names differ by case",
            zip -> zip.add("3d/3DModel.model", "x"),
            "opc-equal-names"),
        archive(
            "OPC [M1.12]: two items whose names differ by escapes",
            zip -> zip.add("%33D/3dmodel.model", "x"),
            "opc-equal-names"),
        archive(
            "OPC [M1.11]: a part inside a part",
            zip -> zip.add("3D/3dmodel.model/more.model", "x"),
            "opc-nested-names"),
        archive(
            "OPC 9.1.4: a part in pieces, not supported by choice",
            zip -> zip.add("3D/big.model/[0].piece", "x"),
            "opc-pieces"),
        archive(
            "own choice: a name that leads out of the folder",
            zip -> zip.add("../../evil.model", "x"),
            "zip-item-name"),
        archive(
            "own choice: a name with a backslash",
            zip -> zip.add("3D\\evil.model", "x"),
            "zip-item-name"),
        archive(
            "own choice: a name with a NUL", zip -> zip.add("3D/a\0.model", "x"), "zip-item-name"),
        archive("own choice: no name", zip -> zip.add("", "x"), "zip-item-name"),
        archive(
            "limit archive.nameBytes", zip -> zip.add("a".repeat(1025), "x"), "limit-name-bytes"),
        archive(
            "APPNOTE 4.4.4: a name marked UTF-8 that is not",
            zip -> {
              ZipBytes.Item item = zip.add("x", "x");
              item.name = new byte[] {'3', (byte) 0xFC};
              item.flags = 1 << 11;
            },
            "zip-item-name"),
        archive(
            "APPNOTE 4.6.9: an extra field with another name",
            zip -> model(zip).extra = unicodePath("3D/3dmodel.model", "3D/other.model"),
            "zip-headers-disagree"));
  }

  private static Stream<Case> data() {
    byte[] noise = new byte[64];
    Arrays.fill(noise, (byte) 0xFF);
    return Stream.of(
        archive(
            "APPNOTE 4.4.7: wrong checksum",
            zip -> model(zip).sum = 0x12345678,
            "zip-wrong-checksum"),
        archive(
            "APPNOTE 4.4.9: more bytes than promised",
            zip -> model(zip).size -= 1,
            "zip-wrong-size"),
        archive(
            "APPNOTE 4.4.9: fewer bytes than promised",
            zip -> model(zip).size += 1,
            "zip-wrong-size"),
        archive(
            "APPNOTE 4.4.9: stored with two sizes",
            zip -> model(zip).stored().size += 1,
            "zip-wrong-size"),
        archive("RFC 1951: not Deflate", zip -> model(zip).packed = noise, "zip-bad-data"),
        archive(
            "RFC 1951: Deflate data cut short",
            zip -> model(zip).packed = cut(model(zip).packed, -4),
            "zip-bad-data"),
        archive(
            "RFC 1951: bytes behind the last block",
            zip -> model(zip).packed = Packages.join(model(zip).packed, NOISE),
            "zip-bad-data"),
        archive(
            "limit inflation.ratio: 64 MiB of zeros",
            zip -> zip.add("3D/bomb.model", new byte[64 << 20]),
            "limit-ratio"),
        archive(
            "limit inflation.totalBytes: 9 GiB promised",
            zip -> {
              for (int i = 0; i < 3; i++) {
                zip.add("3D/" + i + ".model", "x").size = 3L << 30;
              }
            },
            "limit-total-bytes"),
        archive(
            "limit archive.items",
            zip -> {
              for (int i = 0; i < 10_000; i++) {
                zip.add("3D/" + i + ".model", "x");
              }
            },
            "limit-items"));
  }

  static Stream<Case> odd() {
    return Stream.of(
        archive("3MF Core 1.1: plain", zip -> {}, ""),
        archive("3MF Core 1.1: stored", zip -> model(zip).stored(), ""),
        archive("3MF Core 1.1: ZIP64 end record", zip -> zip.zip64End = true, ""),
        archive("APPNOTE 4.5.3: ZIP64 sizes without need", HostileArchiveTest::wide, ""),
        archive("APPNOTE 4.3.9: descriptor", zip -> model(zip).descriptor = true, ""),
        archive(
            "APPNOTE 4.3.9.3: descriptor without signature",
            zip -> {
              model(zip).descriptor = true;
              model(zip).descriptorSigned = false;
            },
            ""),
        archive(
            "APPNOTE 4.3.9.2: descriptor with 64-bit sizes",
            zip -> {
              model(zip).descriptor = true;
              model(zip).descriptorWide = true;
            },
            ""),
        archive("OPC [M3.13]: folders are no parts", zip -> zip.add("3D/", ""), ""),
        archive(
            "APPNOTE 4.4.26: comment at the end of the file",
            zip -> zip.comment = "made by hand".getBytes(StandardCharsets.UTF_8),
            ""),
        archive(
            "own choice: bytes before the first item",
            zip -> zip.before = NOISE,
            "zip-stray-bytes"),
        archive(
            "own choice: bytes between two items",
            zip -> zip.item("_rels/.rels").after = NOISE,
            "zip-stray-bytes"),
        archive(
            "APPNOTE 4.6.9: an extra field with the same name",
            zip -> model(zip).extra = unicodePath("3D/3dmodel.model", "3D/3dmodel.model"),
            ""));
  }

  /** The model's sizes and offset in a ZIP64 field, as if they were large. */
  private static void wide(ZipBytes zip) {
    zip.bytes(); // so that the offset is known
    ZipBytes.Item item = model(zip);
    item.sizeField = 0xFFFFFFFFL;
    item.storedField = 0xFFFFFFFFL;
    item.offsetField = 0xFFFFFFFFL;
    item.extra = ZipBytes.zip64Extra(item.size, item.packed.length, item.offset);
    item.localSizeField = 0xFFFFFFFFL;
    item.localStoredField = 0xFFFFFFFFL;
    item.localExtra = ZipBytes.zip64Extra(item.size, item.packed.length);
    zip.bytes();
    item.extra = ZipBytes.zip64Extra(item.size, item.packed.length, item.offset);
  }

  private static ZipBytes.Item model(ZipBytes zip) {
    return zip.item("3D/3dmodel.model");
  }

  private static Case archive(String rule, Consumer<ZipBytes> fault, String code) {
    return new Case(
        rule,
        () -> {
          ZipBytes zip = ZipBytes.minimal();
          fault.accept(zip);
          return zip.bytes();
        },
        code);
  }

  private static Case raw(String rule, byte[] bytes, String code) {
    return new Case(rule, () -> bytes, code);
  }

  /** An end record of an empty archive: 22 bytes. */
  private static byte[] endRecord() {
    return new ZipBytes().bytes();
  }

  private static byte[] escapedEnd() {
    byte[] bytes = ZipBytes.minimal().bytes();
    Arrays.fill(bytes, bytes.length - 10, bytes.length - 2, (byte) 0xFF); // size and offset
    return bytes;
  }

  /** An Info-ZIP Unicode path field: version, CRC-32 of the plain name, the name. */
  private static byte[] unicodePath(String plain, String name) {
    java.util.zip.CRC32 sum = new java.util.zip.CRC32();
    sum.update(plain.getBytes(StandardCharsets.UTF_8));
    byte[] head = {
      1,
      (byte) sum.getValue(),
      (byte) (sum.getValue() >> 8),
      (byte) (sum.getValue() >> 16),
      (byte) (sum.getValue() >> 24)
    };
    return ZipBytes.extra(0x7075, Packages.join(head, name.getBytes(StandardCharsets.UTF_8)));
  }

  /** The first {@code count} bytes; a negative count leaves so many out at the end. */
  private static byte[] cut(byte[] bytes, int count) {
    return Arrays.copyOf(bytes, count < 0 ? bytes.length + count : count);
  }
}

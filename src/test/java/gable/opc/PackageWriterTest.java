package gable.opc;

import static gable.opc.Packages.relationship;
import static gable.opc.Packages.relationships;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.junit.jupiter.api.Test;

/**
 * What is written is read back in two ways that know nothing of ours: the JDK's streaming reader
 * goes from local header to local header, and {@link #open} compares those with the directory.
 */
class PackageWriterTest {

  private static final Compression SERIAL = Compression.serial(6);
  private static final String MODEL = "/3D/3dmodel.model";
  private static final PartContent SMALL = content("<model/>");

  @Test
  void givesTheInputBackWhenNothingChanges() throws Exception {
    byte[] input = rich().bytes();
    assertThat(write(input, PackageEdit.NONE)).isEqualTo(input);
  }

  @Test
  void replacesTheBytesOfAPartAndLeavesTheRest() throws Exception {
    byte[] input = rich().bytes();
    byte[] output = write(input, PackageEdit.NONE.replace(MODEL, SMALL));
    Map<String, String> expected = unzip(input);
    expected.put("3D/3dmodel.model", "<model/>");
    assertThat(unzip(output)).containsExactlyEntriesOf(expected);
  }

  @Test
  void writesWhatAnHonestWriterWouldHaveWrittenByteForByte() throws Exception {
    ZipBytes expected = rich();
    ZipBytes.Item model = expected.item("3D/3dmodel.model");
    byte[] bytes = "<model/>".getBytes(StandardCharsets.UTF_8);
    ZipBytes honest = rich();
    honest.replace("3D/3dmodel.model", bytes);
    assertThat(model.content).isNotEqualTo(bytes);
    byte[] output = write(expected.bytes(), PackageEdit.NONE.replace(MODEL, SMALL));
    assertThat(output).isEqualTo(honest.bytes());
  }

  @Test
  void keepsAnItemStoredThatWasStored() throws Exception {
    ZipBytes zip = ZipBytes.minimal();
    zip.item("3D/3dmodel.model").stored();
    byte[] output = write(zip.bytes(), PackageEdit.NONE.replace(MODEL, SMALL));
    ZipBytes honest = ZipBytes.minimal();
    honest.replace("3D/3dmodel.model", "<model/>".getBytes(StandardCharsets.UTF_8));
    honest.item("3D/3dmodel.model").stored();
    assertThat(output).isEqualTo(honest.bytes());
  }

  @Test
  void copiesStrayBytesCommentsDescriptorsAndZip64FieldsOfItemsThatStay() throws Exception {
    ZipBytes zip = rich();
    zip.before = new byte[] {1, 2, 3};
    zip.add("3D/last.model", "behind the model").after = new byte[] {4, 5, 6};
    zip.bytes(); // so that the offsets are known
    ZipBytes.Item last = zip.item("3D/last.model");
    last.descriptor = true;
    last.descriptorWide = true;
    last.localExtra = ZipBytes.zip64Extra(0, 0);
    zip.bytes();
    last.offsetField = 0xFFFFFFFFL;
    last.extra = ZipBytes.zip64Extra(last.offset);
    byte[] input = zip.bytes();
    byte[] output = write(input, PackageEdit.NONE.replace(MODEL, SMALL));
    assertThat(output).startsWith(1, 2, 3);
    assertThat(open(output).read("/3D/last.model")).asString().isEqualTo("behind the model");
    int from = (int) last.offset;
    int length = 30 + last.name.length + 20 + last.packed.length + 24 + 3;
    byte[] kept = Arrays.copyOfRange(input, from, from + length);
    assertThat(new String(output, StandardCharsets.ISO_8859_1))
        .contains(new String(kept, StandardCharsets.ISO_8859_1));
  }

  @Test
  void movesAnOffsetThatIsWrittenTwice() throws Exception {
    ZipBytes zip = rich();
    zip.add("3D/last.model", "behind the model");
    zip.bytes();
    ZipBytes.Item last = zip.item("3D/last.model");
    last.extra = ZipBytes.zip64Extra(last.size, last.packed.length, last.offset);
    byte[] output = write(zip.bytes(), PackageEdit.NONE.replace(MODEL, SMALL));
    try (OpcPackage opened = open(output)) {
      ZipItem item = opened.contents().item("/3D/last.model");
      byte[] record = new byte[(int) item.record().length()];
      opened.archive().file().read(item.record().from(), record, record.length);
      byte[] extra = ZipBytes.zip64Extra(last.size, last.packed.length, item.whole().from());
      assertThat(Arrays.copyOfRange(record, record.length - extra.length, record.length))
          .isEqualTo(extra);
    }
  }

  @Test
  void dropsTheDescriptorAndTheZip64FieldOfAChangedItem() throws Exception {
    ZipBytes zip = ZipBytes.minimal();
    ZipBytes.Item model = zip.item("3D/3dmodel.model");
    byte[] other = ZipBytes.extra(0x5455, new byte[] {1, 2, 3, 4, 5});
    model.descriptor = true;
    model.localExtra = Packages.join(ZipBytes.zip64Extra(0, 0), other);
    model.extra = other;
    byte[] output = write(zip.bytes(), PackageEdit.NONE.replace(MODEL, SMALL));
    ZipBytes honest = ZipBytes.minimal();
    honest.replace("3D/3dmodel.model", "<model/>".getBytes(StandardCharsets.UTF_8));
    honest.item("3D/3dmodel.model").localExtra = other;
    honest.item("3D/3dmodel.model").extra = other;
    assertThat(output).isEqualTo(honest.bytes());
  }

  @Test
  void addsAPartWithItsTypeAndRelationship() throws Exception {
    byte[] input = ZipBytes.minimal().bytes();
    PackageEdit edit =
        PackageEdit.NONE
            .add("/3D/note.txt", "text/plain", content("a note"))
            .relate(MODEL, "http://example.org/note", "/3D/note.txt")
            .relate("/", "http://example.org/note", "/3D/note.txt");
    try (OpcPackage opened = open(write(input, edit))) {
      assertThat(opened.read("/3D/note.txt")).asString().isEqualTo("a note");
      assertThat(opened.part("/3D/note.txt").orElseThrow().contentType()).isEqualTo("text/plain");
      assertThat(opened.relationships(MODEL)).extracting(Relationship::id).containsExactly("rel0");
      assertThat(opened.relationships()).extracting(Relationship::id).contains("rel1");
      assertThat(opened.problems()).isEmpty();
    }
  }

  @Test
  void changesNothingInTheTextOfRelationshipsButWhatIsAdded() throws Exception {
    String text =
        "\uFEFF<?xml version='1.0'?><!-- Größe -->\r\n<p:Relationships xmlns:p=\""
            + Bound.RELATIONSHIPS
            + "\"><p:Relationship Target='/3D/3dmodel.model' Id=\"rel0\"\r\n Type='"
            + RelationshipTypes.MODEL
            + "' ></p:Relationship><!-- ü --></p:Relationships >\r\n<!-- end -->";
    ZipBytes zip = ZipBytes.minimal();
    zip.replace("_rels/.rels", text.getBytes(StandardCharsets.UTF_8));
    byte[] output =
        write(zip.bytes(), PackageEdit.NONE.relate("/", "http://example.org/a&b", MODEL));
    String added =
        "<p:Relationship Target=\"/3D/3dmodel.model\" Id=\"rel1\""
            + " Type=\"http://example.org/a&amp;b\"/>";
    assertThat(unzip(output))
        .containsEntry(
            "_rels/.rels", text.replace("</p:Relationships", added + "</p:Relationships"));
  }

  @Test
  void opensUpAnEmptyRootElementToPutARelationshipIn() throws Exception {
    ZipBytes zip = ZipBytes.minimal();
    String empty = "<Relationships xmlns=\"" + Bound.RELATIONSHIPS + "\" />";
    zip.add("3D/_rels/3dmodel.model.rels", empty);
    byte[] output = write(zip.bytes(), PackageEdit.NONE.relate(MODEL, "u:t", MODEL));
    assertThat(unzip(output).get("3D/_rels/3dmodel.model.rels"))
        .isEqualTo(
            empty.replace(
                "/>",
                "><Relationship Target=\"/3D/3dmodel.model\" Id=\"rel0\" Type=\"u:t\"/>"
                    + "</Relationships>"));
  }

  @Test
  void keepsRelationshipsInUtf16() throws Exception {
    String text = "\uFEFF" + Packages.ROOT_RELATIONSHIPS.replace("UTF-8", "UTF-16");
    ZipBytes zip = ZipBytes.minimal();
    zip.replace("_rels/.rels", text.getBytes(StandardCharsets.UTF_16LE));
    byte[] output = write(zip.bytes(), PackageEdit.NONE.relate("/", "u:t", MODEL));
    try (OpcPackage opened = open(output)) {
      ZipItem item = opened.contents().item("/_rels/.rels");
      byte[] bytes = opened.archive().bytes(item, 1 << 20, ZipRules.BIG_XML);
      String read = new String(bytes, StandardCharsets.UTF_16LE);
      assertThat(read).startsWith(text.substring(0, text.indexOf("</Rel"))).contains("u:t");
      assertThat(opened.relationships()).hasSize(2);
    }
  }

  @Test
  void dropsAPartWithEverythingThatSpeaksOfIt() throws Exception {
    ZipBytes zip = rich();
    zip.add("3D/a.png", "picture");
    zip.add("3D/_rels/a.png.rels", relationships(relationship("x", "u:t", "/3D/3dmodel.model")));
    zip.add(
        "3D/_rels/3dmodel.model.rels",
        relationships(
            relationship("t1", RelationshipTypes.TEXTURE, "a.png"),
            relationship("t2", "u:t", "/3D/3dmodel.model"),
            relationship("t3", "u:u", "/3D/A.PNG")));
    String types = Packages.TYPES;
    String override = "<Override PartName=\"/3D/a.png\" ContentType=\"image/png\"/>";
    zip.replace(
        "[Content_Types].xml",
        types.replace("</Types>", override + "</Types>").getBytes(StandardCharsets.UTF_8));
    Map<String, String> items = unzip(write(zip.bytes(), PackageEdit.NONE.drop("/3D/a.png")));
    assertThat(items.keySet()).noneMatch(name -> name.contains("a.png"));
    assertThat(items).containsEntry("[Content_Types].xml", types);
    assertThat(items)
        .containsEntry(
            "3D/_rels/3dmodel.model.rels",
            relationships(relationship("t2", "u:t", "/3D/3dmodel.model")));
  }

  @Test
  void refusesEditsThatDoNotFitThePackage() {
    byte[] input = rich().bytes();
    checkMisfit(input, PackageEdit.NONE.replace("/3D/other.model", SMALL));
    checkMisfit(input, PackageEdit.NONE.add(MODEL, "text/plain", SMALL));
    checkMisfit(input, PackageEdit.NONE.add("/3d/3DMODEL.model", "text/plain", SMALL));
    checkMisfit(input, PackageEdit.NONE.drop(MODEL));
    checkMisfit(input, PackageEdit.NONE.drop("/nothing"));
    checkMisfit(input, PackageEdit.NONE.relate(MODEL, "u:t", "/nothing"));
    checkMisfit(input, PackageEdit.NONE.relate("/nothing", "u:t", MODEL));
    assertThatThrownBy(() -> PackageEdit.NONE.add("3D/a.model", "text/plain", SMALL))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("3D/a.model");
  }

  @Test
  void neverPassesADamagedItemOn() {
    ZipBytes zip = rich();
    zip.item("Metadata/größe.txt").sum = 1;
    byte[] input = zip.bytes();
    assertThatThrownBy(() -> write(input, PackageEdit.NONE.replace(MODEL, SMALL)))
        .isInstanceOfSatisfying(
            PackageException.class,
            e -> assertThat(e.problem().code()).isEqualTo("zip-wrong-checksum"));
    assertThatThrownBy(() -> write(input, PackageEdit.NONE)).isInstanceOf(PackageException.class);
  }

  @Test
  void tellsAnOutputThatFailsFromAPackageThatCannotBeRead() throws Exception {
    OutputStream full =
        new OutputStream() {
          @Override
          public void write(int value) throws IOException {
            throw new IOException("No space left on device");
          }
        };
    try (OpcPackage source = open(rich().bytes())) {
      for (PackageEdit edit :
          new PackageEdit[] {PackageEdit.NONE, PackageEdit.NONE.replace(MODEL, SMALL)}) {
        assertThatThrownBy(() -> PackageWriter.write(source, edit, SERIAL, full))
            .isInstanceOfSatisfying(
                WriteException.class,
                e ->
                    assertThat(e.problem().sentence())
                        .contains("No space left on device", "output"));
      }
    }
  }

  private static void checkMisfit(byte[] input, PackageEdit edit) {
    assertThatThrownBy(() -> write(input, edit)).isInstanceOf(IllegalArgumentException.class);
  }

  /** Folders, comments, extra fields, a name beyond ASCII and an end comment. */
  private static ZipBytes rich() {
    ZipBytes zip = new ZipBytes();
    zip.add("[Content_Types].xml", Packages.TYPES);
    zip.add("3D/", "").stored();
    zip.item("3D/").extra = ZipBytes.extra(0x000A, new byte[32]);
    zip.add("_rels/.rels", Packages.ROOT_RELATIONSHIPS).comment = new byte[] {'h', 'i'};
    zip.add("3D/3dmodel.model", Packages.MODEL);
    zip.item("3D/3dmodel.model").comment = new byte[] {'m'};
    zip.add("Metadata/größe.txt", "12 mm").flags = 1 << 11;
    zip.comment = "packed by hand".getBytes(StandardCharsets.UTF_8);
    return zip;
  }

  private static PartContent content(String text) {
    return PartContent.of(text.getBytes(StandardCharsets.UTF_8));
  }

  private static OpcPackage open(byte[] bytes) throws PackageException {
    return OpcPackage.open(bytes, OpcLimits.DEFAULT);
  }

  private static byte[] write(byte[] input, PackageEdit edit) throws Exception {
    try (OpcPackage source = open(input)) {
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      PackageWriter.write(source, edit, SERIAL, out);
      try (OpcPackage again = open(out.toByteArray())) {
        again.requireSound();
      }
      return out.toByteArray();
    }
  }

  private static Map<String, String> unzip(byte[] zip) throws IOException {
    Map<String, String> contents = new LinkedHashMap<>();
    try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(zip))) {
      for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
        contents.put(entry.getName(), new String(in.readAllBytes(), StandardCharsets.UTF_8));
      }
    }
    return contents;
  }
}

package gable.pipeline;

import static gable.pipeline.Subject.BLOCK;
import static gable.pipeline.Subject.ROOT;
import static gable.pipeline.Subject.block;
import static gable.pipeline.Subject.dressed;
import static gable.pipeline.Subject.model;
import static gable.pipeline.Subject.object;
import static gable.pipeline.Texts.HALF_RED;
import static gable.pipeline.Texts.TETRAHEDRON;
import static gable.pipeline.Texts.all;
import static gable.pipeline.Texts.scaled;
import static org.assertj.core.api.Assertions.assertThat;

import gable.opc.RelationshipTypes;
import gable.pipeline.Settings.MixedOrientation;
import gable.pipeline.Settings.UnknownParts;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/**
 * What an editor of meshes owes to the package around the mesh: one case or more for each rule,
 * through the whole program. C core 1.4, M materials and properties, P production, S slices, B beam
 * lattice, BO booleans, D displacement, V volumetric, SC secure content, OPC the packaging
 * conventions, first edition. What the texts leave open is a decision of this project.
 */
class PackageDutiesTest {

  @Test
  @DisplayName("C 3.4.1, 4: metadata, part number, name and type of a changed object stay")
  void keepsWhatAnObjectSaysOfItself() throws Exception {
    String said = " name=\"a &lt; b\" partnumber=\"77\" type=\"model\"";
    String group =
        "<metadatagroup><metadata name=\"Title\" preserve=\"1\">T</metadata></metadatagroup>";
    SubjectRun run = dressed("", object(1, said, group + BLOCK)).run().changed();
    assertThat(run.after(ROOT)).contains(said, group);
  }

  @Test
  @DisplayName("P 4: changed objects and what shows them get new UUIDs, made from the change")
  void renewsUuids() throws Exception {
    String[] old = new String[5];
    for (int k = 0; k < old.length; k++) {
      old[k] = " p:UUID=\"00000000-0000-4000-8000-00000000000" + k + '"';
    }
    String items = "<item objectid=\"1\"" + old[2] + "/><item objectid=\"2\"" + old[3] + "/>";
    Subject subject = dressed("p", block(1, old[0]) + object(2, old[1], TETRAHEDRON), items);
    subject.part(ROOT, subject.run().before(ROOT).replace("<build>", "<build" + old[4] + ">"));
    SubjectRun run = subject.run().changed();
    assertThat(run.after(ROOT)).contains(old[1], old[3]).doesNotContain(old[0], old[2], old[4]);
    assertThat(all("p:UUID=\"([a-f0-9-]{36})\"", run.after(ROOT)))
        .hasSize(5)
        .doesNotHaveDuplicates();
    assertThat(subject.run().output()).isEqualTo(run.output());
  }

  @Test
  @DisplayName("P 2, 3: an object of another part is changed there, and only there")
  void changesTheObjectInItsPart() throws Exception {
    String child = model("", block(1, "") + object(2, "", TETRAHEDRON), "");
    SubjectRun run =
        dressed(
                "p;requiredextensions=\"p\"",
                "",
                "<item objectid=\"1\" p:path=\"/3D/a.model\"/>"
                    + "<item objectid=\"1\" p:path=\"/3D/b.model\""
                    + " transform=\"1 0 0 0 1 0 0 0 1 40 0 0\"/>")
            .related(RelationshipTypes.MODEL, "3D/a.model", child)
            .related(
                RelationshipTypes.MODEL, "3D/b.model", model("", object(1, "", TETRAHEDRON), ""))
            .run()
            .changed()
            .keepsAllBut("3D/a.model");
    assertThat(run.after("3D/a.model")).isNotEqualTo(child).contains(object(2, "", TETRAHEDRON));
  }

  @Test
  @DisplayName("C 3.4: a part in another unit than the root is measured and written in its own")
  void measuresEachPartInItsUnit() throws Exception {
    String child = model("unit=\"centimeter\"", object(1, "", scaled(BLOCK, 0.1)), "");
    SubjectRun run =
        dressed(
                "p;unit=\"millimeter\";requiredextensions=\"p\"",
                "",
                "<item objectid=\"1\" p:path=\"/3D/a.model\"/>")
            .related(RelationshipTypes.MODEL, "3D/a.model", child)
            .run()
            .changed();
    for (String z : all("z=\"([^\"]*)\"", run.after("3D/a.model"))) {
      assertThat(Double.parseDouble(z)).isBetween(0.0, 2.0);
    }
  }

  @Test
  @DisplayName(
      "C 4.2, 4: a use that lies otherwise gets a clone behind the original, with all it has")
  void clonesWhereUsesDiffer() throws Exception {
    String said = " name=\"n\" partnumber=\"7\" type=\"model\" pid=\"5\" pindex=\"0\" x:own=\"1\"";
    String group = "<metadatagroup><metadata name=\"Title\">T</metadata></metadatagroup>";
    String onItsSide = " transform=\"0 0 1 0 1 0 -1 0 0 60 0 0\"";
    SubjectRun run =
        dressed(
                "m;x",
                HALF_RED + object(1, said, group + BLOCK) + object(8, "", TETRAHEDRON),
                "<item objectid=\"1\"/><item objectid=\"1\"" + onItsSide + "/>")
            .run()
            .changed();
    String after = run.after(ROOT);
    assertThat(run.codes()).contains("object-cloned");
    assertThat(all("<object id=\"([0-9]+)\"", after)).containsExactly("1", "9", "8");
    assertThat(after).contains("<object id=\"9\"" + said + ">" + group);
    assertThat(after).contains("<item objectid=\"1\"/><item objectid=\"9\"" + onItsSide + "/>");
  }

  @Test
  @DisplayName(
      "Decision on C 4.2: an object that lies several ways up is left where that is wished")
  void leavesWhatLiesSeveralWaysUp() throws Exception {
    Settings settings = Settings.usual().withMixedOrientation(MixedOrientation.LEAVE);
    dressed(
            "",
            block(1, ""),
            "<item objectid=\"1\"/>"
                + "<item objectid=\"1\" transform=\"0 0 1 0 1 0 -1 0 0 60 0 0\"/>")
        .run(settings)
        .left("mixed-orientation");
  }

  @Test
  @DisplayName("C 3.4.3: what the build does not reach is not changed")
  void leavesWhatIsNotBuilt() throws Exception {
    SubjectRun run = dressed("", block(2, "") + block(1, "")).run().changed();
    assertThat(run.after(ROOT)).contains(block(2, ""));
  }

  @Test
  @DisplayName("C 2.1.3: pictures show the old model: kept, and said")
  void keepsPicturesAndSaysThatTheyAreOld() throws Exception {
    SubjectRun run =
        dressed("", block(1, " thumbnail=\"/3D/o.png\""))
            .types("<Default Extension=\"png\" ContentType=\"image/png\"/>")
            .owned(RelationshipTypes.THUMBNAIL, "Metadata/t.png", "picture")
            .related(RelationshipTypes.THUMBNAIL, "3D/o.png", "picture")
            .run()
            .changed()
            .keepsAllBut(ROOT);
    assertThat(run.codes().stream().filter("thumbnail-stale"::equals)).hasSize(2);
  }

  @Test
  @DisplayName("C 2.1.4, 6.2: print tickets and core properties are copied")
  void copiesTicketsAndCoreProperties() throws Exception {
    dressed("", block(1, ""))
        .types("<Default Extension=\"xml\" ContentType=\"text/xml\"/>")
        .related(RelationshipTypes.PRINT_TICKET, "3D/ticket.xml", "<ticket/>")
        .owned(RelationshipTypes.CORE_PROPERTIES, "docProps/core.xml", "<core/>")
        .run()
        .changed()
        .keepsAllBut(ROOT);
  }

  @Test
  @DisplayName(
      "C 2.1.5: parts that nobody knows are kept and named, or dropped with all that speaks"
          + " of them; what must be preserved stays")
  void keepsOrDropsUnknownParts() throws Exception {
    Subject subject =
        dressed("", block(1, ""))
            .types(
                "<Override PartName=\"/own/shop.note\" ContentType=\"text/plain\"/>"
                    + "<Default Extension=\"note\" ContentType=\"text/plain\"/>")
            .owned("http://example.org/2025/note", "own/shop.note", "print two")
            .owned(RelationshipTypes.MUST_PRESERVE, "own/kept.note", "for ever");
    SubjectRun kept = subject.run().changed().keepsAllBut(ROOT);
    assertThat(kept.codes()).contains("unknown-part-kept");
    SubjectRun dropped =
        subject.run(Settings.usual().withUnknownParts(UnknownParts.DROP)).changed();
    assertThat(dropped.items()).contains("own/kept.note").doesNotContain("own/shop.note");
    assertThat(dropped.after("_rels/.rels")).contains("kept.note").doesNotContain("shop.note");
    assertThat(dropped.after("[Content_Types].xml")).doesNotContain("shop.note");
  }

  @Test
  @DisplayName("C 2.1.1: a target outside the package is kept and never fetched")
  void neverFetchesTargetsOutside() throws Exception {
    dressed("", block(1, ""))
        .relationship(
            "<Relationship Id=\"out\" Type=\"http://example.org/2025/note\""
                + " Target=\"http://127.0.0.1:9/never\" TargetMode=\"External\"/>")
        .run()
        .changed()
        .keepsAllBut(ROOT);
  }

  @Test
  @DisplayName("C 6.3, OPC 12: an object in a signed part is left, the signature stays valid")
  void leavesSignedParts() throws Exception {
    signed("/3D/3dmodel.model").run().left("signed-part");
  }

  @Test
  @DisplayName("OPC 12: a signature over parts that are not changed stays")
  void keepsSignaturesOverOtherParts() throws Exception {
    signed("/own/kept.note").run().changed().keepsAllBut(ROOT);
  }

  @Test
  @DisplayName("C Preface: where nothing is changed the output is the input, byte for byte")
  void givesTheInputBackWhereNothingChanges() throws Exception {
    SubjectRun run = dressed("x", object(1, " x:a=\"1\"", TETRAHEDRON)).run();
    assertThat(run.result()).isInstanceOf(FileResult.Unchanged.class);
    run.keepsAllBut();
  }

  @Test
  @DisplayName("C 3.4.2, M 5: a file whose other resources are wrong is refused with the finding")
  void refusesFilesWhoseResourcesAreWrong() throws Exception {
    String wrong = "<m:colorgroup id=\"5\"><m:color/></m:colorgroup>";
    dressed("m", wrong + block(1, "")).run().refused("attribute-missing");
  }

  @Test
  @DisplayName("C 4: an object that is wrong stays as it is, others go on")
  void leavesObjectsThatAreWrong() throws Exception {
    SubjectRun run =
        dressed(
                "",
                block(1, " pindex=\"0\"") + block(2, ""),
                "<item objectid=\"1\"/><item objectid=\"2\"/>")
            .run()
            .changed();
    assertThat(run.codes()).contains("property-index-without-group", "not-conforming");
    assertThat(run.after(ROOT)).contains(block(1, " pindex=\"0\""));
  }

  private static Subject signed(String covered) {
    String signature =
        "<Signature xmlns=\"http://www.w3.org/2000/09/xmldsig#\"><SignedInfo><Reference URI=\""
            + covered
            + "?ContentType=a/b\"/></SignedInfo></Signature>";
    String ofOrigin =
        "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\">"
            + "<Relationship Id=\"s\" Type=\""
            + RelationshipTypes.SIGNATURE
            + "\" Target=\"one.xml\"/></Relationships>";
    return dressed("", block(1, ""))
        .types(
            "<Default Extension=\"sigs\" ContentType=\"application/x-origin\"/>"
                + "<Default Extension=\"note\" ContentType=\"text/plain\"/>"
                + "<Default Extension=\"xml\" ContentType=\"application/x-signature\"/>")
        .owned(RelationshipTypes.SIGNATURE_ORIGIN, "sig/o.sigs", "")
        .part("sig/_rels/o.sigs.rels", ofOrigin)
        .part("sig/one.xml", signature)
        .owned(RelationshipTypes.MUST_PRESERVE, "own/kept.note", "for ever");
  }
}

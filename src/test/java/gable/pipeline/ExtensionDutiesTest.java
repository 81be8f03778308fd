package gable.pipeline;

import static gable.pipeline.Subject.BLOCK;
import static gable.pipeline.Subject.ROOT;
import static gable.pipeline.Subject.block;
import static gable.pipeline.Subject.blockWith;
import static gable.pipeline.Subject.dressed;
import static gable.pipeline.Subject.model;
import static gable.pipeline.Subject.object;
import static gable.pipeline.Subject.triangles;
import static gable.pipeline.Texts.TETRAHEDRON;
import static gable.pipeline.Texts.all;
import static org.assertj.core.api.Assertions.assertThat;

import gable.opc.RelationshipTypes;
import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What an editor of meshes owes to extensions: one case or more for each rule, through the whole
 * program. C core 1.4, M materials and properties, P production, S slices, B beam lattice, BO
 * booleans, D displacement, V volumetric, SC secure content, OPC the packaging conventions, first
 * edition. What the texts leave open is a decision of this project.
 */
class ExtensionDutiesTest {

  @Test
  @DisplayName("C 2.3.3.1: attributes of extensions follow triangles and stay with vertices")
  void carriesAttributesOfExtensions() throws Exception {
    String mesh = triangles("x:weld=\"7\"").replaceFirst("<vertex ", "<vertex x:id=\"v0\" ");
    SubjectRun run = dressed("x", object(1, "", mesh)).run().changed();
    List<String> tags = all("<triangle [^>]*>", run.after(ROOT));
    assertThat(run.codes()).contains("triangle-attributes-copied");
    assertThat(run.after(ROOT)).contains("<vertex x:id=\"v0\" ");
    assertThat(tags)
        .anyMatch(tag -> !tag.contains("x:weld"))
        .anyMatch(tag -> tag.contains("x:weld"));
    assertThat(all("<vertex x:id", run.after(ROOT))).hasSize(1);
  }

  @Test
  @DisplayName("C 2.3.3.1: unknown elements in a mesh may hold numbers of triangles: left")
  void leavesAMeshWithUnknownElements() throws Exception {
    dressed("x", blockWith(1, "<x:welds><x:weld triangle=\"3\"/></x:welds>"))
        .run()
        .left("mesh-unknown-element");
  }

  @Test
  @DisplayName("C 2.3.3.1: unknown elements elsewhere stay as they are")
  void keepsUnknownElementsElsewhere() throws Exception {
    String thing = "<x:thing deep=\"1\"><x:mesh>&amp;</x:mesh><!-- kept --></x:thing>";
    SubjectRun run = dressed("x", thing + block(1, " x:mark=\"2\"")).run().changed();
    assertThat(run.after(ROOT)).contains(thing, "x:mark=\"2\"");
  }

  @Test
  @DisplayName("C 2.3.3.1, 3.4: declarations that look unused stay, none are added")
  void keepsDeclarations() throws Exception {
    SubjectRun run = dressed("s;m;x", block(1, "")).run().changed();
    String head = run.before(ROOT).substring(0, run.before(ROOT).indexOf("<resources>"));
    assertThat(run.after(ROOT)).startsWith(head);
    assertThat(all("xmlns", run.after(ROOT))).hasSameSizeAs(all("xmlns", run.before(ROOT)));
  }

  @Test
  @DisplayName("P 2, 3.1.2: a path in a part that is not the root is an error of that object")
  void refusesPathsBelowTheRoot() throws Exception {
    String child =
        model(
            "p",
            "<object id=\"1\"><components><component objectid=\"1\" p:path=\"/3D/3dmodel.model\"/>"
                + "</components></object>",
            "");
    dressed(
            "p;requiredextensions=\"p\"",
            block(1, ""),
            "<item objectid=\"1\" p:path=\"/3D/a.model\"/>")
        .related(RelationshipTypes.MODEL, "3D/a.model", child)
        .run()
        .refused("production-path");
  }

  @Test
  @DisplayName("P 4.2.2: alternatives must agree with each other: left")
  void leavesAlternatives() throws Exception {
    String alternatives =
        "<pa:alternatives><pa:alternative objectid=\"2\" path=\"/3D/a.model\""
            + " UUID=\"00000000-0000-4000-8000-000000000001\"/></pa:alternatives>";
    dressed(
            "pa;requiredextensions=\"pa\"",
            object(1, " pa:modelresolution=\"lowres\"", BLOCK + alternatives))
        .related(RelationshipTypes.MODEL, "3D/a.model", model("", object(2, "", TETRAHEDRON), ""))
        .run()
        .left("object-referred");
  }

  @Test
  @DisplayName("B 2: beams hang on the vertices and are united with the mesh: left")
  void leavesLattices() throws Exception {
    String lattice =
        "<b:beamlattice radius=\"1\" minlength=\"0.1\"><b:beams><b:beam v1=\"0\" v2=\"1\"/>"
            + "</b:beams></b:beamlattice>";
    dressed("b;requiredextensions=\"b\"", blockWith(1, lattice)).run().left("object-lattice");
  }

  @Test
  @DisplayName("B 2.1: the mesh that clips a lattice is part of it: left")
  void leavesMeshesThatClipALattice() throws Exception {
    String lattice =
        "<b:beamlattice radius=\"1\" minlength=\"0.1\" clippingmode=\"inside\" clippingmesh=\"1\">"
            + "<b:beams><b:beam v1=\"0\" v2=\"1\"/></b:beams></b:beamlattice>";
    String clipped = object(2, "", TETRAHEDRON.replace("</mesh>", lattice + "</mesh>"));
    dressed("b;requiredextensions=\"b\"", block(1, "") + clipped).run().left("object-referred");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        " s:slicestackid=\"9\"",
        " s:slicestackid=\"9\" s:meshresolution=\"lowres\"",
        " s:slicestackid=\"9\" s:meshresolution=\"fullres\""
      })
  @DisplayName("S 2: slices carry the shape, or would go stale: left")
  void leavesSlicedObjects(String attributes) throws Exception {
    String stack = "<s:slicestack id=\"9\"><s:slice ztop=\"1\"/></s:slicestack>";
    dressed("s;requiredextensions=\"s\"", stack + block(1, attributes)).run().left("object-slices");
  }

  @Test
  @DisplayName("S 1: the transforms of a neighbour with slices keep their spelling")
  void keepsTransformsOfSlicedNeighbours() throws Exception {
    String stack = "<s:slicestack id=\"9\"><s:slice ztop=\"1\"/></s:slicestack>";
    String item = "<item objectid=\"2\" transform=\"0 1.0 0.00 -1 0 0.0 0 0 1.0 30 0 0\"/>";
    SubjectRun run =
        dressed(
                "s;requiredextensions=\"s\"",
                stack
                    + object(2, " s:slicestackid=\"9\" s:meshresolution=\"lowres\"", TETRAHEDRON)
                    + block(1, ""),
                item + "<item objectid=\"1\"/>")
            .run()
            .changed();
    assertThat(run.after(ROOT)).contains(item);
  }

  @Test
  @DisplayName("BO 1: booleans are required, so nothing of that part is touched")
  void refusesPartsWithBooleanShapes() throws Exception {
    String shape =
        "<object id=\"3\"><bo:booleanshape objectid=\"1\" operation=\"difference\">"
            + "<bo:boolean objectid=\"2\"/></bo:booleanshape></object>";
    dressed(
            "bo;requiredextensions=\"bo\"",
            block(1, "") + object(2, "", TETRAHEDRON) + shape,
            "<item objectid=\"3\"/><item objectid=\"1\"/>")
        .run()
        .refused("extension-required");
  }

  @Test
  @DisplayName("BO 2.1.1: base and operands stay plain, also where the extension is not required")
  void leavesOperands() throws Exception {
    String shape =
        "<object id=\"3\"><bo:booleanshape objectid=\"1\"><bo:boolean objectid=\"2\"/>"
            + "</bo:booleanshape></object>";
    dressed("bo", block(1, "") + object(2, "", TETRAHEDRON) + shape).run().left("object-referred");
  }

  @Test
  @DisplayName("D 1, 4.1: a displaced surface is no mesh of core, and the extension is required")
  void refusesPartsWithDisplacement() throws Exception {
    String displaced =
        "<object id=\"2\"><d:displacementmesh>"
            + TETRAHEDRON
                .replace("</mesh>", "")
                .replace("<mesh>", "")
                .replace("<vert", "<d:vert")
                .replace("<tri", "<d:tri")
                .replace("</vertices", "</d:vertices")
                .replace("</triangles", "</d:triangles")
            + "</d:displacementmesh></object>";
    dressed(
            "d;requiredextensions=\"d\"",
            block(1, "") + displaced,
            "<item objectid=\"1\"/><item objectid=\"2\"/>")
        .run()
        .refused("extension-required");
  }

  @Test
  @DisplayName("V 5.2: a volume is a field that the mesh clips: edited, its reference stays")
  void editsMeshesWithAVolume() throws Exception {
    String volume =
        "<i:implicitfunction id=\"6\"><i:in/></i:implicitfunction><v:volumedata id=\"8\">"
            + "<v:color functionid=\"6\" channel=\"c\"/></v:volumedata>";
    SubjectRun run =
        dressed(
                "v;i",
                volume + object(1, "", BLOCK.replaceFirst("<mesh>", "<mesh v:volumeid=\"8\">")))
            .run()
            .changed();
    assertThat(run.after(ROOT)).contains(volume, "<mesh v:volumeid=\"8\">");
  }

  @Test
  @DisplayName("V 4.1.1: the mesh of a level set is the room that it is looked for in: left")
  void leavesMeshesOfLevelSets() throws Exception {
    String level =
        "<i:implicitfunction id=\"6\"><i:in/></i:implicitfunction><object id=\"2\">"
            + "<v:levelset functionid=\"6\" channel=\"s\" meshid=\"1\"/></object>";
    dressed("v;i", block(1, "") + level, "<item objectid=\"1\"/>").run().left("object-referred");
  }

  @Test
  @DisplayName("V II.5: a mesh that a function reads shapes something else: left")
  void leavesMeshesThatFunctionsRead() throws Exception {
    String function =
        "<i:implicitfunction id=\"6\"><i:mesh identifier=\"m\" objectid=\"1\"/></i:implicitfunction>";
    dressed("i", block(1, "") + function).run().left("object-referred");
  }

  @Test
  @DisplayName("SC 1.2, 3.3: without keys the other parts may be changed; the locked bytes stay")
  void leavesEncryptedPartsAlone() throws Exception {
    String store =
        "<keystore xmlns=\"http://schemas.microsoft.com/3dmanufacturing/securecontent/2019/04\""
            + " UUID=\"00000000-0000-4000-8000-000000000001\"><resourcedatagroup"
            + " keyuuid=\"00000000-0000-4000-8000-000000000002\"><resourcedata"
            + " path=\"/3D/secret.model\"><cekparams encryptionalgorithm=\"a\"/></resourcedata>"
            + "</resourcedatagroup></keystore>";
    SubjectRun run =
        dressed(
                "p;requiredextensions=\"p\"",
                block(1, ""),
                "<item objectid=\"1\"/><item objectid=\"1\" p:path=\"/3D/secret.model\"/>")
            .related(RelationshipTypes.ENCRYPTED_FILE, "3D/secret.model", "%3McF\u0000 locked")
            .related(RelationshipTypes.MODEL, "3D/secret.model", "%3McF\u0000 locked")
            .owned(RelationshipTypes.KEY_STORE, "Secure/keys.xml", store)
            .types(
                "<Override PartName=\"/Secure/keys.xml\" ContentType=\"application/"
                    + "vnd.ms-package.3dmanufacturing-keystore+xml\"/>")
            .run()
            .changed()
            .keepsAllBut(ROOT);
    assertThat(run.result().notices().toString()).contains("encrypted");
  }

  @Test
  @DisplayName("C 3.4, SC 1: secure content that is required and not supported: refused")
  void refusesRequiredSecureContent() throws Exception {
    dressed("sc;requiredextensions=\"sc\"", block(1, "")).run().refused("extension-required");
  }

  @Test
  @DisplayName("C 2.3.1, 3.4: a required extension that nobody knows: refused by prefix and name")
  void refusesUnknownRequiredExtensions() throws Exception {
    SubjectRun run =
        dressed("x;requiredextensions=\"x\"", block(1, "")).run().refused("extension-required");
    assertThat(run.result().toString()).contains("x (urn:example:x)");
  }

  @Test
  @DisplayName("C 3.4: a recommended extension that nobody knows: a warning, and work goes on")
  void warnsOfUnknownRecommendedExtensions() throws Exception {
    SubjectRun run = dressed("x;recommendedextensions=\"x\"", block(1, "")).run().changed();
    assertThat(run.codes()).contains("extension-recommended");
  }
}

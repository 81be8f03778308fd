package gable.pipeline;

import static gable.pipeline.Subject.BLOCK;
import static gable.pipeline.Subject.ROOT;
import static gable.pipeline.Subject.block;
import static gable.pipeline.Subject.blockWith;
import static gable.pipeline.Subject.model;
import static gable.pipeline.Subject.object;
import static gable.pipeline.Subject.of;
import static gable.pipeline.Subject.triangles;
import static org.assertj.core.api.Assertions.assertThat;

import gable.opc.RelationshipTypes;
import gable.pipeline.Settings.MixedOrientation;
import gable.pipeline.Settings.UnknownParts;
import gable.pipeline.Subject.Run;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What an editor of meshes owes to the rest of a file, one case or more for each rule, through the
 * whole program. C core 1.4, M materials and properties, P production, S slices, B beam lattice, BO
 * booleans, D displacement, V volumetric, SC secure content, OPC the packaging conventions, first
 * edition. What the texts leave open is a decision of this project.
 */
class DutiesTest {

  private static final String HALF_RED =
      "<m:colorgroup id=\"5\"><m:color color=\"#FF0000\"/><m:color color=\"#0000FF\"/>"
          + "</m:colorgroup>";

  private static List<String> all(String pattern, String text) {
    List<String> found = new ArrayList<>();
    for (Matcher matcher = Pattern.compile(pattern).matcher(text); matcher.find(); ) {
      found.add(matcher.group(matcher.groupCount()));
    }
    return found;
  }

  private static String between(String text, String from, String to) {
    int start = text.indexOf(from) + from.length();
    return text.substring(start, text.indexOf(to, start));
  }

  @Test
  @DisplayName("C 4.1.3, B 2.1.1.1: vertices are appended, the old ones keep text and number")
  void appendsVerticesAndKeepsTheOldOnes() throws Exception {
    Run run = of("", block(1, "")).run().changed().keepsAllBut(ROOT);
    String before = between(run.before(ROOT), "<vertices>", "      </vertices>");
    String after = between(run.after(ROOT), "<vertices>", "      </vertices>");
    assertThat(after).startsWith(before).hasSizeGreaterThan(before.length());
  }

  @Test
  @DisplayName("C 4.1.2: triangles that stay keep text and place, so that the last one still wins")
  void keepsTextAndPlaceOfTrianglesThatStay() throws Exception {
    Run run = of("", block(1, "")).run().changed();
    List<String> before = all("<triangle [^>]*>", run.before(ROOT));
    List<String> after = all("<triangle [^>]*>", run.after(ROOT));
    int kept = 0;
    for (int k = 0; k < before.size(); k++) {
      kept += before.get(k).equals(after.get(k)) ? 1 : 0;
    }
    assertThat(after).hasSizeGreaterThanOrEqualTo(before.size());
    assertThat(kept).isGreaterThan(before.size() / 2).isLessThan(before.size());
  }

  @Test
  @DisplayName("C 3.4, 4.1.3.1: an inch stays an inch")
  void writesInTheUnitOfThePart() throws Exception {
    Run run = of("unit=\"centimeter\"", object(1, "", scaled(BLOCK, 0.1))).run().changed();
    for (String z : all("z=\"([^\"]*)\"", run.after(ROOT))) {
      assertThat(Double.parseDouble(z)).isBetween(0.0, 2.0);
    }
    assertThat(run.after(ROOT)).contains("unit=\"centimeter\"");
  }

  private static String scaled(String mesh, double factor) {
    return Pattern.compile("([xyz])=\"([^\"]*)\"")
        .matcher(mesh)
        .replaceAll(
            found ->
                found.group(1)
                    + "=\""
                    + BigDecimal.valueOf(Double.parseDouble(found.group(2)) * factor)
                        .toPlainString()
                    + '"');
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      value = {
        "M 2, C 4.1.4.1: colours | color |"
            + " <m:colorgroup id=\"5\"><m:color color=\"#FF0000\"/><m:color color=\"#0000FF80\"/>"
            + "</m:colorgroup>",
        "M 3.1: texture coordinates | tex2coord |"
            + " <m:texture2d id=\"6\" path=\"/3D/a.png\" contenttype=\"image/png\"/>"
            + "<m:texture2dgroup id=\"5\" texid=\"6\"><m:tex2coord u=\"-1\" v=\"0\"/>"
            + "<m:tex2coord u=\"3\" v=\"0.5\"/></m:texture2dgroup>",
        "M 4.1: composites | composite |"
            + " <basematerials id=\"6\"><base name=\"a\" displaycolor=\"#FF0000\"/>"
            + "<base name=\"b\" displaycolor=\"#00FF00\"/></basematerials>"
            + "<m:compositematerials id=\"5\" matid=\"6\" matindices=\"0 1\">"
            + "<m:composite values=\"1 0\"/><m:composite values=\"0 1\"/></m:compositematerials>",
        "M 5.1: multiproperties | multi |"
            + " <m:colorgroup id=\"6\"><m:color color=\"#FF0000\"/><m:color color=\"#0000FF\"/>"
            + "</m:colorgroup><m:multiproperties id=\"5\" pids=\"6\"><m:multi pindices=\"0\"/>"
            + "<m:multi pindices=\"1\"/></m:multiproperties>"
      })
  void interpolatesPropertiesIntoEntriesThatAreAppended(String rule, String entry, String group)
      throws Exception {
    String mesh = triangles("p1=\"0\" p2=\"1\" p3=\"1\"");
    Subject subject = of("m", group + object(1, " pid=\"5\" pindex=\"0\"", mesh));
    if (group.contains("texture2d")) {
      subject
          .types("<Default Extension=\"png\" ContentType=\"image/png\"/>")
          .related(RelationshipTypes.TEXTURE, "3D/a.png", "not looked at");
    }
    Run run = subject.run().changed();
    List<String> before = all("<m:" + entry + " [^>]*>", run.before(ROOT));
    List<String> after = all("<m:" + entry + " [^>]*>", run.after(ROOT));
    assertThat(after).as(rule).startsWith(before.toArray(String[]::new));
    assertThat(after).as(rule).hasSizeGreaterThan(before.size());
    for (String index : all("p[123]=\"([0-9]+)\"", run.after(ROOT))) {
      assertThat(Integer.parseInt(index)).isLessThan(after.size());
    }
  }

  @Test
  @DisplayName("C 4.1.4.1: base materials never blend, p1 is copied")
  void copiesBaseMaterials() throws Exception {
    String group =
        "<basematerials id=\"5\"><base name=\"a\" displaycolor=\"#FF0000\"/>"
            + "<base name=\"b\" displaycolor=\"#00FF00\"/></basematerials>";
    Run run =
        of("", group + object(1, " pid=\"5\" pindex=\"0\"", triangles("p1=\"1\""))).run().changed();
    assertThat(run.after(ROOT)).contains(group);
    assertThat(all("<triangle [^>]*>", run.after(ROOT))).allMatch(tag -> tag.contains("p1=\"1\""));
  }

  @Test
  @DisplayName(
      "Decision on C 4.1.4.1: a new face has the value of the nearest point, and it is said")
  void saysWhereNewFacesTookTheirColourFrom() throws Exception {
    String mesh = triangles("p1=\"0\" p2=\"1\" p3=\"1\"");
    Run run = of("m", HALF_RED + object(1, " pid=\"5\" pindex=\"0\"", mesh)).run().changed();
    assertThat(run.codes()).contains("property-borrowed");
  }

  @Test
  @DisplayName("C 4.1.5: triangles inside a member are members, those on new faces are not")
  void keepsTriangleSetsTrue() throws Exception {
    int count = all("<triangle ", BLOCK).size();
    String sets =
        "<t:trianglesets><t:triangleset name=\"all\" identifier=\"x:all\"><t:refrange"
            + " startindex=\"0\" endindex=\""
            + (count - 1)
            + "\"/></t:triangleset>"
            + "<t:triangleset name=\"none\" identifier=\"x:none\"/></t:trianglesets>";
    Run run = of("t;x", blockWith(1, sets)).run().changed();
    String after = run.after(ROOT);
    assertThat(after).contains("<t:triangleset name=\"none\" identifier=\"x:none\"/>");
    int members = 0;
    for (String range : all("<t:refrange [^>]*>", after)) {
      members += number(range, "endindex") - number(range, "startindex") + 1;
    }
    members += all("<t:ref ", after).size();
    int triangles = all("<triangle ", after).size();
    // the two flanks of the roof are new faces of two triangles at least
    assertThat(members).isLessThanOrEqualTo(triangles - 4).isGreaterThan(triangles / 2);
    assertThat(after.lastIndexOf("<t:ref ")).isLessThan(after.indexOf("<t:refrange "));
  }

  private static int number(String tag, String attribute) {
    return Integer.parseInt(between(tag, attribute + "=\"", "\""));
  }

  @Test
  @DisplayName("C 2.3.3.1: attributes of extensions follow triangles and stay with vertices")
  void carriesAttributesOfExtensions() throws Exception {
    String mesh = triangles("x:weld=\"7\"").replaceFirst("<vertex ", "<vertex x:id=\"v0\" ");
    Run run = of("x", object(1, "", mesh)).run().changed();
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
    of("x", blockWith(1, "<x:welds><x:weld triangle=\"3\"/></x:welds>"))
        .run()
        .left("mesh-unknown-element");
  }

  @Test
  @DisplayName("C 2.3.3.1: unknown elements elsewhere stay as they are")
  void keepsUnknownElementsElsewhere() throws Exception {
    String thing = "<x:thing deep=\"1\"><x:mesh>&amp;</x:mesh><!-- kept --></x:thing>";
    Run run = of("x", thing + block(1, " x:mark=\"2\"")).run().changed();
    assertThat(run.after(ROOT)).contains(thing, "x:mark=\"2\"");
  }

  @Test
  @DisplayName("C 2.3.3.1, 3.4: declarations that look unused stay, none are added")
  void keepsDeclarations() throws Exception {
    Run run = of("s;m;x", block(1, "")).run().changed();
    String head = run.before(ROOT).substring(0, run.before(ROOT).indexOf("<resources>"));
    assertThat(run.after(ROOT)).startsWith(head);
    assertThat(all("xmlns", run.after(ROOT))).hasSameSizeAs(all("xmlns", run.before(ROOT)));
  }

  @Test
  @DisplayName("C 3.4.1, 4: metadata, part number, name and type of a changed object stay")
  void keepsWhatAnObjectSaysOfItself() throws Exception {
    String said = " name=\"a &lt; b\" partnumber=\"77\" type=\"model\"";
    String group =
        "<metadatagroup><metadata name=\"Title\" preserve=\"1\">T</metadata></metadatagroup>";
    Run run = of("", object(1, said, group + BLOCK)).run().changed();
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
    Subject subject = of("p", block(1, old[0]) + object(2, old[1], TETRAHEDRON), items);
    subject.part(ROOT, subject.run().before(ROOT).replace("<build>", "<build" + old[4] + ">"));
    Run run = subject.run().changed();
    assertThat(run.after(ROOT)).contains(old[1], old[3]).doesNotContain(old[0], old[2], old[4]);
    assertThat(all("p:UUID=\"([a-f0-9-]{36})\"", run.after(ROOT)))
        .hasSize(5)
        .doesNotHaveDuplicates();
    assertThat(subject.run().output()).isEqualTo(run.output());
  }

  private static final String TETRAHEDRON =
      "<mesh><vertices><vertex x=\"50\" y=\"0\" z=\"0\"/><vertex x=\"60\" y=\"0\" z=\"0\"/>"
          + "<vertex x=\"50\" y=\"10\" z=\"0\"/><vertex x=\"50\" y=\"0\" z=\"10\"/></vertices>"
          + "<triangles><triangle v1=\"0\" v2=\"2\" v3=\"1\"/><triangle v1=\"0\" v2=\"1\" v3=\"3\"/>"
          + "<triangle v1=\"1\" v2=\"2\" v3=\"3\"/><triangle v1=\"0\" v2=\"3\" v3=\"2\"/></triangles>"
          + "</mesh>";

  @Test
  @DisplayName("P 2, 3: an object of another part is changed there, and only there")
  void changesTheObjectInItsPart() throws Exception {
    String child = model("", block(1, "") + object(2, "", TETRAHEDRON), "");
    Run run =
        of(
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
    Run run =
        of(
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
  @DisplayName("P 2, 3.1.2: a path in a part that is not the root is an error of that object")
  void refusesPathsBelowTheRoot() throws Exception {
    String child =
        model(
            "p",
            "<object id=\"1\"><components><component objectid=\"1\" p:path=\"/3D/3dmodel.model\"/>"
                + "</components></object>",
            "");
    of("p;requiredextensions=\"p\"", block(1, ""), "<item objectid=\"1\" p:path=\"/3D/a.model\"/>")
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
    of(
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
    of("b;requiredextensions=\"b\"", blockWith(1, lattice)).run().left("object-lattice");
  }

  @Test
  @DisplayName("B 2.1: the mesh that clips a lattice is part of it: left")
  void leavesMeshesThatClipALattice() throws Exception {
    String lattice =
        "<b:beamlattice radius=\"1\" minlength=\"0.1\" clippingmode=\"inside\" clippingmesh=\"1\">"
            + "<b:beams><b:beam v1=\"0\" v2=\"1\"/></b:beams></b:beamlattice>";
    String clipped = object(2, "", TETRAHEDRON.replace("</mesh>", lattice + "</mesh>"));
    of("b;requiredextensions=\"b\"", block(1, "") + clipped).run().left("object-referred");
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
    of("s;requiredextensions=\"s\"", stack + block(1, attributes)).run().left("object-slices");
  }

  @Test
  @DisplayName("S 1: the transforms of a neighbour with slices keep their spelling")
  void keepsTransformsOfSlicedNeighbours() throws Exception {
    String stack = "<s:slicestack id=\"9\"><s:slice ztop=\"1\"/></s:slicestack>";
    String item = "<item objectid=\"2\" transform=\"0 1.0 0.00 -1 0 0.0 0 0 1.0 30 0 0\"/>";
    Run run =
        of(
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
    of(
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
    of("bo", block(1, "") + object(2, "", TETRAHEDRON) + shape).run().left("object-referred");
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
    of(
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
    Run run =
        of("v;i", volume + object(1, "", BLOCK.replaceFirst("<mesh>", "<mesh v:volumeid=\"8\">")))
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
    of("v;i", block(1, "") + level, "<item objectid=\"1\"/>").run().left("object-referred");
  }

  @Test
  @DisplayName("V II.5: a mesh that a function reads shapes something else: left")
  void leavesMeshesThatFunctionsRead() throws Exception {
    String function =
        "<i:implicitfunction id=\"6\"><i:mesh identifier=\"m\" objectid=\"1\"/></i:implicitfunction>";
    of("i", block(1, "") + function).run().left("object-referred");
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
    Run run =
        of(
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
    of("sc;requiredextensions=\"sc\"", block(1, "")).run().refused("extension-required");
  }

  @Test
  @DisplayName("C 2.3.1, 3.4: a required extension that nobody knows: refused by prefix and name")
  void refusesUnknownRequiredExtensions() throws Exception {
    Run run = of("x;requiredextensions=\"x\"", block(1, "")).run().refused("extension-required");
    assertThat(run.result().toString()).contains("x (urn:example:x)");
  }

  @Test
  @DisplayName("C 3.4: a recommended extension that nobody knows: a warning, and work goes on")
  void warnsOfUnknownRecommendedExtensions() throws Exception {
    Run run = of("x;recommendedextensions=\"x\"", block(1, "")).run().changed();
    assertThat(run.codes()).contains("extension-recommended");
  }

  @Test
  @DisplayName(
      "C 4.2, 4: a use that lies otherwise gets a clone behind the original, with all it has")
  void clonesWhereUsesDiffer() throws Exception {
    String said = " name=\"n\" partnumber=\"7\" type=\"model\" pid=\"5\" pindex=\"0\" x:own=\"1\"";
    String group = "<metadatagroup><metadata name=\"Title\">T</metadata></metadatagroup>";
    String onItsSide = " transform=\"0 0 1 0 1 0 -1 0 0 60 0 0\"";
    Run run =
        of(
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
    of(
            "",
            block(1, ""),
            "<item objectid=\"1\"/>"
                + "<item objectid=\"1\" transform=\"0 0 1 0 1 0 -1 0 0 60 0 0\"/>")
        .run(settings)
        .left("mixed-orientation");
  }

  @Test
  @DisplayName("C 3.3: a mirrored use is looked at as it lies, and written as it was turned")
  void writesMirroredMeshesUnmirrored() throws Exception {
    of("", block(1, ""), "<item objectid=\"1\" transform=\"-1 0 0 0 1 0 0 0 1 40 0 0\"/>")
        .run()
        .changed(); // inside out would be a new finding
  }

  @Test
  @DisplayName("C 3.3: a transform without an inverse: that use is refused")
  void refusesSingularTransforms() throws Exception {
    of("", block(1, ""), "<item objectid=\"1\" transform=\"1 0 0 0 1 0 0 0 0 0 0 0\"/>")
        .run()
        .refused("transform-singular");
  }

  @ParameterizedTest
  @ValueSource(strings = {"support", "solidsupport", "surface", "other"})
  @DisplayName("C 4: only objects of type model are changed")
  void leavesOtherTypes(String type) throws Exception {
    Run run =
        of(
                "",
                block(1, " type=\"" + type + "\"") + block(2, ""),
                "<item objectid=\"1\"/><item objectid=\"2\"/>")
            .run()
            .changed();
    assertThat(run.after(ROOT)).contains(block(1, " type=\"" + type + "\""));
  }

  @Test
  @DisplayName("C 4.1: an open mesh is left as it is, others go on")
  void leavesOpenMeshes() throws Exception {
    String open = BLOCK.replaceFirst("        <triangle [^>]*>\n", "");
    Run run =
        of("", object(1, "", open) + block(2, ""), "<item objectid=\"1\"/><item objectid=\"2\"/>")
            .run()
            .changed();
    assertThat(run.after(ROOT)).contains(object(1, "", open));
  }

  @Test
  @DisplayName("C 3.4.3: what the build does not reach is not changed")
  void leavesWhatIsNotBuilt() throws Exception {
    Run run = of("", block(2, "") + block(1, "")).run().changed();
    assertThat(run.after(ROOT)).contains(block(2, ""));
  }

  @Test
  @DisplayName("C 2.1.3: pictures show the old model: kept, and said")
  void keepsPicturesAndSaysThatTheyAreOld() throws Exception {
    Run run =
        of("", block(1, " thumbnail=\"/3D/o.png\""))
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
    of("", block(1, ""))
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
        of("", block(1, ""))
            .types(
                "<Override PartName=\"/own/shop.note\" ContentType=\"text/plain\"/>"
                    + "<Default Extension=\"note\" ContentType=\"text/plain\"/>")
            .owned("http://example.org/2025/note", "own/shop.note", "print two")
            .owned(RelationshipTypes.MUST_PRESERVE, "own/kept.note", "for ever");
    Run kept = subject.run().changed().keepsAllBut(ROOT);
    assertThat(kept.codes()).contains("unknown-part-kept");
    Run dropped = subject.run(Settings.usual().withUnknownParts(UnknownParts.DROP)).changed();
    assertThat(dropped.items()).contains("own/kept.note").doesNotContain("own/shop.note");
    assertThat(dropped.after("_rels/.rels")).contains("kept.note").doesNotContain("shop.note");
    assertThat(dropped.after("[Content_Types].xml")).doesNotContain("shop.note");
  }

  @Test
  @DisplayName("C 2.1.1: a target outside the package is kept and never fetched")
  void neverFetchesTargetsOutside() throws Exception {
    of("", block(1, ""))
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
    return of("", block(1, ""))
        .types(
            "<Default Extension=\"sigs\" ContentType=\"application/x-origin\"/>"
                + "<Default Extension=\"note\" ContentType=\"text/plain\"/>"
                + "<Default Extension=\"xml\" ContentType=\"application/x-signature\"/>")
        .owned(RelationshipTypes.SIGNATURE_ORIGIN, "sig/o.sigs", "")
        .part("sig/_rels/o.sigs.rels", ofOrigin)
        .part("sig/one.xml", signature)
        .owned(RelationshipTypes.MUST_PRESERVE, "own/kept.note", "for ever");
  }

  @Test
  @DisplayName("C Preface: where nothing is changed the output is the input, byte for byte")
  void givesTheInputBackWhereNothingChanges() throws Exception {
    Run run = of("x", object(1, " x:a=\"1\"", TETRAHEDRON)).run();
    assertThat(run.result()).isInstanceOf(FileResult.Unchanged.class);
    run.keepsAllBut();
  }

  @Test
  @DisplayName("C 3.4.2, M 5: a file whose other resources are wrong is refused with the finding")
  void refusesFilesWhoseResourcesAreWrong() throws Exception {
    String wrong = "<m:colorgroup id=\"5\"><m:color/></m:colorgroup>";
    of("m", wrong + block(1, "")).run().refused("attribute-missing");
  }

  @Test
  @DisplayName("C 4: an object that is wrong stays as it is, others go on")
  void leavesObjectsThatAreWrong() throws Exception {
    Run run =
        of(
                "",
                block(1, " pindex=\"0\"") + block(2, ""),
                "<item objectid=\"1\"/><item objectid=\"2\"/>")
            .run()
            .changed();
    assertThat(run.codes()).contains("property-index-without-group", "not-conforming");
    assertThat(run.after(ROOT)).contains(block(1, " pindex=\"0\""));
  }
}

package gable.threemf;

import static org.assertj.core.api.Assertions.assertThat;

import gable.opc.PackageException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/**
 * Cloned objects and UUIDs. The standard does not say what an edit does to UUIDs, but that they are
 * unique (production extension, section 4); the rest is this project's decision.
 */
class CloneTest {

  private static final String P =
      "xmlns:p=\"http://schemas.microsoft.com/3dmanufacturing/production/2015/06\"";
  private static final Pattern UUID =
      Pattern.compile("[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}");

  private static Use use(ModelPackage model, int item, int... components) {
    List<Reference> path = new ArrayList<>();
    path.add(model.root().items().get(item));
    for (int component : components) {
      ModelObject object = model.target(path.get(path.size() - 1)).orElseThrow();
      path.add(((ComponentsObject) object).components().get(component));
    }
    return new Use(path);
  }

  private static MeshObject mesh(ModelPackage model, String part, int id) {
    return (MeshObject) model.part(part).orElseThrow().object(id).orElseThrow();
  }

  private static ObjectEdit split(ModelPackage model, int id, int facet, Use... uses) {
    return Edits.split(mesh(model, Models.ROOT, id), facet, false, List.of(uses));
  }

  private static String text(Changes changes, int part) {
    return new String(changes.parts().get(part).content().toBytes(), StandardCharsets.UTF_8);
  }

  private static int facets(ModelPackage model, int id) {
    return mesh(model, Models.ROOT, id).mesh().facetCount();
  }

  @Test
  void editsInPlaceWhatAllUsesWant() throws PackageException {
    String build = "<item objectid=\"1\"/><item objectid=\"1\"/>";
    ModelPackage model = Models.open(Models.model(Models.box(1), build));
    Changes all = ModelWriter.splice(model, List.of(split(model, 1, 3)));
    Changes both =
        ModelWriter.splice(model, List.of(split(model, 1, 3, use(model, 0), use(model, 1))));
    assertThat(both.clones()).isEmpty();
    assertThat(text(both, 0)).isEqualTo(text(all, 0));
  }

  @Test
  @DisplayName("Notes 18: a use that differs gets a copy behind the original, with a new id")
  void clonesForAUseThatDiffers() throws PackageException {
    String object =
        Models.box(5)
            .replace("id=\"5\"", "id=\"5\" name=\"wheel\" partnumber=\"W-1\"")
            .replace(
                "<mesh>",
                "<metadatagroup><metadata name=\"Title\">é</metadata></metadatagroup><mesh>");
    String text =
        Models.model(
            "\n  " + object + "\n  " + Models.box(9),
            "<item objectid=\"5\"/><item objectid=\"9\"/><item objectid=\"5\" partnumber=\"x\"/>");
    ModelPackage model = Models.open(text);
    Changes changes = ModelWriter.splice(model, List.of(split(model, 5, 3, use(model, 2))));
    assertThat(changes.clones()).containsExactly(new Changes.Clone(Models.ROOT, 5, 10));
    ObjectEdit inPlace = split(model, 5, 3);
    String edited = text(ModelWriter.splice(model, List.of(inPlace)), 0);
    int from = edited.indexOf("<object id=\"5\"");
    String copy =
        edited.substring(from, edited.indexOf("</object>") + 9).replace("id=\"5\"", "id=\"10\"");
    assertThat(text(changes, 0))
        .isEqualTo(
            text.replace(object, object + "\n  " + copy)
                .replace("objectid=\"5\" partnumber", "objectid=\"10\" partnumber"));
  }

  @Test
  void givesTheFirstOfTwoChangedShapesTheOriginalsPlace() throws PackageException {
    String build = "<item objectid=\"1\"/><item objectid=\"1\"/><item objectid=\"1\"/>";
    ModelPackage model = Models.open(Models.model(Models.box(1), build));
    Changes changes =
        ModelWriter.splice(
            model,
            List.of(
                split(model, 1, 3, use(model, 1)),
                split(model, 1, 5, use(model, 0), use(model, 2))));
    ModelPackage again = Models.open(text(changes, 0));
    assertThat(again.root().items()).extracting(Reference::objectId).containsExactly(1, 2, 1);
    assertThat(facets(again, 1)).isEqualTo(14);
    assertThat(mesh(again, Models.ROOT, 1).mesh().corner(5, 2)).isEqualTo(8);
    assertThat(mesh(again, Models.ROOT, 2).mesh().corner(3, 2)).isEqualTo(8);
  }

  @Test
  void clonesObjectsMadeOfItOnlyWhereTheirUsesDiffer() throws PackageException {
    String group =
        "<object id=\"2\"><components><component objectid=\"1\"/><component objectid=\"1\"/>"
            + "</components></object>";
    String outer = "<object id=\"3\"><components><component objectid=\"2\"/></components></object>";
    String build = "<item objectid=\"3\"/><item objectid=\"3\"/><item objectid=\"2\"/>";
    ModelPackage model = Models.open(Models.model(Models.box(1) + group + outer, build));
    Changes changes = ModelWriter.splice(model, List.of(split(model, 1, 3, use(model, 1, 0, 1))));
    ModelPackage again = Models.open(text(changes, 0));
    assertThat(again.root().items()).extracting(Reference::objectId).containsExactly(3, 6, 2);
    assertThat(again.root().objects().keySet()).containsExactly(1, 4, 2, 5, 3, 6);
    assertThat(components(again, 6)).containsExactly(5);
    assertThat(components(again, 5)).containsExactly(1, 4);
    assertThat(components(again, 3)).containsExactly(2);
    assertThat(components(again, 2)).containsExactly(1, 1);
    assertThat(facets(again, 1)).isEqualTo(12);
    assertThat(facets(again, 4)).isEqualTo(14);
  }

  private static List<Integer> components(ModelPackage model, int id) {
    ComponentsObject group = (ComponentsObject) model.root().object(id).orElseThrow();
    return group.components().stream().map(Reference::objectId).toList();
  }

  @Test
  @DisplayName("C 3.4.2: a new id is unique among all resources, of extensions too")
  void takesAnIdThatNoResourceHas() throws PackageException {
    String stranger = "<x:field xmlns:x=\"urn:x\" id=\"41\"/>";
    String build = "<item objectid=\"1\"/><item objectid=\"1\"/>";
    ModelPackage model = Models.open(Models.model(Models.box(1) + stranger, build));
    assertThat(ModelWriter.splice(model, List.of(split(model, 1, 3, use(model, 1)))).clones())
        .containsExactly(new Changes.Clone(Models.ROOT, 1, 42));
    String last = Models.box(1) + Models.box(2147483647);
    ModelPackage full = Models.open(Models.model(last, build));
    assertThat(ModelWriter.splice(full, List.of(split(full, 1, 3, use(full, 1)))).clones())
        .containsExactly(new Changes.Clone(Models.ROOT, 1, 2));
  }

  private static String uuid(int number) {
    return String.format(java.util.Locale.ROOT, "00000000-0000-4000-8000-%012d", number);
  }

  private static List<String> uuids(String text) {
    List<String> all = new ArrayList<>();
    for (Matcher matcher = UUID.matcher(text); matcher.find(); ) {
      all.add(matcher.group());
    }
    return all;
  }

  private static String named(String element, int number) {
    return element.replaceFirst("<(\\w+)", "<$1 p:UUID=\"" + uuid(number) + '"');
  }

  /** Two boxes, a group of each, an item for each and one for the first alone. */
  private static String production() {
    String resources =
        named(Models.box(1), 1)
            + named(Models.box(2), 2)
            + named("<object id=\"3\"><components>", 3)
            + named("<component objectid=\"1\"/>", 4)
            + named("<component objectid=\"2\"/>", 5)
            + "</components></object>";
    String build = named("<item objectid=\"3\"/>", 6) + named("<item objectid=\"2\"/>", 7);
    return Models.model(P, resources, build).replace("<build", "<build p:UUID=\"" + uuid(8) + '"');
  }

  @Test
  @DisplayName("Notes 10: what changed and what shows it get new UUIDs, all else keeps its own")
  void renewsTheUuidsOfWhatChangesAndOfWhatShowsIt() throws PackageException {
    ModelPackage model = Models.open(production());
    String changed = text(ModelWriter.splice(model, List.of(split(model, 1, 3))), 0);
    List<String> before = uuids(production());
    List<String> after = uuids(changed);
    assertThat(after).hasSize(8).doesNotHaveDuplicates();
    for (int kept : new int[] {2, 5, 7}) {
      assertThat(after).contains(uuid(kept));
    }
    for (int renewed : new int[] {1, 3, 4, 6, 8}) {
      assertThat(after).doesNotContain(uuid(renewed));
    }
    String masked = UUID.matcher(changed).replaceAll("X");
    assertThat(before).hasSize(8);
    assertThat(masked).contains("<build p:UUID=\"X\"><item p:UUID=\"X\" objectid=\"3\"/>");
  }

  @Test
  @DisplayName("P 4: the UUIDs of a copy and of its components are its own")
  void givesACopyUuidsOfItsOwn() throws PackageException {
    String text = production().replace("</build>", named("<item objectid=\"3\"/>", 9) + "</build>");
    ModelPackage model = Models.open(text);
    String changed =
        text(ModelWriter.splice(model, List.of(split(model, 1, 3, use(model, 2, 0)))), 0);
    List<String> after = uuids(changed);
    assertThat(after).hasSize(9 + 1 + 3).doesNotHaveDuplicates(); // a box; a group of two
    for (int kept : new int[] {1, 2, 3, 4, 5, 6, 7}) {
      assertThat(after).contains(uuid(kept));
    }
    assertThat(after).doesNotContain(uuid(8), uuid(9));
  }

  @Test
  void makesTheSameUuidsAgainAndOthersForAnotherChange() throws PackageException {
    ModelPackage model = Models.open(production());
    String once = text(ModelWriter.splice(model, List.of(split(model, 1, 3))), 0);
    ModelPackage same = Models.open(production());
    String twice = text(ModelWriter.splice(same, List.of(split(same, 1, 3))), 0);
    assertThat(twice).isEqualTo(once);
    String other = text(ModelWriter.splice(model, List.of(split(model, 1, 4))), 0);
    assertThat(uuids(other)).doesNotContain(uuids(once).get(0));
  }

  @Test
  @DisplayName("Notes 3: no UUIDs are added where the file has none")
  void addsNoUuids() throws PackageException {
    ModelPackage model = Models.open(Models.model(P, Models.box(1), "<item objectid=\"1\"/>"));
    String changed = text(ModelWriter.splice(model, List.of(split(model, 1, 3))), 0);
    assertThat(changed).doesNotContain("UUID");
  }

  @Test
  @DisplayName("P 2, 3: a copy stays in the part of its original, the root points to it by path")
  void clonesInThePartOfTheObject() throws PackageException {
    String path = " p:path=\"/3D/wheel.model\"";
    String root =
        Models.model(
            P,
            Models.box(1),
            "<item objectid=\"1\""
                + path
                + "/><item objectid=\"1\"/><item"
                + path
                + " objectid=\"1\"/>");
    String wheel = Models.model(Models.box(1) + Models.box(7), "");
    ModelPackage model = Models.open(root, Map.of("/3D/wheel.model", wheel));
    MeshObject object = mesh(model, "/3D/wheel.model", 1);
    Changes changes =
        ModelWriter.splice(model, List.of(Edits.split(object, 3, false, List.of(use(model, 2)))));
    assertThat(changes.clones()).containsExactly(new Changes.Clone("/3D/wheel.model", 1, 8));
    assertThat(changes.parts())
        .extracting(SplicedPart::name)
        .containsExactlyInAnyOrder(Models.ROOT, "/3D/wheel.model");
    int rootPart = changes.parts().get(0).name().equals(Models.ROOT) ? 0 : 1;
    assertThat(text(changes, rootPart))
        .isEqualTo(
            root.replace("<item" + path + " objectid=\"1\"", "<item" + path + " objectid=\"8\""));
    ModelPackage again =
        Models.open(
            text(changes, rootPart), Map.of("/3D/wheel.model", text(changes, 1 - rootPart)));
    assertThat(mesh(again, "/3D/wheel.model", 8).mesh().facetCount()).isEqualTo(14);
    assertThat(mesh(again, "/3D/wheel.model", 1).mesh().facetCount()).isEqualTo(12);
  }

  @Test
  void writesOnlyThePartThatChanges() throws PackageException {
    String root = Models.model(P, "", "<item objectid=\"1\" p:path=\"/3D/a.model\"/>");
    ModelPackage model = Models.open(root, Map.of("/3D/a.model", Models.model(Models.box(1), "")));
    Changes changes =
        ModelWriter.splice(model, List.of(Edits.split(mesh(model, "/3D/a.model", 1), 0)));
    assertThat(changes.parts()).extracting(SplicedPart::name).containsExactly("/3D/a.model");
  }
}

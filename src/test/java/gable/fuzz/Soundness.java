package gable.fuzz;

import gable.verify.MeshCheck;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Holds an output against the input that it was made from. */
final class Soundness {

  /** An output that must not be. */
  static final class Unsound extends Exception {

    private static final long serialVersionUID = 1;

    Unsound(String what) {
      super(what);
    }
  }

  private Soundness() {}

  /**
   * Checks that items without a mesh are the same, that meshes are the same or still closed, with
   * all old vertices in their places, less volume and no crossing where there was none.
   *
   * @return how many meshes differ
   */
  static int check(byte[] input, byte[] output) throws Unsound, IOException {
    Draft before = Draft.of(input);
    Draft after = Draft.of(output);
    Map<String, Map<Integer, Surface>> old = Reading.of(before);
    checkItems(before.items(), after.items(), old.keySet());
    Map<String, Map<Integer, Surface>> now = Reading.of(after);
    require(now.keySet().equals(old.keySet()), "readable were " + old + ", are " + now);
    int changed = 0;
    for (Map.Entry<String, Map<Integer, Surface>> part : now.entrySet()) {
      Map<Integer, Surface> was = old.getOrDefault(part.getKey(), Map.of());
      for (Map.Entry<Integer, Surface> mesh : part.getValue().entrySet()) {
        Surface source = was.getOrDefault(mesh.getKey(), origin(mesh.getValue(), was));
        if (!mesh.getValue().sameAs(source)) {
          changed++;
          check(part.getKey() + ", object " + mesh.getKey(), source, mesh.getValue());
        }
      }
    }
    require(changed > 0, "the output differs from the input, but no mesh does");
    return changed;
  }

  private static void checkItems(
      List<Draft.Item> before, List<Draft.Item> after, Set<String> models) throws Unsound {
    require(before.size() == after.size(), "items: " + before.size() + " became " + after.size());
    for (int i = 0; i < before.size(); i++) {
      Draft.Item was = before.get(i);
      Draft.Item is = after.get(i);
      require(was.name().equals(is.name()), was.name() + " became " + is.name());
      boolean may = models.contains(was.name());
      require(may || was.content().equals(is.content()), was.name() + " was changed");
    }
  }

  /** A clone is made of an object that has the same vertices in front. */
  private static Surface origin(Surface clone, Map<Integer, Surface> was) {
    return was.values().stream()
        .filter(clone::startsAs)
        .reduce((a, b) -> a.vertices() >= b.vertices() ? a : b)
        .orElse(clone);
  }

  private static void check(String where, Surface before, Surface after) throws Unsound {
    require(after.startsAs(before), where + ": old vertices were moved");
    require(after.triangles() >= before.triangles(), where + ": triangles are missing");
    boolean whole = before.closed();
    Surface was = whole ? before : before.joined();
    Surface is = whole ? after : after.joined();
    require(was.closed(), where + ": an open mesh was changed");
    require(is.closed(), where + ": the mesh was closed and is no more");
    require(is.volume() > 0, where + ": the volume is " + is.volume());
    if (MeshCheck.of(was.mesh()).crossings() == 0) {
      MeshCheck.Report report = MeshCheck.of(is.mesh());
      require(report.crossings() == 0, where + ": facets cross: " + report.firstCrossing());
      require(
          is.volume() < was.volume(),
          where + ": the volume grew from " + was.volume() + " to " + is.volume());
    }
  }

  private static void require(boolean holds, String what) throws Unsound {
    if (!holds) {
      throw new Unsound(what);
    }
  }
}

package gable.threemf;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Writes edits into the parts that they change, by splicing: all bytes outside the lists of edited
 * meshes are copied as they are.
 */
public final class ModelWriter {

  private ModelWriter() {}

  /**
   * The new content of every part that the edits change; the others need no writing.
   *
   * @param model the model that was read
   * @param edits at most one for each object and use
   */
  public static List<SplicedPart> splice(ModelPackage model, List<ObjectEdit> edits) {
    Map<String, ByteSplices> splices = new LinkedHashMap<>();
    for (ObjectEdit edit : edits) {
      ModelPart part = model.part(edit.object().part()).orElseThrow();
      ByteSplices own = splices.computeIfAbsent(part.name(), name -> new ByteSplices(part.bytes()));
      new MeshWriter(part.bytes(), edit, own).write();
    }
    List<SplicedPart> changed = new ArrayList<>();
    splices.forEach(
        (name, own) -> {
          if (!own.isEmpty()) {
            int length = model.part(name).orElseThrow().bytes().length;
            changed.add(new SplicedPart(name, own, length));
          }
        });
    return changed;
  }
}

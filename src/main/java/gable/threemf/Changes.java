package gable.threemf;

import gable.opc.PackageEdit;
import gable.opc.Problem;
import java.util.List;

/**
 * What writing edits comes to.
 *
 * @param parts the changed parts with their new content
 * @param clones objects that were added because uses of one object differ now
 * @param notices what somebody should know of the result
 */
public record Changes(List<SplicedPart> parts, List<Clone> clones, List<Problem> notices) {

  /**
   * An object that was added.
   *
   * @param part name of the part
   * @param original id of the object that it is a changed copy of
   * @param id its own id
   */
  public record Clone(String part, int original, int id) {}

  public Changes {
    parts = List.copyOf(parts);
    clones = List.copyOf(clones);
    notices = List.copyOf(notices);
  }

  /** The changes as an edit of the package, ready to be written. */
  public PackageEdit packageEdit() {
    PackageEdit edit = PackageEdit.NONE;
    for (SplicedPart part : parts) {
      edit = edit.replace(part.name(), part.content());
    }
    return edit;
  }
}

package gable.pipeline;

import gable.opc.Compression;
import gable.opc.OpcPackage;
import gable.opc.PackageEdit;
import gable.opc.PackageException;
import gable.opc.PackageWriter;
import gable.opc.PartRoles;
import gable.opc.WriteException;
import gable.threemf.Changes;
import gable.threemf.ModelLimits;
import gable.threemf.ModelPackage;
import gable.threemf.ModelWriter;
import gable.threemf.ObjectEdit;
import gable.threemf.SplicedPart;
import gable.validate.Guard;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Executor;

/** The new package: what is to be written, what is to be said about it, and what it must hold. */
final class Rewrite {

  private final OpcPackage source;
  private final List<ObjectEdit> edits;
  private final PackageEdit edit;
  private final List<Notice> notices;
  private final boolean clones;
  private final Settings settings;

  private Rewrite(
      OpcPackage source,
      List<ObjectEdit> edits,
      PackageEdit edit,
      List<Notice> notices,
      boolean clones,
      Settings settings) {
    this.source = source;
    this.edits = edits;
    this.edit = edit;
    this.notices = notices;
    this.clones = clones;
    this.settings = settings;
  }

  static Rewrite of(
      OpcPackage source, ModelPackage model, List<ObjectEdit> edits, Settings settings)
      throws PackageException {
    PackageEdit edit = PackageEdit.NONE;
    Changes changes = ModelWriter.splice(model, edits);
    for (SplicedPart part : changes.parts()) {
      edit = edit.replace(part.name(), part.content());
    }
    List<String> changed = changes.parts().stream().map(SplicedPart::name).toList();
    Stale stale = Stale.of(source, changed, settings.handling().unknownParts());
    for (String part : stale.dropped()) {
      edit = edit.drop(part);
    }
    List<Notice> notices = new ArrayList<>(Problems.notices(changes.notices()));
    changes.clones().forEach(clone -> notices.add(cloned(clone)));
    notices.addAll(stale.notices());
    return new Rewrite(source, edits, edit, notices, !changes.clones().isEmpty(), settings);
  }

  private static Notice cloned(Changes.Clone clone) {
    return new Notice(
        "object-cloned",
        Notice.Level.NOTE,
        clone.part(),
        String.format(
            Locale.ROOT,
            "object %d lies several ways up: object %d is its copy for one of them",
            clone.original(),
            clone.id()));
  }

  /** What the change means for other parts and objects. */
  List<Notice> notices() {
    return new ArrayList<>(notices);
  }

  void writeTo(OutputStream target) throws PackageException, WriteException {
    Executor workers =
        job -> {
          Thread thread = new Thread(job, "gable deflate");
          thread.setDaemon(true);
          thread.start();
        };
    Compression effort = new Compression(Compression.AS_BEFORE, settings.threads(), workers);
    PackageWriter.write(source, edit, effort, target);
  }

  /**
   * The written package, read again, must hold the meshes that were meant, and closed ones, and
   * must break no rule that the input keeps.
   */
  void check(OpcPackage written, Conformance conformance) throws PackageException {
    Guard guard = new Guard(written, PartRoles.of(written));
    ModelPackage model =
        ModelPackage.read(
            written, ModelLimits.USUAL, guard::visitor, Beside.aside(settings.threads()));
    conformance.check(guard.finish(), clones);
    edits.forEach(each -> new ReadBack(each).check(model));
  }
}

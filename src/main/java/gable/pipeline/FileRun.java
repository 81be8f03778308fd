package gable.pipeline;

import gable.opc.OpcPackage;
import gable.opc.PackageException;
import gable.opc.Place;
import gable.opc.Problem;
import gable.opc.Rule;
import gable.opc.WriteException;
import gable.pipeline.FileResult.Rejected.Cause;
import gable.threemf.ModelPackage;
import gable.threemf.ObjectEdit;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** One file the whole way: read, place, reshape, write, read back. Used once. */
final class FileRun {

  private static final Rule MEMORY =
      Rule.error(
          "limit-memory",
          "limit on memory",
          "split the model, or give the program more memory (java -Xmx)");
  private static final String NOTHING = "nothing-examined";

  private final Opened opened;
  private final OpcPackage content;
  private final Optional<Output> output;
  private final Work work;
  private final List<ObjectResult> objects = new ArrayList<>();
  private final List<Notice> notices = new ArrayList<>();
  private Joints joints = Joints.NONE;

  private FileRun(Opened opened, OpcPackage content, Optional<Output> output, Work work) {
    this.opened = opened;
    this.content = content;
    this.output = output;
    this.work = work;
  }

  /**
   * Runs.
   *
   * @param output where the result goes; nothing for an inspection
   */
  static FileResult of(Input input, Optional<Output> output, Work work) {
    ModelPackage.warmUp(Beside.aside(work.settings().threads()));
    Opened opened;
    try {
      opened = Opened.of(input);
    } catch (PackageException e) {
      return Problems.invalid(Source.unread(input.name()), e);
    } catch (OutOfMemoryError e) {
      return Problems.invalid(Source.unread(input.name()), tooLarge(e));
    }
    try (OpcPackage content = opened.content()) {
      return new FileRun(opened, content, output, work).run();
    } catch (PackageException e) {
      return Problems.invalid(opened.source(), e);
    } catch (OutOfMemoryError e) {
      return Problems.invalid(opened.source(), tooLarge(e));
    } catch (IOException e) {
      throw new IllegalStateException("closing what was only read does not fail", e);
    }
  }

  /** What was held for this file is free again, so that the next one may well succeed. */
  private static PackageException tooLarge(OutOfMemoryError e) {
    long most = Runtime.getRuntime().maxMemory() >> 20;
    return new PackageException(
        new Problem(
            MEMORY,
            Place.FILE,
            "it takes more memory than there is",
            "a file that can be worked on in " + most + " MiB"),
        e);
  }

  private FileResult run() throws PackageException {
    Laid laid = Laid.of(content, work);
    notices.addAll(laid.notices());
    PartnerFiles partners = PartnerFiles.of(work);
    if (partners.refusal().isPresent()) {
      return rejected(Cause.INVALID, partners.refusal().get());
    }
    notices.addAll(partners.notices());
    Joinery.Result result = new Joinery(work).run(laid.plate().tasks(), partners.stocks());
    List<ObjectTask.Done> done = result.done();
    joints = result.joints();
    done.forEach(each -> objects.add(each.result()));
    done.forEach(each -> each.notice().ifPresent(notices::add));
    objects.addAll(laid.plate().skipped());
    notices.addAll(work.notices());
    notices.addAll(Failures.of(objects));
    notices.addAll(Strays.of(work.settings().choice(), objects));
    List<ObjectEdit> edits = done.stream().flatMap(each -> each.edit().stream()).toList();
    return finished(laid.model(), edits, laid.conformance());
  }

  private FileResult finished(ModelPackage model, List<ObjectEdit> edits, Conformance conformance)
      throws PackageException {
    if (objects.stream().noneMatch(each -> each.fold(examined -> true, skipped -> false))) {
      return rejected(Cause.NOTHING_EXAMINED, nothing());
    }
    try {
      if (edits.isEmpty()) {
        return unchanged();
      }
      return changed(Rewrite.of(content, model, edits, work.settings()), conformance);
    } catch (WriteException e) {
      return rejected(Cause.NOT_WRITTEN, Problems.notice(e.problem()));
    }
  }

  /**
   * Why nothing could be examined: the only object's reason, or the first of several. Where no
   * object is at fault, because a broken item of the build never comes to one, it is that item's.
   */
  private Notice nothing() {
    List<Notice> reasons =
        objects.stream()
            .flatMap(o -> o.fold(examined -> Stream.<Notice>empty(), s -> Stream.of(s.reason())))
            .toList();
    Optional<Notice> broken = notices.stream().filter(FileRun::isError).findFirst();
    if (broken.isPresent() && reasons.stream().noneMatch(FileRun::isError)) {
      return new Notice(
          NOTHING,
          Notice.Level.ERROR,
          "",
          "nothing of the build can be examined: " + broken.get().sentence());
    }
    if (reasons.isEmpty()) {
      return new Notice(
          NOTHING,
          Notice.Level.ERROR,
          "",
          "there is no object in it; expected at least one closed mesh of type model in the build");
    }
    Notice first = reasons.stream().filter(FileRun::isError).findFirst().orElse(reasons.get(0));
    String intro =
        reasons.size() == 1
            ? "the only object cannot be examined: "
            : "none of its " + reasons.size() + " objects can be examined, for example: ";
    return new Notice(NOTHING, Notice.Level.ERROR, "", intro + first.sentence());
  }

  private static boolean isError(Notice notice) {
    return notice.level() == Notice.Level.ERROR;
  }

  private FileResult unchanged() throws PackageException, WriteException {
    Source source = opened.source();
    if (output.isPresent()) {
      content.requireSound();
      Delivery delivery = new Delivery(opened, output.get());
      if (!delivery.isOntoInput()) {
        delivery.write(opened.bytes()::writeTo, written -> {});
      }
    }
    return new FileResult.Unchanged(source, objects, notices, joints);
  }

  private FileResult changed(Rewrite rewrite, Conformance conformance)
      throws PackageException, WriteException {
    Source source = opened.source();
    notices.addAll(rewrite.notices());
    if (output.isPresent()) {
      new Delivery(opened, output.get())
          .write(rewrite::writeTo, written -> rewrite.check(written, conformance));
    }
    return new FileResult.Changed(source, objects, notices, joints, output.isPresent());
  }

  private FileResult rejected(Cause cause, Notice reason) {
    return new FileResult.Rejected(opened.source(), cause, reason, objects, notices, joints);
  }
}

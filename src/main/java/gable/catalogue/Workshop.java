package gable.catalogue;

import gable.pipeline.FileResult;
import gable.pipeline.Gable;
import gable.pipeline.Input;
import gable.pipeline.Notice;
import gable.pipeline.Observer;
import gable.pipeline.Output;
import gable.pipeline.Source;
import gable.report.Account;
import gable.report.Digest;
import gable.report.HtmlReport;
import gable.report.Overhang;
import gable.report.Pictures;
import gable.report.Shape;
import gable.report.Shapes;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.BooleanSupplier;

/** Works on one model: reshapes it aside and draws it. Touches nothing that is in place. */
final class Workshop {

  private final Gable gable;
  private final Plan plan;
  private final Folder folder;

  Workshop(Gable gable, Plan plan, Folder folder) {
    this.gable = gable;
    this.plan = plan;
    this.folder = folder;
  }

  /**
   * Works on a model.
   *
   * @param number of this job, different for each
   * @param told tells when to stop
   */
  Made make(ModelFile model, long number, BooleanSupplier told) {
    if (Folder.isReserved(model)) {
      return Made.nothing(
          rejected(
              model,
              "reserved-name",
              "its name is that of something which a catalogue writes. To do: give the file or its"
                  + " folder another name."),
          "reserved-name");
    }
    Shapes shapes =
        new Shapes(
            new Observer() {
              @Override
              public boolean cancelled() {
                return told.getAsBoolean();
              }
            });
    Input input = Input.file(model.path(), model.name());
    if (plan.dryRun()) {
      FileResult result = gable.inspect(input, plan.settings(), shapes);
      return made(result, shapes.of(result), Optional.empty());
    }
    Path aside = folder.aside("model.3mf", number);
    FileResult result = gable.reshape(input, Output.file(aside), plan.settings(), shapes);
    return made(result, shapes.of(result), Optional.of(aside));
  }

  private Made made(FileResult result, List<Shape> shapes, Optional<Path> aside) {
    String cause = cause(result);
    return new Made(
        result,
        cause,
        cause.isEmpty() ? aside : Optional.empty(),
        plan.dryRun() ? List.of() : pictures(result, shapes),
        plan.dryRun() || !plan.reports()
            ? Optional.empty()
            : Optional.of(page(result, shapes, aside)),
        Overhang.of(shapes, plan.settings()));
  }

  /** Without the view that can be turned, which is large; preview makes a page that has it. */
  private String page(FileResult result, List<Shape> shapes, Optional<Path> aside) {
    String hash = "";
    try {
      hash = cause(result).isEmpty() && aside.isPresent() ? Digest.of(aside.get()) : "";
    } catch (IOException e) {
      // whoever puts it in place will say what is wrong
    }
    Account account = Account.of(result, plan.settings(), false, shapes, hash);
    return new HtmlReport(account, shapes, plan.settings(), false).page();
  }

  private static List<byte[]> pictures(FileResult result, List<Shape> shapes) {
    if (shapes.isEmpty()) {
      return List.of();
    }
    Pictures drawn = Pictures.of(shapes);
    List<byte[]> pictures = new ArrayList<>();
    pictures.add(drawn.before());
    if (isChanged(result)) {
      pictures.add(drawn.after());
    }
    return pictures;
  }

  private static boolean isChanged(FileResult result) {
    return result instanceof FileResult.Changed;
  }

  private static String cause(FileResult result) {
    return result instanceof FileResult.Rejected rejected
        ? rejected.cause().name().toLowerCase(Locale.ROOT).replace('_', '-')
        : "";
  }

  /** A model of which there is nothing to say but why it was rejected. */
  static FileResult rejected(ModelFile model, String code, String message) {
    return new FileResult.Rejected(
        new Source(model.name(), model.bytes(), ""),
        FileResult.Rejected.Cause.INVALID,
        new Notice(code, Notice.Level.ERROR, "", message),
        List.of(),
        List.of());
  }
}

package gable.cli;

import gable.catalogue.Catalogue;
import gable.catalogue.Plan;
import gable.catalogue.Refusal;
import gable.catalogue.Tally;
import gable.pipeline.Gable;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** {@code gable catalogue IN_DIR OUT_DIR}: every model below a folder. */
final class CatalogueCommand {

  private final Given call;
  private final Streams streams;

  CatalogueCommand(Given call, Streams streams) {
    this.call = call;
    this.streams = streams;
  }

  int run() throws WrongCall {
    Gable gable = Installed.gable(call);
    Wishes wishes = new Wishes(call);
    FolderWishes folders = new FolderWishes(call);
    Plan plan = folders.plan(wishes.settings(gable.names()));
    Set<String> gate = folders.gate();
    List<String> names = call.files();
    if (names.size() != 2) {
      throw new WrongCall("catalogue takes two folders: IN_DIR and OUT_DIR");
    }
    Path input = Ends.path(names.get(0));
    Path output = Ends.path(names.get(1));
    Progress progress = Progress.on(streams, wishes.quiet());
    wishes.remark().ifPresent(progress::remark);
    Interruption interruption = new Interruption(progress);
    try {
      Tally tally = new Catalogue(gable, plan).run(input, output, progress);
      progress.end();
      if (!wishes.quiet()) {
        streams.text().print(summary(tally, plan, output));
      }
      return Math.max(code(tally), gateCode(gate, tally));
    } catch (Refusal e) {
      progress.end();
      return refused(e);
    } finally {
      interruption.runIsOver();
    }
  }

  private int refused(Refusal e) throws WrongCall {
    if (e.kind() == Refusal.Kind.CALL) {
      throw new WrongCall(String.valueOf(e.getMessage()));
    }
    streams.err().println("gable: " + e.getMessage());
    return e.kind() == Refusal.Kind.INPUT ? ExitCode.INVALID : ExitCode.NOT_WRITTEN;
  }

  private int gateCode(Set<String> gate, Tally tally) {
    boolean failed =
        (gate.contains("left") && tally.open() > 0)
            || (gate.contains("rejected") && tally.rejected() > 0)
            || (gate.contains("notice") && tally.remarks() > 0);
    return failed ? ExitCode.NOT_MET : ExitCode.DONE;
  }

  private static int code(Tally tally) {
    return tally.causes().stream().mapToInt(CatalogueCommand::code).max().orElse(ExitCode.DONE);
  }

  private static int code(String cause) {
    return switch (cause) {
      case "not-written" -> ExitCode.NOT_WRITTEN;
      case "nothing-examined" -> ExitCode.NOTHING_EXAMINED;
      case "fault" -> ExitCode.INTERNAL;
      default -> ExitCode.INVALID;
    };
  }

  private static String summary(Tally tally, Plan plan, Path output) {
    String would = plan.dryRun() ? " would be" : "";
    StringBuilder text = new StringBuilder();
    text.append(
        String.format(
            Locale.ROOT,
            "%d models:%s %d changed, %d as they were, %d rejected; %d known from an earlier run%n"
                + "%d features%s reshaped, %d left that may hang in the air, %d remarks%n",
            tally.models(),
            would,
            tally.changed(),
            tally.unchanged(),
            tally.rejected(),
            tally.reused(),
            tally.reshaped(),
            would,
            tally.open(),
            tally.remarks()));
    if (!tally.skipped().isEmpty()) {
      text.append(tally.skipped().size())
          .append(" names were not looked at (links, or unreadable)");
      text.append(System.lineSeparator());
    }
    if (!plan.dryRun() && tally.complete()) {
      text.append("see ").append(output.resolve("index.html")).append(System.lineSeparator());
    }
    return text.toString();
  }
}

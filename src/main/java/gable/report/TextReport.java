package gable.report;

import gable.geom.Affine3;
import gable.pipeline.Change;
import gable.pipeline.FeatureResult;
import gable.pipeline.FileResult;
import gable.pipeline.Notice;
import gable.pipeline.ObjectResult;
import gable.pipeline.Outcome;
import gable.pipeline.Settings;
import gable.plan.Measure;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Results as a short table for people: each feature, where it is, how large, and what was done or
 * why nothing was. A feature that shows at several places of its object has one row.
 */
public final class TextReport {

  /** Measures that only the JSON shows: they follow from the others. */
  private static final Set<String> DETAILS = Set.of("angle-in-section", "rise");

  private final Settings settings;
  private final boolean inspection;

  /**
   * Reports of one run.
   *
   * @param settings what the run was asked for
   * @param inspection true if nothing was to be written, so that changes are planned ones
   */
  public TextReport(Settings settings, boolean inspection) {
    this.settings = settings;
    this.inspection = inspection;
  }

  /** The table of one file with its notices and a closing line; ends with a line feed. */
  public String text(FileResult result) {
    StringBuilder text = new StringBuilder();
    text.append(Words.safe(result.source().name())).append('\n');
    List<ObjectResult.Examined> objects = Notices.examined(result);
    Rows rows = new Rows();
    for (ObjectResult.Examined object : objects) {
      if (result.objects().size() > 1 && !object.features().isEmpty()) {
        rows.heading(object.place().words() + places(object));
      }
      object.features().forEach(feature -> rows.add(row(result, object, feature)));
    }
    rows.appendTo(text);
    for (Notice notice : Notices.forPeople(result)) {
      text.append("  ").append(word(notice.level())).append(notice.sentence()).append('\n');
    }
    text.append("  ").append(summary(result, objects)).append('\n');
    return text.toString();
  }

  private static String word(Notice.Level level) {
    return switch (level) {
      case NOTE -> "note: ";
      case WARNING -> "warning: ";
      case ERROR -> "not done: ";
    };
  }

  private static String places(ObjectResult.Examined object) {
    int uses = object.place().uses().size();
    return uses == 1 ? "" : ", at " + uses + " places";
  }

  private static List<String> row(
      FileResult file, ObjectResult.Examined object, FeatureResult result) {
    String joint = PairWords.of(file.joints(), object.place(), result.feature().id());
    String fate =
        result.reason().map(reason -> "left: " + reason.sentence()).orElseGet(() -> done(result));
    FeatureView view = FeatureView.of(result.feature(), Affine3.IDENTITY);
    return List.of(
        object.place().featureId(result.feature().id(), 0),
        view.words(),
        "at " + Figures.point(view.middle()),
        joint.isEmpty() ? fate : fate + "; " + joint);
  }

  private static String done(FeatureResult result) {
    return result.changes().stream().map(TextReport::words).collect(Collectors.joining("; "));
  }

  /** The shapes that a feature was given. */
  static String shapes(FeatureResult result) {
    return result.changes().stream()
        .filter(change -> change.outcome() == Outcome.RESHAPED)
        .map(change -> change.profile().replace('-', ' ') + " " + change.by())
        .collect(Collectors.joining(", "));
  }

  private static String words(Change change) {
    if (change.outcome() == Outcome.LEFT) {
      String why = change.reason().map(reason -> reason.sentence()).orElse("");
      return "no " + change.by() + ": " + why;
    }
    String numbers =
        change.measures().stream()
            .filter(measure -> !DETAILS.contains(measure.name()))
            .map(TextReport::words)
            .collect(Collectors.joining(", "));
    return change.profile().replace('-', ' ') + " " + change.by() + ": " + numbers;
  }

  /** A measure in words with its unit. */
  static String words(Measure measure) {
    String value =
        switch (measure.quantity()) {
          case LENGTH -> Figures.length(measure.value());
          case ANGLE -> Figures.degrees(measure.value()) + " degrees";
          case VOLUME -> String.format(Locale.ROOT, "%.1f mm3", measure.value());
        };
    return measure.name().replace('-', ' ') + " " + value;
  }

  private String summary(FileResult result, List<ObjectResult.Examined> objects) {
    long all = objects.stream().mapToLong(o -> o.features().size()).sum();
    long changed =
        objects.stream()
            .flatMap(o -> o.features().stream())
            .filter(f -> f.outcome() == Outcome.RESHAPED)
            .count();
    return result.fold(
        new FileResult.Cases<>() {
          @Override
          public String changed(FileResult.Changed done) {
            String verb = inspection ? " would be reshaped, " : " reshaped, ";
            return count(all) + ": " + changed + verb + (all - changed) + " left; " + slope();
          }

          @Override
          public String unchanged(FileResult.Unchanged done) {
            String what = inspection ? "nothing to change" : "nothing changed";
            return count(all) + ": " + what + "; " + slope();
          }

          @Override
          public String rejected(FileResult.Rejected done) {
            return "nothing was written";
          }
        });
  }

  private static String count(long features) {
    return features == 1 ? "1 feature" : features + " features";
  }

  private String slope() {
    double limit = settings.limits().slope();
    return String.format(
        Locale.ROOT,
        "slope limit %s degrees from the horizontal, %s from the vertical",
        Figures.degrees(limit),
        Figures.degrees(Math.PI / 2 - limit));
  }

  /** Rows whose cells are lined up, with headings between them. */
  private static final class Rows {

    private final List<List<String>> rows = new ArrayList<>();
    private final List<Integer> widths = new ArrayList<>();

    void heading(String words) {
      rows.add(List.of(words));
    }

    void add(List<String> cells) {
      rows.add(cells);
      for (int column = 0; column < cells.size() - 1; column++) {
        int width = cells.get(column).length();
        if (column == widths.size()) {
          widths.add(width);
        } else {
          widths.set(column, Math.max(width, widths.get(column)));
        }
      }
    }

    void appendTo(StringBuilder text) {
      for (List<String> cells : rows) {
        text.append("  ");
        for (int column = 0; column < cells.size(); column++) {
          String cell = cells.get(column);
          text.append(cell);
          if (column < cells.size() - 1) {
            text.append(" ".repeat(widths.get(column) - cell.length() + 2));
          }
        }
        text.append('\n');
      }
    }
  }
}

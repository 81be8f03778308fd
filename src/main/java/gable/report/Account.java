package gable.report;

import gable.geom.Affine3;
import gable.pipeline.FeatureResult;
import gable.pipeline.FileResult;
import gable.pipeline.Notice;
import gable.pipeline.ObjectResult;
import gable.pipeline.Outcome;
import gable.pipeline.Settings;
import gable.plan.Limits;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * Everything that a report of one file says, whatever its format.
 *
 * @param name the file, as it was called; raw
 * @param sentence what was done, in one sentence
 * @param features every feature, in the order of the build
 * @param notices what is to be said besides, refusals first
 * @param overhang overhang before and after
 * @param settings each setting by its name
 * @param files SHA-256 and length of the files, by their role
 */
public record Account(
    String name,
    String sentence,
    List<Line> features,
    List<Notice> notices,
    Overhang overhang,
    Map<String, String> settings,
    Map<String, String> files) {

  /** Copies the lists. */
  public Account {
    features = List.copyOf(features);
    notices = List.copyOf(notices);
  }

  /**
   * A feature.
   *
   * @param id its id in the file
   * @param object the object that has it, in words; raw
   * @param what kind and size
   * @param where its middle, in print space
   * @param diameter in millimetres, for sorting
   * @param outcome {@code planned}, {@code reshaped} or {@code left}
   * @param done what was done, in words; empty if left
   * @param measures numbers about what was done, each with its name and unit
   * @param reason code of the reason why it was left; empty if it was not
   * @param why the reason in words
   * @param remedy what the user can do
   * @param joint the other half of its joint and the clearance; empty if there is none
   */
  public record Line(
      String id,
      String object,
      String what,
      String where,
      double diameter,
      String outcome,
      String done,
      List<String> measures,
      String reason,
      String why,
      String remedy,
      String joint) {

    /** Copies the list. */
    public Line {
      measures = List.copyOf(measures);
    }
  }

  /**
   * The account of a run.
   *
   * @param settings what the run was asked for
   * @param inspection whether nothing was to be written
   * @param shapes the surfaces that the run showed
   * @param output SHA-256 of what was written; empty if nothing was, or if it is not known
   */
  public static Account of(
      FileResult result, Settings settings, boolean inspection, List<Shape> shapes, String output) {
    List<Line> lines = new ArrayList<>();
    for (ObjectResult.Examined object : Notices.examined(result)) {
      for (FeatureResult feature : object.features()) {
        String joint = PairWords.of(result.joints(), object.place(), feature.feature().id());
        lines.add(line(object, feature, inspection, joint));
      }
    }
    Map<String, String> files = new LinkedHashMap<>();
    String bytes = String.format(Locale.ROOT, ", %d bytes", result.source().bytes());
    files.put("before", or(result.source().sha256(), "not known") + bytes);
    if (!inspection) {
      files.put("after", or(output, "not known"));
    }
    return new Account(
        result.source().name(),
        sentence(result, lines, inspection),
        lines,
        Notices.forPeople(result),
        Overhang.of(shapes, settings),
        settings(settings),
        files);
  }

  private static String or(String text, String otherwise) {
    return text.isEmpty() ? otherwise : text;
  }

  private static Line line(
      ObjectResult.Examined object, FeatureResult result, boolean inspection, String joint) {
    FeatureView view = FeatureView.of(result.feature(), Affine3.IDENTITY);
    boolean reshaped = result.outcome() == Outcome.RESHAPED;
    String code = result.reason().map(reason -> reason.code()).orElse("");
    int places = object.place().uses().size();
    return new Line(
        object.place().featureId(result.feature().id(), 0),
        object.place().words() + (places > 1 ? ", at " + places + " places" : ""),
        view.words(),
        Figures.point(view.middle()),
        view.diameter(),
        reshaped ? (inspection ? "planned" : "reshaped") : "left",
        reshaped ? TextReport.shapes(result) : "",
        result.changes().stream()
            .flatMap(change -> change.measures().stream())
            .map(TextReport::words)
            .toList(),
        code,
        result.reason().map(reason -> reason.sentence()).orElse(""),
        code.isEmpty() ? "" : Remedies.of(code),
        joint);
  }

  private static String sentence(FileResult result, List<Line> lines, boolean inspection) {
    long changed = lines.stream().filter(line -> !line.outcome().equals("left")).count();
    long left = lines.size() - changed;
    return result.fold(
        new FileResult.Cases<>() {
          @Override
          public String changed(FileResult.Changed done) {
            String verb = inspection ? "would get a shape that prints" : "got a shape that prints";
            return String.format(
                Locale.ROOT,
                "%d of %d %s %s without support, %d %s; everything else %s untouched.",
                changed,
                lines.size(),
                lines.size() == 1 ? "feature" : "features",
                verb,
                left,
                left == 1 ? "stays as it is" : "stay as they are",
                inspection ? "would stay" : "is");
          }

          @Override
          public String unchanged(FileResult.Unchanged done) {
            return lines.isEmpty()
                ? "There is nothing to change: no round bore and no pin was found."
                : "Nothing "
                    + (inspection ? "would be" : "was")
                    + " changed; the reasons are below.";
          }

          @Override
          public String rejected(FileResult.Rejected done) {
            return "Nothing was done: " + done.reason().sentence();
          }
        });
  }

  private static Map<String, String> settings(Settings settings) {
    Limits limits = settings.limits();
    Map<String, String> all = new LinkedHashMap<>();
    all.put("slope", Figures.degrees(limits.slope()) + " degrees from the horizontal");
    all.put("smallest bore", Figures.length(limits.smallestBore()));
    all.put(
        "largest bore",
        Double.isInfinite(limits.largestBore()) ? "any" : Figures.length(limits.largestBore()));
    all.put("least roof", Figures.length(limits.leastRoof()));
    all.put("longest bridge", Figures.length(limits.longestBridge()));
    putJoint(all, limits.joint());
    all.put("up", Figures.point(settings.up()));
    all.put("mixed orientation", Figures.word(settings.handling().mixedOrientation()));
    all.put("unknown parts", Figures.word(settings.handling().unknownParts()));
    all.put("join vertices", settings.handling().joinVertices() ? "yes" : "no");
    put(all, "only", settings.choice().only());
    put(all, "skip", settings.choice().skip());
    put(all, "with", settings.choice().with());
    put(all, "without", settings.choice().without());
    return all;
  }

  private static void putJoint(Map<String, String> all, Limits.Joint joint) {
    all.put(
        "tip",
        joint.tip().isPresent() ? Figures.length(joint.tip().getAsDouble()) : "by the diameter");
    all.put("lead-in", Figures.length(joint.leadIn()));
    all.put("web width", Figures.length(joint.webWidth()));
    all.put("clearance", Figures.length(joint.clearance()));
    all.put("gusset", Figures.word(joint.webs()));
  }

  private static void put(Map<String, String> all, String name, Set<String> words) {
    if (!words.isEmpty()) {
      all.put(name, String.join(", ", words.stream().sorted().toList()));
    }
  }
}

package gable.report;

import static java.util.Map.entry;

import gable.pipeline.FeatureResult;
import gable.pipeline.Notice;
import gable.pipeline.Settings;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;

/**
 * The report of one file as one HTML page that needs nothing else: what was done, every feature
 * with a section drawn to scale before and after, notices, cautions, settings, hashes. Text from
 * the file is escaped. The same result gives the same bytes.
 */
public final class HtmlReport {

  /** Drawings stop here, so that a page with very many features stays below 8 MB. */
  private static final int MOST_DRAWING_CHARS = 4_000_000;

  private final Account account;
  private final List<Shape> shapes;
  private final Settings settings;
  private final ModelView view;

  /**
   * The report of a run whose surfaces were kept.
   *
   * @param withModel whether the page has a view of the model that can be turned, which costs it
   *     some 0.8 MB
   */
  public HtmlReport(Account account, List<Shape> shapes, Settings settings, boolean withModel) {
    this.view = new ModelView(shapes, withModel);
    this.account = account;
    this.shapes = shapes;
    this.settings = settings;
  }

  /** The page. */
  public String page() {
    Tool tool = Tool.here();
    return Look.fill(
        Look.resource("/gable/report/report.html"),
        Map.ofEntries(
            entry("look", Look.css()),
            entry("style", Look.resource("/gable/report/report.css")),
            entry("name", Look.html(account.name())),
            entry("sentence", Look.html(account.sentence())),
            entry("overhang", overhang()),
            entry("model", view.html()),
            entry("scripts", view.scripts()),
            entry("rows", rows()),
            entry("details", details()),
            entry("notices", notices()),
            entry("cautions", cautions()),
            entry("facts", facts()),
            entry("tool", Look.html(tool.name() + " " + tool.version()))));
  }

  private String overhang() {
    return String.format(
        Locale.ROOT,
        "<table><thead><tr><td></td><th scope=\"col\" class=\"n\">before</th><th scope=\"col\""
            + " class=\"n\">after</th></tr></thead><tbody><tr><th scope=\"row\">Area that hangs in"
            + " the air, mm²</th><td class=\"n\">%.1f</td><td"
            + " class=\"n\">%.1f</td></tr></tbody></table>%s",
        account.overhang().before(),
        account.overhang().after(),
        view.pictures());
  }

  private String rows() {
    StringBuilder rows = new StringBuilder();
    for (Account.Line line : account.features()) {
      rows.append("<tr data-outcome=\"").append(line.outcome()).append("\"><td><a href=\"#f-");
      rows.append(Look.html(line.id())).append("\">").append(Look.html(line.id()));
      rows.append("</a></td><td>").append(Look.html(line.what())).append("</td><td class=\"n\">");
      rows.append(String.format(Locale.ROOT, "%.2f", line.diameter()));
      rows.append("</td><td>").append(Look.html(line.where())).append("</td><td class=\"o-");
      rows.append(line.outcome()).append("\">").append(line.outcome()).append("</td><td>");
      rows.append(Look.html(line.reason().isEmpty() ? line.done() : line.why()));
      rows.append("</td></tr>\n");
    }
    return rows.toString();
  }

  private String details() {
    Map<FeatureResult, Shape> shapeOf = new HashMap<>();
    Map<Shape, Slices> before = new HashMap<>();
    Map<Shape, Slices> after = new HashMap<>();
    List<FeatureResult> order =
        shapes.stream().flatMap(shape -> Notices.features(shape.result()).stream()).toList();
    for (Shape shape : shapes) {
      Notices.features(shape.result()).forEach(feature -> shapeOf.put(feature, shape));
      before.put(shape, new Slices(shape.before()));
      after.put(shape, new Slices(shape.edit().isEmpty() ? shape.before() : shape.after()));
    }
    StringBuilder text = new StringBuilder();
    for (int index = 0; index < account.features().size(); index++) {
      String drawings = "<p class=\"soft\">Not drawn: the page has very many features.</p>";
      if (text.length() < MOST_DRAWING_CHARS && index < order.size()) {
        FeatureResult feature = order.get(index);
        Shape shape = Objects.requireNonNull(shapeOf.get(feature));
        Slices then = Objects.requireNonNull(before.get(shape));
        Slices now = Objects.requireNonNull(after.get(shape));
        drawings = drawings(feature, then, now, shape, index);
      }
      detail(text, account.features().get(index), drawings);
    }
    return text.toString();
  }

  private String drawings(
      FeatureResult feature, Slices before, Slices after, Shape shape, int index) {
    Drawing drawing = new Drawing(feature, settings.limits().slope());
    Account.Line line = account.features().get(index);
    String title = line.id() + ", " + line.what() + ", section square to its axis, ";
    boolean left = line.outcome().equals("left");
    String old = drawing.svg(before, facet -> false, title + (left ? "as it is" : "before"), false);
    String first = figure(old, left ? "as it is" : "before");
    if (left) {
      return "<div class=\"pair\">" + first + "</div>";
    }
    String measures = String.join(", ", line.measures());
    String changed = drawing.svg(after, shape::isNew, title + "after: " + measures, true);
    return "<div class=\"pair\">" + first + figure(changed, "after") + "</div>";
  }

  private static String figure(String svg, String caption) {
    return "<figure>" + svg + "<figcaption>" + caption + ", mm</figcaption></figure>";
  }

  private static void detail(StringBuilder text, Account.Line line, String drawings) {
    text.append("<article id=\"f-").append(Look.html(line.id())).append("\" data-outcome=\"");
    text.append(line.outcome()).append("\"><h3>").append(Look.html(line.id())).append(" · ");
    text.append(Look.html(line.what())).append(" · <span class=\"o-").append(line.outcome());
    text.append("\">").append(line.outcome()).append("</span></h3>");
    text.append(drawings);
    text.append("<dl>");
    fact(text, "object", line.object());
    fact(text, "middle", line.where() + " mm");
    fact(text, "done", line.done());
    if (!line.measures().isEmpty()) {
      fact(text, "measures", String.join(", ", line.measures()));
    }
    fact(text, "joint", line.joint());
    fact(text, "why", line.why());
    fact(text, "what you can do", line.remedy());
    text.append("</dl></article>\n");
  }

  private static void fact(StringBuilder text, String name, String value) {
    if (!value.isEmpty()) {
      text.append("<dt>").append(Look.html(name)).append("</dt><dd>");
      text.append(Look.html(value)).append("</dd>");
    }
  }

  private String notices() {
    if (account.notices().isEmpty()) {
      return "<p class=\"soft\">None.</p>";
    }
    StringBuilder list = new StringBuilder("<ul>");
    for (Notice notice : account.notices()) {
      String level = Figures.word(notice.level());
      list.append("<li><span class=\"level-").append(level).append("\">").append(level);
      list.append("</span>: ").append(Look.html(notice.sentence())).append("</li>");
    }
    return list.append("</ul>").toString();
  }

  private static String cautions() {
    StringBuilder list = new StringBuilder("<ol>");
    Cautions.ALL.forEach(each -> list.append("<li>").append(Look.html(each)).append("</li>"));
    return list.append("</ol>").toString();
  }

  private String facts() {
    StringBuilder text = new StringBuilder("<h2>Settings</h2><dl>");
    account.settings().forEach((name, value) -> fact(text, name, value));
    text.append("</dl><h2>Files, by SHA-256</h2><dl>");
    account.files().forEach((name, value) -> fact(text, name, value));
    return text.append("</dl>").toString();
  }
}

package gable.report;

import static java.util.Map.entry;

import gable.compare.Body;
import gable.compare.Comparison;
import gable.compare.FeaturePair;
import gable.compare.Kind;
import gable.compare.ObjectPair;
import gable.mesh.Mesh;
import gable.plan.Limits;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/** A comparison as a page, as Markdown, or as plain text. The same files give the same bytes. */
public final class ComparisonReport {

  /** Drawings stop here, as in {@link HtmlReport}. */
  private static final int MOST_DRAWING_CHARS = 4_000_000;

  private static final Mesh NOTHING = Mesh.of(new double[0], new int[0]);

  private final Comparison held;
  private final ComparisonAccount account;
  private final List<Shape> shapes = new ArrayList<>();
  private final IdentityHashMap<Body, Slices> before = new IdentityHashMap<>();
  private final IdentityHashMap<Body, Slices> after = new IdentityHashMap<>();
  private final IdentityHashMap<Body, Shape> shapeOf = new IdentityHashMap<>();

  /** Reports of a comparison. */
  public ComparisonReport(Comparison held) {
    this.held = held;
    this.account = ComparisonAccount.of(held);
    for (ObjectPair pair : held.objects()) {
      Body any = pair.before().or(pair::after).orElseThrow();
      Mesh old = pair.before().map(Body::mesh).orElse(NOTHING);
      Shape shape = new Shape(any.result(), old, pair.edit());
      shapes.add(shape);
      pair.before().ifPresent(body -> before.put(body, new Slices(body.mesh())));
      pair.after().ifPresent(body -> after.put(body, new Slices(shape.after())));
      pair.after().ifPresent(body -> shapeOf.put(body, shape));
    }
  }

  /** What differs, in one sentence. */
  public String sentence() {
    return account.sentence();
  }

  /** The page. */
  public String page() {
    ModelView view = new ModelView(shapes, true);
    Tool tool = Tool.here();
    return Look.fill(
        Look.resource("/gable/report/compare.html"),
        Map.ofEntries(
            entry("look", Look.css()),
            entry("style", Look.resource("/gable/report/report.css")),
            entry("name", Look.html(account.name())),
            entry("sentence", Look.html(account.sentence())),
            entry("pictures", view.pictures()),
            entry("model", view.html()),
            entry("scripts", view.scripts()),
            entry("tables", tables()),
            entry("details", details()),
            entry("notices", notices()),
            entry("files", files()),
            entry("tool", Look.html(tool.name() + " " + tool.version()))));
  }

  private String tables() {
    StringBuilder text = new StringBuilder();
    for (ComparisonAccount.Table table : account.tables()) {
      text.append("<h2>").append(Look.html(table.title())).append("</h2>\n");
      if (!table.rows().isEmpty()) {
        table(text, table);
      }
      text.append("<p class=\"soft\">").append(ComparisonText.others(table)).append("</p>\n");
    }
    return text.toString();
  }

  private static void table(StringBuilder text, ComparisonAccount.Table table) {
    text.append("<div class=\"scroll\" tabindex=\"0\" role=\"region\" aria-label=\"");
    text.append(Look.html(table.title())).append("\"><table><thead><tr>");
    for (String head : table.heads()) {
      text.append("<th scope=\"col\">").append(Look.html(head)).append("</th>");
    }
    text.append("</tr></thead><tbody>\n");
    for (List<String> row : table.rows()) {
      text.append("<tr>");
      row.forEach(cell -> text.append("<td>").append(Look.html(cell)).append("</td>"));
      text.append("</tr>\n");
    }
    text.append("</tbody></table></div>\n");
  }

  private String details() {
    StringBuilder text = new StringBuilder();
    for (FeaturePair pair : held.features()) {
      if (pair.kind() != Kind.SAME && text.length() < MOST_DRAWING_CHARS) {
        String id = Look.html(ComparisonAccount.ids(pair));
        text.append("<article><h3>").append(id).append(" · ");
        text.append(ComparisonAccount.word(pair.kind())).append("</h3><div class=\"pair\">");
        text.append(drawing(pair.before(), before, "before"));
        text.append(drawing(pair.after(), after, "after"));
        text.append("</div></article>\n");
      }
    }
    return text.isEmpty() ? "<p class=\"soft\">None.</p>" : text.toString();
  }

  private String drawing(
      Optional<FeaturePair.Placed> placed, IdentityHashMap<Body, Slices> slices, String caption) {
    if (placed.isEmpty()) {
      return "";
    }
    FeaturePair.Placed each = placed.get();
    Shape shape = shapeOf.get(each.body());
    String what = ComparisonAccount.words(each.result().feature());
    String svg =
        new Drawing(each.result(), Limits.usual().slope())
            .svg(
                Objects.requireNonNull(slices.get(each.body())),
                facet -> shape != null && shape.isNew(facet),
                each.id() + ", " + what + ", section square to its axis, " + caption,
                false);
    return "<figure>"
        + svg
        + "<figcaption>"
        + caption
        + ", mm: "
        + Look.html(what)
        + "</figcaption></figure>";
  }

  private String notices() {
    if (account.notices().isEmpty()) {
      return "<p class=\"soft\">None.</p>";
    }
    StringBuilder list = new StringBuilder("<ul>");
    account.notices().forEach(each -> list.append("<li>").append(Look.html(each)).append("</li>"));
    return list.append("</ul>").toString();
  }

  private String files() {
    StringBuilder list = new StringBuilder("<dl>");
    account
        .files()
        .forEach(
            (which, words) ->
                list.append("<dt>")
                    .append(which)
                    .append("</dt><dd>")
                    .append(Look.html(words))
                    .append("</dd>"));
    return list.append("</dl>").toString();
  }

  /** The same as Markdown, without drawings. */
  public String markdown() {
    return ComparisonText.markdown(account);
  }

  /** The same as plain text, without drawings. */
  public String text() {
    return ComparisonText.plain(account);
  }
}

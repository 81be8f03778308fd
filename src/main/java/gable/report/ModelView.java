package gable.report;

import java.util.Base64;
import java.util.List;
import java.util.Map;

/** The model in a page: pictures, and a view that can be turned. */
final class ModelView {

  private final List<Shape> shapes;
  private final boolean withModel;

  /**
   * A view of surfaces.
   *
   * @param withModel whether it can be turned, which costs the page some 0.8 MB
   */
  ModelView(List<Shape> shapes, boolean withModel) {
    this.shapes = shapes;
    this.withModel = withModel;
  }

  /** The view that can be turned, if it is wanted and there is something to see. */
  String html() {
    if (!withModel || shapes.isEmpty()) {
      return "";
    }
    boolean all =
        shapes.stream().allMatch(shape -> shape.before().facetCount() <= Scene.FEW_FACETS);
    String exactness = all ? "" : "Away from the features it is coarser than the file.";
    return Look.fill(Look.resource("/gable/report/model.html"), Map.of("exactness", exactness));
  }

  /** What the view needs, for the end of the page. */
  String scripts() {
    if (!withModel || shapes.isEmpty()) {
      return "";
    }
    String build = "/META-INF/resources/webjars/three/" + Tool.threeVersion() + "/build/three.";
    return script("application/json", "scene", Look.inScript(new Scene(shapes).json()))
        + script("text/plain", "three-core", Look.resource(build + "core.min.js"))
        + script("text/plain", "three-module", Look.resource(build + "module.min.js"))
        + "<!-- three.js\n"
        + Look.resource("/gable/report/three-license.txt")
        + "-->\n<script>\n"
        + Look.resource("/gable/report/view.js")
        + "</script>\n";
  }

  private static String script(String type, String id, String text) {
    return "<script type=\"" + type + "\" id=\"" + id + "\">" + text + "</script>\n";
  }

  /** Pictures of the plate before and, if it is another, after. */
  String pictures() {
    if (shapes.isEmpty()) {
      return "";
    }
    Pictures drawn = Pictures.of(shapes);
    boolean changed = shapes.stream().anyMatch(shape -> !shape.edit().isEmpty());
    String before = picture(drawn.before(), "before");
    String both = changed ? before + picture(drawn.after(), "after") : before;
    return "<div class=\"pair\">" + both + "</div>";
  }

  private static String picture(byte[] png, String caption) {
    return "<figure><img alt=\"The plate "
        + caption
        + "\" width=\""
        + Pictures.WIDTH
        + "\" height=\""
        + Pictures.HEIGHT
        + "\" src=\"data:image/png;base64,"
        + Base64.getEncoder().encodeToString(png)
        + "\"><figcaption>"
        + caption
        + "</figcaption></figure>";
  }
}

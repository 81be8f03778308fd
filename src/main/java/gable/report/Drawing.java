package gable.report;

import gable.feature.Feature;
import gable.geom.Vec3;
import gable.mesh.Mesh;
import gable.pipeline.Change;
import gable.pipeline.FeatureResult;
import gable.plan.Measure;
import gable.section.Window;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.IntPredicate;

/**
 * A section through a feature, square to its axis, drawn to scale as SVG: the solid as the mesh has
 * it, what hangs in the air, new faces, and the dimensions. Colours come from the style sheet of
 * the page; what matters differs in the kind of line, too.
 */
final class Drawing {

  private static final double WIDTH = 300; // of the drawing, in its own units
  private static final double ASIDE = 2.1; // half the window, in radii
  private static final double BELOW = 1.7;
  private static final double ABOVE = 2.6;
  private static final double SLACK = Math.toRadians(0.1); // as in Overhang

  private final FeatureResult result;
  private final SectionPlane plane;
  private final Window window;
  private final double u;
  private final double v;
  private final double limit;

  /**
   * Drawings of a feature.
   *
   * @param limit slope limit in radians
   */
  Drawing(FeatureResult result, double limit) {
    Feature feature = result.feature();
    double r = feature.radius();
    this.result = result;
    this.plane = SectionPlane.of(feature);
    this.u = feature.axis().origin().dot(plane.u());
    this.v = feature.axis().origin().dot(plane.v());
    this.window = new Window(u - ASIDE * r, v - BELOW * r, u + ASIDE * r, v + ABOVE * r);
    this.limit = limit;
  }

  private double scale() {
    return WIDTH / window.width();
  }

  /**
   * One drawing.
   *
   * @param slices of the mesh, before or after
   * @param isNew which facets lie on new faces
   * @param title what it shows, for those who do not see it
   * @param after whether to show the dimensions of what was made
   */
  String svg(Slices slices, IntPredicate isNew, String title, boolean after) {
    Slice slice = slices.at(plane);
    StringBuilder svg = new StringBuilder();
    svg.append(
        String.format(
            Locale.ROOT,
            "<svg class=\"section\" role=\"img\" viewBox=\"0 0 %.0f %.0f\" aria-label=\"%s\">",
            WIDTH,
            window.height() * scale(),
            Look.html(title)));
    area(svg, slice);
    lines(svg, slice, slices.mesh(), isNew);
    axis(svg);
    dimensions(svg, after);
    return svg.append("</svg>").toString();
  }

  private void area(StringBuilder svg, Slice slice) {
    StringBuilder path = new StringBuilder();
    for (double[] ring : slice.rings()) {
      for (double[] seen : window.clipped(ring)) {
        for (int k = 0; k < seen.length; k += 2) {
          path.append(k == 0 ? "M" : "L").append(point(seen[k], seen[k + 1]));
        }
        path.append('Z');
      }
    }
    svg.append("<path class=\"solid\" d=\"").append(path).append("\"/>");
  }

  private void lines(StringBuilder svg, Slice slice, Mesh mesh, IntPredicate isNew) {
    StringBuilder plain = new StringBuilder();
    StringBuilder hanging = new StringBuilder();
    StringBuilder fresh = new StringBuilder();
    for (int index = 0; index < slice.segments().size(); index++) {
      double[] s = slice.segments().get(index);
      double[] seen = window.clipped(s[0], s[1], s[2], s[3]);
      if (seen.length > 0) {
        int facet = slice.facet(index);
        boolean hangs = isHanging(mesh, facet);
        StringBuilder path = hangs ? hanging : isNew.test(facet) ? fresh : plain;
        path.append('M').append(point(seen[0], seen[1]));
        path.append('L').append(point(seen[2], seen[3]));
      }
    }
    line(svg, "edge", plain);
    line(svg, "hangs", hanging);
    line(svg, "fresh", fresh);
  }

  private boolean isHanging(Mesh mesh, int facet) {
    Vec3 normal = mesh.facetNormal(facet);
    return -normal.z() > Math.cos(limit - SLACK) * normal.norm();
  }

  private static void line(StringBuilder svg, String kind, CharSequence path) {
    if (path.length() > 0) {
      svg.append("<path class=\"").append(kind).append("\" d=\"").append(path).append("\"/>");
    }
  }

  private void axis(StringBuilder svg) {
    double arm = 0.18 * result.feature().radius();
    line(
        svg,
        "axis",
        "M"
            + point(u - arm, v)
            + "L"
            + point(u + arm, v)
            + "M"
            + point(u, v - arm)
            + "L"
            + point(u, v + arm));
  }

  private void dimensions(StringBuilder svg, boolean after) {
    double r = result.feature().radius();
    across(svg, -0.35 * r, r, "⌀ " + millimetres(2 * r));
    if (!after) {
      return;
    }
    measure("ridge-height").ifPresent(height -> ridge(svg, height));
    measure("bridge").filter(b -> b > 0).ifPresent(bridge -> bridge(svg, bridge));
    measure("slope").ifPresent(slope -> slope(svg, slope));
    measure("roof-left").ifPresent(left -> left(svg, left));
  }

  private Optional<Double> measure(String name) {
    return result.changes().stream()
        .map(Change::measures)
        .flatMap(List::stream)
        .filter(measure -> measure.name().equals(name))
        .map(Measure::value)
        .findFirst();
  }

  /** A dimension from wall to wall at a height above the axis. */
  private void across(StringBuilder svg, double height, double half, String words) {
    // the wall is nearer at this height; the dimension is that of the whole circle at the axis
    line(svg, "dim", arrows(u - half, v, u + half, v));
    text(svg, u, v + height, "middle", words);
  }

  private void ridge(StringBuilder svg, double height) {
    double at = u + 1.25 * result.feature().radius();
    line(svg, "dim", arrows(at, v, at, v + height));
    line(svg, "help", "M" + point(u, v + height) + "L" + point(at, v + height));
    line(svg, "help", "M" + point(u, v) + "L" + point(at, v));
    text(svg, at + 5 / scale(), v + height / 2, "start", millimetres(height));
  }

  private void bridge(StringBuilder svg, double bridge) {
    double height = measure("ridge-height").orElse(0.0) - 10 / scale();
    line(svg, "dim", arrows(u - bridge / 2, v + height, u + bridge / 2, v + height));
    text(svg, u, v + height - 13 / scale(), "middle", millimetres(bridge));
  }

  private void slope(StringBuilder svg, double slope) {
    double r = result.feature().radius();
    text(svg, u - 1.05 * r, v + 0.95 * r, "end", Figures.degrees(slope) + "°");
  }

  private void left(StringBuilder svg, double left) {
    double height = measure("ridge-height").orElse(0.0);
    if (!Double.isFinite(left)) {
      return;
    }
    double ridge = v + height;
    boolean whole = ridge + left < window.top();
    // what ends beyond the window has no arrow there
    String lines =
        whole
            ? arrows(u, ridge, u, ridge + left)
            : "M" + point(u, ridge) + "L" + point(u, window.top());
    line(svg, whole ? "dim" : "help", lines);
    double middle = ridge + Math.min(left, window.top() - ridge) / 2;
    text(svg, u + 5 / scale(), middle, "start", millimetres(left) + (whole ? "" : " ↑"));
  }

  private static String millimetres(double value) {
    return String.format(Locale.ROOT, "%.2f", value);
  }

  /** A line with an arrow at both ends. */
  private String arrows(double u0, double v0, double u1, double v1) {
    double length = Math.hypot(u1 - u0, v1 - v0);
    double size = Math.min(6 / scale(), length / 3);
    double du = (u1 - u0) / length * size;
    double dv = (v1 - v0) / length * size;
    List<String> parts = new ArrayList<>();
    parts.add("M" + point(u0, v0) + "L" + point(u1, v1));
    for (double side : new double[] {-0.4, 0.4}) {
      parts.add("M" + point(u0 + du - side * dv, v0 + dv + side * du) + "L" + point(u0, v0));
      parts.add("M" + point(u1 - du - side * dv, v1 - dv + side * du) + "L" + point(u1, v1));
    }
    return String.join("", parts);
  }

  private void text(StringBuilder svg, double at, double height, String anchor, String words) {
    svg.append(
        String.format(
            Locale.ROOT,
            "<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"%s\">%s</text>",
            (at - window.left()) * scale(),
            (window.top() - height) * scale() + 4,
            anchor,
            Look.html(words)));
  }

  private String point(double pu, double pv) {
    return tenths((pu - window.left()) * scale()) + ' ' + tenths((window.top() - pv) * scale());
  }

  /** A number with one decimal; there are hundreds of thousands of them, and a format is slow. */
  private static String tenths(double value) {
    long tenths = Math.round(value * 10);
    long size = Math.abs(tenths);
    return (tenths < 0 ? "-" : "") + size / 10 + '.' + size % 10;
  }
}

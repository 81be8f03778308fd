package gable.feature;

import java.util.List;

/**
 * The wall of a bore seen along its axis, in the section frame: w along the axis, v the part of +z
 * square to it, u = v × w, origin = origin of the bore's axis (for upright axes v is +y).
 *
 * <p>A wall is <em>clean</em> if it is a prism: its corners lie on rulings that run straight from
 * end to end, and every other vertex lies on a chord between two of them (mouths that are not
 * square have such vertices), all within {@link #tolerance}.
 */
public final class WallSection {

  private final boolean clean;
  private final List<Ruling> rulings;
  private final double[] pointsUvw;
  private final double deviation;
  private final double tolerance;

  /** Takes the array over. */
  WallSection(
      boolean clean, List<Ruling> rulings, double[] pointsUvw, double deviation, double tolerance) {
    this.clean = clean;
    this.rulings = List.copyOf(rulings);
    this.pointsUvw = pointsUvw;
    this.deviation = deviation;
    this.tolerance = tolerance;
  }

  /** True if the wall is a prism of rulings. */
  public boolean clean() {
    return clean;
  }

  /** Corners of the section, counter-clockwise seen against w; empty if the wall is not clean. */
  public List<Ruling> rulings() {
    return rulings;
  }

  /** Section coordinates u, v, w of every vertex of the wall. */
  public double[] pointsUvw() {
    return pointsUvw.clone();
  }

  /** Largest distance of a vertex from its ruling or chord, in millimetres; 0 if not clean. */
  public double deviation() {
    return deviation;
  }

  /** What the deviation was measured against: rounding of coordinates and noise of this wall. */
  public double tolerance() {
    return tolerance;
  }
}

package gable.feature;

import gable.geom.Plane;
import java.util.Optional;

/**
 * One end of a bore: where its round wall stops. Coordinates along the axis (w) are those of the
 * bore's section frame.
 */
public final class Rim {

  private final EndKind kind;
  private final double wMin;
  private final double wMax;
  private final double crownW;
  private final Optional<Plane> plane;
  private final double planeDeviation;
  private final double outerRadius;
  private final double outerW;
  private final int[] loop;

  /** Takes the parts of a builder over. */
  Rim(Builder builder) {
    this.kind = builder.kind;
    this.wMin = builder.wMin;
    this.wMax = builder.wMax;
    this.crownW = builder.crownW;
    this.plane = builder.plane;
    this.planeDeviation = builder.planeDeviation;
    this.outerRadius = builder.outerRadius;
    this.outerW = builder.outerW;
    this.loop = builder.loop;
  }

  /** How the bore ends here. */
  public EndKind kind() {
    return kind;
  }

  /** Smallest w of the rim. */
  public double wMin() {
    return wMin;
  }

  /** Largest w of the rim. */
  public double wMax() {
    return wMax;
  }

  /** Where the rim reaches farthest into the bore within 60 degrees of the crown. */
  public double crownW() {
    return crownW;
  }

  /** The plane of the rim, its normal out of the bore, if the rim is flat. */
  public Optional<Plane> plane() {
    return plane;
  }

  /** Largest distance of a rim vertex from the plane that fits the rim best, in millimetres. */
  public double planeDeviation() {
    return planeDeviation;
  }

  /**
   * Radius to which a cone or rounding beyond the wall reaches (larger than the bore's for a
   * chamfer, smaller for a conical bottom); the bore's radius if there is none.
   */
  public double outerRadius() {
    return outerRadius;
  }

  /** Where along the axis that cone or rounding ends; where the rim is if there is none. */
  public double outerW() {
    return outerW;
  }

  /** Vertices of the rim in order. */
  public int[] loop() {
    return loop.clone();
  }

  /** The same rim, known to be of another kind. */
  Rim as(EndKind other) {
    var builder = new Builder();
    builder.kind = other;
    builder.wMin = wMin;
    builder.wMax = wMax;
    builder.crownW = crownW;
    builder.plane = plane;
    builder.planeDeviation = planeDeviation;
    builder.outerRadius = outerRadius;
    builder.outerW = outerW;
    builder.loop = loop;
    return new Rim(builder);
  }

  /** Parts of a rim while it is measured. */
  static final class Builder {
    EndKind kind = EndKind.OPEN_CURVED;
    double wMin;
    double wMax;
    double crownW;
    Optional<Plane> plane = Optional.empty();
    double planeDeviation;
    double outerRadius;
    double outerW;
    int[] loop = new int[0];
  }
}

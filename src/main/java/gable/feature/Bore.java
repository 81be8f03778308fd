package gable.feature;

import gable.geom.Axis;

/**
 * A round hole: a concave cylindrical wall with two ends, in print space (millimetres, radians, z
 * up). The section frame is that of {@link WallSection}.
 *
 * <p>The axis has its origin midway between the ends, and the direction in which the first
 * coordinate that is not nearly zero is positive.
 */
public final class Bore implements Feature {

  private final String id;
  private final Cylinder cylinder;
  private final double residual;
  private final int facetsPerTurn;
  private final double coveredAngle;
  private final int[] wall;
  private final BoreShape shape;
  private final WallSection section;
  private final Rim low;
  private final Rim high;
  private final int group;

  /** Takes the parts of a builder over. */
  Bore(Builder builder) {
    this.id = builder.id;
    this.cylinder = builder.cylinder;
    this.residual = builder.residual;
    this.facetsPerTurn = builder.facetsPerTurn;
    this.coveredAngle = builder.coveredAngle;
    this.wall = builder.wall;
    this.shape = builder.shape;
    this.section = builder.section;
    this.low = builder.low;
    this.high = builder.high;
    this.group = builder.group;
  }

  @Override
  public String id() {
    return id;
  }

  @Override
  public Axis axis() {
    return new Axis(cylinder.origin(), cylinder.w());
  }

  /** Nominal radius: that of the circle through the corners of the wall. */
  @Override
  public double radius() {
    return cylinder.radius();
  }

  @Override
  public double residual() {
    return residual;
  }

  @Override
  public int facetsPerTurn() {
    return facetsPerTurn;
  }

  /** Angle in radians that the round wall covers: 2π unless the shape is partial or peaked. */
  public double coveredAngle() {
    return coveredAngle;
  }

  @Override
  public int[] wall() {
    return wall.clone();
  }

  /** Shape of the section; only {@link BoreShape#ROUND} can be given a roof. */
  public BoreShape shape() {
    return shape;
  }

  /** The wall seen along the axis. */
  public WallSection section() {
    return section;
  }

  /** End at the smaller w. */
  public Rim low() {
    return low;
  }

  /** End at the larger w. */
  public Rim high() {
    return high;
  }

  /** Number shared by the pieces of one bore on the same axis; 0 if it stands alone. */
  public int group() {
    return group;
  }

  /** Length of the wall along the axis, between the means of its rims. */
  @Override
  public double length() {
    return (high.wMin() + high.wMax() - low.wMin() - low.wMax()) / 2;
  }

  Cylinder cylinder() {
    return cylinder;
  }

  /** A builder that starts with everything of this bore. */
  Builder changed() {
    var builder = new Builder(cylinder, low, high, section);
    builder.id = id;
    builder.residual = residual;
    builder.facetsPerTurn = facetsPerTurn;
    builder.coveredAngle = coveredAngle;
    builder.wall = wall;
    builder.shape = shape;
    builder.group = group;
    return builder;
  }

  /** Parts of a bore while it is measured. */
  static final class Builder {
    String id = "";
    Cylinder cylinder;
    double residual;
    int facetsPerTurn;
    double coveredAngle = Angles.TURN;
    int[] wall = new int[0];
    BoreShape shape = BoreShape.ROUND;
    WallSection section;
    Rim low;
    Rim high;
    int group;

    Builder(Cylinder cylinder, Rim low, Rim high, WallSection section) {
      this.cylinder = cylinder;
      this.low = low;
      this.high = high;
      this.section = section;
    }
  }
}

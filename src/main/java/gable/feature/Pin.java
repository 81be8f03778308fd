package gable.feature;

import gable.geom.Axis;
import gable.geom.Plane;
import java.util.Optional;

/**
 * A round pin: a convex cylindrical wall that stands out of a body and has one free end, in print
 * space (millimetres, radians, z up).
 *
 * <p>The axis runs from the root to the tip; its origin is midway between both.
 */
public final class Pin implements Feature {

  private final String id;
  private final Axis axis;
  private final Bore reading;
  private final int[] wall;
  private final RootKind root;
  private final Tip tip;
  private final double length;

  /**
   * The free end.
   *
   * @param kind what it is
   * @param rim the plane of the end of the round wall, its normal out of the pin, if that is flat
   * @param above how far the pin reaches beyond the end of its round wall, in millimetres
   * @param below depth of the deepest hole in the tip below the end of the round wall
   */
  record Tip(TipKind kind, Optional<Plane> rim, double above, double below) {}

  /**
   * A pin.
   *
   * @param reading its wall, read as that of a bore
   * @param wall the facets of the wall, ascending
   * @param axis from root to tip, origin midway
   * @param length from root to tip
   */
  Pin(String id, Bore reading, int[] wall, Axis axis, double length, RootKind root, Tip tip) {
    this.id = id;
    this.reading = reading;
    this.wall = wall;
    this.axis = axis;
    this.length = length;
    this.root = root;
    this.tip = tip;
  }

  /** The same pin with another name. */
  Pin named(String name) {
    return new Pin(name, reading, wall, axis, length, root, tip);
  }

  @Override
  public String id() {
    return id;
  }

  /** From the root to the tip, the origin midway. */
  @Override
  public Axis axis() {
    return axis;
  }

  @Override
  public double radius() {
    return reading.radius();
  }

  @Override
  public int[] wall() {
    return wall.clone();
  }

  /** Free length: from the root's end of the round wall to the outermost point of the tip. */
  @Override
  public double length() {
    return length;
  }

  @Override
  public double residual() {
    return reading.residual();
  }

  @Override
  public int facetsPerTurn() {
    return reading.facetsPerTurn();
  }

  /** What carries it. */
  public RootKind root() {
    return root;
  }

  /** How it ends. */
  public TipKind tip() {
    return tip.kind;
  }

  /** The plane in which the round wall ends at the tip, normal out of the pin, if it is flat. */
  public Optional<Plane> tipPlane() {
    return tip.rim;
  }

  /** True if it is nearer to upright than to level. */
  public boolean isUpright() {
    return axis.tilt() >= Math.PI / 4;
  }

  Cylinder cylinder() {
    return reading.cylinder();
  }
}

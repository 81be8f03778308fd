package gable.feature;

import gable.geom.Axis;
import gable.geom.Plane;
import gable.geom.Vec3;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
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
  private final Root root;
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
   * A rib along the pin, from the body to somewhere before its tip.
   *
   * @param direction unit, square to the axis: where it stands
   * @param width how wide it is where it meets the pin, in millimetres
   * @param end how far from the root it reaches there
   */
  public record Rib(Vec3 direction, double width, double end) {}

  /**
   * What carries the pin.
   *
   * @param kind the body
   * @param ribs ribs along the pin
   */
  record Root(RootKind kind, List<Rib> ribs) {

    Root {
      ribs = List.copyOf(ribs);
    }
  }

  /**
   * A pin.
   *
   * @param reading its wall, read as that of a bore
   * @param wall the facets of the wall, ascending
   * @param axis from root to tip, origin midway
   * @param length from root to tip
   */
  Pin(String id, Bore reading, int[] wall, Axis axis, double length, Root root, Tip tip) {
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
    return root.kind;
  }

  /** Ribs along it, such as a web that carries it. */
  public List<Rib> ribs() {
    return root.ribs;
  }

  /** How it ends. */
  public TipKind tip() {
    return tip.kind;
  }

  /** The plane in which the round wall ends at the tip, normal out of the pin, if it is flat. */
  public Optional<Plane> tipPlane() {
    return tip.rim;
  }

  /** Length of the round wall: from the root to where the tip begins. */
  public double wallLength() {
    return length - tip.above;
  }

  /** The plane in which the round wall meets the body, normal into the body, if it is flat. */
  public Optional<Plane> rootPlane() {
    return rootRim().plane();
  }

  /** How far along the axis a rounding or cone reaches from the wall's end to the body. */
  public double rootReach() {
    Rim rim = rootRim();
    return isEased() ? Math.abs(rim.outerW() - (rim.wMin() + rim.wMax()) / 2) : 0;
  }

  /** How far such a rounding or cone reaches beyond the radius of the pin. */
  public double rootFlare() {
    return isEased() ? Math.max(0, rootRim().outerRadius() - radius()) : 0;
  }

  private boolean isEased() {
    return root.kind == RootKind.FILLETED || root.kind == RootKind.CHAMFERED;
  }

  private Rim rootRim() {
    return sameWay() ? reading.low() : reading.high();
  }

  /** Farthest vertex of the wall's end at the root from its plane, in millimetres. */
  public double rootDeviation() {
    return rootRim().planeDeviation();
  }

  /**
   * Corners of the section of the round wall, one on each of its straight edges, counter-clockwise
   * seen from the tip; empty if the wall is no prism.
   */
  public List<Vec3> outline() {
    Cylinder cylinder = reading.cylinder();
    List<Vec3> corners = new ArrayList<>();
    for (Ruling ruling : reading.section().rulings()) {
      corners.add(cylinder.point(ruling.u(), ruling.v(), 0));
    }
    if (!sameWay()) {
      Collections.reverse(corners);
    }
    return corners;
  }

  /** Largest distance of a vertex of the wall from its straight edges; 0 if it is no prism. */
  public double outlineDeviation() {
    return reading.section().deviation();
  }

  private boolean sameWay() {
    return reading.axis().direction().dot(axis.direction()) > 0;
  }

  /** True if it is nearer to upright than to level. */
  public boolean isUpright() {
    return axis.tilt() >= Math.PI / 4;
  }

  Cylinder cylinder() {
    return reading.cylinder();
  }
}

package gable.pairs;

import gable.geom.Affine3;
import gable.geom.Axis;
import gable.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * A part while it is being drawn: pins that stand up on the plane z = 0 of a box below it, or bores
 * that go up from the plane z = 0 of a box above it.
 */
final class Sketch {

  private final boolean lower;
  private final double half;
  private final List<PinHalf> pins = new ArrayList<>();
  private final List<BoreHalf> bores = new ArrayList<>();
  private Affine3 map = Affine3.IDENTITY;

  private Sketch(boolean lower, double half) {
    this.lower = lower;
    this.half = half;
  }

  static Sketch lower() {
    return new Sketch(true, 50);
  }

  static Sketch upper() {
    return new Sketch(false, 50);
  }

  /** A pin on the plane, pointing at the other part. */
  Sketch pin(double x, double y, double diameter, double length) {
    Axis axis = new Axis(new Vec3(x, y, 0), lower ? Vec3.Z : Vec3.Z.times(-1));
    pins.add(new PinHalf("P" + (pins.size() + 1), axis, length, diameter / 2));
    return this;
  }

  /** A blind bore into the box. */
  Sketch bore(double x, double y, double diameter, double depth) {
    return bore(x, y, diameter, new BoreHalf.End(depth, false));
  }

  /** A bore through the box, which is 20 thick. */
  Sketch through(double x, double y, double diameter) {
    return bore(x, y, diameter, new BoreHalf.End(20, true));
  }

  private Sketch bore(double x, double y, double diameter, BoreHalf.End far) {
    Axis axis = new Axis(new Vec3(x, y, 0), lower ? Vec3.Z.times(-1) : Vec3.Z);
    String id = "B" + (bores.size() + 1);
    double radius = diameter / 2;
    bores.add(
        new BoreHalf(List.of(id), axis, radius, radius * 0.995, new BoreHalf.End(0, true), far));
    return this;
  }

  /** The same somewhere else. */
  Sketch moved(Affine3 motion) {
    map = map.then(motion);
    return this;
  }

  /** The part; one copy for each place. */
  Part part(int file, Affine3... places) {
    Affine3 back = map.inverse();
    List<Affine3> all = places.length == 0 ? List.of(Affine3.IDENTITY) : List.of(places);
    return new Part(
        file,
        this,
        pins.stream()
            .map(pin -> new PinHalf(pin.id(), moved(pin.axis()), pin.length(), pin.radius()))
            .toList(),
        bores.stream()
            .map(
                bore ->
                    new BoreHalf(
                        bore.ids(),
                        moved(bore.axis()),
                        bore.radius(),
                        bore.inner(),
                        bore.low(),
                        bore.high()))
            .toList(),
        all,
        point -> holds(back.apply(point)));
  }

  Part part() {
    return part(0);
  }

  private Axis moved(Axis axis) {
    return new Axis(map.apply(axis.origin()), map.applyVector(axis.direction()).unit());
  }

  private boolean holds(Vec3 point) {
    boolean inBox =
        Math.abs(point.x()) < half
            && Math.abs(point.y()) < half
            && (lower ? point.z() < 0 && point.z() > -20 : point.z() > 0 && point.z() < 20);
    boolean inPin =
        pins.stream()
            .anyMatch(
                pin ->
                    pin.axis().distance(point) < pin.radius()
                        && pin.axis().parameter(point) > 0
                        && pin.axis().parameter(point) < pin.length());
    boolean inBore =
        bores.stream()
            .anyMatch(
                bore ->
                    bore.axis().distance(point) < bore.radius()
                        && bore.axis().parameter(point) < bore.high().at());
    return inPin || (inBox && !inBore);
  }

  /** Some rigid motion. */
  static Affine3 motion(Random random) {
    Vec3 up = new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian());
    double angle = random.nextDouble() * 2 * Math.PI;
    double c = Math.cos(angle);
    double s = Math.sin(angle);
    Affine3 aboutZ =
        new Affine3(
            c,
            s,
            0,
            -s,
            c,
            0,
            0,
            0,
            1,
            100 * random.nextDouble(),
            100 * random.nextDouble(),
            100 * random.nextDouble());
    return Affine3.layingUp(up).then(aboutZ);
  }
}

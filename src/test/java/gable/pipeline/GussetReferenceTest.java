package gable.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gable.feature.Partner;
import gable.feature.Surroundings;
import gable.fixture.Convex;
import gable.fixture.Edits;
import gable.fixture.Kept;
import gable.geom.Plane;
import gable.geom.Vec3;
import gable.mesh.FacetTree;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import gable.mesh.WorkMesh;
import gable.pipeline.ObjectReshaper.Change;
import gable.pipeline.ObjectReshaper.Result;
import gable.plan.Limits;
import gable.plan.Reshaper;
import gable.reshaper.GableRoof;
import gable.reshaper.Gusset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.apache.commons.geometry.euclidean.threed.ConvexVolume;
import org.apache.commons.geometry.euclidean.threed.Planes;
import org.apache.commons.geometry.euclidean.threed.RegionBSPTree3D;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.numbers.core.Precision;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Webs and slots of parts drawn by chance, against a reference: Apache Commons Geometry 1.0, unions
 * and differences of binary space partitions of the part and of an ideal web that is laid out here
 * from radius, length and limits alone. And laws that hold whatever the part.
 */
class GussetReferenceTest {

  private static final Precision.DoubleEquivalence FINE =
      Precision.doubleEquivalenceOfEpsilon(1e-9);

  private static final Vec3 DOWN = new Vec3(0, 0, -1);
  private static final double ROOT_OF_TWO = Math.sqrt(2);

  /**
   * A part by chance.
   *
   * @param seed tells which
   */
  private record Drawn(int seed) {

    private Random random() {
      return new Random(seed);
    }

    int sides() {
      return 10 + random().nextInt(60);
    }

    double radius() {
      return 1.2 + 6 * Math.pow(new Random(seed + 1000L).nextDouble(), 2);
    }

    double length() {
      return radius() * (0.8 + 3 * new Random(seed + 2000L).nextDouble()) + 1;
    }

    double phase() {
      // every third with a corner straight below or a side that is level
      double any = new Random(seed + 3000L).nextDouble();
      return seed % 3 == 0 ? 0 : any;
    }

    double tilt() {
      return seed % 2 == 0 ? 0 : 0.5 * new Random(seed + 4000L).nextDouble();
    }

    Vec3 along() {
      double turned = seed % 4 < 2 ? 0 : new Random(seed + 5000L).nextDouble();
      double level = Math.cos(tilt());
      return new Vec3(level * Math.sin(turned), level * Math.cos(turned), Math.sin(tilt()));
    }
  }

  private static List<Drawn> drawn() {
    List<Drawn> all = new ArrayList<>();
    for (int seed = 1; seed <= 60; seed++) {
      all.add(new Drawn(seed));
    }
    return all;
  }

  private static double end(double radius, double length) {
    double leg = Math.min(Math.max(0.4, Math.min(1.5, 0.3 * radius)), 0.4 * radius);
    return length - leg - 0.25;
  }

  @ParameterizedTest
  @MethodSource("drawn")
  void aWebIsTheUnionWithAWedge(Drawn drawn) {
    double radius = drawn.radius();
    double length = drawn.length();
    Vec3 along = drawn.along();
    Mesh before = onWall(drawn);

    Result result = ProvedRun.of(before, List.of(new Gusset()), Limits.usual(), joint(drawn));

    Mesh after = sound(before, result, drawn);
    Vec3 side = along.cross(DOWN).unit();
    Vec3 down = side.cross(along).unit();
    Vec3 tip = along.times(end(radius, length)).plus(down.times(radius));
    RegionBSPTree3D wedge =
        body(
            Plane.through(tip, along.plus(down).unit()),
            Plane.through(side.times(0.4), side),
            Plane.through(side.times(-0.4), side.times(-1)),
            Plane.through(Vec3.ZERO, down.times(-1)),
            // the front: the ideal web must not come out of the tip inside the pin
            Plane.through(along.times(length - 0.1), along),
            Plane.through(along.times(-1), along.times(-1)));
    RegionBSPTree3D part = ideal(wall(drawn));
    part.union(ideal(stud(drawn)));
    RegionBSPTree3D more = RegionBSPTree3D.empty();
    more.difference(wedge, part);
    part.union(wedge);
    // a new point is off by up to 1e-6 mm; the faces of a web have an area below 2000 mm²
    assertThat(after.volume() - before.volume()).isCloseTo(more.getSize(), within(2e-3));
    agree(after, part, tip, length + radius);
  }

  @ParameterizedTest
  @MethodSource("drawn")
  void aSlotIsTheDifferenceFromAWedge(Drawn drawn) {
    double length = drawn.length();
    double bore = drawn.radius() + 0.3;
    double pin = bore * Math.cos(Math.PI / drawn.sides()) - 0.12;
    Vec3 along = drawn.along();
    double depth = length + 0.5;
    List<Plane> block = new ArrayList<>();
    double wide = 3 * (length + bore) + 10;
    block.addAll(Convex.box(new Vec3(-wide, -wide, -wide), new Vec3(wide, wide, wide)));
    block.add(Plane.through(Vec3.ZERO, along.times(-1)));
    List<Plane> hole =
        Convex.prism(along.times(-3), along.times(depth), bore, drawn.sides(), drawn.phase());
    Mesh before = Convex.without(Convex.mesh(block), hole);
    Map<String, Partner> joint =
        Map.of("B1", new Partner("pin", pin, length, Optional.of(down(along))));

    Result result = ProvedRun.of(before, List.of(new Gusset()), Limits.usual(), joint);

    Mesh after = sound(before, result, drawn);
    Vec3 side = along.cross(DOWN).unit();
    Vec3 tip = along.times(end(pin, length) + 0.2 * ROOT_OF_TWO).plus(down(along).times(pin));
    RegionBSPTree3D wedge =
        body(
            Plane.through(tip, along.plus(down(along)).unit()),
            Plane.through(side.times(0.6), side),
            Plane.through(side.times(-0.6), side.times(-1)),
            Plane.through(Vec3.ZERO, down(along).times(-1)),
            Plane.through(along.times(depth - 0.01), along),
            Plane.through(along.times(-5), along.times(-1)));
    RegionBSPTree3D part = ideal(block);
    part.difference(ideal(hole));
    RegionBSPTree3D less = RegionBSPTree3D.empty();
    less.intersection(wedge, part);
    part.difference(wedge);
    assertThat(before.volume() - after.volume()).isCloseTo(less.getSize(), within(2e-3));
    agree(after, part, tip, length + bore);
    assertThat(ProvedRun.of(after, List.of(new Gusset()), Limits.usual(), joint).edit().isEmpty())
        .isTrue();
  }

  @Test
  void aRoofedBoreIsSlottedInAnyDirection() {
    for (int eighth : new int[] {0, 1, 2, 3, 4, 5, 6, 7}) {
      double angle = eighth * Math.PI / 4;
      Vec3 web = new Vec3(Math.sin(angle), 0, -Math.cos(angle));
      Mesh block = Convex.mesh(Convex.box(new Vec3(-30, 0, -30), new Vec3(30, 30, 30)));
      Mesh before =
          Convex.without(block, Convex.prism(new Vec3(0, -3, 0), new Vec3(0, 12, 0), 3.3, 32, 0.1));
      Map<String, Partner> joint = Map.of("B1", new Partner("pin", 3, 10, Optional.of(web)));
      List<Reshaper> both = List.of(new GableRoof(), new Gusset());

      Result result = ProvedRun.of(before, both, Limits.usual(), joint);

      assertThat(result.features().get(0).changes())
          .as("%d eighths", eighth)
          .extracting(change -> change.profile().orElse("left: " + change.reason()))
          .satisfies(
              words -> assertThat(words.get(0)).isEqualTo("peaked"),
              words -> assertThat(words.get(1)).contains(eighth % 4 == 2 ? "slot-hangs" : "slot"));
    }
  }

  private static Vec3 down(Vec3 along) {
    return along.cross(DOWN).unit().cross(along).unit();
  }

  /** A pin whose wall is square to it, in a part so large that the web finds the wall. */
  private static Mesh onWall(Drawn drawn) {
    return Convex.with(Convex.mesh(wall(drawn)), stud(drawn));
  }

  private static List<Plane> wall(Drawn drawn) {
    double wide = 3 * (drawn.length() + drawn.radius()) + 10;
    List<Plane> wall =
        new ArrayList<>(Convex.box(new Vec3(-wide, -wide, -wide), new Vec3(wide, wide, wide)));
    wall.add(Plane.through(Vec3.ZERO, drawn.along()));
    return wall;
  }

  private static List<Plane> stud(Drawn drawn) {
    return Convex.prism(
        drawn.along().times(-2),
        drawn.along().times(drawn.length()),
        drawn.radius(),
        drawn.sides(),
        drawn.phase());
  }

  private static Map<String, Partner> joint(Drawn drawn) {
    return Map.of(
        "P1",
        new Partner(
            "bore", drawn.radius() + 0.1, drawn.length() + 1, Optional.of(down(drawn.along()))));
  }

  private static Mesh sound(Mesh before, Result result, Drawn drawn) {
    assertThat(result.features()).hasSize(1);
    Change change = result.features().get(0).changes().get(0);
    Kept.onFailure("gusset-" + drawn.seed(), before, () -> assertThat(change.reason()).isEmpty());
    Mesh after = Edits.applied(before, result.edit());
    assertThat(HalfEdges.of(after).closed()).isTrue();
    return after;
  }

  private static void agree(Mesh ours, RegionBSPTree3D expected, Vec3 middle, double size) {
    Surroundings inside =
        new Surroundings(new WorkMesh(ours, HalfEdges.of(ours), FacetTree.of(ours)), ours.box());
    Random random = new Random(7);
    for (int probe = 0; probe < 1000; probe++) {
      Vec3 p =
          new Vec3(
              middle.x() + size * (2 * random.nextDouble() - 1) / 2,
              middle.y() + size * (2 * random.nextDouble() - 1),
              middle.z() + size * (2 * random.nextDouble() - 1));
      assertThat(inside.winding(p))
          .as("%s", p)
          .isEqualTo(expected.contains(Vector3D.of(p.x(), p.y(), p.z())) ? 1 : 0);
    }
  }

  private static RegionBSPTree3D ideal(List<Plane> planes) {
    return body(planes.toArray(Plane[]::new));
  }

  private static RegionBSPTree3D body(Plane... planes) {
    List<org.apache.commons.geometry.euclidean.threed.Plane> bounds = new ArrayList<>();
    for (Plane plane : planes) {
      Vec3 n = plane.normal();
      Vec3 p = n.times(plane.offset());
      bounds.add(
          Planes.fromPointAndNormal(
              Vector3D.of(p.x(), p.y(), p.z()), Vector3D.of(n.x(), n.y(), n.z()), FINE));
    }
    return ConvexVolume.fromBounds(bounds).toTree();
  }
}

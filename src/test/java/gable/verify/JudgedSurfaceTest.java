package gable.verify;

import static gable.verify.JudgeTest.assertRefused;
import static gable.verify.JudgeTest.facetWith;
import static gable.verify.JudgeTest.ridge;
import static gable.verify.JudgeTest.trial;

import gable.geom.Vec3;
import gable.mesh.MeshEdit;
import gable.verify.Verdict.Proof;
import java.util.List;
import org.junit.jupiter.api.Test;

/** An edit whose surface is spoilt in one way is refused by the proof that is there for it. */
class JudgedSurfaceTest {

  @Test
  void refusesNumbersThatDoNotExist() {
    Trial trial = trial();
    EditSketch gone = new EditSketch(trial.edit());
    gone.removed().add(trial.work().facetCount());
    assertRefused(trial.verdict(gone.edit()), Proof.INDICES, "there is none");

    EditSketch twice = new EditSketch(trial.edit());
    twice.removed().add(0, twice.removed().get(0));
    assertRefused(trial.verdict(twice.edit()), Proof.INDICES, "not ascending");

    EditSketch corner = new EditSketch(trial.edit());
    corner.facets().get(3)[1] = trial.work().vertexCount() + trial.edit().pointCount();
    assertRefused(trial.verdict(corner.edit()), Proof.INDICES, "new facet 3 has corners");

    EditSketch same = new EditSketch(trial.edit());
    same.facets().get(3)[1] = same.facets().get(3)[0];
    assertRefused(trial.verdict(same.edit()), Proof.INDICES, "new facet 3 has a corner twice");

    EditSketch source = new EditSketch(trial.edit());
    source.sources().set(0, trial.work().facetCount());
    assertRefused(trial.verdict(source.edit()), Proof.INDICES, "which is not taken away");

    EditSketch nowhere = new EditSketch(trial.edit());
    nowhere.points().set(0, new Vec3(Double.NaN, 0, 0));
    assertRefused(trial.verdict(nowhere.edit()), Proof.INDICES, "NaN");
  }

  @Test
  void refusesADeadFacetTakenAwayAgain() {
    Trial trial = trial();
    trial.work().apply(trial.edit());
    assertRefused(trial.verdict(), Proof.INDICES, "there is none");
  }

  @Test
  void refusesEveryFacetDroppedDoubledOrFlipped() {
    Trial trial = trial();
    for (int k = 0; k < trial.edit().facetCount(); k++) {
      EditSketch dropped = new EditSketch(trial.edit()).drop(k);
      assertRefused(trial.verdict(dropped.edit()), Proof.CLOSED, "-");
      EditSketch flipped = new EditSketch(trial.edit()).flip(k);
      assertRefused(trial.verdict(flipped.edit()), Proof.CLOSED, "same direction");
      MeshEdit edit = trial.edit();
      EditSketch doubled =
          new EditSketch(edit)
              .facet(
                  edit.corner(k, 1),
                  edit.corner(k, 2),
                  edit.corner(k, 0),
                  edit.source(k),
                  edit.onNewFace(k));
      assertRefused(trial.verdict(doubled.edit()), Proof.CLOSED, "same direction");
    }
  }

  @Test
  void refusesEveryFacetForgottenToTakeAway() {
    Trial trial = trial();
    for (int k = 0; k < trial.edit().removedCount(); k++) {
      EditSketch kept = new EditSketch(trial.edit());
      int facet = kept.removed().remove(k);
      for (int f = kept.sources().size() - 1; f >= 0; f--) {
        if (kept.sources().get(f) == facet) {
          kept.sources().set(f, kept.removed().get(0)); // so that only the edges are wrong
        }
      }
      assertRefused(trial.verdict(kept.edit()), Proof.CLOSED, "");
    }
  }

  @Test
  void refusesASlitBetweenTwoVerticesAtOnePlace() {
    Trial trial = trial();
    int vertex = trial.work().vertexCount() + ridge(trial);
    EditSketch slit = new EditSketch(trial.edit());
    slit.points().add(slit.points().get(ridge(trial)));
    int other = trial.work().vertexCount() + slit.points().size() - 1;
    int[] corners = slit.facets().get(facetWith(trial.edit(), vertex));
    for (int k = 0; k < 3; k++) {
      corners[k] = corners[k] == vertex ? other : corners[k];
    }
    assertRefused(trial.verdict(slit.edit()), Proof.CLOSED, "open edge");
  }

  @Test
  void refusesAVertexInWhichTwoFansMeet() {
    Trial trial = trial();
    int bottom = 0;
    for (int v = 0; v < trial.work().vertexCount(); v++) {
      Vec3 p = trial.work().point(v);
      boolean onMouth = Math.abs(p.y() - trial.edit().coordinate(ridge(trial), 1)) < 1e-9;
      bottom = onMouth && p.distance(new Vec3(0, p.y(), -4)) < 1e-6 ? v : bottom;
    }
    EditSketch pinched =
        new EditSketch(trial.edit()).rename(trial.work().vertexCount() + ridge(trial), bottom);
    assertRefused(trial.verdict(pinched.edit()), Proof.FANS, "2 fans");
  }

  @Test
  void refusesAFacetWithoutArea() {
    Trial trial = trial();
    int point = ridge(trial);
    int[] corners = cornersWith(trial, point);
    EditSketch flat = new EditSketch(trial.edit());
    for (int corner : corners) {
      if (corner < trial.work().vertexCount()) {
        flat.points().set(point, trial.work().point(corner));
      }
    }
    assertRefused(trial.verdict(flat.edit()), Proof.AREA, "on one line");
  }

  @Test
  void refusesCornersThatSinglePrecisionBringsTogether() {
    Trial trial = trial();
    int point = ridge(trial);
    int[] corners = cornersWith(trial, point);
    EditSketch near = new EditSketch(trial.edit());
    for (int corner : corners) {
      if (corner < trial.work().vertexCount()) {
        near.points().set(point, trial.work().point(corner).plus(new Vec3(3e-8, 0, 0)));
      }
    }
    assertRefused(trial.verdict(near.edit()), Proof.SINGLE_PRECISION, "in single precision");
  }

  @Test
  void refusesANewShell() {
    Trial trial = trial();
    EditSketch loose = new EditSketch(trial.edit());
    int from = trial.work().vertexCount() + loose.points().size();
    Vec3 base = new Vec3(0, -10, 0); // in the void of the bore
    for (Vec3 corner : List.of(Vec3.ZERO, Vec3.X, Vec3.Y, Vec3.Z)) {
      loose.points().add(base.plus(corner));
    }
    int source = trial.edit().removed(0);
    loose.facet(from, from + 2, from + 1, source, true);
    loose.facet(from, from + 1, from + 3, source, true);
    loose.facet(from + 1, from + 2, from + 3, source, true);
    loose.facet(from + 2, from, from + 3, source, true);
    assertRefused(trial.verdict(loose.edit()), Proof.TOPOLOGY, "Euler");
  }

  @Test
  void refusesAHandle() {
    Trial trial = trial();
    int a = trial.edit().removed(0);
    int b = trial.work().facetCount() - 1;
    EditSketch tube = new EditSketch();
    tube.removed().addAll(List.of(a, b));
    int[] p = corners(trial, a);
    int[] q = corners(trial, b);
    for (int k = 0; k < 3; k++) {
      int next = (k + 1) % 3;
      int across = (4 - k) % 3; // the other ring is seen from its other side
      int before = (3 - k) % 3;
      tube.facet(p[k], p[next], q[before], a, true);
      tube.facet(p[k], q[before], q[across], a, true);
    }
    assertRefused(trial.verdict(tube.edit()), Proof.TOPOLOGY, "change by -2");
  }

  /** Corners of a new facet at a new vertex. */
  private static int[] cornersWith(Trial trial, int point) {
    int facet = facetWith(trial.edit(), trial.work().vertexCount() + point);
    return new EditSketch(trial.edit()).facets().get(facet);
  }

  private static int[] corners(Trial trial, int facet) {
    return new int[] {
      trial.work().corner(facet, 0), trial.work().corner(facet, 1), trial.work().corner(facet, 2)
    };
  }
}

package gable.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import gable.feature.Feature;
import gable.feature.FeatureFinder;
import gable.feature.Surroundings;
import gable.fixture.HoleBlock;
import gable.fixture.HoleBlock.Ring;
import gable.geom.Affine3;
import gable.geom.Tolerances;
import gable.geom.Vec3;
import gable.mesh.FacetTree;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import gable.mesh.MeshEdit;
import gable.mesh.WorkMesh;
import gable.pipeline.ObjectReshaper.Change;
import gable.pipeline.ObjectReshaper.Frame;
import gable.plan.Intent;
import gable.plan.LeftAlone;
import gable.plan.Limits;
import gable.plan.Proposal;
import gable.plan.Reason;
import gable.plan.Reshape;
import gable.plan.Reshaper;
import gable.plan.Variant;
import gable.reshaper.GableRoof;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;

/** What comes after a ladder on which no rung holds. */
class ProposalChainTest {

  private static final Reason LAST = Reason.notProved("nothing fits");

  private int asked;

  @Test
  void theNextProposalIsNotMadeWhereTheFirstHolds() {
    Change change = run(first -> () -> LEFT, "");
    assertThat(change.profile()).contains("peaked");
    assertThat(asked).isZero();
  }

  @Test
  void theNextProposalIsCarriedOutWhereNoRungOfTheFirstHolds() {
    Change change = run(first -> () -> new Reshape(renamed(first), LAST), "crooked");
    assertThat(change.profile()).contains("second");
    assertThat(asked).isOne();
  }

  @Test
  void theCauseFoundLastIsToldWhereNoneHolds() {
    Change change = run(first -> () -> new Reshape(renamed(first), LAST), "crooked", "torn");
    assertThat(change.profile()).isEmpty();
    assertThat(change.reason().orElseThrow().sentence()).endsWith("nothing fits: torn");
  }

  @Test
  void aNextProposalThatFailsCostsTheFeatureOnly() {
    Change change =
        run(
            first ->
                () -> {
                  throw new UnsupportedOperationException("no idea");
                },
            "crooked");
    assertThat(change.profile()).isEmpty();
    assertThat(change.reason().orElseThrow().code()).isEqualTo("reshaper-failed");
  }

  private static final Proposal LEFT = new LeftAlone(LAST);

  /** Makes what comes after the ladder of a proposal. */
  private interface Next {
    Supplier<Proposal> after(Reshape first);
  }

  private static List<Variant> renamed(Reshape first) {
    return first.ladder().stream()
        .map(each -> new Variant("second", each.cuts(), each.measures()))
        .toList();
  }

  /** Runs on a block with one bore; the first attempts meet with these faults. */
  private Change run(Next next, String... faults) {
    Mesh mesh =
        HoleBlock.ofHalfWidth(15)
            .ring(Ring.round(4, 32, 0, 0))
            .ring(Ring.round(4, 32, 0, 20))
            .through()
            .placed(Affine3.rows(Vec3.X, Vec3.Z, new Vec3(0, -1, 0), Vec3.ZERO))
            .mesh();
    HalfEdges halfEdges = HalfEdges.of(mesh);
    Tolerances tolerances = Tolerances.forModel(mesh.box().reach(), 0);
    return new ObjectReshaper(
            new WorkMesh(mesh, halfEdges, FacetTree.of(mesh)),
            mesh.box(),
            new Frame(Affine3.IDENTITY, point -> point, tolerances),
            Limits.usual(),
            List.of(new Chained(next)),
            new Failing(new ArrayDeque<>(List.of(faults))))
        .reshape(FeatureFinder.find(mesh, halfEdges, tolerances).features())
        .features()
        .get(0)
        .changes()
        .get(0);
  }

  /** The roof with something else after its first ladder. */
  private final class Chained implements Reshaper {

    private final Reshaper roof = new GableRoof();
    private final Next next;

    Chained(Next next) {
      this.next = next;
    }

    @Override
    public String name() {
      return "chained";
    }

    @Override
    public Phase phase() {
      return Phase.ROOF;
    }

    @Override
    public String summary() {
      return "tries twice";
    }

    @Override
    public Optional<Proposal> propose(Feature feature, Surroundings around, Limits limits) {
      Reshape first = (Reshape) roof.propose(feature, around, limits).orElseThrow();
      return Optional.of(
          new Reshape(
              first.ladder(),
              () -> {
                asked++;
                return next.after(first).get();
              }));
    }
  }

  /** Finds the given faults, none where the text is empty, and then none. */
  private record Failing(Deque<String> faults) implements ObjectReshaper.Proof {

    @Override
    public Optional<String> fault(WorkMesh before, MeshEdit edit, Intent intent) {
      return Optional.ofNullable(faults.poll()).filter(fault -> !fault.isEmpty());
    }

    @Override
    public Optional<String> tidyFault(WorkMesh before, MeshEdit edit) {
      return Optional.of("nothing to tidy");
    }
  }
}

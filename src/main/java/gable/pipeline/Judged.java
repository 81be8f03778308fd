package gable.pipeline;

import gable.geom.Box3;
import gable.mesh.MeshEdit;
import gable.mesh.WorkMesh;
import gable.plan.Intent;
import gable.verify.Judge;
import gable.verify.Verdict;
import java.util.Optional;

/** Has every edit judged by all proofs of {@link Judge}. */
public final class Judged implements ObjectReshaper.Proof {

  private final Judge judge;
  private final double grid;

  /**
   * Proofs for one object.
   *
   * @param box of its mesh, in print space
   * @param frame where it lies
   */
  public Judged(Box3 box, ObjectReshaper.Frame frame) {
    this(box, frame, 1);
  }

  /** The same, with so many threads. */
  Judged(Box3 box, ObjectReshaper.Frame frame, int threads) {
    this.judge = new Judge(box, frame.toObject(), frame.tolerances(), Beside.aside(threads)::start);
    this.grid = frame.tolerances().coordinateGrid();
  }

  @Override
  public Optional<String> fault(WorkMesh before, MeshEdit edit, Intent intent) {
    return judge
        .judge(before, edit, intent)
        .fold(sound -> Optional.empty(), unsound -> Optional.of(unsound.why()));
  }

  @Override
  public Optional<String> tidyFault(WorkMesh before, MeshEdit edit) {
    return judge.judgeTidy(before, edit, grid).map(Verdict.Unsound::why);
  }
}

package gable.report;

import gable.mesh.Mesh;
import gable.mesh.MeshEdit;
import gable.pipeline.FileResult;
import gable.pipeline.ObjectResult;
import gable.pipeline.Observer;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;

/**
 * Keeps the surfaces that a run shows to its observer, for pictures and drawings. Everything else
 * is passed on to another observer. Used for one file; safe for several threads.
 */
public final class Shapes implements Observer {

  private final Observer next;
  private final IdentityHashMap<ObjectResult, Shape> seen = new IdentityHashMap<>();

  /** Keeps surfaces, and lets somebody else follow and stop the run. */
  public Shapes(Observer next) {
    this.next = next;
  }

  @Override
  public boolean cancelled() {
    return next.cancelled();
  }

  @Override
  public void progress(int done, int total) {
    next.progress(done, total);
  }

  @Override
  public synchronized void seen(ObjectResult result, Mesh mesh, MeshEdit edit) {
    seen.put(result, new Shape(result, mesh, edit));
    next.seen(result, mesh, edit);
  }

  /** The surfaces in the order of the build. */
  public synchronized List<Shape> of(FileResult result) {
    List<Shape> shapes = new ArrayList<>();
    for (ObjectResult object : result.objects()) {
      Shape shape = seen.get(object);
      if (shape != null) {
        shapes.add(shape);
      }
    }
    return shapes;
  }
}

package gable.threemf;

import gable.mesh.Mesh;
import gable.opc.Problem;
import java.util.Optional;

/**
 * An object with a mesh, as written in the file: coordinates in the unit of its part, numbers of
 * vertices and triangles as in the file.
 */
public final class MeshObject implements ModelObject {

  private final ObjectHead head;
  private final Mesh mesh;
  private final MeshSource source;
  private final Optional<Problem> problem;
  private final Optional<Problem> locked;

  MeshObject(
      ObjectHead head,
      Mesh mesh,
      MeshSource source,
      Optional<Problem> problem,
      Optional<Problem> locked) {
    this.head = head;
    this.mesh = mesh;
    this.source = source;
    this.problem = problem;
    this.locked = locked;
  }

  @Override
  public ObjectHead head() {
    return head;
  }

  /** What it is for. */
  public ObjectType type() {
    return head.type();
  }

  /** The mesh in object units; empty if there is a {@link #problem()}. */
  public Mesh mesh() {
    return mesh;
  }

  /** Where the mesh stands in its part. */
  MeshSource source() {
    return source;
  }

  /** Why the mesh cannot be used at all: a number that is none, a vertex that does not exist. */
  @Override
  public Optional<Problem> problem() {
    return problem;
  }

  /** Why the mesh may be looked at but must not be changed: a lattice, slices, a referrer. */
  public Optional<Problem> locked() {
    return locked;
  }

  /** The same object with further reasons, which stand behind its own. */
  MeshObject with(Optional<Problem> refused, Optional<Problem> lock) {
    return new MeshObject(head, mesh, source, problem.or(() -> refused), locked.or(() -> lock));
  }

  @Override
  public String toString() {
    return "mesh object " + head.id() + " of " + head.part();
  }
}

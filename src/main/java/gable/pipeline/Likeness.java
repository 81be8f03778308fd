package gable.pipeline;

import gable.mesh.Mesh;

/**
 * Equal for meshes with equal numbers: many programs write copies of a part as objects of their
 * own.
 */
final class Likeness {

  private final Mesh mesh;

  Likeness(Mesh mesh) {
    this.mesh = mesh;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Likeness like && (like.mesh == mesh || isEqual(like.mesh));
  }

  private boolean isEqual(Mesh other) {
    if (other.vertexCount() != mesh.vertexCount() || other.facetCount() != mesh.facetCount()) {
      return false;
    }
    for (int vertex = 0; vertex < mesh.vertexCount(); vertex++) {
      if (!mesh.point(vertex).equals(other.point(vertex))) {
        return false;
      }
    }
    for (int corner = 0; corner < 3 * mesh.facetCount(); corner++) {
      if (mesh.corner(corner / 3, corner % 3) != other.corner(corner / 3, corner % 3)) {
        return false;
      }
    }
    return true;
  }

  @Override
  public int hashCode() {
    return 31 * mesh.vertexCount() + mesh.facetCount();
  }
}

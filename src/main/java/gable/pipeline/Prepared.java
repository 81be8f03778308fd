package gable.pipeline;

import gable.feature.Surroundings;
import gable.geom.Box3;
import gable.geom.Tolerances;
import gable.mesh.FacetTree;
import gable.mesh.Mesh;
import gable.mesh.WorkMesh;
import gable.pairs.Solid;
import java.util.function.Supplier;

/**
 * The mesh of an object in print space, ready to be examined and worked on.
 *
 * @param skin the mesh, closed if it can be
 * @param tree its tree, which may still be growing beside
 */
record Prepared(Skin skin, Supplier<FacetTree> tree) {

  static Prepared of(Mesh mesh) {
    Beside<FacetTree> tree = Beside.start(() -> FacetTree.of(mesh));
    Skin skin = Skin.of(mesh);
    return new Prepared(
        skin, skin.joined() ? Beside.start(() -> FacetTree.of(skin.mesh()))::result : tree::result);
  }

  Tolerances tolerances() {
    return Tolerances.forModel(skin.mesh().box().reach(), 0);
  }

  /** The mesh to be worked on, as it was in the file. */
  WorkMesh workMesh() {
    return new WorkMesh(skin.mesh(), skin.edges(), tree.get());
  }

  /** Its body. */
  Solid solid() {
    Box3 box = skin.mesh().box();
    Surroundings around = new Surroundings(workMesh(), box);
    return point -> box.contains(point) && around.winding(point) > 0;
  }
}

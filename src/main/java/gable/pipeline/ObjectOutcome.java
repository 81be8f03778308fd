package gable.pipeline;

import gable.mesh.MeshEdit;
import java.util.List;

/**
 * What was found and done on one mesh, in print space.
 *
 * @param edit the whole change of the mesh; empty if nothing was changed
 * @param features every feature with its outcome, in the order of their ids
 * @param notices what is worth saying about the mesh as a whole
 */
record ObjectOutcome(MeshEdit edit, List<FeatureResult> features, List<Notice> notices) {

  ObjectOutcome {
    features = List.copyOf(features);
    notices = List.copyOf(notices);
  }
}

package gable.compare;

import gable.mesh.MeshEdit;
import java.util.Optional;

/**
 * An object in one or both files.
 *
 * @param kind what became of its surface
 * @param before the object in the first file
 * @param after the object in the second file
 * @param edit what turns the first surface, empty if there is none, into the second; facets that
 *     lie in no plane of those that went are marked as lying on a new face
 */
public record ObjectPair(Kind kind, Optional<Body> before, Optional<Body> after, MeshEdit edit) {}

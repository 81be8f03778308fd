package gable.compare;

import gable.geom.Vec3;
import gable.opc.PackageException;
import java.nio.file.Path;
import java.util.List;

/**
 * Two packages held against each other. What is the same in both is listed, too.
 *
 * @param before the first file
 * @param after the second file
 * @param parts parts of the packages
 * @param metadata metadata of models, objects and items
 * @param objects objects on the plate
 * @param features features on the plate
 */
public record Comparison(
    Side before,
    Side after,
    List<Value> parts,
    List<Value> metadata,
    List<ObjectPair> objects,
    List<FeaturePair> features) {

  /** Copies the lists. */
  public Comparison {
    parts = List.copyOf(parts);
    metadata = List.copyOf(metadata);
    objects = List.copyOf(objects);
    features = List.copyOf(features);
  }

  /**
   * Compares.
   *
   * @param up direction that is up when the parts are printed, in the frame of the files
   * @throws UnreadableException if a package cannot be read; objects that cannot be examined are
   *     compared all the same, but have no features
   */
  public static Comparison of(Path before, Path after, Vec3 up) throws UnreadableException {
    Contents first = contents(before);
    Contents second = contents(after);
    Side one = Side.of(before, up);
    Side other = Side.of(after, up);
    return new Comparison(
        one,
        other,
        Contents.held(first.parts(), second.parts()),
        Contents.held(first.metadata(), second.metadata()),
        Objects.of(one, other),
        Features.of(one, other));
  }

  private static Contents contents(Path file) throws UnreadableException {
    try {
      return Contents.of(file);
    } catch (PackageException e) {
      throw new UnreadableException(file, e.problem(), e);
    }
  }
}

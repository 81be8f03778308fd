package gable.threemf;

import gable.mesh.Aside;
import gable.opc.PackageException;

/**
 * The text of a model part with its long lists read into numbers once. Walking through the rest is
 * cheap: a part of a million triangles leaves a few lines.
 */
public final class ModelText {

  private final String part;
  private final PartText text;
  private final PartScan scan;

  private ModelText(String part, PartText text, PartScan scan) {
    this.part = part;
    this.text = text;
    this.scan = scan;
  }

  /**
   * Reads the lists of a part.
   *
   * @param part its name
   * @param bytes its content, not to be changed any more
   */
  public static ModelText of(String part, byte[] bytes) {
    return of(part, bytes, Aside.NOBODY);
  }

  /** The same with help. */
  static ModelText of(String part, byte[] bytes, Aside aside) {
    return new ModelText(part, new PartText(bytes), PartScan.of(bytes, aside));
  }

  /** Name of the part. */
  public String part() {
    return part;
  }

  PartText text() {
    return text;
  }

  PartScan scan() {
    return scan;
  }

  /** What tells a visitor of the events of a parser that reads this part. */
  SkeletonReader.Events events(ModelVisitor visitor) {
    return visitor == ModelVisitor.NONE
        ? parser -> {}
        : new VisitorEvents(part, text, scan, visitor);
  }

  /**
   * Walks through the part: UTF-8 in its strict form, no document type, no outside entity, within
   * the limits.
   *
   * @throws PackageException at the first fault of the XML; what came before it has been told
   */
  public void walk(ModelVisitor visitor) throws PackageException {
    SkeletonReader.walk(part, text, scan, events(visitor));
  }
}

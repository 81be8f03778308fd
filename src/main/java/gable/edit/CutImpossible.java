package gable.edit;

/**
 * A cut cannot be made: the arrangement of mesh and tool is not what a solid and a convex body can
 * have, because the input crosses itself or rounding has spoiled the tool. Never leaves this
 * package: {@link ConvexCut} turns it into a value.
 */
final class CutImpossible extends RuntimeException {

  private static final long serialVersionUID = 1;

  CutImpossible(String why) {
    super(why, null, false, false);
  }
}

package gable.edit;

import gable.feature.Surroundings;
import gable.geom.Vec3;
import gable.mesh.MeshEdit;
import gable.mesh.WorkMesh;
import gable.plan.ConvexTool;
import gable.plan.Operation;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntPredicate;
import java.util.function.UnaryOperator;

/**
 * Takes a convex tool from a closed mesh, or adds it, locally and without comparing coordinates.
 *
 * <p><b>Needs:</b> a closed mesh whose surface near the tool does not cross itself, a tool, the
 * facets of the feature (seeds), and the output grid. <b>Gives:</b> the edit, or the reason why
 * there is none. What is cut is not all of tool ∩ solid but those of its components that touch a
 * seed: a loose pin in the bore, a second shell, the wall beyond a gap stay as they are.
 *
 * <p><b>Outline.</b> (1) {@link SignTable}: each vertex near the tool is classified once against
 * each plane. (2) {@link FacetPiece}: each facet's part inside the tool, as a polygon of named
 * points. (3) {@link ToolFaces}: the tool's faces inside the solid, as loops of the same named
 * points. (4) Pieces and loops that share a side belong together; the sets with a seed are
 * selected. (5) {@link CutPoints}: named points get numbers and places, on the grid; points too
 * close become one. (6) A selected facet is replaced by what is left of it outside the tool, and
 * the selected loops are closed by new facets, both triangulated without new points.
 *
 * <p>Topology comes from step 1 to 4 alone, so the result is closed whatever rounding does in step
 * 5; whether it is also free of crossings is for the proof to say. Cost: linear in the facets whose
 * box meets the tool's, times the planes of the tool.
 */
public final class ConvexCut {

  private final WorkMesh mesh;
  private final ConvexTool tool;
  private final boolean adding;
  private final UnaryOperator<Vec3> grid;
  private final double mergeDistance;
  private final SignTable signs;
  private final List<FacetPiece> pieces = new ArrayList<>();

  private ConvexCut(
      WorkMesh mesh,
      ConvexTool tool,
      Operation operation,
      UnaryOperator<Vec3> grid,
      double mergeDistance) {
    this.mesh = mesh;
    this.tool = tool;
    this.adding = operation == Operation.ADD;
    this.grid = grid;
    this.mergeDistance = mergeDistance;
    this.signs = new SignTable(mesh, tool);
  }

  /**
   * Makes the edit that carries out a cut.
   *
   * @param mesh the solid in print space
   * @param tool the tool
   * @param operation whether the tool is taken away or added
   * @param seed tells the facets of the feature; only what hangs together with them is cut
   * @param grid takes a new point to the place at which it will be written
   * @param mergeDistance new points closer than this to another along an edge, in millimetres, are
   *     merged with it
   */
  public static CutResult of(
      WorkMesh mesh,
      ConvexTool tool,
      Operation operation,
      IntPredicate seed,
      UnaryOperator<Vec3> grid,
      double mergeDistance) {
    try {
      return new ConvexCut(mesh, tool, operation, grid, mergeDistance).cut(seed);
    } catch (CutImpossible impossible) {
      return new CutResult.Impossible(String.valueOf(impossible.getMessage()));
    }
  }

  private CutResult cut(IntPredicate seed) {
    double widest = tool.planes().stream().mapToDouble(plane -> plane.snap()).max().orElse(0);
    List<Integer> near = new ArrayList<>();
    mesh.visit(tool.box().grown(widest), near::add);
    near.sort(Integer::compare);
    for (int facet : near) {
      FacetPiece.of(mesh, facet, signs)
          .ifPresent(piece -> pieces.add(adding ? piece.reversed() : piece));
    }
    List<ToolFaces.Loop> loops = ToolFaces.loops(tool, pieces, signs, this::solidAt);
    CutPoints points = new CutPoints(mesh, signs, tool, grid);
    Regions regions = new Regions(mesh, pieces, loops, points, tool);
    Regions.Selection selection = regions.touching(seed);
    if (selection.isEmpty()) {
      return new CutResult.Impossible(CutResult.Impossible.MISSED);
    }
    return new CutAssembly(mesh, points, adding).assemble(selection, mergeDistance);
  }

  private boolean solidAt(Vec3 point) {
    boolean inside = new Surroundings(mesh, mesh.base().box()).winding(point) > 0;
    return inside != adding;
  }

  /** What came of a cut. */
  public sealed interface CutResult permits CutResult.Done, CutResult.Impossible {

    /**
     * The cut can be made.
     *
     * @param edit the edit
     */
    record Done(MeshEdit edit) implements CutResult {}

    /**
     * The cut cannot be made.
     *
     * @param why the reason, as the end of a sentence
     */
    record Impossible(String why) implements CutResult {

      private static final String MISSED = "the tool does not meet the wall of the feature";

      /** True if the tool meets no seed. */
      public boolean missed() {
        return why.equals(MISSED);
      }
    }
  }
}

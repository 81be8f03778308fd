package gable.place;

import gable.geom.Affine3;
import gable.geom.Vec3;
import gable.mesh.Mesh;
import gable.mesh.MeshEdit;
import gable.threemf.MeshObject;
import gable.threemf.ObjectEdit;
import gable.threemf.Use;
import gable.threemf.VertexGrid;
import java.util.List;
import java.util.function.UnaryOperator;

/**
 * A mesh object as it stands on the plate in one direction: all its uses whose placements differ by
 * a shift and a turn about the vertical only, so that what is horizontal in one is so in all and
 * one edit serves them.
 *
 * <p>Print space is in millimetres with z up. The first use stands for all: {@link #toPrint()} is
 * its placement.
 *
 * @param object the object
 * @param toPrint from object units to print space, for the first use
 * @param uses where it appears, in the order of the build; never empty
 * @param grid where new vertices may lie, in object units
 */
public record PlacedObject(MeshObject object, Affine3 toPrint, List<Use> uses, VertexGrid grid) {

  public PlacedObject {
    uses = List.copyOf(uses);
    if (uses.isEmpty()) {
      throw new IllegalArgumentException("an object that is not used is not placed: " + object);
    }
  }

  /** True if the placement turns left into right. */
  public boolean mirrored() {
    return toPrint.determinant() < 0;
  }

  /** The mesh in print space, with the outside outside also where the placement mirrors. */
  public Mesh printMesh() {
    return object.mesh().mapped(toPrint);
  }

  /**
   * Moves a point of print space to where the file can say it is: at most half a grid step away.
   */
  public UnaryOperator<Vec3> printGrid() {
    Affine3 toObject = toPrint.inverse();
    return point -> toPrint.apply(grid.snap(toObject.apply(point)));
  }

  /** An edit of the print mesh, for the uses of this placement, ready to be written. */
  public ObjectEdit objectEdit(MeshEdit edit) {
    return new ObjectEdit(object, toObject(edit), grid, uses);
  }

  /** An edit of the print mesh as an edit of the object's mesh, with its points on the grid. */
  public MeshEdit toObject(MeshEdit edit) {
    Affine3 toObject = toPrint.inverse();
    double[] points = new double[3 * edit.pointCount()];
    for (int i = 0; i < edit.pointCount(); i++) {
      Vec3 print = new Vec3(edit.coordinate(i, 0), edit.coordinate(i, 1), edit.coordinate(i, 2));
      Vec3 point = grid.snap(toObject.apply(print));
      points[3 * i] = point.x();
      points[3 * i + 1] = point.y();
      points[3 * i + 2] = point.z();
    }
    MeshEdit moved = edit.withPoints(points);
    return mirrored() ? moved.mirrored() : moved;
  }
}

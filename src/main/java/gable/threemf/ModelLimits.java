package gable.threemf;

/**
 * What a model may ask for before it is refused. All values are our own decision, far above what
 * honest files hold.
 *
 * @param triangles most triangles of all meshes of a package together
 * @param vertices most vertices of all meshes of a package together
 * @param coordinate largest absolute coordinate in millimetres
 * @param depth deepest nesting of components
 * @param instances most mesh instances after all components are expanded
 */
public record ModelLimits(
    int triangles, int vertices, double coordinate, int depth, int instances) {

  /** The usual limits. */
  public static final ModelLimits USUAL = new ModelLimits(50_000_000, 25_000_000, 1e6, 64, 100_000);

  public ModelLimits {
    if (triangles < 0 || vertices < 0 || !(coordinate > 0) || depth < 1 || instances < 1) {
      throw new IllegalArgumentException(
          "limits: "
              + triangles
              + " triangles, "
              + vertices
              + " vertices, "
              + coordinate
              + " mm, depth "
              + depth
              + ", "
              + instances
              + " instances");
    }
  }
}

package gable.validate;

import gable.mesh.Mesh;
import gable.opc.Place;
import gable.threemf.MeshNumbers;
import gable.threemf.PropertyUses;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** The two lists of a mesh, whether they came as numbers or element by element. */
final class MeshLists {

  private double[] points = {};
  private int pointCount;
  private int[] corners = {};
  private int cornerCount;
  private final List<Element> triangles = new ArrayList<>();
  private final PropertyUses uses = new PropertyUses();
  private Optional<MeshNumbers> plainVertices = Optional.empty();
  private Optional<MeshNumbers> plainTriangles = Optional.empty();
  private Optional<Element> list = Optional.empty();
  private boolean faulty;

  void vertex(Element vertex) {
    points = grown(points, pointCount + 3);
    for (String axis : new String[] {"x", "y", "z"}) {
      double value = vertex.number(axis, Double.NaN);
      faulty |= Double.isNaN(value);
      points[pointCount++] = value;
    }
  }

  void triangle(Element triangle) {
    if (cornerCount + 3 > corners.length) {
      corners = Arrays.copyOf(corners, Math.max(96, 2 * corners.length));
    }
    for (String corner : new String[] {"v1", "v2", "v3"}) {
      int value = triangle.index(corner);
      faulty |= value < 0;
      corners[cornerCount++] = value;
    }
    int pid = triangle.index("pid");
    int p1 = triangle.index("p1");
    int p2 = triangle.index("p2");
    int p3 = triangle.index("p3");
    if (pid >= 0 || p1 >= 0 || p2 >= 0 || p3 >= 0) {
      uses.note(triangles.size(), pid, p1, p2, p3);
    }
    triangles.add(triangle);
  }

  private static double[] grown(double[] array, int wanted) {
    return wanted <= array.length
        ? array
        : Arrays.copyOf(array, Math.max(96, Math.max(wanted, 2 * array.length)));
  }

  /** Takes the end of a list that may have come as numbers. */
  void ended(Element element) {
    if (element.tag().name().equals("vertices")) {
      plainVertices = element.numbers();
    } else {
      plainTriangles = element.numbers();
      list = Optional.of(element);
    }
  }

  int vertexCount() {
    return plainVertices.map(MeshNumbers::count).orElse(pointCount / 3);
  }

  int triangleCount() {
    return plainTriangles.map(MeshNumbers::count).orElse(cornerCount / 3);
  }

  int corner(int triangle, int k) {
    return plainTriangles.isPresent()
        ? plainTriangles.get().corner(triangle, k)
        : corners[3 * triangle + k];
  }

  double coordinate(int vertex, int axis) {
    return plainVertices.isPresent()
        ? plainVertices.get().coordinate(vertex, axis)
        : points[3 * vertex + axis];
  }

  /** What the triangles say of properties. */
  PropertyUses uses() {
    return plainTriangles.map(MeshNumbers::properties).orElse(uses);
  }

  /** Where a triangle stands. */
  Place place(int triangle) {
    return plainTriangles.isPresent()
        ? list.orElseThrow().place(triangle)
        : triangles.get(triangle).place();
  }

  /** Whether some number could not be read, which the table has found. */
  boolean isFaulty() {
    return faulty;
  }

  /** The mesh; all corners must be vertices. */
  Mesh mesh() {
    if (plainVertices.isPresent() && plainTriangles.isPresent()) {
      return MeshNumbers.mesh(plainVertices.get(), plainTriangles.get());
    }
    double[] xyz = new double[3 * vertexCount()];
    for (int i = 0; i < xyz.length; i++) {
      xyz[i] = coordinate(i / 3, i % 3);
    }
    int[] all = new int[3 * triangleCount()];
    for (int i = 0; i < all.length; i++) {
      all[i] = corner(i / 3, i % 3);
    }
    return Mesh.of(xyz, all);
  }
}

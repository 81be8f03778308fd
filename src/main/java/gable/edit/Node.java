package gable.edit;

/**
 * A point of the arrangement of a mesh and a tool, named by what makes it, so that every facet and
 * every face of the tool that has the point knows it as the same one.
 *
 * @param kind what makes it
 * @param a first number: a vertex, the lower vertex of an edge, a facet or a plane
 * @param b second number: the higher vertex of an edge or a plane
 * @param c third number: a plane
 */
record Node(Kind kind, int a, int b, int c) implements Comparable<Node> {

  enum Kind {
    /** A vertex of the mesh. */
    VERTEX,
    /** Where an edge of the mesh crosses a plane of the tool. */
    CROSSING,
    /** Where an edge of the tool, the meeting of two planes, pierces a facet. */
    PIERCING,
    /** A corner of the tool inside the solid. */
    CORNER
  }

  static Node vertex(int vertex) {
    return new Node(Kind.VERTEX, vertex, 0, 0);
  }

  static Node crossing(int from, int to, int plane) {
    return new Node(Kind.CROSSING, Math.min(from, to), Math.max(from, to), plane);
  }

  static Node piercing(int facet, int plane, int other) {
    return new Node(Kind.PIERCING, facet, Math.min(plane, other), Math.max(plane, other));
  }

  static Node corner(int first, int second, int third) {
    return new Node(Kind.CORNER, first, second, third);
  }

  @Override
  public int compareTo(Node other) {
    int order = kind.compareTo(other.kind);
    order = order != 0 ? order : Integer.compare(a, other.a);
    order = order != 0 ? order : Integer.compare(b, other.b);
    return order != 0 ? order : Integer.compare(c, other.c);
  }
}

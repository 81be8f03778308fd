package gable.edit;

import gable.geom.ConvexSolid;
import gable.geom.Vec3;
import gable.plan.ConvexTool;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * The parts of a tool's faces that lie in the solid, as loops of named points.
 *
 * <p>On each face the loops run along the pieces of facets that the face cuts, and along the edges
 * of the tool from where an edge enters the solid to where it leaves it. Entering and leaving
 * follow from the order in which a facet's piece meets the two planes; along an edge they must take
 * turns, else the input crosses itself.
 */
final class ToolFaces {

  /** A directed side of a loop; {@code piece} is −1 for a side along an edge of the tool. */
  private record Side(Node from, Node to, int piece, int interval) {}

  /** A stretch of an edge of the tool inside the solid. */
  private record Interval(int left, int right, Node from, Node to) {}

  /** Where an edge of the tool pierces the surface. */
  private record Event(double at, Node node, boolean enters) {}

  /**
   * A closed loop on one face, counter-clockwise from outside the tool around what is solid.
   *
   * @param plane the face
   * @param nodes its points
   * @param pieces pieces of facets along it
   * @param intervals stretches of tool edges along it
   */
  record Loop(int plane, List<Node> nodes, List<Integer> pieces, List<Integer> intervals) {}

  private final ConvexTool tool;
  private final List<FacetPiece> pieces;
  private final SignTable signs;
  private final Predicate<Vec3> solid;
  private final List<List<Side>> sides = new ArrayList<>();
  private final List<Interval> intervals = new ArrayList<>();

  private ToolFaces(
      ConvexTool tool, List<FacetPiece> pieces, SignTable signs, Predicate<Vec3> solid) {
    this.tool = tool;
    this.solid = solid;
    this.pieces = pieces;
    this.signs = signs;
    for (int plane = 0; plane < signs.planeCount(); plane++) {
      sides.add(new ArrayList<>());
    }
  }

  /**
   * All loops, face by face.
   *
   * @param solid tells whether a point is inside; asked only if no edge of the tool meets the
   *     surface
   */
  static List<Loop> loops(
      ConvexTool tool, List<FacetPiece> pieces, SignTable signs, Predicate<Vec3> solid) {
    ToolFaces work = new ToolFaces(tool, pieces, signs, solid);
    work.addSurfaceSides();
    work.addToolEdges();
    return work.join();
  }

  static Node cornerNode(ConvexSolid.Corner corner) {
    return Node.corner(corner.first(), corner.second(), corner.third());
  }

  private void addSurfaceSides() {
    for (int p = 0; p < pieces.size(); p++) {
      FacetPiece piece = pieces.get(p);
      for (int k = 0; k < piece.size(); k++) {
        if (piece.side(k) >= 0) {
          sides.get(piece.side(k)).add(new Side(piece.node(k + 1), piece.node(k), p, -1));
        }
      }
    }
  }

  private void addToolEdges() {
    Map<Long, List<Event>> events = events();
    Map<Node, Boolean> inSolid = new HashMap<>();
    List<ConvexSolid.Edge> silent = new ArrayList<>();
    for (ConvexSolid.Edge edge : tool.solid().edges()) {
      List<Event> along = events.remove(key(edge.left(), edge.right()));
      if (along == null) {
        silent.add(edge);
      } else {
        addIntervals(edge, along, inSolid);
      }
    }
    if (!events.isEmpty()) {
      throw new CutImpossible("the surface meets two planes of the tool where they have no edge");
    }
    settleSilent(silent, inSolid);
  }

  private static long key(int left, int right) {
    return (long) Math.min(left, right) << 32 | Math.max(left, right);
  }

  private Map<Long, List<Event>> events() {
    Map<Long, List<Event>> events = new HashMap<>();
    for (FacetPiece piece : pieces) {
      for (int k = 0; k < piece.size(); k++) {
        int in = piece.side(k + piece.size() - 1);
        int out = piece.side(k);
        if (in >= 0 && out >= 0) {
          // a piece that comes along plane "in" and goes on along plane "out" is where the edge
          // leaves the solid in its direction in the face of "in"
          boolean enters = in > out;
          Node node = piece.node(k);
          Vec3 direction = direction(Math.min(in, out), Math.max(in, out));
          double at = signs.position(node).dot(direction);
          events
              .computeIfAbsent(key(in, out), any -> new ArrayList<>())
              .add(new Event(at, node, enters));
        }
      }
    }
    return events;
  }

  private Vec3 direction(int left, int right) {
    return tool.planes()
        .get(left)
        .plane()
        .normal()
        .cross(tool.planes().get(right).plane().normal());
  }

  private void addIntervals(ConvexSolid.Edge edge, List<Event> along, Map<Node, Boolean> inSolid) {
    List<Event> inOrder = alternating(along);
    Node from = cornerNode(edge.from());
    Node to = cornerNode(edge.to());
    settle(inSolid, from, !inOrder.get(0).enters);
    settle(inSolid, to, inOrder.get(inOrder.size() - 1).enters);
    Optional<Node> open = inOrder.get(0).enters ? Optional.empty() : Optional.of(from);
    for (Event event : inOrder) {
      if (event.enters) {
        open = Optional.of(event.node);
      } else {
        addInterval(edge, open.orElseThrow(), event.node);
        open = Optional.empty();
      }
    }
    open.ifPresent(start -> addInterval(edge, start, to));
  }

  private void addInterval(ConvexSolid.Edge edge, Node from, Node to) {
    int index = intervals.size();
    intervals.add(new Interval(edge.left(), edge.right(), from, to));
    sides.get(edge.left()).add(new Side(from, to, -1, index));
    sides.get(edge.right()).add(new Side(to, from, -1, index));
  }

  private static void settle(Map<Node, Boolean> inSolid, Node corner, boolean inside) {
    Boolean before = inSolid.putIfAbsent(corner, inside);
    if (before != null && before != inside) {
      throw new CutImpossible("a corner of the tool seems to lie both in and out of the solid");
    }
  }

  /** Sorts events so that entering and leaving take turns; only events at one place may swap. */
  private List<Event> alternating(List<Event> events) {
    List<Event> sorted = new ArrayList<>(events);
    sorted.sort(Comparator.comparingDouble(Event::at).thenComparing(Event::node));
    for (boolean entersFirst : firstGuesses(sorted)) {
      Optional<List<Event>> order = takingTurns(sorted, entersFirst);
      if (order.isPresent()) {
        return order.get();
      }
    }
    throw new CutImpossible("an edge of the tool enters the solid twice without leaving it");
  }

  private static boolean[] firstGuesses(List<Event> sorted) {
    boolean first = sorted.get(0).enters;
    return new boolean[] {first, !first};
  }

  private static Optional<List<Event>> takingTurns(List<Event> sorted, boolean entersFirst) {
    List<Event> rest = new ArrayList<>(sorted);
    List<Event> order = new ArrayList<>();
    boolean wanted = entersFirst;
    while (!rest.isEmpty()) {
      int found = -1;
      for (int k = 0; k < rest.size() && rest.get(k).at - rest.get(0).at <= SAME_PLACE; k++) {
        if (rest.get(k).enters == wanted) {
          found = k;
          break;
        }
      }
      if (found < 0) {
        return Optional.empty();
      }
      order.add(rest.remove(found));
      wanted = !wanted;
    }
    return Optional.of(order);
  }

  /**
   * Points of one tool edge closer than this, in millimetres, may have been put in the wrong order
   * by the rounding of their positions: a few hundred ulps at 1000 mm, far below the distance at
   * which points are merged.
   */
  private static final double SAME_PLACE = 1e-9;

  /** Edges that pierce nothing lie all in or all out, as one of their corners does. */
  private void settleSilent(List<ConvexSolid.Edge> silent, Map<Node, Boolean> inSolid) {
    List<ConvexSolid.Edge> open = new ArrayList<>(silent);
    boolean progress = true;
    while (!open.isEmpty() && progress) {
      progress = false;
      for (ConvexSolid.Edge edge : List.copyOf(open)) {
        Node from = cornerNode(edge.from());
        Node to = cornerNode(edge.to());
        Boolean state = inSolid.getOrDefault(from, inSolid.get(to));
        if (state != null) {
          settle(inSolid, from, state);
          settle(inSolid, to, state);
          if (state) {
            addInterval(edge, from, to);
          }
          open.remove(edge);
          progress = true;
        }
      }
    }
    if (!open.isEmpty()) {
      // no edge pierces anything, so all edges lie on the same side of the surface
      ConvexSolid.Edge any = open.get(0);
      inSolid.put(cornerNode(any.from()), solid.test(any.from().point()));
      settleSilent(open, inSolid);
    }
  }

  private List<Loop> join() {
    List<Loop> loops = new ArrayList<>();
    for (int plane = 0; plane < sides.size(); plane++) {
      Map<Node, Side> bySource = new HashMap<>();
      for (Side side : sides.get(plane)) {
        if (bySource.put(side.from, side) != null) {
          throw new CutImpossible("two loops on a face of the tool run through one point");
        }
      }
      for (Side side : sides.get(plane)) {
        if (bySource.containsKey(side.from)) {
          loops.add(walk(plane, side, bySource));
        }
      }
    }
    return loops;
  }

  private static Loop walk(int plane, Side start, Map<Node, Side> bySource) {
    Loop loop = new Loop(plane, new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
    Side side = start;
    while (side != null) {
      bySource.remove(side.from);
      loop.nodes.add(side.from);
      if (side.piece >= 0) {
        loop.pieces.add(side.piece);
      } else {
        loop.intervals.add(side.interval);
      }
      if (side.to.equals(start.from)) {
        return loop;
      }
      side = bySource.get(side.to);
    }
    throw new CutImpossible("a loop on a face of the tool does not close");
  }
}

package gable.edit;

import gable.geom.EdgeKey;
import gable.geom.Vec3;
import gable.mesh.WorkMesh;
import gable.plan.ConvexTool;
import gable.section.FlatPolygon;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntPredicate;

/**
 * Which pieces of facets and which loops on the tool's faces bound one and the same component of
 * tool ∩ solid.
 *
 * <p>Members are numbered: first the pieces, then the loops. They hang together where they share a
 * side: a stretch of an edge of the mesh, of a face of the tool, or of an edge of the tool; and a
 * hole hangs together with the loop around it. Closed pieces of surface that lie wholly inside the
 * tool and enclose a cavity belong to what is around them.
 */
final class Regions {

  private final WorkMesh mesh;
  private final List<FacetPiece> pieces;
  private final List<ToolFaces.Loop> loops;
  private final CutPoints points;
  private final ConvexTool tool;
  private final Sets sets;

  /**
   * A loop with the holes in it.
   *
   * @param plane plane of the tool
   * @param outer outer loop
   * @param holes its holes
   */
  record Face(int plane, Vec3 normal, ToolFaces.Loop outer, List<ToolFaces.Loop> holes) {}

  /**
   * What is to be cut.
   *
   * @param pieces pieces to take away
   * @param faces faces to close the gap with
   * @param allPieces every piece, for the numbers in loops
   */
  record Selection(List<FacetPiece> pieces, List<Face> faces, List<FacetPiece> allPieces) {
    boolean isEmpty() {
      return pieces.isEmpty();
    }
  }

  Regions(
      WorkMesh mesh,
      List<FacetPiece> pieces,
      List<ToolFaces.Loop> loops,
      CutPoints points,
      ConvexTool tool) {
    this.mesh = mesh;
    this.pieces = pieces;
    this.loops = loops;
    this.points = points;
    this.tool = tool;
    this.sets = new Sets(pieces.size() + loops.size());
    joinAlongEdges();
    joinAlongLoops();
  }

  private void joinAlongEdges() {
    Map<Long, Integer> first = new HashMap<>();
    for (int p = 0; p < pieces.size(); p++) {
      FacetPiece piece = pieces.get(p);
      for (int k = 0; k < piece.size(); k++) {
        if (piece.side(k) < 0) {
          Integer other = first.putIfAbsent(edgeKey(piece, -1 - piece.side(k)), p);
          if (other != null) {
            sets.join(other, p);
          }
        }
      }
    }
  }

  private long edgeKey(FacetPiece piece, int edge) {
    int a = mesh.corner(piece.facet(), edge);
    int b = mesh.corner(piece.facet(), (edge + 1) % 3);
    return EdgeKey.either(a, b);
  }

  private void joinAlongLoops() {
    Map<Integer, Integer> byInterval = new HashMap<>();
    for (int l = 0; l < loops.size(); l++) {
      int member = pieces.size() + l;
      for (int piece : loops.get(l).pieces()) {
        sets.join(member, piece);
      }
      for (int interval : loops.get(l).intervals()) {
        Integer other = byInterval.putIfAbsent(interval, member);
        if (other != null) {
          sets.join(other, member);
        }
      }
    }
  }

  /** The components that touch a seed. */
  Selection touching(IntPredicate seed) {
    Map<Integer, List<Integer>> holesOf = nestHoles();
    boolean[] chosen = new boolean[pieces.size() + loops.size()];
    for (int p = 0; p < pieces.size(); p++) {
      if (seed.test(pieces.get(p).facet())) {
        chosen[sets.find(p)] = true;
      }
    }
    addCavities(chosen);
    List<FacetPiece> taken = new ArrayList<>();
    for (int p = 0; p < pieces.size(); p++) {
      if (chosen[sets.find(p)]) {
        taken.add(pieces.get(p));
      }
    }
    List<Face> faces = new ArrayList<>();
    holesOf.forEach(
        (outer, holes) -> {
          if (chosen[sets.find(pieces.size() + outer)]) {
            faces.add(face(outer, holes));
          }
        });
    return new Selection(taken, faces, pieces);
  }

  private Face face(int outer, List<Integer> holes) {
    int plane = loops.get(outer).plane();
    return new Face(
        plane, normal(plane), loops.get(outer), holes.stream().map(loops::get).toList());
  }

  private Vec3 normal(int plane) {
    return tool.planes().get(plane).plane().normal();
  }

  /** Puts every clockwise loop into the smallest counter-clockwise loop around it. */
  private Map<Integer, List<Integer>> nestHoles() {
    Map<Integer, List<Integer>> holesOf = new LinkedHashMap<>();
    List<List<FlatPolygon.Corner>> rings = new ArrayList<>();
    List<Integer> holes = new ArrayList<>();
    for (int l = 0; l < loops.size(); l++) {
      List<FlatPolygon.Corner> ring = points.ring(loops.get(l).nodes());
      rings.add(ring);
      if (ring.size() >= 3 && FlatPolygon.area(ring, normal(loops.get(l).plane())) < 0) {
        holes.add(l);
      } else {
        holesOf.put(l, new ArrayList<>());
      }
    }
    for (int hole : holes) {
      int around = smallestAround(hole, rings, holesOf);
      if (around >= 0) {
        holesOf.computeIfAbsent(around, any -> new ArrayList<>()).add(hole);
        sets.join(pieces.size() + around, pieces.size() + hole);
      } else if (Math.abs(FlatPolygon.area(rings.get(hole), normal(loops.get(hole).plane())))
          > AREA_OF_NOTHING) {
        throw new CutImpossible("a face of the tool has a hole but nothing around it");
      } else {
        holesOf.put(hole, new ArrayList<>());
      }
    }
    return holesOf;
  }

  /**
   * Twice the area, in square millimetres, below which the turn of a loop means nothing: a loop as
   * long as 100 mm and as wide as the grid of 1e-6 mm.
   */
  private static final double AREA_OF_NOTHING = 1e-4;

  private int smallestAround(
      int hole, List<List<FlatPolygon.Corner>> rings, Map<Integer, List<Integer>> outers) {
    int best = -1;
    double least = Double.POSITIVE_INFINITY;
    int plane = loops.get(hole).plane();
    for (int outer : outers.keySet()) {
      List<FlatPolygon.Corner> ring = rings.get(outer);
      if (loops.get(outer).plane() != plane || ring.size() < 3) {
        continue;
      }
      double area = FlatPolygon.area(ring, normal(plane));
      Vec3 probe = rings.get(hole).get(0).point();
      if (area < least && FlatPolygon.surrounds(ring, normal(plane), probe)) {
        least = area;
        best = outer;
      }
    }
    return best;
  }

  /** A closed shell inside the tool that encloses a void: its walls go with the solid around it. */
  private void addCavities(boolean[] chosen) {
    Map<Integer, Double> volumes = new HashMap<>();
    for (int l = 0; l < loops.size(); l++) {
      volumes.put(sets.find(pieces.size() + l), Double.POSITIVE_INFINITY);
    }
    Vec3 base = tool.box().min();
    for (int p = 0; p < pieces.size(); p++) {
      FacetPiece piece = pieces.get(p);
      Vec3 a = mesh.point(mesh.corner(piece.facet(), 0)).minus(base);
      Vec3 b = mesh.point(mesh.corner(piece.facet(), 1)).minus(base);
      Vec3 c = mesh.point(mesh.corner(piece.facet(), 2)).minus(base);
      volumes.merge(sets.find(p), a.dot(b.cross(c)), Double::sum);
    }
    volumes.forEach(
        (root, volume) -> {
          if (volume < 0) {
            chosen[root] = true;
          }
        });
  }
}

package gable.threemf;

import java.nio.charset.StandardCharsets;
import java.util.Optional;

/**
 * The fast way through a vertex or triangle list: bytes straight into arrays. It takes the plain
 * form only (see {@link ListCursor}) and answers with nothing for any other.
 */
final class PlainList {

  private static final int ALL = 7;

  private final ListCursor cursor;
  private final byte[] opening;
  private final byte[] closing;

  private PlainList(ListCursor cursor, String prefix, String list, String child) {
    this.cursor = cursor;
    this.opening = ascii('<' + prefix + child);
    this.closing = ascii("</" + prefix + list);
  }

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  /**
   * Reads a vertex list whose content starts at the cursor and takes its end tag.
   *
   * @param prefix prefix of the list's name with its colon, or nothing
   */
  static Optional<MeshList> vertices(ListCursor cursor, String prefix) {
    return new PlainList(cursor, prefix, "vertices", "vertex").vertices();
  }

  /**
   * The same for a triangle list.
   *
   * @param ahead triangles that were read already, if the list comes to their place
   */
  static Optional<MeshList> triangles(ListCursor cursor, String prefix, TrianglesAhead ahead) {
    return new PlainList(cursor, prefix, "triangles", "triangle")
        .triangles(prefix.isEmpty() ? ahead : TrianglesAhead.NONE);
  }

  private Optional<MeshList> vertices() {
    Growing.Doubles xyz = new Growing.Doubles();
    double[] point = new double[3];
    cursor.space();
    while (cursor.take(opening)) {
      if (!cursor.usualVertex(point) && !vertex(point)) {
        return Optional.empty();
      }
      xyz.add(point[0], point[1], point[2]);
      cursor.space();
    }
    return cursor.close(closing)
        ? Optional.of(MeshList.vertices(xyz.taken(), Optional.empty(), false))
        : Optional.empty();
  }

  private boolean vertex(double[] point) {
    int seen = 0;
    while (cursor.space()) {
      int axis = cursor.peek() - 'x';
      if (axis < 0 || axis > 2) {
        break;
      }
      cursor.take();
      int quote = cursor.quote();
      double value = quote == 0 ? Double.NaN : cursor.number(quote);
      if (Double.isNaN(value) || (seen & (1 << axis)) != 0) {
        return false;
      }
      point[axis] = value;
      seen |= 1 << axis;
    }
    return seen == ALL && cursor.take() == '/' && cursor.take() == '>';
  }

  private Optional<MeshList> triangles(TrianglesAhead ahead) {
    Growing.Ints corners = new Growing.Ints();
    Growing.Ints places = new Growing.Ints();
    PropertyUses uses = new PropertyUses();
    int[] usual = new int[3];
    int[] triangle = new int[8];
    cursor.space();
    while (true) {
      if (ahead.startsAt(cursor.at())) {
        ahead.run().ifPresent(run -> takeOver(run, corners, places));
      }
      int place = cursor.at();
      if (!cursor.take(opening)) {
        break;
      }
      if (cursor.usualTriangle(usual)) {
        corners.add(usual[0], usual[1], usual[2]);
      } else {
        int seen = triangle(triangle);
        if (seen == 0) {
          return Optional.empty();
        }
        if (seen >> 4 != 0) {
          note(uses, places.size(), seen, triangle);
        }
        corners.add(triangle[1], triangle[2], triangle[3]);
      }
      places.add(place);
      cursor.space();
    }
    return cursor.close(closing)
        ? Optional.of(
            MeshList.triangles(corners.taken(), places.taken(), Optional.empty(), false, uses))
        : Optional.empty();
  }

  private void takeOver(TrianglesAhead.Run run, Growing.Ints corners, Growing.Ints places) {
    corners.addAll(run.corners());
    places.addAll(run.places());
    cursor.moveTo(run.end());
  }

  private static void note(PropertyUses uses, int number, int seen, int[] triangle) {
    int[] given = new int[4];
    for (int k = 0; k < 4; k++) {
      given[k] = (seen & 1 << 4 + k) == 0 ? PropertyUses.NONE : triangle[4 + k];
    }
    uses.note(number, given[0], given[1], given[2], given[3]);
  }

  /**
   * Reads attributes v1, v2, v3 into places 1 to 3, p1, p2, p3 into 5 to 7, pid into 4.
   *
   * @return a bit for each place that was filled; 0 if this is no plain triangle
   */
  private int triangle(int[] values) {
    int seen = 0;
    while (cursor.space()) {
      int slot = slot();
      if (slot == 0) {
        break;
      }
      int quote = slot < 0 ? 0 : cursor.quote();
      int value = quote == 0 ? -1 : cursor.index(quote);
      if (value < 0 || (seen & (1 << slot)) != 0) {
        return 0;
      }
      values[slot] = value;
      seen |= 1 << slot;
    }
    boolean whole = ((seen >> 1) & ALL) == ALL && cursor.take() == '/' && cursor.take() == '>';
    return whole ? seen : 0;
  }

  /** Takes an attribute's name: its slot, 0 if there is none, -1 if it is another. */
  private int slot() {
    int letter = cursor.peek();
    if (letter != 'v' && letter != 'p') {
      return letter == '/' ? 0 : -1;
    }
    cursor.take();
    int digit = cursor.take();
    if (digit >= '1' && digit <= '3') {
      return digit - '0' + (letter == 'v' ? 0 : 4);
    }
    return letter == 'p' && digit == 'i' && cursor.take() == 'd' ? 4 : -1;
  }
}

package gable.threemf;

import gable.mesh.Aside;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * Triangles from the later half of a part, read while somebody else is on the way there. It is a
 * guess that they stand in a list: whoever reads the list from its start and comes to the very byte
 * at which the guess begins, between two elements, would read the same bytes in the same way, and
 * may take what was read. Where the guess was wrong nobody ever comes to that byte.
 *
 * <p>Takes usual triangles only (see {@link ListCursor#usualTriangle}) and stops at anything else.
 */
final class TrianglesAhead {

  /** No guess. */
  static final TrianglesAhead NONE = new TrianglesAhead(-1, Optional::empty);

  /**
   * Parts of fewer bytes are read in about the time that starting a thread takes, a millisecond.
   */
  private static final int WORTH = 1 << 18;

  /** A part with longer stretches without a triangle is not mostly triangles. */
  private static final int WINDOW = 1 << 16;

  private static final byte[] OPENING = "<triangle".getBytes(StandardCharsets.US_ASCII);

  /** What was read: three corners and the offset of its tag for each triangle. */
  static final class Run {
    private final int[] corners;
    private final int[] places;
    private final int end;

    private Run(int[] corners, int[] places, int end) {
      this.corners = corners;
      this.places = places;
      this.end = end;
    }

    int[] corners() {
      return corners;
    }

    int[] places() {
      return places;
    }

    /** Offset of the first byte not taken. */
    int end() {
      return end;
    }
  }

  private final int from;
  private final Supplier<Optional<Run>> run;

  private TrianglesAhead(int from, Supplier<Optional<Run>> run) {
    this.from = from;
    this.run = run;
  }

  /** Begins to read in the middle of a part that is long enough, if there is help. */
  static TrianglesAhead of(byte[] text, Aside aside) {
    return aside.helps() && text.length >= WORTH ? from(text, text.length / 2, aside) : NONE;
  }

  /** Begins to read at the first triangle that starts at this byte or soon after. */
  static TrianglesAhead from(byte[] text, int start, Aside aside) {
    int last = Math.min(text.length - OPENING.length, start + WINDOW);
    for (int at = start; at <= last; at++) {
      if (text[at] == '<'
          && Arrays.equals(text, at, at + OPENING.length, OPENING, 0, OPENING.length)) {
        int first = at;
        return new TrianglesAhead(at, aside.start(() -> Optional.of(read(text, first))));
      }
    }
    return NONE;
  }

  private static Run read(byte[] text, int from) {
    ListCursor cursor = new ListCursor(text, from, text.length);
    Growing.Ints corners = new Growing.Ints();
    Growing.Ints places = new Growing.Ints();
    int[] triangle = new int[3];
    int place = from;
    while (cursor.take(OPENING) && cursor.usualTriangle(triangle)) {
      corners.add(triangle[0], triangle[1], triangle[2]);
      places.add(place);
      cursor.space();
      place = cursor.at();
    }
    return new Run(corners.taken(), places.taken(), place);
  }

  /** Whether the guess begins at this byte. */
  boolean startsAt(int place) {
    return place == from;
  }

  /** What was read; nothing if the first element is none that it takes. */
  Optional<Run> run() {
    return run.get().filter(found -> found.places.length > 0);
  }
}

package gable.threemf;

import gable.mesh.Aside;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One pass over the bytes of a model part: spans of the tracked elements, and the content of every
 * vertex and triangle list that is in the plain form. Lists in another form stay in the skeleton
 * and are read from there.
 *
 * <p>Cost: linear in the bytes; memory is the arrays of the lists and four ints for each tracked
 * element.
 */
final class PartScan {

  private final byte[] text;
  private final TrianglesAhead ahead;
  private final Elements elements = new Elements();
  private final Map<Integer, MeshList> lists = new HashMap<>();
  private final List<int[]> gaps = new ArrayList<>();

  private PartScan(byte[] text, TrianglesAhead ahead) {
    this.text = text;
    this.ahead = ahead;
  }

  static PartScan of(byte[] text, Aside aside) {
    PartScan scan = new PartScan(text, TrianglesAhead.of(text, aside));
    scan.run();
    return scan;
  }

  private void run() {
    TagScanner tags = new TagScanner(text, 0, text.length);
    while (tags.next()) {
      String local = local(tags);
      if (!Elements.TRACKED.contains(local)) {
        continue;
      }
      if (tags.closing()) {
        elements.finish(tags.tagStart(), tags.tagEnd());
        continue;
      }
      int number = elements.begin(tags.tagStart(), tags.tagEnd());
      if (tags.empty()) {
        elements.finishEmpty();
      } else if (local.equals("vertices") || local.equals("triangles")) {
        list(tags, number, local.equals("vertices"));
      }
    }
  }

  private String local(TagScanner tags) {
    int from = tags.localStart();
    return new String(text, from, tags.nameEnd() - from, StandardCharsets.ISO_8859_1);
  }

  private void list(TagScanner tags, int number, boolean vertices) {
    int from = tags.tagEnd();
    String prefix =
        new String(
            text,
            tags.nameStart(),
            tags.localStart() - tags.nameStart(),
            StandardCharsets.ISO_8859_1);
    ListCursor cursor = new ListCursor(text, from, text.length);
    Optional<MeshList> list =
        vertices ? PlainList.vertices(cursor, prefix) : PlainList.triangles(cursor, prefix, ahead);
    if (list.isPresent()) {
      int end = cursor.at();
      int endTag = end - 1;
      while (text[endTag] != '<') {
        endTag--;
      }
      elements.finish(endTag, end);
      lists.put(number, list.get());
      gaps.add(new int[] {from, endTag});
      tags.moveTo(end);
    }
  }

  /** Spans of the tracked elements. */
  Elements elements() {
    return elements;
  }

  /** The lists that were read, by the number of their element. */
  Map<Integer, MeshList> lists() {
    return lists;
  }

  /** Pieces of the part that are not in the skeleton, ascending, as start and end. */
  List<int[]> gaps() {
    return gaps;
  }
}

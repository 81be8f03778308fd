package gable.threemf;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Set;

/**
 * Byte spans of the elements whose place matters, numbered in the order of their start tags. Names
 * are local names: two elements of one name in different namespaces are both here, and whoever
 * counts the start tags of these names in the same text meets them in the same order.
 */
final class Elements {

  /** Local names of the elements that are numbered. */
  static final Set<String> TRACKED =
      Set.of(
          "object",
          "build",
          "item",
          "component",
          "mesh",
          "vertices",
          "triangles",
          "triangleset",
          "basematerials",
          "colorgroup",
          "texture2dgroup",
          "compositematerials",
          "multiproperties");

  /**
   * Place of an element in its part, as byte offsets.
   *
   * @param start its start tag
   * @param content behind its start tag
   * @param contentEnd its end tag; for an empty element the same as {@code content}
   * @param end behind its end tag
   */
  record Span(int start, int content, int contentEnd, int end) {

    /** True if the element has no end tag. */
    boolean empty() {
      return contentEnd == end;
    }
  }

  private final Growing.Ints offsets = new Growing.Ints();
  private final Deque<Integer> open = new ArrayDeque<>();

  /** Notes a start tag; the number of its element. */
  int begin(int start, int content) {
    int number = offsets.size() / 4;
    offsets.add(start);
    offsets.add(content);
    offsets.add(content);
    offsets.add(content);
    open.push(number);
    return number;
  }

  /** Notes the end tag of the innermost element; an end tag without one is left to the parser. */
  void finish(int contentEnd, int end) {
    if (!open.isEmpty()) {
      int number = open.pop();
      offsets.set(4 * number + 2, contentEnd);
      offsets.set(4 * number + 3, end);
    }
  }

  /** Notes that the innermost element is empty. */
  void finishEmpty() {
    open.pop();
  }

  /** Number of elements. */
  int count() {
    return offsets.size() / 4;
  }

  /** Span of the element with a number. */
  Span span(int number) {
    int base = 4 * number;
    return new Span(
        offsets.get(base), offsets.get(base + 1), offsets.get(base + 2), offsets.get(base + 3));
  }
}

package gable.opc;

/**
 * A range of bytes of the file.
 *
 * @param from offset of the first byte
 * @param to offset behind the last byte
 */
record Span(long from, long to) {

  Span {
    if (from > to) {
      throw new IllegalArgumentException("no range: " + from + " to " + to);
    }
  }

  long length() {
    return to - from;
  }
}

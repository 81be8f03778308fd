package gable.threemf;

import java.io.IOException;
import java.io.OutputStream;

/** The new content of a changed model part, made while it is written. */
public final class SplicedPart {

  private final String name;
  private final ByteSplices splices;
  private final int oldLength;

  SplicedPart(String name, ByteSplices splices, int oldLength) {
    this.name = name;
    this.splices = splices;
    this.oldLength = oldLength;
  }

  /** Name of the part. */
  public String name() {
    return name;
  }

  /** Length of the new content in bytes. */
  public long length() {
    return splices.length();
  }

  /** Writes the new content. */
  public void writeTo(OutputStream target) throws IOException {
    splices.write(0, oldLength, target);
  }

  /** The new content in one array. */
  public byte[] bytes() {
    return splices.bytes(0, oldLength);
  }
}

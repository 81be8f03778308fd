package gable.opc;

import java.util.zip.Deflater;

/**
 * Tells from the size that a part had, deflated, with how much effort that was done, so that it is
 * done with the same: a file packed fast stays about as large and is packed as fast again.
 */
final class Effort {

  /** Level of zlib's own middle between speed and size. */
  static final int USUAL = 6;

  /** Pieces of the part that are tried, and the length of each. */
  private static final int SAMPLES = 8;

  private static final int SAMPLE = 1 << 15;

  private Effort() {}

  /**
   * The level for a part: the fast one if it came out about as large before, else the usual one.
   *
   * @param content the new content, of which most is as it was
   * @param before how long the old content was when deflated, divided by how long it is
   */
  static int level(PartContent content, double before) {
    byte[] sample = sample(content);
    double fast = deflated(sample, Deflater.BEST_SPEED);
    double usual = deflated(sample, USUAL);
    // pieces by themselves come out a little longer, which leans to the usual level
    double middle = Math.sqrt(fast * usual) / sample.length;
    return before > middle ? Deflater.BEST_SPEED : USUAL;
  }

  private static byte[] sample(PartContent content) {
    if (content.size() <= SAMPLES * SAMPLE) {
      return content.toBytes();
    }
    byte[] sample = new byte[SAMPLES * SAMPLE];
    long step = (content.size() - SAMPLE) / (SAMPLES - 1);
    for (int k = 0; k < SAMPLES; k++) {
      content.copy(k * step, SAMPLE, sample, k * SAMPLE);
    }
    return sample;
  }

  private static int deflated(byte[] bytes, int level) {
    Deflater deflater = new Deflater(level, true);
    try {
      deflater.setInput(bytes);
      deflater.finish();
      byte[] chunk = new byte[1 << 13];
      while (!deflater.finished()) {
        deflater.deflate(chunk);
      }
      return Math.toIntExact(deflater.getBytesWritten());
    } finally {
      deflater.end();
    }
  }
}

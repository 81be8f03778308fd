package gable.report;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.zip.CRC32;
import java.util.zip.Deflater;

/**
 * Writes a picture as PNG: 8 bits for each of red, green and blue, not interlaced, no other chunks
 * than IHDR, IDAT and IEND (ISO/IEC 15948:2004).
 */
final class Png {

  private static final byte[] SIGNATURE = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'};
  private static final byte UP = 2; // filter: difference to the row above

  /** On 300 pictures of parts level 9 saved no more than six bytes in a hundred. */
  private static final int EFFORT = 6;

  private Png() {}

  /**
   * The file.
   *
   * @param rgb one number 0xRRGGBB for each pixel, rows from the top
   */
  static byte[] of(int[] rgb, int width) {
    int height = rgb.length / width;
    ByteArrayOutputStream file = new ByteArrayOutputStream();
    file.writeBytes(SIGNATURE);
    ByteBuffer head = ByteBuffer.allocate(13).putInt(width).putInt(height);
    chunk(file, "IHDR", head.put((byte) 8).put((byte) 2).put(new byte[3]).array());
    chunk(file, "IDAT", deflated(filtered(rgb, width)));
    chunk(file, "IEND", new byte[0]);
    return file.toByteArray();
  }

  private static byte[] filtered(int[] rgb, int width) {
    ByteBuffer rows = ByteBuffer.allocate(rgb.length * 3 + rgb.length / width);
    for (int at = 0; at < rgb.length; at++) {
      if (at % width == 0) {
        rows.put(UP);
      }
      int above = at < width ? 0 : rgb[at - width];
      for (int shift = 16; shift >= 0; shift -= 8) {
        rows.put((byte) ((rgb[at] >> shift) - (above >> shift)));
      }
    }
    return rows.array();
  }

  private static byte[] deflated(byte[] raw) {
    Deflater deflater = new Deflater(EFFORT);
    try {
      deflater.setInput(raw);
      deflater.finish();
      ByteArrayOutputStream packed = new ByteArrayOutputStream();
      byte[] buffer = new byte[1 << 14];
      while (!deflater.finished()) {
        packed.write(buffer, 0, deflater.deflate(buffer));
      }
      return packed.toByteArray();
    } finally {
      deflater.end();
    }
  }

  private static void chunk(ByteArrayOutputStream file, String type, byte[] data) {
    byte[] name = type.getBytes(StandardCharsets.US_ASCII);
    CRC32 check = new CRC32();
    check.update(name);
    check.update(data);
    file.writeBytes(ByteBuffer.allocate(4).putInt(data.length).array());
    file.writeBytes(name);
    file.writeBytes(data);
    file.writeBytes(ByteBuffer.allocate(4).putInt((int) check.getValue()).array());
  }
}

package gable.fuzz;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.List;

/** Numbers in the headers of an archive, least byte first. */
final class Fields {

  private static final int[] KINDS = {0x0201, 0x0403, 0x0605, 0x0606, 0x0706, 0x0807};

  private Fields() {}

  static void put(ByteArrayOutputStream out, int count, long value) {
    for (int i = 0; i < count; i++) {
      out.write((int) (value >> (8 * i)));
    }
  }

  /** Writes as many of the bytes as there is room for. */
  static void put(byte[] bytes, int at, int count, long value) {
    for (int i = 0; i < count && at + i < bytes.length; i++) {
      bytes[at + i] = (byte) (value >> (8 * i));
    }
  }

  /** Where the headers start: the letters PK and one of the known kinds. */
  static List<Integer> headers(byte[] bytes) {
    List<Integer> places = new ArrayList<>();
    for (int i = 0; i + 4 <= bytes.length; i++) {
      if (bytes[i] == 'P' && bytes[i + 1] == 'K') {
        int kind = bytes[i + 3] << 8 | bytes[i + 2];
        for (int known : KINDS) {
          if (kind == known) {
            places.add(i);
          }
        }
      }
    }
    return places;
  }
}

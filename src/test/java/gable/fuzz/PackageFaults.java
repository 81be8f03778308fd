package gable.fuzz;

import java.util.Arrays;
import java.util.List;

/** Faults in the bytes of a package as they stand: headers, deflated data, and what is between. */
final class PackageFaults {

  private static final int LONGEST_FIELD = 46; // a directory record without its name

  private PackageFaults() {}

  /** The bytes with one fault more. */
  static byte[] planted(byte[] bytes, Chance chance) {
    if (bytes.length < 2) {
      return new byte[] {(byte) chance.bits(), (byte) chance.bits()};
    }
    return switch (chance.below(9)) {
      case 0 -> flipped(bytes, chance);
      case 1, 2, 3 -> headerField(bytes, chance);
      case 4 -> anyField(bytes, chance);
      case 5 -> Arrays.copyOf(bytes, chance.below(bytes.length));
      case 6 -> without(bytes, chance);
      case 7 -> repeated(bytes, chance);
      default -> overwritten(bytes, chance);
    };
  }

  private static byte[] flipped(byte[] bytes, Chance chance) {
    bytes[chance.below(bytes.length)] ^= (byte) (1 << chance.below(8));
    return bytes;
  }

  private static byte[] headerField(byte[] bytes, Chance chance) {
    List<Integer> headers = Fields.headers(bytes);
    if (headers.isEmpty()) {
      return flipped(bytes, chance);
    }
    int at = chance.of(headers) + chance.below(LONGEST_FIELD);
    Fields.put(bytes, at, 1 << chance.below(4), value(chance));
    return bytes;
  }

  private static byte[] anyField(byte[] bytes, Chance chance) {
    Fields.put(bytes, chance.below(bytes.length), 1 << chance.below(4), value(chance));
    return bytes;
  }

  private static long value(Chance chance) {
    return chance.oneIn(3) ? chance.bits() : chance.of(Telling.FIELDS);
  }

  private static byte[] without(byte[] bytes, Chance chance) {
    int from = chance.below(bytes.length);
    int to = Math.min(bytes.length, from + 1 + chance.small(bytes.length));
    byte[] left = new byte[bytes.length - (to - from)];
    System.arraycopy(bytes, 0, left, 0, from);
    System.arraycopy(bytes, to, left, from, bytes.length - to);
    return left;
  }

  private static byte[] repeated(byte[] bytes, Chance chance) {
    int from = chance.below(bytes.length);
    int count = Math.min(bytes.length - from, 1 + chance.small(bytes.length));
    int at = chance.below(bytes.length);
    byte[] longer = new byte[bytes.length + count];
    System.arraycopy(bytes, 0, longer, 0, at);
    System.arraycopy(bytes, from, longer, at, count);
    System.arraycopy(bytes, at, longer, at + count, bytes.length - at);
    return longer;
  }

  private static byte[] overwritten(byte[] bytes, Chance chance) {
    int count = 1 + chance.small(bytes.length);
    int from = chance.below(bytes.length - count + 1);
    int at = chance.below(bytes.length - count + 1);
    byte[] piece = Arrays.copyOfRange(bytes, from, from + count);
    System.arraycopy(piece, 0, bytes, at, count);
    return bytes;
  }
}

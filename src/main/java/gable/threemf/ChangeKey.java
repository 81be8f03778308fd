package gable.threemf;

import gable.mesh.MeshEdit;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.UUID;

/**
 * Names for changes, and new UUIDs made from them: the same change of the same file always gives
 * the same names. A UUID is name-based (RFC 4122, section 4.3), made from the old one and the
 * change.
 */
final class ChangeKey {

  private ChangeKey() {}

  /** The name of an edit. */
  static String of(MeshEdit edit) {
    MessageDigest digest = digest();
    ByteBuffer number = ByteBuffer.allocate(8);
    for (int i = 0; i < edit.removedCount(); i++) {
      digest.update(number.clear().putLong(edit.removed(i)).array());
    }
    for (int i = 0; i < 3 * edit.pointCount(); i++) {
      digest.update(number.clear().putDouble(edit.coordinate(i / 3, i % 3)).array());
    }
    for (int i = 0; i < 3 * edit.facetCount(); i++) {
      digest.update(number.clear().putLong(edit.corner(i / 3, i % 3)).array());
    }
    return HexFormat.of().formatHex(digest.digest());
  }

  /** The name of several changes together. */
  static String of(Iterable<String> keys) {
    MessageDigest digest = digest();
    for (String key : keys) {
      digest.update(key.getBytes(StandardCharsets.UTF_8));
      digest.update((byte) 0);
    }
    return HexFormat.of().formatHex(digest.digest());
  }

  /** The UUID of something that had one before a change; lower case (production extension B.1). */
  static String uuid(String old, String key) {
    String name = "gable " + old.strip() + ' ' + key;
    return UUID.nameUUIDFromBytes(name.getBytes(StandardCharsets.UTF_8)).toString();
  }

  private static MessageDigest digest() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}

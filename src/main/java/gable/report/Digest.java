package gable.report;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** SHA-256 (FIPS 180-4) in lower-case hex. */
public final class Digest {

  private Digest() {}

  /** Of all bytes of a file. */
  public static String of(Path file) throws IOException {
    MessageDigest digest = sha256();
    try (OutputStream sink = new DigestOutputStream(OutputStream.nullOutputStream(), digest)) {
      Files.copy(file, sink);
    }
    return HexFormat.of().formatHex(digest.digest());
  }

  /** Of a text in UTF-8. */
  public static String of(String text) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    return HexFormat.of().formatHex(sha256().digest(bytes));
  }

  private static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}

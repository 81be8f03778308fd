package gable.pipeline;

import gable.opc.OpcLimits;
import gable.opc.OpcPackage;
import gable.opc.PackageException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** The bytes of an input: in a file, or in memory where they came from a stream. */
sealed interface Bytes {

  /** Writes all of them. */
  void writeTo(OutputStream target) throws IOException;

  /** How many. */
  long length() throws IOException;

  /** The package that they are. */
  OpcPackage content(OpcLimits limits) throws PackageException;

  static Bytes of(Path path) {
    return new InFile(path);
  }

  static Bytes of(byte[] bytes) {
    return new InMemory(bytes);
  }

  /** What a result says of them. */
  default Source source(String name) throws IOException {
    MessageDigest digest = sha256();
    writeTo(new DigestOutputStream(OutputStream.nullOutputStream(), digest));
    return new Source(name, length(), HexFormat.of().formatHex(digest.digest()));
  }

  /** All that a stream gives, up to a number of bytes; one more if it has more. */
  static byte[] read(InputStream stream, long most) throws IOException {
    return stream.readNBytes((int) Math.min(most + 1, Integer.MAX_VALUE - 16));
  }

  private static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }

  /** In a file. */
  final class InFile implements Bytes {
    private final Path path;

    private InFile(Path path) {
      this.path = path;
    }

    @Override
    public void writeTo(OutputStream target) throws IOException {
      Files.copy(path, target);
    }

    @Override
    public long length() throws IOException {
      return Files.size(path);
    }

    @Override
    public OpcPackage content(OpcLimits limits) throws PackageException {
      return OpcPackage.open(path, limits);
    }
  }

  /** In memory. */
  final class InMemory implements Bytes {
    private final byte[] bytes;

    private InMemory(byte[] bytes) {
      this.bytes = bytes;
    }

    @Override
    public void writeTo(OutputStream target) throws IOException {
      target.write(bytes);
    }

    @Override
    public long length() {
      return bytes.length;
    }

    @Override
    public OpcPackage content(OpcLimits limits) throws PackageException {
      return OpcPackage.open(bytes, limits);
    }
  }
}

package gable.bench;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;

/**
 * The least that any program on this JDK does on one thread to read a package and write it again:
 * inflate every entry, deflate it at the same level. Looks at nothing in between.
 */
public final class Floor {

  private Floor() {}

  /** Arguments: input, output, deflate level. */
  public static void main(String[] args) throws IOException {
    byte[] buffer = new byte[1 << 16];
    try (ZipFile in = new ZipFile(Path.of(args[0]).toFile());
        OutputStream file = Files.newOutputStream(Path.of(args[1]));
        ZipOutputStream out = new ZipOutputStream(file)) {
      out.setLevel(Integer.parseInt(args[2]));
      for (ZipEntry entry : in.stream().toList()) {
        out.putNextEntry(new ZipEntry(entry.getName()));
        copy(in.getInputStream(entry), out, buffer);
        out.closeEntry();
      }
    }
  }

  private static void copy(InputStream in, OutputStream out, byte[] buffer) throws IOException {
    try (in) {
      for (int read = in.read(buffer); read >= 0; read = in.read(buffer)) {
        out.write(buffer, 0, read);
      }
    }
  }
}

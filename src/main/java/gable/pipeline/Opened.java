package gable.pipeline;

import gable.opc.OpcLimits;
import gable.opc.OpcPackage;
import gable.opc.PackageException;
import gable.opc.Place;
import gable.opc.Problem;
import gable.opc.Rule;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/**
 * An input whose bytes are at hand.
 *
 * @param hashed what results say of it, found beside the reading
 * @param bytes all its bytes
 * @param path the file, if it is one that can be read anywhere and more than once
 */
record Opened(Beside<Source> hashed, Bytes bytes, Optional<Path> path) {

  private static final Rule UNREADABLE =
      Rule.error("input-unreadable", "practice", "check the rights and the disk, then try again");

  /**
   * Gets hold of an input. A file that is missing or a folder is no failure yet: opening its
   * content will say what is wrong.
   */
  static Opened of(Input input) throws PackageException {
    try {
      Optional<Path> path =
          input.fold(file -> Optional.of(file.path()), stream -> Optional.empty());
      Optional<InputStream> stream =
          input.fold(file -> Optional.empty(), streamed -> Optional.of(streamed.stream()));
      return path.isPresent()
          ? ofPath(input.name(), path.get())
          : ofStream(input.name(), stream.orElseThrow());
    } catch (IOException e) {
      String found = "the machine says: " + e.getMessage();
      throw new PackageException(
          new Problem(UNREADABLE, Place.FILE, found, "a file that can be read"), e);
    }
  }

  private static Opened ofPath(String name, Path path) throws IOException {
    boolean pipe = Files.exists(path) && !Files.isRegularFile(path) && !Files.isDirectory(path);
    if (pipe) {
      try (InputStream stream = Files.newInputStream(path)) {
        return ofStream(name, stream);
      }
    }
    Bytes bytes = Bytes.of(path);
    boolean hashable =
        Files.isRegularFile(path)
            && Files.isReadable(path)
            && Files.size(path) <= OpcLimits.DEFAULT.archive().bytes();
    Beside<Source> hashed = Beside.start(() -> hashable ? hash(bytes, name) : Source.unread(name));
    return new Opened(hashed, bytes, Optional.of(path));
  }

  private static Opened ofStream(String name, InputStream stream) throws IOException {
    byte[] all = Bytes.read(stream, OpcLimits.DEFAULT.archive().bytes());
    Bytes bytes = Bytes.of(all);
    return new Opened(Beside.start(() -> hash(bytes, name)), bytes, Optional.empty());
  }

  /** What cannot be read to its end has no hash; opening its content will say what is wrong. */
  private static Source hash(Bytes bytes, String name) {
    try {
      return bytes.source(name);
    } catch (IOException e) {
      return Source.unread(name);
    }
  }

  /**
   * What results say of it. To be asked for before anything is written, since the input may be the
   * output.
   */
  Source source() {
    return hashed.result();
  }

  /** Opens the package. */
  OpcPackage content() throws PackageException {
    return bytes.content(OpcLimits.DEFAULT);
  }
}

package gable.pipeline;

import java.io.InputStream;
import java.nio.file.Path;
import java.util.function.Function;

/** Where a package comes from. */
public sealed interface Input {

  /** How results call it. */
  String name();

  /** The one of the two functions that fits, applied. */
  <T> T fold(Function<FileInput, T> file, Function<StreamInput, T> stream);

  /** A file, named in results by its path. */
  static Input file(Path path) {
    return new FileInput(path, path.toString());
  }

  /** A file that results call by another name. */
  static Input file(Path path, String name) {
    return new FileInput(path, name);
  }

  /** A stream that is read to its end and not closed. */
  static Input stream(String name, InputStream stream) {
    return new StreamInput(name, stream);
  }

  /**
   * A file.
   *
   * @param path where it is
   * @param name how results call it
   */
  record FileInput(Path path, String name) implements Input {
    @Override
    public <T> T fold(Function<FileInput, T> file, Function<StreamInput, T> stream) {
      return file.apply(this);
    }
  }

  /**
   * A stream.
   *
   * @param name how results call it
   * @param stream the bytes
   */
  record StreamInput(String name, InputStream stream) implements Input {
    @Override
    public <T> T fold(Function<FileInput, T> file, Function<StreamInput, T> streamed) {
      return streamed.apply(this);
    }
  }
}

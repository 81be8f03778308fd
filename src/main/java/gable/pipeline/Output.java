package gable.pipeline;

import java.io.OutputStream;
import java.nio.file.Path;
import java.util.function.Function;

/** Where a result goes. Nothing goes there before the result is complete and checked. */
public sealed interface Output {

  /** The one of the two functions that fits, applied. */
  <T> T fold(Function<FileOutput, T> file, Function<StreamOutput, T> stream);

  /** A file, replaced in one step. It may be the input, if it is named in the same way. */
  static Output file(Path path) {
    return new FileOutput(path);
  }

  /** A stream, flushed and not closed. */
  static Output stream(OutputStream stream) {
    return new StreamOutput(stream);
  }

  /**
   * A file.
   *
   * @param path where it is to be
   */
  record FileOutput(Path path) implements Output {
    @Override
    public <T> T fold(Function<FileOutput, T> file, Function<StreamOutput, T> stream) {
      return file.apply(this);
    }
  }

  /**
   * A stream.
   *
   * @param stream takes the bytes
   */
  record StreamOutput(OutputStream stream) implements Output {
    @Override
    public <T> T fold(Function<FileOutput, T> file, Function<StreamOutput, T> streamed) {
      return streamed.apply(this);
    }
  }
}

package gable.opc;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;

/**
 * A file that is removed even when the program is told to end while it is being written. The lock
 * decides between the thread that makes the file and the one that ends the program: either the file
 * is made before and removed, or it is not made any more.
 */
final class TemporaryFile {

  private final Path path;
  private final Thread atExit;
  private Optional<FileChannel> channel = Optional.empty();
  private boolean gone;

  TemporaryFile(Path path) {
    this.path = path;
    this.atExit = new Thread(this::discard, "remove " + path.getFileName());
  }

  /** Where it is. */
  Path path() {
    return path;
  }

  /** Makes the file, unless the program is ending and nobody would remove it any more. */
  FileChannel open() throws IOException {
    try {
      Runtime.getRuntime().addShutdownHook(atExit);
    } catch (IllegalStateException e) {
      throw new IOException("the program is ending", e);
    }
    synchronized (this) {
      if (gone) {
        throw new IOException("the program is ending");
      }
      FileChannel opened =
          FileChannel.open(path, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
      channel = Optional.of(opened);
      return opened;
    }
  }

  /** Closes and removes the file if it is ours. */
  synchronized void discard() {
    gone = true;
    if (channel.isPresent()) {
      try {
        channel.get().close();
        Files.deleteIfExists(path);
      } catch (IOException e) {
        // Nothing more can be done, and the target is as it was.
      }
      channel = Optional.empty();
    }
  }

  /** Lets go of the file: it has been moved, removed or was never made. */
  void forget() {
    synchronized (this) {
      channel = Optional.empty();
    }
    try {
      Runtime.getRuntime().removeShutdownHook(atExit);
    } catch (IllegalStateException e) {
      // The program is ending, and the hook will find nothing left to do.
    }
  }
}

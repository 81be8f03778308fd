package gable.opc;

import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermission;
import java.util.Set;

/**
 * Puts a file in place at one stroke: it is written beside the target under another name, forced to
 * the disk and then moved over the target. At any moment the target is the old file or the complete
 * new one, and the file it was made from may be the target itself.
 *
 * <p>If the target is a symbolic link, the link stays and the file it leads to is replaced. A file
 * that is replaced keeps its permissions. Unless {@link #commit} has returned, {@link #close}
 * removes the temporary file, and so does an ordered end of the program. What a program leaves that
 * was killed is removed by the next one that writes into the folder an hour later.
 *
 * <pre>{@code
 * try (SafeWrite output = SafeWrite.to(target)) {
 *   PackageWriter.write(source, edit, compression, output.stream());
 *   output.seal();
 *   check(output.temporary());
 *   output.commit();
 * }
 * }</pre>
 */
public final class SafeWrite implements Closeable {

  private static final int MOST_LINKS = 40; // as many as Linux follows
  private static final int MOST_NAMES = 1000;

  private final Path target;
  private final TemporaryFile file;
  private final FileChannel channel;

  private SafeWrite(Path target, TemporaryFile file, FileChannel channel) {
    this.target = target;
    this.file = file;
    this.channel = channel;
  }

  /**
   * Starts writing.
   *
   * @throws WriteException if the target cannot be written; nothing has been touched then
   */
  public static SafeWrite to(Path target) throws WriteException {
    Path real = behindLinks(target);
    Path folder = real.toAbsolutePath().getParent();
    if (folder == null || Files.isDirectory(real)) {
      throw wrong(WriteRules.IS_FOLDER, "the output is a folder", "a file");
    }
    if (!Files.isDirectory(folder)) {
      throw wrong(
          WriteRules.FOLDER_MISSING, "there is no folder '" + folder + "'", "a folder that exists");
    }
    if (Files.exists(real) && !Files.isRegularFile(real)) {
      throw wrong(WriteRules.NOT_A_FILE, "the output is a device or a pipe", "an ordinary file");
    }
    if (Files.exists(real) && !Files.isWritable(real)) {
      throw wrong(WriteRules.PROTECTED, "the output is write-protected", "a file to write to");
    }
    try {
      return beside(real, folder);
    } catch (IOException e) {
      throw failed(e);
    }
  }

  private static Path behindLinks(Path target) throws WriteException {
    Path path = target;
    for (int i = 0; i < MOST_LINKS; i++) {
      if (!Files.isSymbolicLink(path)) {
        return path;
      }
      try {
        path = path.resolveSibling(Files.readSymbolicLink(path));
      } catch (IOException e) {
        throw failed(e);
      }
    }
    throw wrong(WriteRules.LINK_LOOP, "the output's links lead in a circle", "a link to a file");
  }

  private static SafeWrite beside(Path real, Path folder) throws IOException {
    Litter.remove(folder);
    long process = ProcessHandle.current().pid();
    for (int i = 0; i < MOST_NAMES; i++) {
      // Not made from the target's name, which may be as long as names can be.
      Path path = folder.resolve(Litter.name(process, i));
      TemporaryFile file = new TemporaryFile(path);
      try {
        return new SafeWrite(real, file, file.open());
      } catch (FileAlreadyExistsException e) {
        file.forget(); // another output of this program, or of one that was killed
      } catch (IOException e) {
        file.forget();
        throw e;
      }
    }
    throw new IOException("no free name for a temporary file in '" + folder + "'");
  }

  /** Where to write. Closing it does nothing. */
  public OutputStream stream() {
    OutputStream raw = Channels.newOutputStream(channel);
    return new OutputStream() {
      @Override
      public void write(int value) throws IOException {
        raw.write(value);
      }

      @Override
      public void write(byte[] bytes, int from, int count) throws IOException {
        raw.write(bytes, from, count);
      }
    };
  }

  /** The file that is being written; it may be read once {@link #seal} has returned. */
  public Path temporary() {
    return file.path();
  }

  /** Forces what has been written to the disk. Nothing can be written afterwards. */
  public void seal() throws WriteException {
    if (!channel.isOpen()) {
      return;
    }
    try {
      keepPermissions();
      channel.force(true);
      channel.close();
    } catch (IOException e) {
      throw failed(e);
    }
  }

  private void keepPermissions() throws IOException {
    boolean posix = Files.getFileStore(file.path()).supportsFileAttributeView("posix");
    if (posix && Files.exists(target)) {
      Set<PosixFilePermission> permissions = Files.getPosixFilePermissions(target);
      Files.setPosixFilePermissions(file.path(), permissions);
    }
  }

  /** Moves the file over the target, sealing it first if need be. */
  public void commit() throws WriteException {
    seal();
    try {
      move();
    } catch (IOException e) {
      throw failed(e);
    }
    file.forget();
    Path folder = target.toAbsolutePath().getParent();
    try (FileChannel entry = FileChannel.open(folder, StandardOpenOption.READ)) {
      entry.force(true);
    } catch (IOException e) {
      // Some systems cannot open a folder. The file itself is on the disk and in place.
    }
  }

  private void move() throws IOException {
    try {
      Files.move(file.path(), target, StandardCopyOption.ATOMIC_MOVE);
    } catch (AtomicMoveNotSupportedException e) {
      throw new IOException("the folder cannot replace files at one stroke", e);
    }
  }

  /** Removes the temporary file if it has not been moved into place. */
  @Override
  public void close() {
    file.discard();
    file.forget();
  }

  private static WriteException failed(IOException e) {
    return new WriteException(
        new Problem(
            WriteRules.FAILED,
            Place.FILE,
            "writing failed (" + why(e) + ")",
            "a folder that takes the file"),
        e);
  }

  /** What the machine says, for people: some exceptions hold nothing but the name of the file. */
  private static String why(IOException e) {
    if (e instanceof AccessDeniedException) {
      return "the right to write there is missing";
    }
    if (e instanceof NoSuchFileException) {
      return "no file can be made there";
    }
    if (e instanceof FileSystemException system && system.getReason() != null) {
      return system.getReason();
    }
    return String.valueOf(e.getMessage());
  }

  private static WriteException wrong(Rule rule, String found, String expected) {
    return new WriteException(new Problem(rule, Place.FILE, found, expected));
  }
}

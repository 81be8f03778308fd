package gable.catalogue;

import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * What was done so far, in a file to which one line is added for each finished model. A program
 * that is killed while it writes leaves a torn last line, which is passed over and closed by a line
 * feed before anything is added. Of several lines about one model the last counts.
 *
 * <p>One run at a time: the file is locked while it is open. Safe for several threads.
 */
final class Journal implements Closeable {

  private final Optional<FileChannel> file;
  private final Map<String, Entry> known = new HashMap<>();

  private Journal(Optional<FileChannel> file) {
    this.file = file;
  }

  /** A journal that knows nothing and is kept nowhere. */
  static Journal none() {
    return new Journal(Optional.empty());
  }

  /**
   * Opens or begins the journal in a file.
   *
   * @throws BusyException if another run has it open
   */
  static Journal open(Path file) throws IOException, BusyException {
    FileChannel channel =
        FileChannel.open(
            file, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
    try {
      FileLock lock = channel.tryLock();
      if (lock == null) {
        throw new BusyException();
      }
      Journal journal = new Journal(Optional.of(channel));
      journal.read(channel, Files.readAllBytes(file));
      return journal;
    } catch (OverlappingFileLockException e) {
      channel.close();
      throw new BusyException();
    } catch (IOException | BusyException e) {
      channel.close();
      throw e;
    }
  }

  /** Another run works on the same output folder. */
  static final class BusyException extends Exception {
    private static final long serialVersionUID = 1L;
  }

  private void read(FileChannel channel, byte[] bytes) throws IOException {
    int from = 0;
    for (int at = 0; at < bytes.length; at++) {
      if (bytes[at] == '\n') {
        Entry.parse(new String(bytes, from, at - from, StandardCharsets.UTF_8))
            .ifPresent(entry -> known.put(entry.file(), entry));
        from = at + 1;
      }
    }
    channel.position(bytes.length);
    if (from < bytes.length) {
      write(channel, "\n");
    }
  }

  /** What is known of a model. */
  synchronized Optional<Entry> of(String file) {
    return Optional.ofNullable(known.get(file));
  }

  /** Adds what is now known of a model. */
  synchronized void add(Entry entry) throws IOException {
    if (file.isPresent()) {
      write(file.get(), entry.line() + "\n");
    }
    known.put(entry.file(), entry);
  }

  private static void write(FileChannel channel, String text) throws IOException {
    ByteBuffer bytes = ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8));
    while (bytes.hasRemaining()) {
      channel.write(bytes);
    }
  }

  /** The text of a journal that holds these entries and nothing that is out of date. */
  static String tidy(Collection<Entry> entries) {
    StringBuilder text = new StringBuilder();
    entries.forEach(entry -> text.append(entry.line()).append('\n'));
    return text.toString();
  }

  @Override
  public void close() throws IOException {
    if (file.isPresent()) {
      file.get().close();
    }
  }
}

package gable.cli;

import gable.catalogue.Follower;
import gable.catalogue.Row;
import java.io.PrintStream;
import java.time.Duration;
import java.util.Locale;
import java.util.concurrent.atomic.AtomicBoolean;

/**
 * How far a run over a folder is, on standard error: on a terminal one line that changes, elsewhere
 * a plain line every ten seconds.
 */
final class Progress implements Follower {

  private static final long OFTEN = Duration.ofMillis(200).toNanos();
  private static final long SELDOM = Duration.ofSeconds(10).toNanos();

  private final PrintStream out;
  private final boolean quiet;
  private final boolean terminal;
  private final long began = System.nanoTime();
  private final AtomicBoolean stopped = new AtomicBoolean();
  private long told = began;
  private int done;
  private int reused;
  private int rejected;
  private int open;
  private boolean inLine;

  private Progress(PrintStream out, boolean quiet, boolean terminal) {
    this.out = out;
    this.quiet = quiet;
    this.terminal = terminal;
  }

  // from JDK 22 on there is always a console, and a call that tells whether it is a terminal; this
  // is built for JDK 17, and a line drawn again where it is not one does no harm
  @SuppressWarnings("SystemConsoleNull")
  static Progress on(Streams streams, boolean quiet) {
    return new Progress(streams.err(), quiet, System.console() != null);
  }

  @Override
  public boolean stopped() {
    return stopped.get();
  }

  /** Asks the run to stop. */
  void stop() {
    stopped.set(true);
  }

  /** Says something about the run as a whole. */
  void remark(String words) {
    if (!quiet) {
      out.println("note: " + words);
    }
  }

  @Override
  public synchronized void done(Row row, boolean known, int total) {
    done++;
    reused += known ? 1 : 0;
    rejected += row.isRejected() ? 1 : 0;
    open += row.open();
    long now = System.nanoTime();
    if (!quiet && now - told > (terminal ? OFTEN : SELDOM)) {
      told = now;
      tell(total, now);
    }
  }

  private void tell(int total, long now) {
    double seconds = (now - began) / 1e9;
    double rate = Math.max(1, done - reused) / seconds;
    String line =
        String.format(
            Locale.ROOT,
            "%d of %d models, %d rejected, %d features left, %.1f a second, about %s to go",
            done,
            total,
            rejected,
            open,
            rate,
            clock(Math.round((total - done) / rate)));
    if (terminal) {
      out.print("\r" + line + "   ");
      out.flush();
      inLine = true;
    } else {
      out.println(line);
    }
  }

  private static String clock(long seconds) {
    return String.format(
        Locale.ROOT, "%d:%02d:%02d", seconds / 3600, seconds / 60 % 60, seconds % 60);
  }

  /** Leaves the line that changes. */
  synchronized void end() {
    if (inLine) {
      out.println();
      inLine = false;
    }
  }

  /** What to do after a stop. */
  synchronized void tellHowToGoOn() {
    end();
    out.println(
        "gable: stopped after " + done + " models; what is finished stays. The same call goes on.");
  }
}

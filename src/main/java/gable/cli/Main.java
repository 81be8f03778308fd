package gable.cli;

import java.io.PrintStream;

/** The command line: the only place that prints and the only caller of {@link System#exit}. */
public final class Main {

  private static final int WRONG_CALL = 2;

  private Main() {}

  /** Runs the command and leaves with its exit code. */
  public static void main(String[] args) {
    System.exit(run(args, System.err));
  }

  static int run(String[] args, PrintStream err) {
    err.println("usage: gable COMMAND [OPTION...] FILE...");
    err.println("unknown command: " + (args.length == 0 ? "none given" : args[0]));
    return WRONG_CALL;
  }
}

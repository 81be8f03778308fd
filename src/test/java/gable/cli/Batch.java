package gable.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;

/**
 * Many calls of the command in one process: a line of standard input holds the arguments of a call,
 * separated by tabs; the line that answers it holds the exit code and what the call said on
 * standard error. For the scored corpus, where starting a machine for each call would take longer
 * than the calls.
 */
final class Batch {

  private Batch() {}

  public static void main(String[] args) throws IOException {
    PrintStream answers = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    try (BufferedReader lines =
        new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8))) {
      for (String line = lines.readLine(); line != null; line = lines.readLine()) {
        Call call = Call.of(line.split("\t", -1));
        answers.println(call.code() + "\t" + call.err().replaceAll("\\s+", " "));
      }
    }
  }
}

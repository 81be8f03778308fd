package gable.cli;

import com.sun.management.OperatingSystemMXBean;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;

/**
 * Many calls of the command in one process: a line of standard input holds the arguments of a call,
 * separated by tabs; the line that answers it holds the exit code, what the call said on standard
 * error, and the milliseconds of processor time that it took on all threads. For the scored corpus,
 * where starting a machine for each call would take longer than the calls.
 */
final class Batch {

  private Batch() {}

  private static long processor() {
    return ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class).getProcessCpuTime();
  }

  public static void main(String[] args) throws IOException {
    PrintStream answers = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    try (BufferedReader lines =
        new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8))) {
      for (String line = lines.readLine(); line != null; line = lines.readLine()) {
        long start = processor();
        Call call = Call.of(line.split("\t", -1));
        double milliseconds = (processor() - start) / 1e6;
        answers.println(
            call.code() + "\t" + call.err().replaceAll("\\s+", " ") + "\t" + milliseconds);
      }
    }
  }
}

package gable.bench;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;

/**
 * Times whole processes, from start to exit, on dense parts of several sizes: the launcher, the
 * plain jar, the peer (if there is one) and the floor, in turn, so that a busy moment hits all
 * alike. Prints a table of medians, spread (middle half over median), peak memory, and ratios.
 */
public final class WholeProcess {

  private static final int BORES = 40;

  private final Path folder;
  private final Map<String, List<String>> contenders;
  private final int runs;

  private WholeProcess(Path folder, Map<String, List<String>> contenders, int runs) {
    this.folder = folder;
    this.contenders = contenders;
    this.runs = runs;
  }

  /**
   * Arguments: folder of the build, path of the peer or {@code -}, number of runs, then triangle
   * count and deflate level such as {@code 1000000:1}, or with the number of bores, 40 by default,
   * {@code 1000000:1:100}.
   */
  public static void main(String[] args) throws IOException, InterruptedException {
    Path build = Path.of(args[0]);
    Path folder = Files.createDirectories(build.resolve("bench"));
    System.out.println(
        "| triangles:level[:bores] | program | median s | spread | peak MiB | x peer | x floor | out/in |");
    System.out.println("|---|---|---|---|---|---|---|---|");
    for (String size : Arrays.asList(args).subList(3, args.length)) {
      String[] part = size.split(":", 3);
      int bores = part.length < 3 ? BORES : Integer.parseInt(part[2]);
      WholeProcess bench =
          new WholeProcess(folder, contenders(build, args[1], part[1]), Integer.parseInt(args[2]));
      Path in = folder.resolve("dense-" + size.replace(':', '-') + ".3mf");
      DensePart.write(in, Integer.parseInt(part[0]), bores, Integer.parseInt(part[1]));
      bench.run(size, in);
    }
  }

  private static Map<String, List<String>> contenders(Path build, String peer, String level) {
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    String jar = build.resolve("gable.jar").toString();
    String heap = "-Xmx1g";
    Map<String, List<String>> commands = new LinkedHashMap<>();
    Path launcher = build.resolve("gable");
    if (Files.isExecutable(launcher)) {
      commands.put(
          "launcher", List.of(launcher.toString(), "reshape", "IN", "-o", "OUT", "--quiet"));
    }
    commands.put(
        "java -jar", List.of(java, heap, "-jar", jar, "reshape", "IN", "-o", "OUT", "--quiet"));
    if (!peer.equals("-")) {
      commands.put("peer", List.of(peer, "IN", "OUT"));
    }
    String classes = build.resolve("test-classes").toString();
    commands.put("floor", List.of(java, "-cp", classes, "gable.bench.Floor", "IN", "OUT", level));
    return commands;
  }

  private void run(String size, Path in) throws IOException, InterruptedException {
    Map<String, List<Sample>> samples = new LinkedHashMap<>();
    for (int run = 0; run <= runs; run++) {
      for (Map.Entry<String, List<String>> contender : contenders.entrySet()) {
        Sample sample = once(contender.getKey(), contender.getValue(), in);
        if (run > 0) { // the first round fills the file cache
          samples.computeIfAbsent(contender.getKey(), key -> new ArrayList<>()).add(sample);
        }
      }
    }
    samples.forEach((name, all) -> print(size + " | " + name, all, samples));
  }

  private Sample once(String name, List<String> words, Path in)
      throws IOException, InterruptedException {
    Path out = folder.resolve("out.3mf");
    Files.deleteIfExists(out);
    List<String> command =
        words.stream()
            .map(word -> word.equals("IN") ? in.toString() : word)
            .map(word -> word.equals("OUT") ? out.toString() : word)
            .toList();
    long start = System.nanoTime();
    Process process = new ProcessBuilder(command).inheritIO().start();
    long peak = 0;
    while (process.isAlive()) {
      peak = Math.max(peak, peakKib(process.pid()));
      Thread.sleep(1);
    }
    double seconds = (System.nanoTime() - start) * 1e-9;
    if (process.exitValue() != 0 || !Files.exists(out)) {
      throw new IllegalStateException(name + " ended with " + process.exitValue());
    }
    return new Sample(seconds, peak / 1024.0, (double) Files.size(out) / Files.size(in));
  }

  /** High-water mark of the process's memory, or 0 where the system does not tell. */
  private static long peakKib(long pid) {
    try (Stream<String> lines = Files.lines(Path.of("/proc/" + pid + "/status"))) {
      return lines
          .filter(line -> line.startsWith("VmHWM:"))
          .mapToLong(line -> Long.parseLong(line.replaceAll("\\D", "")))
          .findFirst()
          .orElse(0);
    } catch (IOException | UncheckedIOException gone) {
      return 0;
    }
  }

  private static void print(String label, List<Sample> own, Map<String, List<Sample>> all) {
    double[] seconds = sorted(own);
    double median = median(seconds);
    double spread = (seconds[seconds.length * 3 / 4] - seconds[seconds.length / 4]) / median;
    double peak = own.stream().mapToDouble(Sample::peakMib).max().orElse(0);
    System.out.printf(
        Locale.ROOT,
        "| %s | %.3f | %.0f %% | %.0f | %s | %s | %.2f |%n",
        label,
        median,
        100 * spread,
        peak,
        ratio(median, all.getOrDefault("peer", List.of())),
        ratio(median, all.getOrDefault("floor", List.of())),
        own.get(0).growth());
  }

  private static String ratio(double median, List<Sample> to) {
    return to.isEmpty() ? "-" : String.format(Locale.ROOT, "%.2f", median / median(sorted(to)));
  }

  private static double[] sorted(List<Sample> samples) {
    return samples.stream().mapToDouble(Sample::seconds).sorted().toArray();
  }

  private static double median(double[] sorted) {
    int half = sorted.length / 2;
    return sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
  }

  private record Sample(double seconds, double peakMib, double growth) {}
}

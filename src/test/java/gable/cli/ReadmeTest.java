package gable.cli;

import static org.assertj.core.api.Assertions.assertThat;

import gable.plugin.Jars;
import java.io.IOException;
import java.lang.reflect.Method;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Runs what the README and the Javadoc show, in a folder that holds what they speak of. A call that
 * is shown with {@code # exit code N} must end so, all others with 0.
 */
class ReadmeTest {

  private static final Path README = Path.of("README.md");
  private static final Path BRACKET = Path.of("fixtures/parts/bracket.3mf");
  private static final Pattern CODE = Pattern.compile("(.*?) +# exit code ([0-9]+)");

  /** Words that are names although they have no dot. */
  private static final Set<String> FOLDERS = Set.of("models", "repaired", "nowhere", "plugins");

  @TempDir private Path folder;

  @BeforeEach
  void provide() throws IOException {
    Files.copy(BRACKET, folder.resolve("bracket.3mf"));
    Files.copy(Path.of("fixtures/bore/through-d8.3mf"), folder.resolve("lever.3mf"));
    Files.copy(Path.of("fixtures/parts/lamp.3mf"), folder.resolve("lamp.3mf"));
    Path models = Files.createDirectories(folder.resolve("models/deep"));
    Files.copy(BRACKET, models.resolve("bracket.3mf"));
    Files.copy(Path.of("fixtures/bore/no-roof-d16.3mf"), models.resolve("thin.3mf"));
    Jars.example(Files.createDirectories(folder.resolve("plugins")));
  }

  /** Blocks of a page that are indented by four, without the indent. */
  private static List<String> blocks(Path page) throws IOException {
    List<String> blocks = new ArrayList<>();
    StringBuilder block = new StringBuilder();
    for (String line : Files.readAllLines(page)) {
      if (line.startsWith("    ") || (line.isEmpty() && !block.isEmpty())) {
        block.append(line.isEmpty() ? "" : line.substring(4)).append('\n');
      } else if (!block.isEmpty()) {
        blocks.add(block.toString().stripTrailing());
        block.setLength(0);
      }
    }
    return blocks;
  }

  @Test
  void everyCallOfTheReadmeEndsAsItSays() throws IOException {
    int calls = 0;
    for (String block : blocks(README)) {
      if (block.startsWith("# printers.txt")) {
        Files.writeString(folder.resolve("printers.txt"), block.replaceFirst("(?s)\ngable .*", ""));
      }
      for (String line : block.lines().filter(each -> each.startsWith("gable ")).toList()) {
        Matcher shown = CODE.matcher(line);
        boolean hasCode = shown.matches();
        int expected = hasCode ? Integer.parseInt(shown.group(2)) : 0;
        Call call = call(hasCode ? shown.group(1) : line);
        assertThat(call.code()).as(line + "\n" + call.err()).isEqualTo(expected);
        calls++;
      }
    }
    assertThat(calls).isGreaterThan(15);
    assertThat(folder.resolve("bracket.3mf.orig")).hasSameBinaryContentAs(BRACKET);
    assertThat(folder.resolve("roofed.3mf")).exists();
    assertThat(folder.resolve("repaired/index.html")).exists();
  }

  private Call call(String line) throws IOException {
    List<String> words = new ArrayList<>(List.of(line.split(" +", -1)));
    byte[] in = new byte[0];
    Path out = folder.resolve("standard-output");
    for (int at = 1; at < words.size(); at++) {
      String word = words.get(at);
      if (word.equals("<") || word.equals(">")) {
        Path file = folder.resolve(words.get(at + 1));
        in = word.equals("<") ? Files.readAllBytes(file) : in;
        out = word.equals(">") ? file : out;
        words.subList(at, at + 2).clear();
        at--;
      } else if (FOLDERS.contains(word) || word.matches("[a-z-]+\\.[a-z0-9]+")) {
        words.set(at, folder.resolve(word).toString());
      }
    }
    Call call = Call.with(in, words.subList(1, words.size()).toArray(String[]::new));
    Files.write(out, call.out());
    return call;
  }

  @Test
  void everyJavaExampleOfTheReadmeCompilesAndRuns() throws Exception {
    List<String> examples =
        blocks(README).stream().filter(block -> block.startsWith("import ")).toList();

    assertThat(examples).hasSize(2);
    for (String example : examples) {
      run(example);
    }
    assertThat(folder.resolve("roofed.3mf")).exists();
  }

  @Test
  void everyExampleInTheJavadocOfTheLibraryCompilesAndRuns() throws Exception {
    String source = Files.readString(Path.of("src/main/java/gable/pipeline/Gable.java"));
    Matcher example = Pattern.compile("(?s)<pre>\\{@code\\n(.*?)\\n \\* }</pre>").matcher(source);
    int examples = 0;
    while (example.find()) {
      run(example.group(1).replaceAll("(?m)^ +\\* ?", ""));
      examples++;
    }
    assertThat(examples).isGreaterThanOrEqualTo(3);
  }

  /** Compiles statements after imports as a method, in a world where names of files lie here. */
  private void run(String example) throws Exception {
    List<String> lines = example.lines().toList();
    String imports =
        some(lines, true)
            + "\nimport gable.pipeline.*; import gable.plan.*;"
            + "import gable.pipeline.Observer; import java.io.*; import java.nio.file.*; import java.time.*; import java.util.*;"
            + "import java.util.concurrent.*;";
    String body = some(lines, false).replaceAll("Path\\.of\\(\"", "Path.of(HERE + \"");
    body = body.replace("\"inspect\", \"", "\"inspect\", HERE + \"");
    String name = "Example" + Integer.toHexString(example.hashCode());
    Path source = folder.resolve(name + ".java");
    Files.writeString(
        source,
        imports
            + "\npublic class "
            + name
            + " { static String HERE; public static void run(String here) throws Exception {"
            + " HERE = here;\n"
            + body
            + "\n} }\n");
    Path classes = Files.createDirectories(folder.resolve("classes"));
    Jars.compile(List.of(source), classes);
    URL[] where = {classes.toUri().toURL()};
    try (URLClassLoader loader = new URLClassLoader(where, getClass().getClassLoader())) {
      Method run = loader.loadClass(name).getMethod("run", String.class);
      run.invoke(null, folder + "/");
    }
  }

  private static String some(List<String> lines, boolean imports) {
    return lines.stream()
        .filter(line -> line.startsWith("import ") == imports)
        .collect(Collectors.joining("\n"));
  }

  @Test
  void theReadmeNamesEveryCommandAndExitCode() throws IOException {
    String text = Files.readString(README);

    assertThat(Grammar.commands()).allMatch(command -> text.contains(command.name()));
    Grammar.exitCodes().keySet().forEach(code -> assertThat(text).contains("| " + code + " |"));
    assertThat(Arrays.asList("manual", "completion")).allMatch(text::contains);
  }
}

package gable.plugin;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.jar.JarEntry;
import java.util.jar.JarOutputStream;
import java.util.stream.Stream;
import javax.tools.JavaCompiler;
import javax.tools.ToolProvider;

/** Makes jars of plug-ins while tests run. */
public final class Jars {

  private static final String SERVICES = "META-INF/services/gable.plan.Reshaper";

  private Jars() {}

  /** The example plug-in, compiled from its sources, as its own build makes it. */
  public static Path example(Path folder) throws IOException {
    Path sources = Path.of("src/test/plugin/drain/src/main");
    Path classes = Files.createDirectories(folder.resolve("drain-classes"));
    compile(List.of(sources.resolve("java/drain/Drain.java")), classes);
    String services = Files.readString(sources.resolve("resources").resolve(SERVICES));
    return jar(folder.resolve("drain.jar"), classes, services);
  }

  /**
   * A jar with one class.
   *
   * @param name of the class, without a package, and of the jar
   * @param body what stands between its braces
   */
  static Path of(Path folder, String name, String body) throws IOException {
    Path source = folder.resolve(name + ".java");
    Files.writeString(
        source,
        "import gable.feature.*; import gable.geom.*; import gable.plan.*; import java.util.*;"
            + "public class "
            + name
            + " implements Reshaper {\n"
            + body
            + "\n}\n");
    Path classes = Files.createDirectories(folder.resolve(name + "-classes"));
    compile(List.of(source), classes);
    return jar(folder.resolve(name.toLowerCase(Locale.ROOT) + ".jar"), classes, name);
  }

  /** Compiles sources against this program. */
  public static void compile(List<Path> sources, Path classes) throws IOException {
    JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
    StringWriter messages = new StringWriter();
    List<String> options =
        List.of("-d", classes.toString(), "-cp", "target/classes", "--release", "17", "-proc:none");
    try (var files = compiler.getStandardFileManager(null, null, null)) {
      boolean done =
          compiler
              .getTask(
                  messages, files, null, options, null, files.getJavaFileObjectsFromPaths(sources))
              .call();
      assertThat(done).as(messages.toString()).isTrue();
    }
  }

  private static Path jar(Path jar, Path classes, String services) throws IOException {
    List<Path> files = new ArrayList<>();
    try (Stream<Path> all = Files.walk(classes)) {
      all.filter(Files::isRegularFile).sorted().forEach(files::add);
    }
    try (OutputStream out = Files.newOutputStream(jar);
        JarOutputStream zip = new JarOutputStream(out)) {
      for (Path file : files) {
        zip.putNextEntry(new JarEntry(classes.relativize(file).toString().replace('\\', '/')));
        zip.write(Files.readAllBytes(file));
      }
      zip.putNextEntry(new JarEntry(SERVICES));
      zip.write(services.getBytes(StandardCharsets.UTF_8));
    }
    return jar;
  }
}

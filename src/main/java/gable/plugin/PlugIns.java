package gable.plugin;

import gable.pipeline.Gable;
import gable.pipeline.Notice;
import gable.plan.Reshaper;
import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Reshapers of other people, from the jars of a folder. A jar names its reshapers in {@code
 * META-INF/services/gable.plan.Reshaper}, and holds all libraries that they need.
 *
 * <p>Each jar has a class loader of its own, which sees the packages {@code geom}, {@code mesh},
 * {@code section}, {@code feature} and {@code plan} of this program and the Java platform. One that
 * cannot be loaded is named in a notice and left out; the others work.
 *
 * <p>Plug-ins are code and may do whatever this process may: only load those that you trust. The
 * leash is against mistakes, not against malice.
 */
public final class PlugIns {

  /** How long a reshaper may think about one feature; generous, since most take milliseconds. */
  public static final Duration USUAL_PATIENCE = Duration.ofSeconds(10);

  private final List<Reshaper> reshapers = new ArrayList<>();
  private final List<Notice> notices = new ArrayList<>();
  private final Set<String> names;

  private PlugIns(Set<String> taken) {
    this.names = new HashSet<>(taken);
  }

  /**
   * A program with the reshapers of a folder besides its own. Where two have the same name, the
   * first counts: this program's own, then jars in the order of their names.
   *
   * @param patience how long a reshaper may take for one feature
   * @throws IOException if the folder cannot be read
   */
  public static Gable added(Gable gable, Path folder, Duration patience) throws IOException {
    PlugIns plugIns = new PlugIns(gable.names());
    List<Path> jars = new ArrayList<>();
    try (DirectoryStream<Path> found = Files.newDirectoryStream(folder, "*.jar")) {
      found.forEach(jars::add);
    }
    jars.sort(null);
    for (Path jar : jars) {
      plugIns.take(JarReshapers.load(jar, patience));
    }
    return gable.with(plugIns.reshapers, plugIns.notices);
  }

  private void take(JarReshapers jar) {
    notices.addAll(jar.notices());
    for (Reshaper reshaper : jar.reshapers()) {
      if (names.add(reshaper.name())) {
        reshapers.add(reshaper);
        notices.add(
            Notice.note(
                "plug-in",
                "the reshaper '"
                    + reshaper.name()
                    + "' comes from "
                    + jar.name()
                    + " (SHA-256 "
                    + jar.sha256()
                    + ")"));
      } else {
        notices.add(
            JarReshapers.refused(
                jar.name(),
                "there is a reshaper '" + reshaper.name() + "' already; this one is left out"));
      }
    }
  }
}

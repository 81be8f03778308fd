package gable.plugin;

import gable.opc.Printable;
import gable.pipeline.Notice;
import gable.plan.Reshaper;
import java.io.IOException;
import java.io.OutputStream;
import java.net.MalformedURLException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.Iterator;
import java.util.List;
import java.util.Objects;
import java.util.ServiceLoader;
import java.util.jar.JarFile;

/**
 * The reshapers of one jar.
 *
 * @param name name of the jar, fit to be shown
 * @param sha256 of its bytes; empty if it cannot be read
 * @param reshapers those that could be loaded, on their leash
 * @param notices what could not
 */
record JarReshapers(String name, String sha256, List<Reshaper> reshapers, List<Notice> notices) {

  JarReshapers {
    reshapers = List.copyOf(reshapers);
    notices = List.copyOf(notices);
  }

  /** Loads a jar; whatever is wrong with it is in the notices. */
  static JarReshapers load(Path jar, Duration patience) {
    String name = Printable.text(String.valueOf(jar.getFileName()));
    List<Reshaper> found = new ArrayList<>();
    List<Notice> notices = new ArrayList<>();
    String sha256 = "";
    try {
      new JarFile(jar.toFile()).close(); // a class loader would pass over a broken one in silence
      sha256 = sha256(jar);
      URLClassLoader loader = loader(jar, name);
      Leash leash = new Leash(name, loader, patience);
      Iterator<Reshaper> providers = ServiceLoader.load(Reshaper.class, loader).iterator();
      while (leash.call(providers::hasNext, () -> {})) {
        add(providers, leash, name, found, notices);
      }
      if (found.isEmpty() && notices.isEmpty()) {
        notices.add(refused(name, "it names no reshaper in META-INF/services"));
      }
    } catch (IOException | Leash.Failure e) {
      notices.add(refused(name, Printable.text(String.valueOf(e.getMessage()))));
    }
    return new JarReshapers(name, sha256, found, notices);
  }

  private static void add(
      Iterator<Reshaper> providers,
      Leash leash,
      String jar,
      List<Reshaper> found,
      List<Notice> notices)
      throws Leash.Failure {
    try {
      Reshaper reshaper = leash.call(providers::next, () -> {});
      Leashed.Facts facts = leash.call(() -> facts(reshaper), () -> {});
      if (Answers.isName(facts.name())) {
        found.add(new Leashed(reshaper, leash, facts));
      } else {
        notices.add(
            refused(jar, "a reshaper must have a short name such as 'drain', lower-case, with -"));
      }
    } catch (Leash.Failure e) {
      if (e.isLate()) {
        throw e; // the list of providers is in its hands still
      }
      notices.add(refused(jar, e.why()));
    }
  }

  /** More than any use that is known; so that a list cannot be endless. */
  private static final int MOST_SETTINGS = 32;

  private static Leashed.Facts facts(Reshaper reshaper) {
    return new Leashed.Facts(
        String.valueOf(reshaper.name()),
        Objects.requireNonNull(reshaper.phase(), "phase"),
        Printable.text(String.valueOf(reshaper.summary())),
        reshaper.onByItself(),
        reshaper.onForJoints(),
        reshaper.settings().stream().filter(Answers::isName).limit(MOST_SETTINGS).toList());
  }

  /** A jar, or something in it, that cannot be used. */
  static Notice refused(String jar, String why) {
    return Notice.warning(
        "plug-in-refused", "the plug-in " + jar + " is not used, or not all of it: " + why);
  }

  /** Stays open as long as the program runs, since classes are loaded when they are first used. */
  private static URLClassLoader loader(Path jar, String name) throws MalformedURLException {
    ClassLoader program = JarReshapers.class.getClassLoader();
    URL[] where = {jar.toUri().toURL()};
    return new URLClassLoader(name, where, new Published(program));
  }

  private static String sha256(Path jar) throws IOException {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      Files.copy(jar, new DigestOutputStream(OutputStream.nullOutputStream(), digest));
      return HexFormat.of().formatHex(digest.digest());
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}

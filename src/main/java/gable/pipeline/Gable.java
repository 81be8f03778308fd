package gable.pipeline;

import gable.opc.OpcPackage;
import gable.opc.PackageException;
import gable.plan.Reshaper;
import gable.validate.Validation;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.ServiceLoader;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * The library's door: finds the features of a 3MF package and reshapes them.
 *
 * <p>Immutable and safe for several threads; runs share nothing. The result depends on the bytes of
 * the input, the settings and the reshapers only: not on the number of threads, the locale or the
 * time zone.
 *
 * <p>What is wrong with a file is no exception but a {@link FileResult.Rejected}. A run throws
 * {@link java.util.concurrent.CancellationException} if its observer stops it; nothing is written
 * then.
 *
 * <p>From file to file, with limits of one's own, in millimetres and radians:
 *
 * <pre>{@code
 * Limits limits = new Limits(Math.toRadians(50), 3, 40, 1.6, 4);
 * Settings settings = Settings.usual().withLimits(limits).withThreads(2);
 * FileResult result =
 *     Gable.installed().reshape(Path.of("bracket.3mf"), Path.of("out.3mf"), settings);
 * }</pre>
 *
 * <p>What would be done to each feature:
 *
 * <pre>{@code
 * Input input = Input.file(Path.of("bracket.3mf"));
 * FileResult result = Gable.installed().inspect(input, Settings.usual(), Observer.NONE);
 * for (ObjectResult object : result.objects()) {
 *   for (FeatureResult feature :
 *       object.fold(ObjectResult.Examined::features, skipped -> List.<FeatureResult>of())) {
 *     String why = feature.reason().map(Reason::sentence).orElse("gets a new shape");
 *     System.out.println(feature.feature().id() + ": " + why);
 *   }
 * }
 * }</pre>
 *
 * <p>From stream to stream, followed, and given up after a minute:
 *
 * <pre>{@code
 * Instant end = Instant.now().plusSeconds(60);
 * Observer observer =
 *     new Observer() {
 *       @Override
 *       public boolean cancelled() {
 *         return Instant.now().isAfter(end);
 *       }
 *
 *       @Override
 *       public void progress(int done, int total) {
 *         System.out.println(done + " of " + total + " objects");
 *       }
 *     };
 * try (InputStream in = Files.newInputStream(Path.of("bracket.3mf"));
 *     OutputStream out = Files.newOutputStream(Path.of("out.3mf"))) {
 *   Gable.installed()
 *       .reshape(Input.stream("order 17", in), Output.stream(out), Settings.usual(), observer);
 * } catch (CancellationException e) {
 *   System.out.println("it took too long; nothing was written");
 * }
 * }</pre>
 */
public final class Gable {

  private final List<Reshaper> reshapers;
  private final List<Notice> notices;
  private final List<Path> partners;

  /**
   * One with the given reshapers.
   *
   * @throws IllegalArgumentException if two have the same name
   */
  public Gable(List<Reshaper> reshapers) {
    this(reshapers, List.of(), List.of());
  }

  private Gable(List<Reshaper> reshapers, List<Notice> notices, List<Path> partners) {
    Set<String> names = new HashSet<>();
    for (Reshaper reshaper : reshapers) {
      if (!names.add(reshaper.name())) {
        throw new IllegalArgumentException("two reshapers are called '" + reshaper.name() + "'");
      }
    }
    List<Reshaper> order = new ArrayList<>(reshapers);
    order.sort(Comparator.comparing(Reshaper::phase).thenComparing(Reshaper::name));
    this.reshapers = List.copyOf(order);
    this.notices = List.copyOf(notices);
    this.partners = List.copyOf(partners);
  }

  /** One with all reshapers that are installed on the class path. */
  public static Gable installed() {
    return new Gable(
        ServiceLoader.load(Reshaper.class, Gable.class.getClassLoader()).stream()
            .map(ServiceLoader.Provider::get)
            .toList());
  }

  /**
   * One with more reshapers.
   *
   * @param more the others
   * @param about what every result should say of them, such as where they come from
   * @throws IllegalArgumentException if two have the same name
   */
  public Gable with(List<Reshaper> more, List<Notice> about) {
    List<Reshaper> all = new ArrayList<>(reshapers);
    all.addAll(more);
    List<Notice> said = new ArrayList<>(notices);
    said.addAll(about);
    return new Gable(all, said, partners);
  }

  /**
   * One that knows further files whose parts go together with those of the file that it is given:
   * their pins and bores are halves of joints, too. They stay as they are. For webs and slots that
   * go together, each file is reshaped with the others as partners, with the same settings, and
   * whether the partners are reshaped already does not count.
   */
  public Gable withPartners(List<Path> files) {
    return new Gable(reshapers, notices, files);
  }

  /** What every result says of the reshapers; for those of this program nothing. */
  public List<Notice> notices() {
    return notices;
  }

  /** The reshapers in the order of their work. */
  public List<Reshaper> reshapers() {
    return reshapers;
  }

  /** Names of the reshapers. */
  public Set<String> names() {
    return reshapers.stream().map(Reshaper::name).collect(Collectors.toUnmodifiableSet());
  }

  /** What a run would do to a package; nothing is written. */
  public FileResult inspect(Input input, Settings settings, Observer observer) {
    return FileRun.of(input, Optional.empty(), work(settings, observer));
  }

  /**
   * Reshapes the features of a package and writes the result.
   *
   * @throws IllegalArgumentException if the settings name a reshaper that there is not
   */
  public FileResult reshape(Input input, Output output, Settings settings, Observer observer) {
    return FileRun.of(input, Optional.of(output), work(settings, observer));
  }

  /** The same from path to path, to its end. */
  public FileResult reshape(Path input, Path output, Settings settings) {
    return reshape(Input.file(input), Output.file(output), settings, Observer.NONE);
  }

  /** The same from stream to stream, to its end; neither stream is closed. */
  public FileResult reshape(InputStream input, OutputStream output, Settings settings) {
    return reshape(Input.stream("stream", input), Output.stream(output), settings, Observer.NONE);
  }

  /** Holds a package against the standard; nothing is written. Needs no reshapers. */
  public static Validated validate(Input input) {
    Opened opened;
    try {
      opened = Opened.of(input);
    } catch (PackageException e) {
      return new Validated(Source.unread(input.name()), Validation.refused(e));
    }
    try (OpcPackage content = opened.content()) {
      return new Validated(opened.source(), Validation.of(content));
    } catch (PackageException e) {
      return new Validated(opened.source(), Validation.refused(e));
    } catch (IOException e) {
      throw new IllegalStateException("closing what was only read does not fail", e);
    }
  }

  /**
   * Which pins belong to which bores, within each package and across; nothing is written. Needs no
   * reshapers.
   */
  public static PairsResult pairs(List<Input> inputs, Settings settings, Observer observer) {
    return new PairsRun(new Work(settings, List.of(), List.of(), observer, List.of())).run(inputs);
  }

  private Work work(Settings settings, Observer observer) {
    for (Set<String> wanted : List.of(settings.choice().with(), settings.choice().without())) {
      for (String name : wanted) {
        if (!names().contains(name)) {
          throw new IllegalArgumentException("no reshaper '" + name + "' among " + names());
        }
      }
    }
    Choice choice = settings.choice();
    List<Reshaper> used =
        reshapers.stream()
            .filter(r -> !choice.without().contains(r.name()))
            .filter(r -> r.onByItself() || r.onForJoints() || choice.with().contains(r.name()))
            .map(r -> r.onByItself() || choice.with().contains(r.name()) ? r : new ForJoints(r))
            .toList();
    return new Work(settings, used, notices, observer, partners);
  }
}

package gable.plugin;

import gable.opc.Printable;
import gable.plan.Cut;
import gable.plan.LeftAlone;
import gable.plan.Measure;
import gable.plan.Proposal;
import gable.plan.Reason;
import gable.plan.Reshape;
import gable.plan.Variant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Holds answers of plug-ins against what an answer must be. Code that is compiled elsewhere may put
 * null anywhere, so everything is looked at; texts are made fit to be shown. Geometry is not judged
 * here: cuts are proved one by one like all others.
 */
final class Answers {

  // more than any use that is known; so that an answer cannot take the whole run's work
  private static final int MOST_VARIANTS = 16;
  private static final int MOST_CUTS = 64;
  private static final int MOST_PLANES = 256;
  private static final int MOST_MEASURES = 32;
  private static final String NAME = "[a-z][a-z0-9]*(-[a-z0-9]+)*";
  private static final int LONGEST_NAME = 40;

  private static final LeftAlone NONE = new LeftAlone(new Reason("", ""));

  private Answers() {}

  /** An answer that is none; the message says what is wrong with it. */
  static final class Nonsense extends Exception {
    private static final long serialVersionUID = 1;

    Nonsense(String message) {
      super(message);
    }
  }

  /** Whether a word may be the name of a reshaper, a measure or a reason. */
  static boolean isName(@Nullable String word) {
    return word != null && word.length() <= LONGEST_NAME && word.matches(NAME);
  }

  /**
   * The answer with all proposals that come after the first made at once, as one ladder: they may
   * take no more time, and see nothing else, than the first. To be called where foreign code may
   * run.
   */
  static Optional<Proposal> whole(Optional<Proposal> answer) {
    if (!isThere(answer) || !(answer.orElse(NONE) instanceof Reshape first)) {
      return answer;
    }
    List<Variant> ladder = new ArrayList<>();
    Proposal next = first;
    while (next instanceof Reshape reshape && ladder.size() <= MOST_VARIANTS) {
      ladder.addAll(reshape.ladder());
      next = reshape.otherwise().get();
    }
    Reason otherwise = next instanceof LeftAlone left ? left.reason() : NONE.reason();
    return Optional.of(new Reshape(ladder, otherwise));
  }

  /** The answer of {@link #whole}, its texts made fit to be shown. */
  static Optional<Proposal> checked(Optional<Proposal> answer) throws Nonsense {
    require(isThere(answer), "it answered null");
    if (answer.isEmpty()) {
      return answer;
    }
    if (answer.get() instanceof Reshape reshape) {
      List<Variant> ladder = new ArrayList<>();
      require(reshape.ladder().size() <= MOST_VARIANTS, "its ladder has too many rungs");
      for (Variant variant : reshape.ladder()) {
        ladder.add(checked(variant));
      }
      Reason otherwise = ((LeftAlone) reshape.otherwise().get()).reason();
      return Optional.of(new Reshape(ladder, checked(otherwise)));
    }
    return Optional.of(new LeftAlone(checked(((LeftAlone) answer.get()).reason())));
  }

  private static Reason checked(Reason reason) throws Nonsense {
    require(isThere(reason) && isName(reason.code()), "a reason has no code such as 'thin-wall'");
    require(isThere(reason.sentence()), "a reason has no sentence");
    return new Reason(reason.code(), Printable.text(reason.sentence()));
  }

  private static Variant checked(Variant variant) throws Nonsense {
    require(isThere(variant.profile()), "a profile has no name");
    require(!variant.cuts().isEmpty(), "a variant without a cut");
    require(variant.cuts().size() <= MOST_CUTS, "a variant has too many cuts");
    require(variant.measures().size() <= MOST_MEASURES, "a variant has too many measures");
    for (Cut cut : variant.cuts()) {
      require(isThere(cut.operation()) && isThere(cut.tool()), "a cut has no tool");
      require(cut.tool().planes().size() <= MOST_PLANES, "a tool has too many planes");
    }
    Set<String> names = new HashSet<>();
    for (Measure measure : variant.measures()) {
      require(isName(measure.name()), "a measure has no name such as 'notch-depth'");
      require(names.add(measure.name()), "two measures have the same name");
      require(
          isThere(measure.quantity()) && !Double.isNaN(measure.value()), "a measure is no number");
    }
    return new Variant(Printable.text(variant.profile()), variant.cuts(), variant.measures());
  }

  /** Whether a value is there; the compiler believes that all are, but it has not seen them all. */
  private static boolean isThere(@Nullable Object value) {
    return value != null;
  }

  private static void require(boolean holds, String otherwise) throws Nonsense {
    if (!holds) {
      throw new Nonsense(otherwise);
    }
  }
}

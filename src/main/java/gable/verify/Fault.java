package gable.verify;

import gable.verify.Verdict.Proof;
import gable.verify.Verdict.Unsound;
import java.util.Locale;
import java.util.Optional;

/** Makes the answers of proofs that fail. */
final class Fault {

  private Fault() {}

  static Optional<Unsound> of(Proof proof, String format, Object... values) {
    return Optional.of(new Unsound(proof, String.format(Locale.ROOT, format, values)));
  }
}

package gable.pipeline;

import gable.opc.PackageException;
import gable.opc.Place;
import gable.opc.Problem;
import gable.plan.Reason;
import gable.threemf.MeshObject;
import gable.validate.Validation;
import java.util.Locale;
import java.util.Optional;

/**
 * What the standard says of the input, and what it therefore may say of the output. Source: core
 * specification 1.4, Preface: a producer must not bring a non-conformance into a file that it
 * modifies.
 */
final class Conformance {

  private static final String OBJECT = "model/resources/object ";
  private static final String RESOURCES = "model/resources/";

  private final Validation input;

  private Conformance(Validation input) {
    this.input = input;
  }

  /**
   * Of an input that was read.
   *
   * @throws PackageException if a resource other than an object is not what the standard wants; of
   *     objects only those that are wrong are left, and what is wrong with parts as a whole and
   *     with the build is the reader's to say
   */
  static Conformance of(Validation input) throws PackageException {
    for (Problem finding : input.findings()) {
      String path = finding.place().path();
      if (finding.isError() && path.startsWith(RESOURCES) && !path.startsWith(OBJECT)) {
        throw new PackageException(finding);
      }
    }
    return new Conformance(input);
  }

  /** Why an object must stay as it is. */
  Optional<Reason> against(MeshObject object) {
    String path = OBJECT + object.id();
    return input.findings().stream()
        .filter(Problem::isError)
        .filter(finding -> isWithin(finding.place(), object.part(), path))
        .findFirst()
        .map(finding -> new Reason(finding.code(), finding.message()));
  }

  private static boolean isWithin(Place place, String part, String path) {
    return place.part().equals(part) && (place.path() + '/').startsWith(path + '/');
  }

  /** Says that rules are broken, if so. */
  Optional<Notice> notice() {
    int count = input.counts().values().stream().mapToInt(Integer::intValue).sum();
    String words =
        String.format(
            Locale.ROOT,
            "the file breaks rules of the standard (%d in all); gable validate lists them",
            count);
    return count == 0 ? Optional.empty() : Optional.of(Notice.warning("not-conforming", words));
  }

  /**
   * The output must break no rule that the input keeps, nor break one more often unless objects
   * were cloned with all that is wrong with them.
   *
   * @throws IllegalStateException if it does, which is a fault of this program
   */
  void check(Validation output, boolean cloned) {
    output
        .counts()
        .forEach(
            (code, count) -> {
              int before = input.counts().getOrDefault(code, 0);
              if (before == 0 || (count > before && !cloned)) {
                throw new IllegalStateException(
                    String.format(
                        Locale.ROOT,
                        "the result breaks the rule %s %d times, the input %d times",
                        code,
                        count,
                        before));
              }
            });
  }
}

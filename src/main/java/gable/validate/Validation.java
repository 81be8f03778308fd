package gable.validate;

import gable.opc.OpcPackage;
import gable.opc.PackageException;
import gable.opc.Problem;
import gable.opc.RelationshipTypes;
import gable.opc.Severity;
import gable.threemf.ModelText;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What was found in a package, in the order of the checks: package, key store, model parts, what
 * goes across parts.
 *
 * @param findings breaches of rules, and notes; of one kind in one part the first few
 * @param counts how often each rule was broken, by its code
 */
public record Validation(List<Problem> findings, Map<String, Integer> counts) {

  public Validation {
    findings = List.copyOf(findings);
    counts = Map.copyOf(counts);
  }

  /** What has been found so far. */
  static Validation of(Findings findings) {
    return new Validation(findings.list(), findings.counts());
  }

  /** Checks everything in an open package. */
  public static Validation of(OpcPackage source) {
    Findings findings = new Findings();
    findings.addAll(source.problems());
    try {
      source.requireSound();
    } catch (PackageException e) {
      findings.add(e);
    }
    Set<String> encrypted = new SecureChecks(source, findings).check();
    PackageRead all = new PackageRead(source, encrypted, findings);
    String root = source.rootModelPart().name();
    Set<String> names = new LinkedHashSet<>(List.of(root));
    names.addAll(all.related(root, RelationshipTypes.MODEL));
    names.removeAll(encrypted);
    for (String name : names) {
      PartRead part = new PartRead(name, name.equals(root), true, findings);
      all.add(part);
      read(source, part, findings);
    }
    if (names.contains(root)) {
      all.finish();
    }
    return of(findings);
  }

  private static void read(OpcPackage source, PartRead part, Findings findings) {
    try {
      ModelText.of(part.name(), source.read(part.name())).walk(part.visitor());
      part.finish();
    } catch (PackageException e) {
      findings.add(e);
    }
  }

  /** What is known of a package that could not be opened. */
  public static Validation refused(PackageException refusal) {
    Findings findings = new Findings();
    findings.add(refusal);
    return of(findings);
  }

  /** The verdict that the findings amount to. */
  public Verdict verdict() {
    Verdict worst = Verdict.PASS;
    for (Problem finding : findings) {
      Verdict own =
          finding.severity() == Severity.NOTE
              ? Verdict.PASS
              : finding.severity() == Severity.WARNING
                  ? Verdict.WARN
                  : isOurs(finding) ? Verdict.UNREAD : Verdict.FAIL;
      worst = own.compareTo(worst) > 0 ? own : worst;
    }
    return worst;
  }

  /** Whether the standard has nothing to do with it: a limit of ours, or the machine. */
  private static boolean isOurs(Problem finding) {
    return finding.code().startsWith("limit-")
        || finding.code().startsWith("input-")
        || finding.rule().source().startsWith("limit ");
  }
}

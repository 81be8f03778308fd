package gable.validate;

import gable.opc.OpcPackage;
import gable.opc.PackageException;
import gable.opc.Problem;
import gable.opc.RelationshipTypes;
import gable.opc.Severity;
import gable.threemf.ModelText;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * What was found in a package, in the order of the checks: package, key store, model parts, what
 * goes across parts.
 *
 * @param findings breaches of rules, and notes
 */
public record Validation(List<Problem> findings) {

  public Validation {
    findings = List.copyOf(findings);
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
    new Run(source, findings).run();
    return new Validation(findings.list());
  }

  /** What is known of a package that could not be opened. */
  public static Validation refused(PackageException refusal) {
    Findings findings = new Findings();
    findings.add(refusal);
    return new Validation(findings.list());
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

  /** One run over a package. */
  private static final class Run {

    private final OpcPackage source;
    private final Findings findings;

    Run(OpcPackage source, Findings findings) {
      this.source = source;
      this.findings = findings;
    }

    void run() {
      Set<String> encrypted = new SecureChecks(source, findings).check();
      PackageRead all = new PackageRead(source, encrypted, findings);
      String root = source.rootModelPart().name();
      Set<String> names = new LinkedHashSet<>(List.of(root));
      names.addAll(all.related(root, RelationshipTypes.MODEL));
      names.removeAll(encrypted);
      for (String name : names) {
        read(name, name.equals(root), all);
      }
      if (names.contains(root)) {
        BuildChecks build = new BuildChecks(all, findings);
        build.check();
        new ProductionChecks(all, findings).check();
        new SliceLinks(all, build, findings).check();
        new PictureChecks(all, findings).check();
        new ExtensionChecks(all, findings).check();
      }
    }

    private void read(String name, boolean isRoot, PackageRead all) {
      PartRead part = new PartRead(name, isRoot, findings);
      all.add(part);
      try {
        part.read(ModelText.of(name, source.read(name)), findings);
      } catch (PackageException e) {
        findings.add(e);
      }
    }
  }
}

package gable.validate;

import gable.opc.OpcPackage;
import gable.opc.Part;
import gable.opc.PartRoles;
import gable.opc.RelationshipTypes;
import gable.threemf.ModelVisitor;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Holds a package against the standard while somebody else reads its model parts, at next to no
 * further cost. Left to the reader are the meshes themselves; parts that nobody reads and the key
 * store are not looked at.
 */
public final class Guard {

  private final Findings findings = new Findings();
  private final PackageRead all;
  private final String root;

  /**
   * A guard over one reading.
   *
   * @param source the package, open until the end of the reading
   * @param roles which of its parts are encrypted
   */
  public Guard(OpcPackage source, PartRoles roles) {
    Set<String> encrypted =
        roles.encryptedParts().stream().map(Part::name).collect(Collectors.toSet());
    this.all = new PackageRead(source, encrypted, findings);
    this.root = source.rootModelPart().name();
  }

  /** Is to be told of the elements of a part; the root part comes first. */
  public ModelVisitor visitor(String part) {
    PartRead read = new PartRead(part, part.equals(root), false, findings);
    all.add(read);
    return read.visitor();
  }

  /** What was found, once all parts are read. */
  public Validation finish() {
    all.parts().forEach(PartRead::finish);
    all.leave(all.related(root, RelationshipTypes.MODEL));
    all.finish();
    return Validation.of(findings);
  }
}

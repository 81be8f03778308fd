package gable.opc;

import java.util.Optional;

/**
 * A relationship from the package or a part to a part, as it stands in the file (OPC 8.3).
 *
 * @param source name of the part that it starts from, {@code /} for the package
 * @param id its Id, unique among those of the source
 * @param type what it says about its target
 * @param target its target as written
 * @param external whether it claims that the target lies outside; such a target is never fetched
 * @param part the part in this package that the target means; empty if there is none
 * @param place where it is written
 */
public record Relationship(
    String source,
    String id,
    String type,
    String target,
    boolean external,
    Optional<String> part,
    Place place) {

  /** Whether it has the given type. */
  public boolean is(String wanted) {
    return type.equals(wanted);
  }

  /** Whether it starts from the package. */
  public boolean isFromPackage() {
    return source.equals(PartNames.PACKAGE);
  }
}

package gable.threemf;

import gable.opc.PackageException;
import gable.opc.Place;
import gable.opc.Problem;
import gable.opc.Rule;
import java.util.Map;
import java.util.Objects;
import java.util.Set;

/**
 * What reading found in one part, as the builders of its objects need it, with the making of
 * problems that say where.
 *
 * @param name name of the part
 * @param source its bytes, scanned
 * @param elements places of its elements
 * @param lists its vertex and triangle lists by number
 * @param entries its property and set entries by number
 * @param ids ids of all its resources
 * @param prefixes namespaces that its root declares, by prefix
 * @param unit its unit
 * @param limits what may be asked of the machine
 */
record PartFacts(
    String name,
    ModelText source,
    Elements elements,
    Map<Integer, MeshList> lists,
    Map<Integer, Entries> entries,
    Set<Integer> ids,
    Map<String, String> prefixes,
    LengthUnit unit,
    ModelLimits limits) {

  /** Its bytes. */
  PartText text() {
    return source.text();
  }

  /** The entries of the group or set with a number. */
  Entries entries(int number) {
    return Objects.requireNonNull(entries.get(number), "an element of the skeleton was not read");
  }

  /** True if a prefix means the production extension, or is declared on an inner element only. */
  boolean isProduction(String prefix) {
    return Names.PRODUCTION.equals(prefixes.getOrDefault(prefix, Names.PRODUCTION));
  }

  /** A problem at a byte offset. */
  Problem problem(Rule rule, int offset, String path, String found, String expected) {
    Place place = Place.of(name, text().line(offset), text().column(offset)).at(path);
    return new Problem(rule, place, found, expected);
  }

  /** A problem at the element with a number. */
  Problem at(Rule rule, int number, String path, String found, String expected) {
    return problem(rule, elements.span(number).start(), path, found, expected);
  }

  /** A problem of the whole part. */
  PackageException fault(Rule rule, String path, String found, String expected) {
    return fault(name, rule, path, found, expected);
  }

  /** A problem of a whole part by its name. */
  static PackageException fault(
      String part, Rule rule, String path, String found, String expected) {
    return new PackageException(new Problem(rule, Place.of(part).at(path), found, expected));
  }
}

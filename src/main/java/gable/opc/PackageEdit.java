package gable.opc;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What is to be changed in a package; all else stays as it is, byte for byte. Immutable: each
 * method returns a larger edit.
 */
public final class PackageEdit {

  /** Changes nothing. */
  public static final PackageEdit NONE = new PackageEdit(Map.of(), Map.of(), List.of(), List.of());

  private final Map<String, PartContent> replaced;
  private final Map<String, Addition> added;
  private final List<Link> links;
  private final List<String> dropped;

  private PackageEdit(
      Map<String, PartContent> replaced,
      Map<String, Addition> added,
      List<Link> links,
      List<String> dropped) {
    this.replaced = replaced;
    this.added = added;
    this.links = links;
    this.dropped = dropped;
  }

  /** Gives a part other bytes. The same part again replaces the earlier replacement. */
  public PackageEdit replace(String part, PartContent content) {
    return new PackageEdit(with(replaced, part, content), added, links, dropped);
  }

  /**
   * Adds a part, behind those that are there.
   *
   * @param part its name, a valid part name that starts with a slash
   * @param contentType its content type; an entry is made if none says so yet
   * @throws IllegalArgumentException if the name is not valid
   */
  public PackageEdit add(String part, String contentType, PartContent content) {
    PartNames.fault(part)
        .ifPresent(
            fault -> {
              throw new IllegalArgumentException("no part name '" + part + "': " + fault);
            });
    Addition addition = new Addition(contentType, content);
    return new PackageEdit(replaced, with(added, part, addition), links, dropped);
  }

  /**
   * Adds a relationship.
   *
   * @param source the part that it starts from, {@code /} for the package
   * @param type its type, such as {@link RelationshipTypes#TEXTURE}
   * @param part the part that it leads to
   */
  public PackageEdit relate(String source, String type, String part) {
    List<Link> more = new ArrayList<>(links);
    more.add(new Link(source, type, part));
    return new PackageEdit(replaced, added, List.copyOf(more), dropped);
  }

  /** Drops a part with its own relationships, those that lead to it, and its content type entry. */
  public PackageEdit drop(String part) {
    List<String> more = new ArrayList<>(dropped);
    more.add(part);
    return new PackageEdit(replaced, added, links, List.copyOf(more));
  }

  private static <T> Map<String, T> with(Map<String, T> map, String key, T value) {
    Map<String, T> more = new LinkedHashMap<>(map);
    more.put(key, value);
    return more;
  }

  /** Whether nothing is to be changed. */
  public boolean isEmpty() {
    return replaced.isEmpty() && added.isEmpty() && links.isEmpty() && dropped.isEmpty();
  }

  Map<String, PartContent> replaced() {
    return replaced;
  }

  Map<String, Addition> added() {
    return added;
  }

  List<Link> links() {
    return links;
  }

  List<String> dropped() {
    return dropped;
  }

  /** A new part. */
  record Addition(String contentType, PartContent content) {}

  /** A new relationship. */
  record Link(String source, String type, String part) {}
}

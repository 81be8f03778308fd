package gable.threemf;

import java.util.List;

/**
 * One appearance of a mesh on the plate: the build item and the components that lead to it, from
 * the outside in.
 *
 * @param path the item first, then the components
 */
public record Use(List<Reference> path) {

  public Use {
    path = List.copyOf(path);
    if (path.isEmpty()) {
      throw new IllegalArgumentException("a use has an item");
    }
  }

  /** Number of the build item, from 0. */
  public int item() {
    return path.get(0).index();
  }

  /** In words, such as {@code item 2/component 0}. */
  public String words() {
    StringBuilder words = new StringBuilder("item ").append(item());
    for (Reference component : path.subList(1, path.size())) {
      words.append("/component ").append(component.index());
    }
    return words.toString();
  }
}

package gable.fuzz;

import gable.fuzz.Draft.Item;
import java.util.Collections;
import java.util.List;
import java.util.Locale;

/** Faults in what items a package has, how they are called and which bytes belong to which. */
final class ItemFaults {

  private ItemFaults() {}

  /** Plants one. */
  static void plant(Draft draft, Chance chance) {
    List<Item> items = draft.items();
    if (items.isEmpty()) {
      items.add(new Item("x", ""));
    }
    int at = chance.below(items.size());
    Item item = items.get(at);
    switch (chance.below(9)) {
      case 0 -> items.remove(at);
      case 1 -> items.add(chance.below(items.size() + 1), item);
      case 2 -> items.set(at, new Item(otherName(item, chance), item.content()));
      case 3 -> items.add(new Item(otherName(item, chance), item.content()));
      case 4 -> items.set(at, new Item(item.name(), chance.of(items).content()));
      case 5 -> items.set(at, new Item(item.name(), cut(item.content(), chance)));
      case 6 -> items.set(at, new Item(item.name(), item.content() + chance.of(Telling.PIECES)));
      case 7 -> items.set(at, new Item(item.name(), ""));
      default -> Collections.swap(items, at, chance.below(items.size()));
    }
  }

  private static String otherName(Item item, Chance chance) {
    String name = item.name();
    return switch (chance.below(6)) {
      case 0 -> name.toUpperCase(Locale.ROOT);
      case 1 -> name + "/more.model";
      case 2 -> name + ".";
      case 3 -> name.replace('/', '\\');
      case 4 -> "_rels/" + name + ".rels";
      default -> chance.of(Telling.NAMES);
    };
  }

  private static String cut(String content, Chance chance) {
    return content.isEmpty() ? "" : content.substring(0, chance.below(content.length()));
  }
}

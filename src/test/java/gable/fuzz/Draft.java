package gable.fuzz;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.zip.CRC32;
import java.util.zip.Deflater;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;

/**
 * A package taken apart, so that faults can be planted inside its items and packed again with sums
 * that are right. Names may be odd or occur twice, which no writer of the platform allows; hence
 * the packing by hand. Source: ZIP APPNOTE 6.3.10, sections 4.3.7, 4.3.12 and 4.3.16.
 */
final class Draft {

  /** An item: bytes of its name and its content. */
  record Item(String name, String content) {

    boolean isXml() {
      String lower = name.toLowerCase(Locale.ROOT);
      return lower.endsWith(".model") || lower.endsWith(".rels") || lower.endsWith(".xml");
    }

    boolean isModel() {
      return content.contains("<vertex") || content.contains(":vertex");
    }
  }

  private final List<Item> items;

  Draft(List<Item> items) {
    this.items = new ArrayList<>(items);
  }

  /** Takes a sound package apart; bytes become the characters of the same number. */
  static Draft of(byte[] bytes) throws IOException {
    List<Item> items = new ArrayList<>();
    try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(bytes))) {
      for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
        items.add(new Item(entry.getName(), Text.of(zip.readAllBytes())));
      }
    }
    return new Draft(items);
  }

  /** The items; may be changed. */
  List<Item> items() {
    return items;
  }

  /** Gives one of the XML items, if there is any, another content; mostly one that is a model. */
  void changeXml(Chance chance, Change change) {
    boolean any = chance.oneIn(4);
    List<Item> all = items.stream().filter(i -> i.isXml() && (any || i.isModel())).toList();
    change(all.isEmpty() ? Optional.empty() : Optional.of(chance.of(all)), change);
  }

  /** Gives one of the items with a mesh, if there is any, another content. */
  void changeModel(Chance chance, Change change) {
    List<Item> all = items.stream().filter(Item::isModel).toList();
    change(all.isEmpty() ? Optional.empty() : Optional.of(chance.of(all)), change);
  }

  private void change(Optional<Item> chosen, Change change) {
    chosen.ifPresent(
        item -> items.set(items.indexOf(item), new Item(item.name, change.changed(item.content))));
  }

  /** Another content for an item. */
  interface Change {
    String changed(String content);
  }

  /** The package. */
  byte[] packed(boolean deflated) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream directory = new ByteArrayOutputStream();
    for (Item item : items) {
      byte[] name = item.name.getBytes(StandardCharsets.UTF_8);
      byte[] content = Text.bytes(item.content);
      CRC32 sum = new CRC32();
      sum.update(content);
      byte[] stored = deflated ? deflate(content) : content;
      long[] shared = {
        20, 0x800, deflated ? 8 : 0, 0, 0x21, sum.getValue(), stored.length, content.length
      };
      int offset = out.size();
      Fields.put(out, 4, 0x04034b50);
      header(out, shared, name.length);
      out.writeBytes(name);
      out.writeBytes(stored);
      Fields.put(directory, 4, 0x02014b50);
      Fields.put(directory, 2, 20);
      header(directory, shared, name.length);
      Fields.put(directory, 2, 0);
      Fields.put(directory, 2, 0);
      Fields.put(directory, 2, 0);
      Fields.put(directory, 4, 0);
      Fields.put(directory, 4, offset);
      directory.writeBytes(name);
    }
    int start = out.size();
    out.writeBytes(directory.toByteArray());
    Fields.put(out, 4, 0x06054b50);
    Fields.put(out, 4, 0);
    Fields.put(out, 2, items.size());
    Fields.put(out, 2, items.size());
    Fields.put(out, 4, directory.size());
    Fields.put(out, 4, start);
    Fields.put(out, 2, 0);
    return out.toByteArray();
  }

  /** What local header and directory share, from the version needed to the length of the extra. */
  private static void header(ByteArrayOutputStream out, long[] shared, int nameLength) {
    int[] widths = {2, 2, 2, 2, 2, 4, 4, 4};
    for (int i = 0; i < widths.length; i++) {
      Fields.put(out, widths[i], shared[i]);
    }
    Fields.put(out, 2, nameLength);
    Fields.put(out, 2, 0);
  }

  private static byte[] deflate(byte[] content) {
    Deflater deflater = new Deflater(1, true);
    deflater.setInput(content);
    deflater.finish();
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    byte[] chunk = new byte[8192];
    while (!deflater.finished()) {
      out.write(chunk, 0, deflater.deflate(chunk));
    }
    deflater.end();
    return out.toByteArray();
  }
}

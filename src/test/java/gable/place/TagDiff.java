package gable.place;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Compares two texts of a model part tag by tag and says what an edit of one triangle into three
 * may have changed. Knows nothing of how the writer works: anything that is not in its short list
 * is a fault.
 */
final class TagDiff {

  private static final Pattern TOKEN = Pattern.compile("<[^>]*>|[^<]+", Pattern.DOTALL);
  private static final Pattern UUID = Pattern.compile(" [\\w.-]+:UUID=\"[^\"]*\"");
  private static final Set<String> ENTRIES = Set.of("color", "tex2coord", "composite", "multi");

  private final List<String> before;
  private final List<String> after;
  private final List<String> faults = new ArrayList<>();
  private int vertices;
  private int replaced;
  private int appended;
  private int entries;
  private int uuids;
  private int at;

  private TagDiff(String before, String after) {
    this.before = tokens(before);
    this.after = tokens(after);
  }

  static TagDiff of(String before, String after) {
    TagDiff diff = new TagDiff(before, after);
    diff.compare();
    return diff;
  }

  private static List<String> tokens(String text) {
    List<String> tokens = new ArrayList<>();
    for (Matcher token = TOKEN.matcher(text); token.find(); ) {
      tokens.add(token.group());
    }
    return tokens;
  }

  private void compare() {
    for (int old = 0; old < before.size(); old++) {
      while (at < after.size() && isNew(old)) {
        at++;
      }
      String now = at < after.size() ? after.get(at++) : "";
      if (!before.get(old).equals(now)) {
        changed(before.get(old), now);
      }
    }
    while (at < after.size()) {
      faults.add("more at the end: " + after.get(at++));
    }
  }

  /**
   * Whether the next token is one more before the end of its list. Blanks before an end tag are
   * skipped for that, and those in front of something new are new as well.
   */
  private boolean isNew(int old) {
    boolean blank = before.get(old).isBlank();
    String end = blank && old + 1 < before.size() ? before.get(old + 1) : before.get(old);
    boolean blankNow = after.get(at).isBlank();
    String now = blankNow && at + 1 < after.size() ? after.get(at + 1) : after.get(at);
    if (!isEntryBeforeEnd(now, end)) {
      return false;
    }
    if (!blankNow) {
      count(local(now));
    }
    return true;
  }

  private static boolean isEnd(String tag) {
    return tag.startsWith("</");
  }

  private static boolean isEntryBeforeEnd(String now, String end) {
    if (!isEnd(end) || isEnd(now) || !now.startsWith("<")) {
      return false;
    }
    String list = local(end);
    String entry = local(now);
    return (list.equals("vertices") && entry.equals("vertex"))
        || (list.equals("triangles") && entry.equals("triangle"))
        || (ENTRIES.contains(entry) && list.startsWith(group(entry)));
  }

  private static String group(String entry) {
    return switch (entry) {
      case "color" -> "colorgroup";
      case "tex2coord" -> "texture2dgroup";
      case "composite" -> "compositematerials";
      default -> "multiproperties";
    };
  }

  private void count(String entry) {
    switch (entry) {
      case "vertex" -> vertices++;
      case "triangle" -> appended++;
      default -> entries++;
    }
  }

  private void changed(String old, String now) {
    if (local(old).equals("triangle") && local(now).equals("triangle")) {
      replaced++;
    } else if (UUID.matcher(old).replaceAll("").equals(UUID.matcher(now).replaceAll(""))) {
      uuids++;
    } else {
      faults.add(old + " became " + now);
    }
  }

  private static String local(String tag) {
    String name = tag.replaceFirst("(?s)^</?", "").replaceFirst("(?s)[\\s/>].*$", "");
    return name.substring(name.indexOf(':') + 1);
  }

  /** Changes that have nothing to do with the edit. */
  List<String> faults() {
    return faults;
  }

  /** New vertices, replaced triangles, new triangles. */
  List<Integer> mesh() {
    return List.of(vertices, replaced, appended);
  }

  /** New entries in groups of properties. */
  int entries() {
    return entries;
  }

  /** Elements whose UUID is another. */
  int uuids() {
    return uuids;
  }
}

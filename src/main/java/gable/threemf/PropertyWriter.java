package gable.threemf;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Blends entries of a part's property groups, and appends what is new to the groups.
 *
 * <p>Source: core specification 1.4, section 4.1.4.1 (linear over the triangle; base materials
 * never blend) and materials extension, sections 2 to 5 and 7: colours blend in sRGB and are
 * written with 8 bits, texture coordinates blend, composites blend after their values are
 * normalised, of multiproperties each layer blends on its own; nothing blends that has display
 * properties. Groups are shared, so entries are appended only.
 *
 * <p>Where an entry has a value that is none, the first of the three is taken as it is.
 *
 * <p>Texture coordinates and composite values are rounded to 7 decimals (practice: a thousandth of
 * a pixel of the largest usual textures).
 */
final class PropertyWriter {

  private static final int DECIMALS = 7;

  private final byte[] text;
  private final Map<Integer, PropertyGroup> groups;
  private final Map<Integer, List<String>> appended = new HashMap<>();
  private final Map<String, Integer> known = new HashMap<>();

  PropertyWriter(ModelPart part) {
    this.text = part.bytes();
    this.groups = part.groups();
  }

  /** True if entries of the group may be blended. */
  boolean blends(int group) {
    PropertyGroup found = groups.get(group);
    if (found == null || found.kind() == Entries.Kind.BASE || found.kind() == Entries.Kind.SET) {
      return false;
    }
    return TagText.at(text, found.span().start()).attribute("displaypropertiesid").isEmpty();
  }

  /**
   * The entry that is the mean of three entries with weights; appended if there is none yet.
   *
   * @param indices three entries of the group
   * @param weights their shares, of sum 1
   */
  int blend(int group, int[] indices, double[] weights) {
    int first = indices[0];
    boolean same = indices[1] == first && indices[2] == first;
    if (same || !blends(group) || !exist(group, indices)) {
      return first;
    }
    for (int k = 0; k < 3; k++) {
      if (weights[k] == 1) {
        return indices[k];
      }
    }
    PropertyGroup found = group(group);
    return switch (found.kind()) {
      case COLOR -> append(found, color(found.entries(), indices, weights));
      case TEXTURE -> append(found, texture(found.entries(), indices, weights));
      case COMPOSITE ->
          areShares(found.entries(), indices)
              ? append(found, composite(found.entries(), indices, weights))
              : first;
      case MULTI -> append(found, multi(found, indices, weights));
      case BASE, SET -> first;
    };
  }

  private PropertyGroup group(int id) {
    return Optional.ofNullable(groups.get(id)).orElseThrow();
  }

  private boolean exist(int group, int[] indices) {
    for (int index : indices) {
      if (index >= group(group).entries().count()) {
        return false;
      }
    }
    return true;
  }

  private static double mean(Entries entries, int[] indices, double[] weights, int value) {
    double sum = 0;
    for (int k = 0; k < 3; k++) {
      sum += weights[k] * entries.value(indices[k], value);
    }
    return sum;
  }

  private static String color(Entries entries, int[] indices, double[] weights) {
    StringBuilder color = new StringBuilder("color=\"#");
    for (int channel = 0; channel < 4; channel++) {
      long level = Math.round(mean(entries, indices, weights, channel));
      long valid = Math.max(0, Math.min(255, level));
      if (channel < 3 || valid < 255) {
        color.append(String.format(Locale.ROOT, "%02X", valid));
      }
    }
    return color.append('"').toString();
  }

  private static String texture(Entries entries, int[] indices, double[] weights) {
    return "u=\""
        + digits(mean(entries, indices, weights, 0))
        + "\" v=\""
        + digits(mean(entries, indices, weights, 1))
        + '"';
  }

  /** Values below zero are no shares of anything, and neither is what they blend to. */
  private static boolean areShares(Entries entries, int[] indices) {
    for (int index : indices) {
      for (int i = 0; i < entries.size(index); i++) {
        if (!(entries.value(index, i) >= 0)) {
          return false;
        }
      }
    }
    return true;
  }

  private static String composite(Entries entries, int[] indices, double[] weights) {
    int count = 0;
    double[] shares = new double[3];
    for (int k = 0; k < 3; k++) {
      int size = entries.size(indices[k]);
      count = Math.max(count, size);
      double sum = 0;
      for (int i = 0; i < size; i++) {
        sum += entries.value(indices[k], i);
      }
      shares[k] = sum > 0 ? weights[k] / sum : 0;
    }
    List<String> values = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      values.add(digits(mean(entries, indices, shares, i)));
    }
    return "values=\"" + String.join(" ", values) + '"';
  }

  private String multi(PropertyGroup group, int[] indices, double[] weights) {
    List<String> layers = new ArrayList<>();
    for (int layer = 0; layer < group.layers().size(); layer++) {
      int[] own = new int[3];
      for (int k = 0; k < 3; k++) {
        own[k] = (int) group.entries().value(indices[k], layer);
      }
      int id = group.layers().get(layer);
      boolean nested = groups.containsKey(id) && group(id).kind() == Entries.Kind.MULTI;
      layers.add(Integer.toString(nested ? own[0] : blend(id, own, weights)));
    }
    return "pindices=\"" + String.join(" ", layers) + '"';
  }

  static String digits(double value) {
    BigDecimal rounded =
        new BigDecimal(value).setScale(DECIMALS, RoundingMode.HALF_EVEN).stripTrailingZeros();
    return rounded.signum() == 0 ? "0" : rounded.toPlainString();
  }

  private int append(PropertyGroup group, String attributes) {
    String key = group.id() + " " + attributes;
    return known.computeIfAbsent(
        key,
        unused -> {
          List<String> own = appended.computeIfAbsent(group.id(), id -> new ArrayList<>());
          own.add(attributes);
          return group.entries().count() + own.size() - 1;
        });
  }

  /** Writes what was appended. */
  void write(ByteSplices splices) {
    appended.forEach(
        (id, entries) -> {
          PropertyGroup group = group(id);
          ListStyle style = ListStyle.of(text, group.span(), group.kind().entry());
          StringBuilder added = new StringBuilder();
          for (String attributes : entries) {
            added.append(style.separator()).append('<').append(style.name()).append(' ');
            added.append(attributes).append(style.closing());
          }
          splices.insert(style.end(), added);
        });
  }
}

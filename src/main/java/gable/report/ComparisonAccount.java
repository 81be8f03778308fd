package gable.report;

import gable.compare.Body;
import gable.compare.Comparison;
import gable.compare.FeaturePair;
import gable.compare.Kind;
import gable.compare.ObjectPair;
import gable.compare.Side;
import gable.compare.Value;
import gable.feature.Feature;
import gable.geom.Affine3;
import gable.pipeline.Notice;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Everything that a report of a comparison says, whatever its format.
 *
 * @param name both files; raw
 * @param sentence what differs, in one sentence
 * @param tables features, objects, metadata and parts: what differs, and how much does not
 * @param notices what is to be said of the files
 * @param files SHA-256 and length of both, by their names
 */
record ComparisonAccount(
    String name,
    String sentence,
    List<Table> tables,
    List<String> notices,
    Map<String, String> files) {

  ComparisonAccount {
    tables = List.copyOf(tables);
    notices = List.copyOf(notices);
  }

  /**
   * A table.
   *
   * @param title what it is about
   * @param heads headings of its columns; the first column tells what became of it
   * @param rows what differs; raw
   * @param same how many others are the same in both
   */
  record Table(String title, List<String> heads, List<List<String>> rows, long same) {
    Table {
      heads = List.copyOf(heads);
      rows = List.copyOf(rows);
    }
  }

  static ComparisonAccount of(Comparison held) {
    Table features = features(held.features());
    Table objects = objects(held.objects());
    Table metadata = values("Metadata", held.metadata());
    Table parts = values("Parts of the package", held.parts());
    List<String> notices = new ArrayList<>(notices("before", held.before()));
    notices.addAll(notices("after", held.after()));
    Map<String, String> files = new LinkedHashMap<>();
    files.put("before", file(held.before()));
    files.put("after", file(held.after()));
    return new ComparisonAccount(
        held.before().result().source().name() + " → " + held.after().result().source().name(),
        sentence(features, objects, metadata, parts, held),
        List.of(features, objects, metadata, parts),
        notices,
        files);
  }

  private static String file(Side side) {
    return String.format(
        Locale.ROOT,
        "%s, %s, %d bytes",
        side.result().source().name(),
        side.result().source().sha256(),
        side.result().source().bytes());
  }

  private static List<String> notices(String which, Side side) {
    return Notices.of(side.result()).stream()
        .map(Notice::sentence)
        .map(s -> which + ": " + s)
        .toList();
  }

  private static String sentence(
      Table features, Table objects, Table metadata, Table parts, Comparison held) {
    boolean equal =
        held.before().result().source().sha256().equals(held.after().result().source().sha256());
    if (equal) {
      return "The files are equal, byte for byte.";
    }
    return String.format(
        Locale.ROOT,
        "%s, %s, %s and %s differ.",
        differing(features, "feature"),
        differing(objects, "object"),
        differing(metadata, "value of the metadata"),
        differing(parts, "part of the package"));
  }

  private static String differing(Table table, String one) {
    int count = table.rows().size();
    long all = count + table.same();
    return count + " of " + all + " " + (all == 1 ? one : one.replaceFirst("^(\\w+)", "$1s"));
  }

  static String word(Kind kind) {
    return switch (kind) {
      case SAME -> "same";
      case CHANGED -> "changed";
      case ADDED -> "only after";
      case REMOVED -> "only before";
    };
  }

  private static Table features(List<FeaturePair> pairs) {
    List<List<String>> rows = new ArrayList<>();
    for (FeaturePair pair : pairs) {
      if (pair.kind() != Kind.SAME) {
        FeaturePair.Placed any = pair.before().or(pair::after).orElseThrow();
        rows.add(
            List.of(
                word(pair.kind()),
                ids(pair),
                words(pair.before()),
                words(pair.after()),
                Figures.point(any.result().feature().axis().origin())));
      }
    }
    List<String> heads = List.of("What", "Id", "Before", "After", "Middle, mm");
    return new Table("Features", heads, rows, pairs.size() - rows.size());
  }

  /** Ids of a feature in both files, or the one if it is the same. */
  static String ids(FeaturePair pair) {
    FeaturePair.Placed any = pair.before().or(pair::after).orElseThrow();
    String before = pair.before().map(FeaturePair.Placed::id).orElse(any.id());
    String after = pair.after().map(FeaturePair.Placed::id).orElse(any.id());
    return before.equals(after) ? before : before + " → " + after;
  }

  private static String words(Optional<FeaturePair.Placed> placed) {
    return placed.map(each -> words(each.result().feature())).orElse("–");
  }

  static String words(Feature feature) {
    return FeatureView.of(feature, Affine3.IDENTITY).words();
  }

  private static Table objects(List<ObjectPair> pairs) {
    List<List<String>> rows = new ArrayList<>();
    for (ObjectPair pair : pairs) {
      if (pair.kind() != Kind.SAME) {
        Body any = pair.before().or(pair::after).orElseThrow();
        rows.add(
            List.of(
                word(pair.kind()),
                any.result().place().words(),
                size(pair.before()),
                size(pair.after()),
                String.format(
                    Locale.ROOT,
                    "%d facets went, %d came",
                    pair.edit().removedCount(),
                    pair.edit().facetCount())));
      }
    }
    List<String> heads = List.of("What", "Object", "Before", "After", "Surface");
    return new Table("Objects", heads, rows, pairs.size() - rows.size());
  }

  private static String size(Optional<Body> body) {
    return body.map(
            each ->
                String.format(
                    Locale.ROOT,
                    "%d vertices, %d facets, %.1f mm³",
                    each.mesh().vertexCount(),
                    each.mesh().facetCount(),
                    each.mesh().volume()))
        .orElse("–");
  }

  private static Table values(String title, List<Value> values) {
    List<List<String>> rows = new ArrayList<>();
    for (Value value : values) {
      if (value.kind() != Kind.SAME) {
        rows.add(List.of(word(value.kind()), value.name(), or(value.before()), or(value.after())));
      }
    }
    List<String> heads = List.of("What", "Name", "Before", "After");
    return new Table(title, heads, rows, values.size() - rows.size());
  }

  private static String or(String value) {
    return value.isEmpty() ? "–" : value;
  }
}

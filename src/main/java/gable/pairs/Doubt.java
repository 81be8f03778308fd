package gable.pairs;

import java.util.Comparator;
import java.util.List;

/**
 * Pins and bores that may belong together, and why that cannot be told.
 *
 * @param kind what the doubt is
 * @param pins the pins
 * @param bores the bores
 */
public record Doubt(Kind kind, List<Of> pins, List<Of> bores) {

  /** Copies the lists. */
  public Doubt {
    pins = List.copyOf(pins);
    bores = List.copyOf(bores);
  }

  /**
   * A feature of a part.
   *
   * @param part number of the part
   * @param id id of the feature within the part
   */
  public record Of(int part, String id) {

    /** By part, then by id: shorter ids come first, so that B2 stands before B10. */
    static final Comparator<Of> ORDER =
        Comparator.comparingInt(Of::part)
            .thenComparingInt(of -> of.id.length())
            .thenComparing(Of::id);
  }

  /** What a doubt is about. */
  public enum Kind {
    /** Several fit alike. */
    SEVERAL,
    /** They fit by size, but no motion brings them together at once. */
    SPACING,
    /** They go together in more than one way, and the ways differ. */
    SEVERAL_WAYS,
    /** The bore may be the clearance hole of a screw. */
    SCREW,
    /** There are too many to be tried. */
    TOO_MANY
  }
}

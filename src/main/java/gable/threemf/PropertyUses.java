package gable.threemf;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What the triangles of one list say of properties, gathered for each group in one pass so that
 * millions of triangles cost no memory. Groups are known by the triangle's {@code pid}; {@value
 * #OBJECT} stands for triangles without one, which use the group of their object.
 *
 * <p>Source: core specification 1.4, section 4.1.4.1.
 */
public final class PropertyUses {

  /** The group of the object. */
  public static final int OBJECT = -1;

  /** No triangle, no entry. */
  public static final int NONE = -1;

  /** The uses of one group. */
  public static final class Use {

    private final int first;
    private int largest = NONE;
    private int largestAt = NONE;
    private int gradientAt = NONE;
    private int orphanAt = NONE;

    private Use(int first) {
      this.first = first;
    }

    /** The first triangle that uses the group. */
    public int first() {
      return first;
    }

    /** The largest entry that a triangle names, or {@link #NONE}. */
    public int largest() {
      return largest;
    }

    /** The first triangle that names that entry. */
    public int largestAt() {
      return largestAt;
    }

    /** The first triangle whose corners have different entries. */
    public int gradientAt() {
      return gradientAt;
    }

    /** The first triangle that has p2 or p3 but no p1. */
    public int orphanAt() {
      return orphanAt;
    }

    private void note(int triangle, int p1, int p2, int p3) {
      int most = Math.max(p1, Math.max(p2, p3));
      if (most > largest) {
        largest = most;
        largestAt = triangle;
      }
      boolean differs = (p2 >= 0 && p2 != p1) || (p3 >= 0 && p3 != p1);
      if (gradientAt < 0 && p1 >= 0 && differs) {
        gradientAt = triangle;
      }
      if (orphanAt < 0 && p1 < 0 && most >= 0) {
        orphanAt = triangle;
      }
    }
  }

  private final Map<Integer, Use> byGroup = new LinkedHashMap<>();
  private int count;
  private int lastGroup;
  private Use last = new Use(NONE);

  /**
   * Takes note of a triangle that says something of properties; what it does not say is negative.
   */
  public void note(int triangle, int pid, int p1, int p2, int p3) {
    count++;
    int group = pid < 0 ? OBJECT : pid;
    if (byGroup.isEmpty() || group != lastGroup) {
      last = byGroup.computeIfAbsent(group, key -> new Use(triangle));
      lastGroup = group;
    }
    last.note(triangle, p1, p2, p3);
  }

  /** Number of triangles that say something. */
  public int count() {
    return count;
  }

  /** The uses by group, in the order of their first triangles. */
  public Map<Integer, Use> byGroup() {
    return Collections.unmodifiableMap(byGroup);
  }
}

package gable.validate;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A stack of slices or of references to such stacks, in the unit of its part. */
final class SliceStack {

  private final double bottom;
  private final List<double[]> slices = new ArrayList<>();
  private final List<Element> references = new ArrayList<>();
  private Optional<Element> open = Optional.empty();

  SliceStack(double bottom) {
    this.bottom = bottom;
  }

  void add(double top, double area) {
    slices.add(new double[] {top, area});
  }

  void add(Element reference) {
    references.add(reference);
  }

  void noteOpen(Element polygon) {
    open = open.isPresent() ? open : Optional.of(polygon);
  }

  /** Height of the last slice, or of the bottom if there is none. */
  double top() {
    return slices.isEmpty() ? bottomOrBelow() : slices.get(slices.size() - 1)[0];
  }

  private double bottomOrBelow() {
    return Math.nextDown(bottom); // a first slice without thickness is no descent
  }

  List<Element> references() {
    return List.copyOf(references);
  }

  /** The first polygon that does not return to its start. */
  Optional<Element> open() {
    return open;
  }

  boolean isEmpty() {
    return slices.isEmpty();
  }

  /** Volume of the slices as prisms. */
  double volume() {
    double sum = 0;
    double from = bottom;
    for (double[] slice : slices) {
      sum += (slice[0] - from) * slice[1];
      from = slice[0];
    }
    return sum;
  }

  /**
   * How far the volume of the solid that was sliced may be from {@link #volume}. A slice is the
   * section at some height within it, so it is off by at most its thickness times what the area
   * changes there; the sum of all changes is taken twice, since between two slices the area may
   * swing further than both show (derived, but for the factor).
   */
  double slack() {
    double thickest = 0;
    double changes = 0;
    double from = bottom;
    double area = 0;
    for (double[] slice : slices) {
      thickest = Math.max(thickest, slice[0] - from);
      changes += Math.abs(slice[1] - area);
      from = slice[0];
      area = slice[1];
    }
    return 2 * thickest * (changes + area);
  }
}

package gable.validate;

import gable.threemf.Names;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Slices of one part. Source: slice extension 1.x, chapters 2 and 3. */
final class SliceChecks implements Checker {

  private final Findings findings;
  private final Map<Integer, SliceStack> stacks = new HashMap<>();
  private SliceStack stack = new SliceStack(0);
  private final List<double[]> points = new ArrayList<>();
  private double area;
  private int last;

  SliceChecks(Findings findings) {
    this.findings = findings;
  }

  /** The stacks of the part by id. */
  Map<Integer, SliceStack> stacks() {
    return Map.copyOf(stacks);
  }

  @Override
  public void started(Element element) {
    if (element.is(Names.SLICE, "slicestack")) {
      stack = new SliceStack(element.number("zbottom", 0));
      stacks.put(element.index("id"), stack);
    } else if (element.is(Names.SLICE, "slice")) {
      points.clear();
      area = 0;
      height(element);
    } else if (element.is(Names.SLICE, "sliceref")) {
      stack.add(element);
    } else if (element.is(Names.SLICE, "vertex")) {
      points.add(new double[] {element.number("x", 0), element.number("y", 0)});
    } else if (element.is(Names.SLICE, "polygon")) {
      last = vertex(element, element.index("startv"));
    } else if (element.is(Names.SLICE, "segment")) {
      segment(element);
    }
  }

  private void height(Element slice) {
    double top = slice.number("ztop", Double.NaN);
    if (top <= stack.top()) {
      String found = "ztop=\"" + top + "\" after " + stack.top();
      findings.add(ExtensionRules.HEIGHT, slice, found, "heights that ascend");
    }
  }

  private int vertex(Element element, int vertex) {
    if (vertex >= points.size()) {
      String found = "vertex " + vertex;
      String expected = "one of the " + points.size() + " vertices of the slice";
      findings.add(ExtensionRules.SLICE_VERTEX, element, found, expected);
      return -1;
    }
    return vertex;
  }

  private void segment(Element segment) {
    int next = vertex(segment, segment.index("v2"));
    if (next >= 0 && last >= 0) {
      if (next == last) {
        String found = "a segment from vertex " + last + " to itself";
        findings.add(ExtensionRules.SEGMENT, segment, found, "two vertices");
      }
      double[] a = points.get(last);
      double[] b = points.get(next);
      area += (a[0] * b[1] - a[1] * b[0]) / 2;
    }
    last = next;
  }

  @Override
  public void ended(Element element) {
    if (element.is(Names.SLICE, "slice")) {
      double top = element.number("ztop", Double.NaN);
      stack.add(top, Math.abs(area));
      slice(element);
    } else if (element.is(Names.SLICE, "polygon")) {
      if (last != element.index("startv")) {
        stack.noteOpen(element);
      }
    } else if (element.is(Names.SLICE, "slicestack")) {
      kind(element);
    }
  }

  private void slice(Element slice) {
    boolean polygons = slice.count(Names.SLICE, "polygon") > 0;
    if (polygons && points.size() < 2 || !polygons && !points.isEmpty()) {
      String found = points.size() + " vertices and polygons " + (polygons ? "" : "not ") + "given";
      findings.add(ExtensionRules.SLICE_EMPTY, slice, found, "both or neither");
    }
  }

  private void kind(Element element) {
    boolean slices = element.count(Names.SLICE, "slice") > 0;
    if (slices && element.count(Names.SLICE, "sliceref") > 0) {
      String found = "slices and slicerefs in one stack";
      findings.add(ExtensionRules.STACK_KIND, element, found, "either");
    }
  }
}

package gable.report;

import java.util.Arrays;

/**
 * A picture of triangles under construction: what is nearest at each of its dots. Drawn with four
 * dots to a pixel; lit from the viewer's upper left; edges and outlines are drawn darker.
 */
final class Canvas {

  /** Dots to a pixel, each way. */
  static final int FINE = 2;

  private static final int PAPER = 0xF4F3EF;
  private static final int PLAIN = 0xA9B6BE;
  private static final int MARKED = 0xE08214; // differs from PLAIN in lightness, too
  private static final double[] LIGHT = {-0.37, 0.55, 0.75};
  private static final double CREASE = Math.cos(Math.toRadians(25));
  private static final int NONE = 0;
  private static final int FIRST_ROOM = 256;

  private final int width;
  private final int height;
  private final double step;
  private final float[] depth;

  /** What each dot shows: NONE, or the number of a triangle. */
  private final int[] shown;

  /** Unit normals of the triangles, and their colours: three for each number, and two. */
  private float[] normals;

  private int[] colours;
  private int count;

  /** First and last column to be looked at in a row. */
  private double from;

  private double to;

  /** An empty picture; a step in depth of more than {@code step} is an outline. */
  Canvas(int width, int height, double step) {
    this.width = width * FINE;
    this.height = height * FINE;
    this.step = step;
    this.depth = new float[this.width * this.height];
    this.shown = new int[this.width * this.height];
    this.normals = new float[3 * FIRST_ROOM];
    this.colours = new int[2 * FIRST_ROOM];
    this.count = 1;
    Arrays.fill(depth, Float.NEGATIVE_INFINITY);
  }

  /** A picture that goes on from another. */
  Canvas(Canvas other) {
    this.width = other.width;
    this.height = other.height;
    this.step = other.step;
    this.depth = other.depth.clone();
    this.shown = other.shown.clone();
    this.normals = other.normals.clone();
    this.colours = other.colours.clone();
    this.count = other.count;
  }

  /**
   * Draws a triangle.
   *
   * @param t x (right), y (down) in dots and z (towards the viewer) of three corners
   * @param normal unit normal in the frame right, up, towards
   */
  void draw(double[] t, double[] normal, boolean marked) {
    double area = (t[3] - t[0]) * (t[7] - t[1]) - (t[6] - t[0]) * (t[4] - t[1]);
    if (area == 0) {
      return;
    }
    int left = (int) Math.max(0, Math.ceil(least(t[0], t[3], t[6]) - 0.5));
    int right = (int) Math.min(width - 1.0, Math.floor(-least(-t[0], -t[3], -t[6]) - 0.5));
    int top = (int) Math.max(0, Math.ceil(least(t[1], t[4], t[7]) - 0.5));
    int bottom = (int) Math.min(height - 1.0, Math.floor(-least(-t[1], -t[4], -t[7]) - 0.5));
    if (top > bottom || left > right) {
      return;
    }
    note(normal, marked);
    for (int y = top; y <= bottom; y++) {
      from = left;
      to = right;
      narrow(t, 3, 6, y + 0.5, area);
      narrow(t, 6, 0, y + 0.5, area);
      narrow(t, 0, 3, y + 0.5, area);
      for (int x = (int) from; x <= to; x++) {
        double a = part(t, 3, 6, x + 0.5, y + 0.5) / area;
        double b = part(t, 6, 0, x + 0.5, y + 0.5) / area;
        double c = 1 - a - b;
        if (a >= 0 && b >= 0 && c >= 0) {
          dot(y * width + x, (float) (a * t[2] + b * t[5] + c * t[8]));
        }
      }
    }
  }

  /**
   * Narrows the columns of a row to those on the inner side of an edge, and one more, since each is
   * judged on its own: the box around a long thin triangle has many dots and few of its.
   */
  private void narrow(double[] t, int i, int j, double y, double area) {
    double fall = area > 0 ? t[j + 1] - t[i + 1] : t[i + 1] - t[j + 1];
    if (fall != 0) {
      double crossing = (t[i] * (t[j + 1] - y) - t[j] * (t[i + 1] - y)) / (t[j + 1] - t[i + 1]);
      if (fall > 0) {
        to = Math.min(to, Math.ceil(crossing));
      } else {
        from = Math.max(from, Math.floor(crossing) - 1);
      }
    }
  }

  private static double least(double a, double b, double c) {
    return Math.min(a, Math.min(b, c));
  }

  private static double part(double[] t, int i, int j, double x, double y) {
    return (t[i] - x) * (t[j + 1] - y) - (t[j] - x) * (t[i + 1] - y);
  }

  private void dot(int at, float z) {
    if (z > depth[at]) {
      depth[at] = z;
      shown[at] = count - 1;
    }
  }

  /** Gives the next number to a triangle. */
  private void note(double[] normal, boolean marked) {
    if (2 * count == colours.length) {
      normals = Arrays.copyOf(normals, 2 * normals.length);
      colours = Arrays.copyOf(colours, 2 * colours.length);
    }
    double lit = 0;
    for (int k = 0; k < 3; k++) {
      normals[3 * count + k] = (float) normal[k];
      lit += normals[3 * count + k] * LIGHT[k];
    }
    int base = marked ? MARKED : PLAIN;
    colours[2 * count] = colour(base, lit, 0);
    colours[2 * count + 1] = colour(base, lit, 0.3);
    count++;
  }

  /** The colours of all pixels, 0xRRGGBB, rows from the top. */
  int[] pixels() {
    int columns = width / FINE;
    int[] pixels = new int[columns * (height / FINE)];
    for (int at = 0; at < pixels.length; at++) {
      int corner = at / columns * FINE * width + at % columns * FINE;
      int[] four = {
        colour(corner), colour(corner + 1), colour(corner + width), colour(corner + width + 1)
      };
      for (int shift = 0; shift <= 16; shift += 8) {
        int sum = 2;
        for (int colour : four) {
          sum += colour >> shift & 0xFF;
        }
        pixels[at] |= sum / 4 << shift;
      }
    }
    return pixels;
  }

  private int colour(int at) {
    return shown[at] == NONE ? PAPER : colours[2 * shown[at] + (isEdge(at) ? 1 : 0)];
  }

  /** Colour of a face, or of its edge, which is darker. */
  private static int colour(int base, double lit, double darker) {
    // the underside of what faces away from the light keeps a third of it
    double strength = 0.66 + 0.34 * lit - darker;
    int colour = 0;
    for (int shift = 0; shift <= 16; shift += 8) {
      long value = Math.round((base >> shift & 0xFF) * Math.max(0.1, 1.15 * strength));
      colour |= (int) Math.min(255, value) << shift;
    }
    return colour;
  }

  private boolean isEdge(int at) {
    boolean last = at % width == width - 1 || at + width >= shown.length;
    return !last && (differ(at, at + 1) || differ(at, at + width));
  }

  private boolean differ(int a, int b) {
    int one = shown[a];
    int other = shown[b];
    if (other == NONE || Math.abs(depth[a] - depth[b]) > step) {
      return true;
    }
    if (one == other) {
      return false;
    }
    double cosine = 0;
    for (int k = 0; k < 3; k++) {
      cosine += (double) normals[3 * one + k] * normals[3 * other + k];
    }
    return cosine < CREASE;
  }
}

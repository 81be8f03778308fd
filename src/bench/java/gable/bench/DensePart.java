package gable.bench;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/**
 * A block with a finely modelled, wavy top and a row of horizontal bores through it, as a 3MF file
 * of about a given number of triangles. Invented for measuring: the mesh is closed; the bores are 5
 * mm wide, lie along x, 12 mm apart, and have room for a full roof. The top carries seeded noise of
 * a few hundredths of a millimetre, so that its numbers pack no better than measured ones.
 *
 * <p>Each bore sits in a square cell of the block's cross-section. A mouth is a ring of quads
 * between circle and square, a wall is one facet long, and all further triangles go into strips
 * across the top, the bottom and the two ends of the row: real parts carry their detail outside
 * their bores too.
 *
 * <p>Vertices: for each station along x a row of points around the outside of the whole row, then
 * for each mouth the points of the circles and of the squares' inner sides.
 */
public final class DensePart {

  private static final double RADIUS = 2.5;
  private static final double HALF = 6;
  private static final double LENGTH = 60;
  private static final long ENTRY_TIME = 1_000_000_000_000L;

  private final int bores;
  private final int side;
  private final int strips;
  private final StringBuilder vertices = new StringBuilder();
  private final StringBuilder triangles = new StringBuilder();
  private final Random noise = new Random(1);
  private int vertexCount;
  private int triangleCount;

  private DensePart(int bores, int side, int strips) {
    this.bores = bores;
    this.side = side;
    this.strips = strips;
  }

  /**
   * Writes the file {@code PATH} with about {@code TRIANGLES} triangles and {@code BORES} bores.
   */
  public static void main(String[] args) throws IOException {
    int[] numbers = Arrays.stream(args).skip(1).mapToInt(Integer::parseInt).toArray();
    write(Path.of(args[0]), numbers[0], numbers[1], numbers[2]);
  }

  /**
   * Writes a part of about {@code triangles} triangles, at least some 200 for each bore.
   *
   * @return the exact number of triangles
   */
  public static int write(Path target, int triangles, int bores, int level) throws IOException {
    int side = triangles / bores < 500 ? 6 : 16;
    int fixed = bores * 4 * side * 6;
    int perStrip = 4 * (bores + 1) * side;
    DensePart part = new DensePart(bores, side, Math.max(1, (triangles - fixed) / perStrip));
    part.build();
    try (OutputStream out = Files.newOutputStream(target);
        ZipOutputStream zip = new ZipOutputStream(out)) {
      zip.setLevel(level);
      put(zip, "[Content_Types].xml", CONTENT_TYPES);
      put(zip, "_rels/.rels", RELATIONSHIPS);
      putModel(zip, part);
    }
    return part.triangleCount;
  }

  private void build() {
    int[] firstRow = {};
    int[] row = {};
    for (int station = 0; station <= strips; station++) {
      int[] next = outsideRow(station);
      if (station == 0) {
        firstRow = next;
      } else {
        strip(row, next, false);
      }
      row = next;
    }
    int[][] near = mouths(firstRow, -LENGTH / 2, true);
    int[][] far = mouths(row, LENGTH / 2, false);
    for (int bore = 0; bore < bores; bore++) {
      strip(near[bore], far[bore], true);
    }
  }

  /** Points around the row of cells, counter-clockwise in (y, z) from the lower left corner. */
  private int[] outsideRow(int station) {
    double x = LENGTH * station / strips - LENGTH / 2;
    int across = bores * side;
    int[] row = new int[2 * (across + side)];
    for (int k = 0; k < row.length; k++) {
      double[] yz = outside(k, across);
      boolean onTop = yz[1] >= 2 * HALF && k > across + side && k < row.length - side;
      boolean inside = station > 0 && station < strips;
      double wave = onTop && inside ? wave(x, yz[0]) : 0;
      row[k] = vertex(x, yz[0], yz[1] + wave);
    }
    return row;
  }

  private double wave(double x, double y) {
    return 0.3 * Math.sin(x * 0.9) * Math.cos(y * 0.7) + 0.03 * noise.nextDouble();
  }

  private double[] outside(int k, int across) {
    double step = 2 * HALF / side;
    if (k < across) {
      return new double[] {k * step, 0};
    }
    if (k < across + side) {
      return new double[] {across * step, (k - across) * step};
    }
    if (k < 2 * across + side) {
      return new double[] {(2 * across + side - k) * step, 2 * HALF};
    }
    return new double[] {0, (2 * across + 2 * side - k) * step};
  }

  /** The two rings of quads of each mouth at one end; returns the circles' points. */
  private int[][] mouths(int[] row, double x, boolean near) {
    int[][] circles = new int[bores][];
    int[] left = leftOf(row);
    for (int bore = 0; bore < bores; bore++) {
      int[] right = bore == bores - 1 ? rightOf(row) : wallBetween(row, bore, x);
      int[] square = square(row, bore, left, right);
      circles[bore] = ring(bore, x, RADIUS, 1);
      int[] middle = ring(bore, x, RADIUS, 0.5);
      strip(circles[bore], middle, !near);
      strip(middle, square, !near);
      left = right;
    }
    return circles;
  }

  private int[] leftOf(int[] row) {
    int[] left = new int[side + 1];
    for (int k = 0; k <= side; k++) {
      left[k] = row[(row.length - k) % row.length];
    }
    return left;
  }

  private int[] rightOf(int[] row) {
    int[] right = new int[side + 1];
    System.arraycopy(row, bores * side, right, 0, side + 1);
    return right;
  }

  private int[] wallBetween(int[] row, int bore, double x) {
    int[] wall = new int[side + 1];
    wall[0] = row[(bore + 1) * side];
    wall[side] = row[row.length - side - (bore + 1) * side];
    for (int k = 1; k < side; k++) {
      wall[k] = vertex(x, (bore + 1) * 2 * HALF, k * 2 * HALF / side);
    }
    return wall;
  }

  private int[] square(int[] row, int bore, int[] left, int[] right) {
    int[] square = new int[4 * side];
    int top = row.length - side;
    for (int k = 0; k < side; k++) {
      square[k] = row[bore * side + k];
      square[side + k] = right[k];
      square[2 * side + k] = row[top - (bore + 1) * side + k];
      square[3 * side + k] = left[side - k];
    }
    return square;
  }

  /** Points between circle ({@code share} 1) and square (0), numbered like the square's. */
  private int[] ring(int bore, double x, double radius, double share) {
    int[] ring = new int[4 * side];
    for (int k = 0; k < ring.length; k++) {
      double angle = 2 * Math.PI * k / ring.length - 0.75 * Math.PI;
      double along = 2.0 * (k % side) / side - 1;
      double[][] corner = {{along, -1}, {1, along}, {-along, 1}, {-1, -along}};
      double u = share * radius * Math.cos(angle) + (1 - share) * HALF * corner[k / side][0];
      double v = share * radius * Math.sin(angle) + (1 - share) * HALF * corner[k / side][1];
      ring[k] = vertex(x, (2 * bore + 1) * HALF + u, HALF + v);
    }
    return ring;
  }

  private void strip(int[] from, int[] to, boolean turned) {
    for (int k = 0; k < from.length; k++) {
      int next = (k + 1) % from.length;
      quad(from[k], from[next], to[next], to[k], turned);
    }
  }

  private void quad(int a, int b, int c, int d, boolean turned) {
    triangle(a, turned ? c : b, turned ? b : c);
    triangle(a, turned ? d : c, turned ? c : d);
  }

  private int vertex(double x, double y, double z) {
    vertices.append("     <vertex x=\"").append(digits(x)).append("\" y=\"").append(digits(y));
    vertices.append("\" z=\"").append(digits(z)).append("\"/>\n");
    return vertexCount++;
  }

  private void triangle(int a, int b, int c) {
    triangles.append("     <triangle v1=\"").append(a).append("\" v2=\"").append(b);
    triangles.append("\" v3=\"").append(c).append("\"/>\n");
    triangleCount++;
  }

  private static double digits(double value) {
    return Math.round(value * 1e5) / 1e5;
  }

  private static void putModel(ZipOutputStream zip, DensePart part) throws IOException {
    zip.putNextEntry(entry("3D/3dmodel.model"));
    zip.write(bytes(HEAD));
    zip.write(bytes("    <vertices>\n"));
    zip.write(bytes(part.vertices));
    zip.write(bytes("    </vertices>\n    <triangles>\n"));
    zip.write(bytes(part.triangles));
    zip.write(bytes("    </triangles>\n"));
    zip.write(bytes(TAIL));
    zip.closeEntry();
  }

  private static void put(ZipOutputStream zip, String name, String text) throws IOException {
    zip.putNextEntry(entry(name));
    zip.write(bytes(text));
    zip.closeEntry();
  }

  private static ZipEntry entry(String name) {
    ZipEntry entry = new ZipEntry(name);
    entry.setTime(ENTRY_TIME);
    return entry;
  }

  private static byte[] bytes(CharSequence text) {
    return text.toString().getBytes(StandardCharsets.UTF_8);
  }

  private static final String HEAD =
      """
      <?xml version="1.0" encoding="UTF-8"?>
      <model unit="millimeter" xml:lang="en-US" \
      xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02">
       <resources>
        <object id="1" type="model">
         <mesh>
      """;

  private static final String TAIL =
      """
         </mesh>
        </object>
       </resources>
       <build>
        <item objectid="1"/>
       </build>
      </model>
      """;

  private static final String CONTENT_TYPES =
      """
      <?xml version="1.0" encoding="UTF-8"?>
      <Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">
       <Default Extension="rels" \
      ContentType="application/vnd.openxmlformats-package.relationships+xml"/>
       <Default Extension="model" \
      ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/>
      </Types>
      """;

  private static final String RELATIONSHIPS =
      """
      <?xml version="1.0" encoding="UTF-8"?>
      <Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">
       <Relationship Id="model" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel" \
      Target="/3D/3dmodel.model"/>
      </Relationships>
      """;
}

package gable.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import gable.fixture.PackageSketch;
import gable.threemf.Models;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Sizes and counts that a file only claims cost no memory. */
class ClaimedSizeTest {

  /** A box takes about 3 MB with all reading, writing and telling (measured); the claims are GB. */
  private static final long MOST = 24 << 20;

  private final ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();

  @TempDir private Path folder;

  private long allocated(byte[] file, int code) throws IOException {
    Path input = Files.write(folder.resolve("in.3mf"), file);
    String output = folder.resolve("out.3mf").toString();
    Call.of("reshape", input.toString(), "-o", output); // classes are loaded now
    long before = threads.getCurrentThreadAllocatedBytes();
    Call call = Call.of("reshape", input.toString(), "-o", output);
    long after = threads.getCurrentThreadAllocatedBytes();
    assertThat(call.code()).as(call.err()).isEqualTo(code);
    return after - before;
  }

  @Test
  void anHonestBoxIsFarBelowTheMeasure() throws IOException {
    assertThat(allocated(Attack.packed(Attack.box()), 0)).isBetween(1L, MOST / 4);
  }

  /** Each size field of both headers of each item, one after the other (ZIP APPNOTE 4.3.7, 12). */
  @Test
  void sizesInTheHeadersOfAnArchive() throws IOException {
    byte[] sound = Attack.packed(Attack.box());
    for (int at = 0; at + 46 < sound.length; at++) {
      int signature = ByteBuffer.wrap(sound).order(ByteOrder.LITTLE_ENDIAN).getInt(at);
      int sizes = signature == 0x04034b50 ? at + 18 : signature == 0x02014b50 ? at + 20 : -1;
      for (int field = sizes; sizes > 0 && field <= sizes + 4; field += 4) {
        byte[] claiming = sound.clone();
        ByteBuffer.wrap(claiming).order(ByteOrder.LITTLE_ENDIAN).putInt(field, 0x7FFFFFF0);
        assertThat(allocated(claiming, 3)).as("field at %d", field).isLessThan(MOST);
      }
    }
  }

  @Test
  void countsInTheEndOfAnArchive() throws IOException {
    byte[] sound = Attack.packed(Attack.box());
    for (int field = 8; field <= 16; field += 2) {
      byte[] claiming = sound.clone();
      int at = sound.length - 22 + field;
      ByteBuffer.wrap(claiming).order(ByteOrder.LITTLE_ENDIAN).putShort(at, (short) 0xFFFE);
      assertThat(allocated(claiming, 3)).as("field %d", field).isLessThan(MOST);
    }
  }

  /** A picture that claims 60,000 by 60,000 pixels is copied, not decoded. */
  @Test
  void pixelsInAThumbnail() throws IOException {
    ByteBuffer png = ByteBuffer.allocate(33);
    png.putLong(0x89504E470D0A1A0AL).putInt(13).putInt(0x49484452).putInt(60_000).putInt(60_000);
    byte[] file =
        PackageSketch.of(Attack.box())
            .item("[Content_Types].xml", PackageSketch.types(PNG))
            .item("Metadata/thumbnail.png", png.array())
            .bytes();
    assertThat(allocated(file, 0)).isLessThan(MOST);
  }

  private static final String PNG = "<Default Extension=\"png\" ContentType=\"image/png\"/>";

  /** Triangle Sets 1.0, 3: ranges of the whole number space, over and over. */
  @Test
  void rangesInTriangleSets() throws IOException {
    StringBuilder sets =
        new StringBuilder(
            "<t:trianglesets xmlns:t="
                + "\"http://schemas.microsoft.com/3dmanufacturing/trianglesets/2021/07\">"
                + "<t:triangleset name=\"a\" identifier=\"b\">");
    IntStream.range(0, 1_000)
        .forEach(
            i ->
                sets.append("<t:refrange startindex=\"")
                    .append(i)
                    .append("\" endindex=\"2147483647\"/>"));
    sets.append("</t:triangleset></t:trianglesets></mesh>");
    String model = Attack.box().replace("</mesh>", sets.toString());
    assertThat(allocated(Attack.packed(model), 0)).isLessThan(MOST);
  }

  /** An id or index may be any number; nothing is laid out by it. */
  @Test
  void idsAndIndices() throws IOException {
    String model =
        Models.model(Models.box(2_147_483_647), "<item objectid=\"2147483647\"/>")
            .replace("type=\"model\"", "type=\"model\" pid=\"2147483646\" pindex=\"2147483647\"");
    assertThat(allocated(Attack.packed(model), 0)).isLessThan(MOST);
  }
}

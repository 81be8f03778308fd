package gable.opc;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.junit.jupiter.api.Test;

class PackageWriterTest {

  private static final Compression SERIAL = Compression.serial(6);

  @Test
  void givesTheInputBackWhenNothingChanges() throws Exception {
    byte[] input = ZipBytes.minimal().bytes();
    assertThat(write(input, PackageEdit.NONE)).isEqualTo(input);
  }

  @Test
  void replacesTheBytesOfAPartAndLeavesTheRest() throws Exception {
    byte[] input = ZipBytes.minimal().bytes();
    byte[] model = "<model/>".getBytes(StandardCharsets.UTF_8);
    byte[] output =
        write(input, PackageEdit.NONE.replace("/3D/3dmodel.model", PartContent.of(model)));
    Map<String, String> expected = unzip(input);
    expected.put("3D/3dmodel.model", "<model/>");
    assertThat(unzip(output)).isEqualTo(expected);
  }

  private static byte[] write(byte[] input, PackageEdit edit) throws Exception {
    try (OpcPackage source = OpcPackage.open(input, OpcLimits.DEFAULT)) {
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      PackageWriter.write(source, edit, SERIAL, out);
      return out.toByteArray();
    }
  }

  /** Read by the JDK's streaming reader, which knows nothing of ours and uses local headers. */
  private static Map<String, String> unzip(byte[] zip) throws Exception {
    Map<String, String> contents = new LinkedHashMap<>();
    try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(zip))) {
      for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
        contents.put(entry.getName(), new String(in.readAllBytes(), StandardCharsets.UTF_8));
      }
    }
    return contents;
  }
}

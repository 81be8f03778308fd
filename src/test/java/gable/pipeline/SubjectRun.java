package gable.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import gable.opc.OpcLimits;
import gable.opc.OpcPackage;
import gable.validate.Validation;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;

/** What came of a run. */
final class SubjectRun {

  private final byte[] input;
  private final byte[] output;
  private final FileResult result;

  SubjectRun(byte[] input, byte[] output, FileResult result) {
    this.input = input;
    this.output = output;
    this.result = result;
  }

  FileResult result() {
    return result;
  }

  /** Something was changed, and the result breaks no rule that the input keeps. */
  SubjectRun changed() throws Exception {
    assertThat(result).as("%s", codes()).isInstanceOf(FileResult.Changed.class);
    assertThat(findings(output)).isEqualTo(findings(input));
    return this;
  }

  /** Nothing was changed, for the reason with this code, and the output is the input. */
  SubjectRun left(String code) {
    assertThat(result).as("%s", codes()).isInstanceOf(FileResult.Unchanged.class);
    assertThat(output).isEqualTo(input);
    assertThat(codes()).contains(code);
    return this;
  }

  /** No object could be examined, for the reason with this code, and nothing was written. */
  SubjectRun refused(String code) {
    assertThat(result).as("%s", codes()).isInstanceOf(FileResult.Rejected.class);
    assertThat(output).isEmpty();
    assertThat(codes()).contains(code);
    return this;
  }

  /** Codes of all notices, refusals and reasons. */
  List<String> codes() {
    Stream<String> objects =
        result.objects().stream()
            .flatMap(
                object ->
                    object.fold(
                        examined -> reasons(examined),
                        skipped -> Stream.of(skipped.reason().code())));
    Stream<String> own =
        result.fold(
            new FileResult.Cases<>() {
              @Override
              public Stream<String> changed(FileResult.Changed changed) {
                return Stream.empty();
              }

              @Override
              public Stream<String> unchanged(FileResult.Unchanged unchanged) {
                return Stream.empty();
              }

              @Override
              public Stream<String> rejected(FileResult.Rejected rejected) {
                return Stream.of(rejected.reason().code());
              }
            });
    Stream<String> notices = result.notices().stream().map(Notice::code);
    return Stream.of(objects, own, notices).flatMap(each -> each).toList();
  }

  private static Stream<String> reasons(ObjectResult.Examined examined) {
    return examined.features().stream()
        .flatMap(feature -> feature.reason().stream())
        .map(reason -> reason.code());
  }

  String before(String item) throws IOException {
    return text(input, item);
  }

  String after(String item) throws IOException {
    return text(output, item);
  }

  /** Names of all items of the result. */
  List<String> items() throws IOException {
    return List.copyOf(unpacked(output).keySet());
  }

  /** The result gives the same bytes for the same input. */
  byte[] output() {
    return output.clone();
  }

  /** All items but these are as they were. */
  SubjectRun keepsAllBut(String... changed) throws IOException {
    Map<String, byte[]> old = unpacked(input);
    Map<String, byte[]> now = unpacked(output);
    assertThat(now.keySet()).isEqualTo(old.keySet());
    for (String name : old.keySet()) {
      if (!List.of(changed).contains(name)) {
        assertThat(now.get(name)).as(name).isEqualTo(old.get(name));
      }
    }
    return this;
  }

  private static Map<String, Integer> findings(byte[] bytes) throws Exception {
    try (OpcPackage source = OpcPackage.open(bytes, OpcLimits.DEFAULT)) {
      return Validation.of(source).counts();
    }
  }

  private static String text(byte[] zip, String item) throws IOException {
    return new String(unpacked(zip).get(item), StandardCharsets.UTF_8);
  }

  private static Map<String, byte[]> unpacked(byte[] bytes) throws IOException {
    Map<String, byte[]> items = new LinkedHashMap<>();
    try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(bytes))) {
      for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
        items.put(entry.getName(), zip.readAllBytes());
      }
    }
    return items;
  }
}

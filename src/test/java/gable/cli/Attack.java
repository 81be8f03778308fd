package gable.cli;

import static org.assertj.core.api.Assertions.assertThat;

import gable.fixture.PackageSketch;
import gable.threemf.Models;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.function.Supplier;

/**
 * A package made to do harm and what the command says of it.
 *
 * @param danger what it tries, shown as the name of the test
 * @param file makes it
 * @param code the exit code
 * @param words what the message names
 */
record Attack(String danger, Supplier<byte[]> file, int code, List<String> words) {

  static final String ITEM = "<item objectid=\"1\"/>";

  @Override
  public String toString() {
    return danger;
  }

  /** A box, with a text of its model part changed; the file is invalid. */
  static Attack text(String danger, String from, String to, String... words) {
    return new Attack(danger, () -> packed(changed(from, to)), ExitCode.INVALID, List.of(words));
  }

  /** A box, with a text of its model part changed; the only object cannot be examined. */
  static Attack object(String danger, String from, String to, String... words) {
    return new Attack(
        danger, () -> packed(changed(from, to)), ExitCode.NOTHING_EXAMINED, List.of(words));
  }

  /** A box and more resources, of which only the given object is built. */
  static Attack built(String danger, String resources, int id, String... words) {
    String item = "<item objectid=\"" + id + "\"/>";
    return new Attack(
        danger,
        () -> packed(Models.model(Models.box(1) + resources, item)),
        ExitCode.NOTHING_EXAMINED,
        List.of(words));
  }

  /** A mesh of its own. */
  static Attack mesh(String danger, Supplier<String> mesh, String... words) {
    return new Attack(
        danger,
        () -> packed(Models.model("<object id=\"1\">" + mesh.get() + "</object>", ITEM)),
        ExitCode.NOTHING_EXAMINED,
        List.of(words));
  }

  /** A model part of any bytes; the file is invalid. */
  static Attack part(String danger, byte[] model, String... words) {
    return new Attack(
        danger,
        () -> PackageSketch.of("").item("3D/3dmodel.model", model).bytes(),
        ExitCode.INVALID,
        List.of(words));
  }

  /** The model of a box. */
  static String box() {
    return Models.model(Models.box(1), ITEM);
  }

  private static String changed(String from, String to) {
    assertThat(box()).contains(from);
    return box().replace(from, to);
  }

  static byte[] packed(String model) {
    return PackageSketch.of("")
        .item("3D/3dmodel.model", model.getBytes(StandardCharsets.UTF_8))
        .bytes();
  }
}

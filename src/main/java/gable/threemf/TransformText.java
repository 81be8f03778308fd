package gable.threemf;

import gable.geom.Affine3;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Transform attributes. Source: 3MF core specification 1.4, section 3.3: twelve numbers. */
final class TransformText {

  private TransformText() {}

  /**
   * The map that an attribute describes, with the translation in millimetres; nothing if the text
   * is no transform, the map that changes nothing if there is no attribute.
   */
  static Optional<Affine3> parse(@Nullable String text, LengthUnit unit) {
    if (text == null) {
      return Optional.of(Affine3.IDENTITY);
    }
    List<String> parts = NumberText.words(text);
    if (parts.size() != 12) {
      return Optional.empty();
    }
    double[] m = new double[12];
    for (int i = 0; i < 12; i++) {
      m[i] = NumberText.number(parts.get(i));
      if (Double.isNaN(m[i])) {
        return Optional.empty();
      }
    }
    for (int i = 9; i < 12; i++) {
      m[i] *= unit.millimetres();
    }
    return Optional.of(Affine3.of(m));
  }
}

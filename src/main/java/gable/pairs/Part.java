package gable.pairs;

import gable.geom.Affine3;
import java.util.List;

/**
 * A part with its round features, in print space of its first place.
 *
 * @param file number of the file that it is from; only parts of one file have positions in common
 * @param family the same for parts that are one object lying in different ways
 * @param pins its pins
 * @param bores its bores
 * @param places from print space of the first place to that of each place, the first included
 * @param solid its body
 */
public record Part(
    int file,
    Object family,
    List<PinHalf> pins,
    List<BoreHalf> bores,
    List<Affine3> places,
    Solid solid) {

  /** Copies the lists. */
  public Part {
    pins = List.copyOf(pins);
    bores = List.copyOf(bores);
    places = List.copyOf(places);
    if (places.isEmpty()) {
      throw new IllegalArgumentException("a part is somewhere");
    }
  }

  /** How many of it there are. */
  int copies() {
    return places.size();
  }
}

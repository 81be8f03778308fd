package gable.threemf;

import gable.threemf.Elements.Span;
import java.util.List;

/**
 * A group of properties.
 *
 * @param id its id
 * @param span where it stands
 * @param entries what is in it
 * @param layers of a multiproperties group the ids of its layers, otherwise nothing
 */
record PropertyGroup(int id, Span span, Entries entries, List<Integer> layers) {

  PropertyGroup {
    layers = List.copyOf(layers);
  }

  Entries.Kind kind() {
    return entries.kind();
  }
}

package gable.validate;

import gable.threemf.Names;
import java.util.ArrayList;
import java.util.List;

/** Gathers the elements of one part that name objects, stacks or pictures of any part. */
final class References implements Checker {

  private final List<Element> alternatives = new ArrayList<>();
  private final List<Element> shapes = new ArrayList<>();
  private final List<Element> pictures = new ArrayList<>();

  @Override
  public void started(Element element) {
    if (element.is(Names.ALTERNATIVES, "alternative")) {
      alternatives.add(element);
    } else if (element.tag().namespace().equals(Names.BOOLEANS)) {
      shapes.add(element);
    } else if (element.is(Names.MATERIAL, "texture2d")
        || element.is(Names.DISPLACEMENT, "displacement2d")
        || element.is(Names.VOLUMETRIC, "imagesheet")) {
      pictures.add(element);
    }
  }

  /** Alternatives of objects. */
  List<Element> alternatives() {
    return List.copyOf(alternatives);
  }

  /** Boolean shapes and their operands. */
  List<Element> booleans() {
    return List.copyOf(shapes);
  }

  /** Elements whose {@code path} is a picture. */
  List<Element> pictures() {
    return List.copyOf(pictures);
  }
}

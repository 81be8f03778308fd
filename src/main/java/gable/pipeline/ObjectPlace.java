package gable.pipeline;

import gable.geom.Affine3;
import java.util.List;

/**
 * An object as it is placed, and all places where it lies the same way up.
 *
 * @param prefix what stands before the ids of its features, so that ids are unique in the file
 * @param part name of the model part that holds it
 * @param objectId its id in that part
 * @param name its name for people, safe to be shown on a terminal; may be empty
 * @param uses where it lies, in the order of the build; the first is the one that was examined
 */
public record ObjectPlace(String prefix, String part, int objectId, String name, List<Use> uses) {

  /** Copies the list. */
  public ObjectPlace {
    uses = List.copyOf(uses);
  }

  /**
   * One place of an object.
   *
   * @param item index of the build item, from 0
   * @param fromFirst takes print space of the first place to print space of this one
   */
  public record Use(int item, Affine3 fromFirst) {}

  /** Id of a feature of this object, for its {@code use}-th place, unique in the file. */
  public String featureId(String local, int use) {
    return prefix + local + (use == 0 ? "" : "." + (use + 1));
  }

  /** The object in words. */
  public String words() {
    String named = name.isEmpty() ? "" : " '" + name + "'";
    return "object " + objectId + named + " of " + part;
  }
}

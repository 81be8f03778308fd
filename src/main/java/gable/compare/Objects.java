package gable.compare;

import gable.mesh.Mesh;
import gable.mesh.MeshEdit;
import gable.pipeline.ObjectPlace;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiPredicate;

/**
 * Pairs objects: first those with the same part, number and box, then the same part and number,
 * then the same box, whatever their number.
 */
final class Objects {

  /** Boxes whose corners lie apart by less than this share of their size are the same. */
  private static final double SAME_BOX = 1e-3;

  private static final Mesh NOTHING = Mesh.of(new double[0], new int[0]);

  private Objects() {}

  static List<ObjectPair> of(Side before, Side after) {
    List<Body> first = new ArrayList<>(before.bodies());
    List<Body> second = new ArrayList<>(after.bodies());
    List<ObjectPair> pairs = new ArrayList<>();
    List<BiPredicate<Body, Body>> ways =
        List.of((a, b) -> isNamed(a, b) && isThere(a, b), Objects::isNamed, Objects::isThere);
    for (BiPredicate<Body, Body> way : ways) {
      for (Body one : List.copyOf(first)) {
        Optional<Body> other = second.stream().filter(body -> way.test(one, body)).findFirst();
        if (other.isPresent()) {
          pairs.add(pair(Optional.of(one), other));
          first.remove(one);
          second.remove(other.get());
        }
      }
    }
    first.forEach(body -> pairs.add(pair(Optional.of(body), Optional.empty())));
    second.forEach(body -> pairs.add(pair(Optional.empty(), Optional.of(body))));
    return pairs;
  }

  private static ObjectPair pair(Optional<Body> before, Optional<Body> after) {
    Mesh old = before.map(Body::mesh).orElse(NOTHING);
    Mesh now = after.map(Body::mesh).orElse(NOTHING);
    MeshEdit edit = Surfaces.edit(old, now);
    Kind kind = Kind.of(before.isPresent(), after.isPresent(), edit.isEmpty());
    return new ObjectPair(kind, before, after, edit);
  }

  private static boolean isNamed(Body one, Body other) {
    ObjectPlace a = one.result().place();
    ObjectPlace b = other.result().place();
    return a.part().equals(b.part()) && a.objectId() == b.objectId();
  }

  private static boolean isThere(Body one, Body other) {
    double size = one.mesh().box().diagonal() * SAME_BOX;
    return one.mesh().box().min().minus(other.mesh().box().min()).norm() <= size
        && one.mesh().box().max().minus(other.mesh().box().max()).norm() <= size;
  }
}

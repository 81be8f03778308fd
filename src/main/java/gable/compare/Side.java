package gable.compare;

import gable.geom.Vec3;
import gable.mesh.Mesh;
import gable.mesh.MeshEdit;
import gable.pipeline.FileResult;
import gable.pipeline.Gable;
import gable.pipeline.Input;
import gable.pipeline.ObjectResult;
import gable.pipeline.Observer;
import gable.pipeline.Settings;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;

/**
 * One of the two files.
 *
 * @param result what was found in it; nothing was to be changed
 * @param bodies its objects, in the order of the build
 */
public record Side(FileResult result, List<Body> bodies) {

  /** Copies the list. */
  public Side {
    bodies = List.copyOf(bodies);
  }

  static Side of(Path file, Vec3 up) {
    IdentityHashMap<ObjectResult, Mesh> meshes = new IdentityHashMap<>();
    Observer keeper =
        new Observer() {
          @Override
          public void seen(ObjectResult result, Mesh mesh, MeshEdit edit) {
            meshes.put(result, mesh);
          }
        };
    Settings settings = Settings.usual().withUp(up);
    FileResult result = new Gable(List.of()).inspect(Input.file(file), settings, keeper);
    List<Body> bodies = new ArrayList<>();
    for (ObjectResult object : result.objects()) {
      Mesh mesh = meshes.get(object);
      if (mesh != null) {
        bodies.add(new Body(object, mesh));
      }
    }
    return new Side(result, bodies);
  }
}

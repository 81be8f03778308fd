package gable.catalogue;

import java.nio.file.Path;

/**
 * A model below the input folder.
 *
 * @param name its path below the folder, with slashes on every system
 * @param path where it is
 * @param relative its path below the folder
 * @param bytes its length
 */
record ModelFile(String name, Path path, Path relative, long bytes) {

  static ModelFile of(Path root, Path path, long bytes) {
    Path relative = root.relativize(path);
    String name = relative.toString().replace(relative.getFileSystem().getSeparator(), "/");
    return new ModelFile(name, path, relative, bytes);
  }
}

package gable.catalogue;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/**
 * The models below a folder: ordinary files whose names end in .3mf, in the order of their names.
 *
 * <p>A link to a file is a model if it leads to an ordinary file below the folder. Links to folders
 * are not followed: what they lead to inside the folder is found anyway, and outside nothing is
 * looked for.
 *
 * @param models the models
 * @param skipped names of links to models or folders that are not followed, and of folders that
 *     cannot be read
 */
record ModelFiles(List<ModelFile> models, List<String> skipped) {

  ModelFiles {
    models = List.copyOf(models);
    skipped = List.copyOf(skipped);
  }

  static ModelFiles below(Path folder) throws IOException {
    Path root = folder.toRealPath();
    Walk walk = new Walk(root);
    Files.walkFileTree(root, walk);
    walk.models.sort(Comparator.comparing(ModelFile::name));
    walk.skipped.sort(Comparator.naturalOrder());
    return new ModelFiles(walk.models, walk.skipped);
  }

  private static final class Walk extends SimpleFileVisitor<Path> {

    private final Path root;
    private final List<ModelFile> models = new ArrayList<>();
    private final List<String> skipped = new ArrayList<>();

    Walk(Path root) {
      this.root = root;
    }

    @Override
    public FileVisitResult visitFile(Path path, BasicFileAttributes about) throws IOException {
      boolean named = path.toString().toLowerCase(Locale.ROOT).endsWith(".3mf");
      if (about.isSymbolicLink()) {
        visitLink(path, named);
      } else if (named && about.isRegularFile()) {
        models.add(ModelFile.of(root, path, about.size()));
      }
      return FileVisitResult.CONTINUE;
    }

    private void visitLink(Path link, boolean named) {
      try {
        Path real = link.toRealPath();
        if (named && real.startsWith(root) && Files.isRegularFile(real)) {
          models.add(ModelFile.of(root, link, Files.size(real)));
        } else if (named || Files.isDirectory(real)) {
          skipped.add(ModelFile.of(root, link, 0).name());
        }
      } catch (IOException e) {
        skipped.add(ModelFile.of(root, link, 0).name()); // it leads nowhere
      }
    }

    @Override
    public FileVisitResult visitFileFailed(Path path, IOException failure) {
      skipped.add(ModelFile.of(root, path, 0).name());
      return FileVisitResult.CONTINUE;
    }
  }
}

package gable.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Random;

/**
 * A folder of models for measuring runs over folders: sizes from 500 to 50,000 triangles, spread
 * evenly over their logarithms, with one to four bores; in folders of a hundred. The same seed
 * makes the same files.
 */
public final class CatalogueModels {

  private static final double SMALLEST = 500;
  private static final double LARGEST = 50_000;
  private static final int MOST_BORES = 4;
  private static final int IN_A_FOLDER = 100;

  private CatalogueModels() {}

  /** Writes {@code COUNT} models into the folder {@code PATH}. */
  public static void main(String[] args) throws IOException {
    Path root = Path.of(args[0]);
    int count = Integer.parseInt(args[1]);
    Random random = new Random(6);
    for (int number = 0; number < count; number++) {
      double share = random.nextDouble();
      int triangles = (int) (SMALLEST * Math.pow(LARGEST / SMALLEST, share));
      int bores = 1 + random.nextInt(MOST_BORES);
      Path folder = root.resolve(String.format(Locale.ROOT, "%02d", number / IN_A_FOLDER));
      Files.createDirectories(folder);
      String name = String.format(Locale.ROOT, "%04d-%d-bores.3mf", number, bores);
      DensePart.write(folder.resolve(name), triangles, bores, 6);
    }
  }
}

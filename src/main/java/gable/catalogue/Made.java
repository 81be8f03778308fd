package gable.catalogue;

import gable.pipeline.FileResult;
import gable.report.Overhang;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * What was made of a model, not yet in its place.
 *
 * @param result what became of it
 * @param cause why it was rejected, in one word; empty if it was not
 * @param output the model that was written aside, if one was
 * @param pictures pictures of the model, before and after, as far as there are any
 * @param report a page about it, if one was wanted
 * @param overhang overhang before and after
 */
record Made(
    FileResult result,
    String cause,
    Optional<Path> output,
    List<byte[]> pictures,
    Optional<String> report,
    Overhang overhang) {

  Made {
    pictures = List.copyOf(pictures);
  }

  /** A model of which nothing was made. */
  static Made nothing(FileResult result, String cause) {
    return new Made(
        result, cause, Optional.empty(), List.of(), Optional.empty(), new Overhang(0, 0));
  }
}

package gable.pipeline;

import gable.opc.OpcLimits;
import gable.opc.OpcPackage;
import gable.opc.PackageException;
import gable.opc.Place;
import gable.opc.Problem;
import gable.opc.Rule;
import gable.opc.SafeWrite;
import gable.opc.WriteException;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/**
 * Brings a result to where it goes: it is written aside, opened again and checked, and only then
 * moved into place or sent on. The input stays whole whatever happens.
 */
final class Delivery {

  private static final Rule FAILED =
      Rule.error("output-failed", "practice", "check the place, its rights and its room");
  private static final Rule ALIAS =
      Rule.error(
          "output-is-input",
          "practice",
          "name another file, or name the input in the same way to replace it on purpose");

  private final Opened input;
  private final Output output;

  Delivery(Opened input, Output output) {
    this.input = input;
    this.output = output;
  }

  /** Writes the bytes of a result. */
  interface Body {
    /** Writes them all. */
    void writeTo(OutputStream target) throws IOException, PackageException, WriteException;
  }

  /** Looks at a result that was written. */
  interface Check {
    /**
     * Looks.
     *
     * @throws IllegalStateException if it is not what it was meant to be
     */
    void check(OpcPackage written) throws PackageException;
  }

  void write(Body body, Check check) throws PackageException, WriteException {
    Optional<Path> path = output.fold(file -> Optional.of(file.path()), s -> Optional.empty());
    Optional<OutputStream> stream =
        output.fold(f -> Optional.empty(), streamed -> Optional.of(streamed.stream()));
    try {
      if (path.isPresent()) {
        toFile(path.get(), body, check);
      } else {
        toStream(stream.orElseThrow(), body, check);
      }
    } catch (IOException e) {
      String found = "writing failed (" + e.getMessage() + ")";
      throw new WriteException(
          new Problem(FAILED, Place.FILE, found, "an output that takes all bytes"), e);
    }
  }

  private void toFile(Path target, Body body, Check check)
      throws IOException, PackageException, WriteException {
    refuseAlias(target);
    try (SafeWrite aside = SafeWrite.to(target)) {
      body.writeTo(aside.stream());
      aside.seal();
      try (OpcPackage written = OpcPackage.open(aside.temporary(), OpcLimits.DEFAULT)) {
        check.check(written);
      }
      aside.commit();
    }
  }

  private static void toStream(OutputStream target, Body body, Check check)
      throws IOException, PackageException, WriteException {
    ByteArrayOutputStream aside = new ByteArrayOutputStream();
    body.writeTo(aside);
    try (OpcPackage written = OpcPackage.open(aside.toByteArray(), OpcLimits.DEFAULT)) {
      check.check(written);
    }
    aside.writeTo(target);
    target.flush();
  }

  /** Whether the output is the input, named by the same path. */
  boolean isOntoInput() {
    Optional<Path> target = output.fold(f -> Optional.of(whole(f.path())), s -> Optional.empty());
    return target.isPresent() && target.equals(input.path().map(Delivery::whole));
  }

  /** The input may be replaced, but not by way of a link that hides that it is the input. */
  private void refuseAlias(Path target) throws IOException, WriteException {
    if (input.path().isEmpty() || !Files.exists(target)) {
      return;
    }
    Path source = input.path().get();
    boolean named = whole(source).equals(whole(target));
    if (!named && Files.isSameFile(source, target)) {
      throw new WriteException(
          new Problem(
              ALIAS, Place.FILE, "the output is the input by another name", "another file"));
    }
  }

  private static Path whole(Path path) {
    return path.toAbsolutePath().normalize();
  }
}

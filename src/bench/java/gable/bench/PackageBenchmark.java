package gable.bench;

import gable.opc.Compression;
import gable.opc.OpcLimits;
import gable.opc.OpcPackage;
import gable.opc.PackageEdit;
import gable.opc.PackageException;
import gable.opc.PackageWriter;
import gable.opc.PartContent;
import gable.opc.WriteException;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/** What it costs to open a package, inflate its model part and write it again, warm. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
public class PackageBenchmark {

  /** Triangles of the part, roughly. */
  @Param({"10000", "1000000"})
  public int triangles;

  /** Effort of deflating. */
  @Param({"1", "6"})
  public int level;

  private final ExecutorService workers = Executors.newSingleThreadExecutor();
  private byte[] file = {};
  private byte[] model = {};

  /** Makes the part and reads it once. */
  @Setup(Level.Trial)
  public void makePart() throws IOException, PackageException {
    Path path = Files.createTempFile("dense", ".3mf");
    try {
      DensePart.write(path, triangles, 40, level);
      file = Files.readAllBytes(path);
    } finally {
      Files.delete(path);
    }
    model = inflate();
  }

  /** Ends the workers. */
  @TearDown(Level.Trial)
  public void stop() {
    workers.shutdownNow();
  }

  /** Opens the package: directories, content types, relationships. */
  @Benchmark
  public int open() throws IOException, PackageException {
    try (OpcPackage source = OpcPackage.open(file, OpcLimits.DEFAULT)) {
      return source.parts().size();
    }
  }

  /** Opens the package and inflates the model part. */
  @Benchmark
  public byte[] inflate() throws IOException, PackageException {
    try (OpcPackage source = OpcPackage.open(file, OpcLimits.DEFAULT)) {
      return source.read(source.rootModelPart().name());
    }
  }

  /** Writes the package with the model part deflated anew in one thread. */
  @Benchmark
  public void writeInOneThread() throws IOException, PackageException, WriteException {
    write(Compression.serial(level));
  }

  /** The same in two threads. */
  @Benchmark
  public void writeInTwoThreads() throws IOException, PackageException, WriteException {
    write(new Compression(level, 2, workers));
  }

  /** The floor: the JDK's deflater over the same bytes. */
  @Benchmark
  public void deflateOnly() throws IOException {
    Deflater deflater = new Deflater(level, true);
    try (DeflaterOutputStream out =
        new DeflaterOutputStream(OutputStream.nullOutputStream(), deflater, 1 << 16)) {
      out.write(model);
    } finally {
      deflater.end();
    }
  }

  private void write(Compression compression) throws IOException, PackageException, WriteException {
    try (OpcPackage source = OpcPackage.open(file, OpcLimits.DEFAULT)) {
      PackageEdit edit =
          PackageEdit.NONE.replace(source.rootModelPart().name(), PartContent.of(model));
      PackageWriter.write(source, edit, compression, OutputStream.nullOutputStream());
    }
  }
}

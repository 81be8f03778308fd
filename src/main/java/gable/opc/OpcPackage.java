package gable.opc;

import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.compress.utils.SeekableInMemoryByteChannel;

/**
 * A 3MF package, open for reading: its parts, their content types and the relationships between
 * them. Opening checks the archive and everything that OPC and 3MF Core chapter 2 say about the
 * package; the content of parts is only checked when it is read, or by {@link #requireSound}.
 *
 * <p>Names of parts start with a slash. Where a name is asked for, any spelling that means the part
 * will do (case, percent escapes). Immutable but for the channel, and safe for several threads.
 */
public final class OpcPackage implements Closeable {

  private final ZipArchive archive;
  private final PackageParts parts;
  private final OpcLimits limits;
  private final List<Problem> problems;

  private OpcPackage(
      ZipArchive archive, PackageParts parts, OpcLimits limits, List<Problem> problems) {
    this.archive = archive;
    this.parts = parts;
    this.limits = limits;
    this.problems = List.copyOf(problems);
  }

  /**
   * Opens a file.
   *
   * @throws PackageException if it is missing, not readable or not a valid package; all problems
   *     found until then are in it
   */
  public static OpcPackage open(Path path, OpcLimits limits) throws PackageException {
    if (Files.isDirectory(path)) {
      throw new PackageException(
          new Problem(ZipRules.NOT_A_FILE, Place.FILE, "this is a folder", "a 3MF file"));
    }
    if (Files.notExists(path)) {
      throw new PackageException(
          new Problem(ZipRules.MISSING, Place.FILE, "there is no such file", "a 3MF file"));
    }
    try {
      return open(Files.newByteChannel(path), limits);
    } catch (IOException e) {
      throw DamageException.asPackageException("", e);
    }
  }

  /** Opens a package that is in memory. The array must not be changed while it is open. */
  public static OpcPackage open(byte[] bytes, OpcLimits limits) throws PackageException {
    return open(new SeekableInMemoryByteChannel(bytes), limits);
  }

  /** Opens a package; the channel is closed with it, or at once if it cannot be used. */
  public static OpcPackage open(SeekableByteChannel channel, OpcLimits limits)
      throws PackageException {
    List<Problem> problems = new ArrayList<>();
    try {
      ZipArchive archive = ZipArchive.open(channel, limits, problems);
      PackageParts parts = PackageParts.of(archive, limits, problems);
      if (problems.stream().anyMatch(Problem::isError)) {
        throw new PackageException(problems);
      }
      return new OpcPackage(archive, parts, limits, problems);
    } catch (PackageException e) {
      closeAfter(channel, e);
      throw e.after(problems);
    }
  }

  private static void closeAfter(SeekableByteChannel channel, PackageException reason) {
    try {
      channel.close();
    } catch (IOException e) {
      reason.addSuppressed(e);
    }
  }

  /** Warnings and notes about the package; errors have stopped it from opening. */
  public List<Problem> problems() {
    return problems;
  }

  /** All parts in the order of the archive, without relationships and content types. */
  public List<Part> parts() {
    return parts.all();
  }

  /** The part that a name means: the one spelled like this, else the one that is equal by rule. */
  public Optional<Part> part(String name) {
    return parts.find(name);
  }

  /** The model part that the package's StartPart relationship names. */
  public Part rootModelPart() {
    return parts.root();
  }

  /** Relationships of the package, in the order of the file. */
  public List<Relationship> relationships() {
    return relationships(PartNames.PACKAGE);
  }

  /** Relationships of a part, in the order of the file; empty if it has none. */
  public List<Relationship> relationships(String source) {
    return parts.relationships(source).map(Relationships::list).orElse(List.of());
  }

  /** All relationships of the package and its parts. */
  public List<Relationship> allRelationships() {
    return parts.allRelationships();
  }

  /**
   * The bytes of a part, whole and with the right sum.
   *
   * @throws PackageException if they are damaged or beyond the limits
   * @throws IllegalArgumentException if there is no such part
   */
  public byte[] read(String name) throws PackageException {
    return archive.bytes(parts.item(name), limits.inflation().partBytes(), ZipRules.BIG_PART);
  }

  /**
   * The bytes of a part while they are inflated. The last read throws if size or sum are wrong, so
   * nothing may be concluded before the end is reached. Exceptions that come out of reading it are
   * to be given to {@link DamageException#asPackageException}.
   *
   * @throws IllegalArgumentException if there is no such part
   */
  public InputStream stream(String name) {
    return archive.stream(parts.item(name));
  }

  /**
   * Walks through an XML part other than a model: UTF-8 or UTF-16, no document type, within the
   * limits.
   *
   * @throws IllegalArgumentException if there is no such part
   */
  public void walk(String name, XmlVisitor visitor) throws PackageException {
    ZipItem item = parts.item(name);
    byte[] bytes = archive.bytes(item, limits.xml().bytes(), ZipRules.BIG_XML);
    OpcXml.walk(XmlText.decode(item.name(), bytes), limits.xml(), visitor);
  }

  /** Inflates every item that has not been read yet and checks its size and sum. */
  public void requireSound() throws PackageException {
    for (ZipItem item : archive.items()) {
      archive.requireSound(item);
    }
  }

  /** Length of the package in bytes. */
  public long size() {
    return archive.file().size();
  }

  ZipArchive archive() {
    return archive;
  }

  PackageParts contents() {
    return parts;
  }

  OpcLimits limits() {
    return limits;
  }

  @Override
  public void close() throws IOException {
    archive.close();
  }
}

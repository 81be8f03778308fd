package gable.compare;

import gable.opc.OpcLimits;
import gable.opc.OpcPackage;
import gable.opc.PackageException;
import gable.opc.Part;
import gable.opc.XmlTag;
import gable.opc.XmlVisitor;
import gable.threemf.Names;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Path;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * What a package holds besides meshes.
 *
 * @param parts length and SHA-256 of each part, by its name
 * @param metadata values by where they are and their names
 */
record Contents(Map<String, String> parts, Map<String, String> metadata) {

  private static final int SHOWN_DIGITS = 16;

  /**
   * Reads them.
   *
   * @throws PackageException if the package cannot be read
   */
  static Contents of(Path file) throws PackageException {
    Map<String, String> parts = new TreeMap<>();
    Metadata metadata = new Metadata();
    try (OpcPackage content = OpcPackage.open(file, OpcLimits.DEFAULT)) {
      for (Part part : content.parts()) {
        parts.put(part.name(), digest(content, part));
        if (part.contentType().equals(Part.MODEL_TYPE)) {
          metadata.part = part.name();
          content.walk(part.name(), metadata);
        }
      }
    } catch (IOException e) {
      throw new IllegalStateException("closing what was only read does not fail", e);
    }
    return new Contents(parts, metadata.found);
  }

  private static String digest(OpcPackage content, Part part) throws PackageException {
    try (InputStream bytes = content.stream(part.name())) {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      long length =
          bytes.transferTo(new DigestOutputStream(OutputStream.nullOutputStream(), digest));
      String hex = HexFormat.of().formatHex(digest.digest()).substring(0, SHOWN_DIGITS);
      return String.format(Locale.ROOT, "%d bytes, SHA-256 %s…", length, hex);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    } catch (IOException e) {
      return "cannot be read: " + e.getMessage();
    }
  }

  /** Names that one or both have, with their values. */
  static List<Value> held(Map<String, String> before, Map<String, String> after) {
    List<Value> values = new ArrayList<>();
    TreeSet<String> names = new TreeSet<>(before.keySet());
    names.addAll(after.keySet());
    for (String name : names) {
      String old = before.getOrDefault(name, "");
      String now = after.getOrDefault(name, "");
      boolean there = before.containsKey(name);
      boolean here = after.containsKey(name);
      values.add(new Value(Kind.of(there, here, old.equals(now)), name, old, now));
    }
    return values;
  }

  /** Gathers metadata of models, objects and items while a part is walked through. */
  private static final class Metadata implements XmlVisitor {
    private final Map<String, String> found = new TreeMap<>();
    private final Deque<String> owners = new ArrayDeque<>();
    private final StringBuilder text = new StringBuilder();
    private String part = "";
    private String name = "";
    private int items;

    @Override
    public void started(XmlTag tag) {
      boolean core = tag.namespace().equals(Names.CORE);
      String owner = owners.isEmpty() ? "" : owners.getLast();
      if (core && tag.name().equals("object")) {
        owner = "object " + tag.value("id").orElse("?");
      } else if (core && tag.name().equals("item")) {
        owner = "item " + ++items;
      } else if (core && tag.name().equals("metadata")) {
        String where = owner.isEmpty() ? part : part + ", " + owner;
        name = where + ": " + tag.value("name").orElse("");
        text.setLength(0);
      }
      owners.addLast(owner);
    }

    @Override
    public void characters(String more) {
      if (!name.isEmpty()) {
        text.append(more);
      }
    }

    @Override
    public void ended() {
      owners.removeLast();
      if (!name.isEmpty()) {
        found.merge(name, text.toString(), (one, other) -> one + " | " + other);
        name = "";
      }
    }
  }
}

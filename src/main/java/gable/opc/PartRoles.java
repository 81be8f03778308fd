package gable.opc;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;

/**
 * What a program that changes a package must know about the other parts in it: which are signed,
 * which are encrypted, which must be kept, and which nobody knows (3MF Core 2.1.5, 6.3; OPC 12; 3MF
 * Secure Content 2, 3).
 */
public final class PartRoles {

  private static final String DSIG = "http://www.w3.org/2000/09/xmldsig#";

  private final OpcPackage source;
  private final List<Problem> problems = new ArrayList<>();
  private final Set<String> signedKeys = new HashSet<>();
  private final Set<String> encryptedKeys = new LinkedHashSet<>();
  private boolean allSigned;

  private PartRoles(OpcPackage source) {
    this.source = source;
  }

  /**
   * Reads signatures and key stores.
   *
   * @throws PackageException if a key store cannot be read, so that nobody can tell which parts are
   *     encrypted
   */
  public static PartRoles of(OpcPackage source) throws PackageException {
    PartRoles roles = new PartRoles(source);
    roles.readSignatures();
    roles.readKeyStore();
    return roles;
  }

  private void readSignatures() throws PackageException {
    for (Part signature : targets(RelationshipTypes.SIGNATURE)) {
      XmlText text = XmlText.decode(signature.name().substring(1), bytes(signature));
      try {
        OpcXml.walk(text, source.limits().xml(), starts(this::readSignature));
      } catch (PackageException e) {
        allSigned = true;
        problems.add(
            new Problem(
                OpcRules.SIGNATURE_UNREADABLE,
                e.problem().place(),
                "the signature cannot be read: " + e.problem().found(),
                "an XML signature"));
      }
    }
  }

  /** A reference names a part and its content type: {@code /3D/a.model?ContentType=...}. */
  private void readSignature(XmlTag tag) {
    if (tag.namespace().equals(DSIG) && tag.name().equals("Reference")) {
      tag.value("URI")
          .filter(uri -> uri.startsWith("/"))
          .ifPresent(uri -> signedKeys.add(PartNames.key(uri.replaceFirst("[?#].*$", ""))));
    }
  }

  private void readKeyStore() throws PackageException {
    Set<String> marked = new HashSet<>();
    for (Part part : targets(RelationshipTypes.ENCRYPTED_FILE)) {
      marked.add(PartNames.key(part.name()));
    }
    encryptedKeys.addAll(marked);
    Optional<Part> store = keyStore();
    if (store.isPresent()) {
      String name = store.get().name().substring(1);
      XmlText text = XmlText.decode(name, bytes(store.get()));
      OpcXml.walk(text, source.limits().xml(), starts(this::readKeyStore));
      encryptedKeys.stream()
          .filter(key -> !marked.contains(key))
          .forEach(
              key ->
                  problems.add(
                      new Problem(
                          OpcRules.ENCRYPTED_UNMARKED,
                          Place.of(name),
                          "the key store lists '" + key + "', which no relationship marks so",
                          "an EncryptedFile relationship to each encrypted part")));
    }
  }

  private void readKeyStore(XmlTag tag) {
    if (tag.name().equals("resourcedata")) {
      tag.value("path").ifPresent(path -> encryptedKeys.add(PartNames.key(path)));
    }
  }

  private static XmlVisitor starts(Consumer<XmlTag> action) {
    return new XmlVisitor() {
      @Override
      public void started(XmlTag tag) {
        action.accept(tag);
      }

      @Override
      public void ended() {}
    };
  }

  private byte[] bytes(Part part) throws PackageException {
    ZipItem item = source.contents().item(part.name());
    return source.archive().bytes(item, source.limits().xml().bytes(), ZipRules.BIG_XML);
  }

  /** What is wrong or odd about signatures and encryption. */
  public List<Problem> problems() {
    return List.copyOf(problems);
  }

  /** Whether the package has digital signatures. */
  public boolean isSigned() {
    return !signatureParts().isEmpty();
  }

  /**
   * Whether a change to the part breaks a signature. Relationships and content types are asked for
   * by their own names, {@code /_rels/.rels} and the like.
   */
  public boolean isSigned(String part) {
    return allSigned || signedKeys.contains(PartNames.key(part));
  }

  /** Origin, signatures and certificates: what must go together when a signature goes. */
  public List<Part> signatureParts() {
    Set<Part> parts = new LinkedHashSet<>(targets(RelationshipTypes.SIGNATURE_ORIGIN));
    parts.addAll(targets(RelationshipTypes.SIGNATURE));
    parts.addAll(targets(RelationshipTypes.CERTIFICATE));
    return List.copyOf(parts);
  }

  /** The key store, if there is one. */
  public Optional<Part> keyStore() {
    return targets(RelationshipTypes.KEY_STORE).stream().findFirst();
  }

  /** Parts whose bytes are encrypted: those marked as such and those that the key store lists. */
  public List<Part> encryptedParts() {
    return encryptedKeys.stream().flatMap(key -> source.part(key).stream()).toList();
  }

  /** Whether the bytes of a part are encrypted. */
  public boolean isEncrypted(String part) {
    return encryptedKeys.contains(PartNames.key(part));
  }

  /** Parts that must be kept although nobody may know them. */
  public List<Part> mustPreserve() {
    return targets(RelationshipTypes.MUST_PRESERVE);
  }

  /**
   * Parts that no relationship of a known type leads to and that need not be preserved. After a
   * change they may no longer fit (3MF Core 2.1.5).
   */
  public List<Part> unknownParts() {
    Set<String> known = new HashSet<>();
    for (Relationship relationship : source.allRelationships()) {
      if (RelationshipTypes.KNOWN.contains(relationship.type())) {
        relationship.part().ifPresent(known::add);
      }
    }
    return source.parts().stream().filter(part -> !known.contains(part.name())).toList();
  }

  private List<Part> targets(String type) {
    return source.allRelationships().stream()
        .filter(relationship -> relationship.is(type))
        .flatMap(relationship -> relationship.part().stream())
        .distinct()
        .flatMap(name -> source.part(name).stream())
        .toList();
  }
}

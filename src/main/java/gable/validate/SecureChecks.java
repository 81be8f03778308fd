package gable.validate;

import gable.opc.OpcPackage;
import gable.opc.PackageException;
import gable.opc.Part;
import gable.opc.PartRoles;
import gable.opc.Place;
import gable.opc.XmlTag;
import gable.opc.XmlVisitor;
import gable.threemf.Names;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** The key store and the parts that it locks. Source: secure content extension 1.x. */
final class SecureChecks implements Checker {

  /** Content type of key stores (secure content C.1). */
  private static final String TYPE = "application/vnd.ms-package.3dmanufacturing-keystore+xml";

  private final OpcPackage source;
  private final Findings findings;
  private final Set<String> consumers = new HashSet<>();
  private final Set<String> paths = new HashSet<>();
  private final List<Element> rights = new ArrayList<>();

  SecureChecks(OpcPackage source, Findings findings) {
    this.source = source;
    this.findings = findings;
  }

  /** Checks the key store if there is one; names of the parts that are encrypted. */
  Set<String> check() {
    Set<String> encrypted = new HashSet<>();
    try {
      PartRoles roles = PartRoles.of(source);
      findings.addAll(roles.problems());
      roles.encryptedParts().forEach(part -> encrypted.add(part.name()));
      if (roles.keyStore().isPresent()) {
        keyStore(roles.keyStore().get());
      }
    } catch (PackageException e) {
      findings.add(e);
    }
    String root = source.rootModelPart().name();
    if (encrypted.contains(root)) {
      findings.add(
          ExtensionRules.ENCRYPTED_ROOT, place(root), "the root model is encrypted", "a plain one");
    }
    return encrypted;
  }

  private void keyStore(Part store) throws PackageException {
    if (!store.contentType().equals(TYPE)) {
      String found = "a key store of the content type '" + store.contentType() + '\'';
      findings.add(ExtensionRules.KEY_STORE_TYPE, place(store.name()), found, TYPE);
    }
    PartWalk walk = new PartWalk(store.name(), List.of(this), findings);
    source.walk(
        store.name(),
        new XmlVisitor() {
          @Override
          public void started(XmlTag tag) {
            walk.started(tag);
          }

          @Override
          public void characters(String text) {
            walk.characters(text);
          }

          @Override
          public void ended() {
            walk.ended();
          }
        });
    rights.forEach(this::consumer);
  }

  private static Place place(String part) {
    return Place.of(part.substring(1));
  }

  @Override
  public void started(Element element) {
    if (element.is(Names.SECURE, "consumer")) {
      String id = element.value("consumerid").orElse("").strip();
      if (!consumers.add(id)) {
        String found = "the consumer '" + id + "' a second time";
        findings.add(ExtensionRules.CONSUMER_TWICE, element, found, "each once");
      }
    } else if (element.is(Names.SECURE, "accessright")) {
      rights.add(element);
    } else if (element.is(Names.SECURE, "resourcedata")) {
      path(element);
    } else if (element.isCore("model")) {
      findings.add(ExtensionRules.KEY_STORE_ROOT, element, "a model as key store", "a keystore");
    }
  }

  private void path(Element data) {
    Optional<String> path = data.value("path").map(String::strip);
    if (path.isPresent() && !paths.add(path.get())) {
      String found = "the path '" + path.get() + "' a second time";
      findings.add(ExtensionRules.PATH_TWICE, data, found, "each once");
    }
  }

  @Override
  public void ended(Element element) {
    if (element.is(Names.SECURE, "cipherdata") && !element.hasText()) {
      findings.add(ExtensionRules.KEY, element, "a wrapped key without content", "its value");
    }
  }

  private void consumer(Element right) {
    int index = right.index("consumerindex");
    int count = right.parent().parent().count(Names.SECURE, "consumer");
    if (index >= count) {
      String found = "consumer " + index;
      findings.add(ExtensionRules.CONSUMER, right, found, "one of the " + count + " consumers");
    }
  }
}

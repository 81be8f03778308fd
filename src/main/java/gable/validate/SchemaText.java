package gable.validate;

import gable.threemf.Names;
import gable.validate.ElementRule.Where;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads the table of elements and attributes; its first lines say how it is written. */
final class SchemaText {

  private static final Pattern ELEMENT =
      Pattern.compile("([|] )?(\\S+) > (\\S+) ([1?*+]) : ([^:]+) :\\s?(.*)");
  private static final Pattern ADDED = Pattern.compile("(\\S+) & ([^:]+) : (.*)");

  /** Children of other specifications stand at the end of the elements of core. */
  private static final int AT_THE_END = 1000;

  private static final QualifiedName OUTSIDE = new QualifiedName("", "-");
  private static final QualifiedName RESOURCES = new QualifiedName(Names.CORE, "resources");
  private static final QualifiedName OBJECT = new QualifiedName(Names.CORE, "object");

  private record QualifiedName(String namespace, String local) {}

  private record Child(QualifiedName name, Where where, List<AttributeRule> attributes) {}

  private final Map<String, String> namespaces = new HashMap<>();
  private final Map<QualifiedName, List<Child>> children = new HashMap<>();
  private final Map<QualifiedName, List<AttributeRule>> added = new HashMap<>();
  private final Set<QualifiedName> opaque = new HashSet<>();
  private String namespace = "";

  private SchemaText() {}

  static Schema read() {
    SchemaText text = new SchemaText();
    text.source().lines().filter(line -> !line.isBlank()).forEach(text::line);
    Where nowhere = new Where(0, '1', 0, "");
    ElementRule outside =
        text.rule(new Child(OUTSIDE, nowhere, List.of())); // a frame around the roots
    return new Schema(outside, new HashSet<>(text.namespaces.values()));
  }

  private String source() {
    try (InputStream stream =
        Objects.requireNonNull(SchemaText.class.getResourceAsStream("schema.txt"), "no table")) {
      return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException("the table of elements cannot be read", e);
    }
  }

  private void line(String line) {
    Matcher element = ELEMENT.matcher(line);
    Matcher more = ADDED.matcher(line);
    if (line.startsWith("@ ")) {
      String[] words = line.split(" ", -1);
      namespace = words[2];
      namespaces.put(words[1], namespace);
    } else if (element.matches()) {
      element(element);
    } else if (more.matches()) {
      added
          .computeIfAbsent(name(more.group(1)), key -> new ArrayList<>())
          .addAll(attributes(more.group(3), more.group(2), namespace));
    } else if (line.endsWith(" ...")) {
      opaque.add(name(line.substring(0, line.length() - 4)));
    } else if (!line.startsWith("#")) {
      throw new IllegalStateException("no line of the table: " + line);
    }
  }

  private void element(Matcher parts) {
    QualifiedName parent = name(parts.group(2));
    QualifiedName name = name(parts.group(3));
    List<Child> siblings = children.computeIfAbsent(parent, key -> new ArrayList<>());
    boolean instead = parts.group(1) != null;
    int order = order(parent, name, siblings.size() - (instead ? 1 : 0));
    Where where = new Where(siblings.size(), parts.group(4).charAt(0), order, parts.group(5));
    siblings.add(new Child(name, where, attributes(parts.group(6), parts.group(5), "")));
  }

  private int order(QualifiedName parent, QualifiedName name, int next) {
    if (parent.equals(RESOURCES)) {
      return name.equals(OBJECT) ? 1 : 0;
    }
    boolean inCore = parent.namespace.equals(Names.CORE);
    boolean own = parent.namespace.equals(namespace);
    return own ? next : inCore ? AT_THE_END : ElementRule.ANYWHERE;
  }

  private QualifiedName name(String written) {
    if (written.equals(OUTSIDE.local)) {
      return OUTSIDE;
    }
    int colon = written.indexOf(':');
    String owner =
        colon < 0
            ? namespace
            : Objects.requireNonNull(namespaces.get(written.substring(0, colon)), written);
    return new QualifiedName(owner, written.substring(colon + 1));
  }

  private static List<AttributeRule> attributes(String list, String section, String namespace) {
    List<AttributeRule> rules = new ArrayList<>();
    for (String each : list.isBlank() ? new String[0] : list.strip().split(" ", -1)) {
      int equals = each.indexOf('=');
      boolean required = each.charAt(equals - 1) == '!';
      String name = each.substring(0, required ? equals - 1 : equals);
      String type = each.substring(equals + 1);
      boolean words = type.contains("|");
      rules.add(
          new AttributeRule(
              namespace,
              name,
              required,
              words ? ValueType.TEXT : ValueType.valueOf(type.toUpperCase(Locale.ROOT)),
              words ? List.of(type.split("\\|", -1)) : List.of(),
              section));
    }
    return rules;
  }

  /** The rule for an element with those for all that may stand in it. */
  private ElementRule rule(Child child) {
    List<AttributeRule> attributes = new ArrayList<>(child.attributes);
    attributes.addAll(added.getOrDefault(child.name, List.of()));
    Map<String, ElementRule> below = new LinkedHashMap<>();
    for (Child each : children.getOrDefault(child.name, List.of())) {
      below.put(each.name.local, rule(each));
    }
    return new ElementRule(
        child.name.namespace,
        child.name.local,
        child.where,
        attributes,
        opaque.contains(child.name)
            ? Optional.empty()
            : Optional.of(Collections.unmodifiableMap(below)));
  }
}

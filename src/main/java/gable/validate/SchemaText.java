package gable.validate;

import gable.threemf.Names;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
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

  private static final String RESOURCES = Schema.key(Names.CORE, "resources");
  private static final String OBJECT = Schema.key(Names.CORE, "object");

  private final Map<String, String> namespaces = new HashMap<>();
  private final Map<String, Map<String, ElementRule>> children = new LinkedHashMap<>();
  private final Map<String, List<AttributeRule>> added = new HashMap<>();
  private final Set<String> opaque = new HashSet<>();
  private String namespace = "";

  private SchemaText() {}

  static Schema read() {
    SchemaText text = new SchemaText();
    text.source().lines().filter(line -> !line.isBlank()).forEach(text::line);
    return text.schema();
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
    String parent = name(parts.group(2));
    String name = name(parts.group(3));
    Map<String, ElementRule> siblings =
        children.computeIfAbsent(parent, key -> new LinkedHashMap<>());
    boolean instead = parts.group(1) != null;
    List<AttributeRule> attributes = attributes(parts.group(6), parts.group(5), "");
    siblings.put(
        name,
        new ElementRule(
            name,
            parts.group(3),
            parts.group(4).charAt(0),
            order(parent, name, siblings.size() - (instead ? 1 : 0)),
            parts.group(5),
            attributes,
            false));
  }

  private int order(String parent, String name, int next) {
    if (parent.equals(RESOURCES)) {
      return name.equals(OBJECT) ? 1 : 0;
    }
    boolean own = parent.startsWith('{' + namespace + '}');
    boolean inCore = parent.startsWith('{' + Names.CORE + '}');
    return own ? next : inCore ? AT_THE_END : ElementRule.ANYWHERE;
  }

  private String name(String written) {
    if (written.equals(Schema.OUTSIDE)) {
      return written;
    }
    int colon = written.indexOf(':');
    String owner =
        colon < 0
            ? namespace
            : Objects.requireNonNull(namespaces.get(written.substring(0, colon)), written);
    return Schema.key(owner, written.substring(colon + 1));
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

  private Schema schema() {
    for (Map<String, ElementRule> siblings : children.values()) {
      siblings.replaceAll((name, rule) -> complete(rule));
    }
    return new Schema(children, new HashSet<>(namespaces.values()));
  }

  private ElementRule complete(ElementRule rule) {
    List<AttributeRule> attributes = new ArrayList<>(rule.attributes());
    attributes.addAll(added.getOrDefault(rule.name(), List.of()));
    return new ElementRule(
        rule.name(),
        rule.local(),
        rule.occurrence(),
        rule.order(),
        rule.section(),
        List.copyOf(attributes),
        opaque.contains(rule.name()));
  }
}

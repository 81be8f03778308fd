package gable.validate;

import gable.opc.Rule;
import gable.opc.XmlTag;
import gable.opc.XmlTag.Attribute;
import gable.threemf.MeshNumbers;
import gable.threemf.ModelVisitor;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;

/**
 * Holds the elements of a part against the table and tells the checkers of those that stand where
 * they may. What belongs to no known specification is skipped (core 2.3.3.1).
 */
final class PartWalk implements ModelVisitor {

  private static final String XML = "http://www.w3.org/XML/1998/namespace";
  private static final String SCHEMA_INSTANCE = "http://www.w3.org/2001/XMLSchema-instance";

  private final String part;
  private final List<Checker> checkers;
  private final Findings findings;
  private final Schema schema = Schema.table();
  private final Deque<Element> open = new ArrayDeque<>();
  private int skipped;

  PartWalk(String part, List<Checker> checkers, Findings findings) {
    this.part = part;
    this.checkers = List.copyOf(checkers);
    this.findings = findings;
  }

  @Override
  public void started(XmlTag tag) {
    Optional<Element> parent = Optional.ofNullable(open.peek());
    if (skipped > 0 || parent.map(up -> up.rule().isOpaque()).orElse(false)) {
      skipped++;
      return;
    }
    ElementRule above = parent.map(Element::rule).orElse(schema.outside());
    Optional<ElementRule> rule = above.child(tag.namespace(), tag.name());
    if (rule.isEmpty()) {
      skipped++;
      strange(tag, parent);
      return;
    }
    Element element = new Element(part, tag, rule.get(), parent);
    parent.ifPresent(up -> place(up, element));
    attributes(element);
    open.push(element);
    checkers.forEach(checker -> checker.started(element));
  }

  private void strange(XmlTag tag, Optional<Element> parent) {
    if (parent.isEmpty()) {
      findings.add(
          XmlRules.ROOT,
          tag.place(),
          "the root element is {" + tag.namespace() + '}' + tag.name(),
          "a root element of 3MF in its published namespace");
    } else if (tag.namespace().isEmpty() || schema.knows(tag.namespace())) {
      findings.add(
          XmlRules.in(XmlRules.UNKNOWN_ELEMENT, parent.get().rule().section()),
          tag.place().at(parent.get().path() + '/' + tag.name()),
          "the element '" + tag.name() + "' of the namespace '" + tag.namespace() + '\'',
          "an element that the specification has there");
    }
  }

  private void place(Element parent, Element child) {
    ElementRule rule = child.rule();
    if (!parent.inOrder(rule)) {
      String found = "'" + rule.local() + "' stands behind elements that it should precede";
      add(XmlRules.ORDER, child, found, "the order of the schema");
    }
    if (!rule.isRepeated() && child.number() == 1) {
      add(XmlRules.REPEATED, child, "a second '" + rule.local() + '\'', "one");
    }
  }

  private void attributes(Element element) {
    List<AttributeRule> rules = element.rule().attributes();
    for (Attribute attribute : element.tag().attributes()) {
      Optional<AttributeRule> rule =
          rules.stream()
              .filter(each -> each.name().equals(attribute.name()))
              .filter(each -> each.namespace().equals(attribute.namespace()))
              .findFirst();
      if (rule.isPresent()) {
        value(element, rule.get(), attribute.value());
      } else {
        strange(element, attribute);
      }
    }
    for (AttributeRule rule : rules) {
      if (rule.required() && element.tag().value(rule.namespace(), rule.name()).isEmpty()) {
        String found = "'" + element.rule().local() + "' has no " + rule.name();
        add(XmlRules.MISSING_ATTRIBUTE, element, found, rule.expected());
      }
    }
  }

  private void value(Element element, AttributeRule rule, String value) {
    if (!rule.accepts(value)) {
      Rule broken = rule.type() == ValueType.UUID ? XmlRules.UUID : XmlRules.VALUE;
      String found = rule.name() + "=\"" + value + '"';
      findings.add(XmlRules.in(broken, rule.section()), element, found, rule.expected());
    }
  }

  private void strange(Element element, Attribute attribute) {
    String owner = attribute.namespace();
    String found = "the attribute " + attribute.name() + "=\"" + attribute.value() + '"';
    if (owner.equals(XML) || owner.equals(SCHEMA_INSTANCE)) {
      boolean language = attribute.name().equals("lang") && element.isCore("model");
      if (!language) {
        add(XmlRules.XML_ATTRIBUTE, element, found, "only xml:lang, and only on the model");
      }
    } else if (owner.isEmpty() || schema.knows(owner)) {
      add(XmlRules.UNKNOWN_ATTRIBUTE, element, found, "an attribute of the specification");
    }
  }

  @Override
  public void characters(String text) {
    if (!open.isEmpty()) {
      open.peek().noteText(text);
    }
  }

  @Override
  public void list(MeshNumbers numbers) {
    if (skipped == 0) {
      open.element().setNumbers(numbers);
    }
  }

  @Override
  public void ended() {
    if (skipped > 0) {
      skipped--;
      return;
    }
    Element element = open.pop();
    for (ElementRule child : element.rule().children()) {
      boolean none = element.count(child) == 0;
      if (none && child.isRequired()) {
        String found = "'" + element.rule().local() + "' without '" + child.local() + '\'';
        add(XmlRules.MISSING_ELEMENT, element, found, "one");
      } else if (none && child.isExpected()) {
        String found = "'" + element.rule().local() + "' without any '" + child.local() + '\'';
        add(XmlRules.EMPTY, element, found, "at least one");
      }
    }
    checkers.forEach(checker -> checker.ended(element));
  }

  private void add(Rule rule, Element element, String found, String expected) {
    findings.add(XmlRules.in(rule, element.rule().section()), element, found, expected);
  }
}

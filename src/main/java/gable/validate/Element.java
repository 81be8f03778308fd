package gable.validate;

import gable.opc.Place;
import gable.opc.XmlTag;
import gable.threemf.MeshNumbers;
import gable.threemf.Names;
import gable.threemf.NumberText;
import java.util.List;
import java.util.Optional;

/** An element that stands where the table has it, with what its children said so far. */
final class Element {

  private static final int[] NONE = {};

  private final String part;
  private final XmlTag tag;
  private final ElementRule rule;
  private final Optional<Element> parent;
  private final int number;
  private final int[] counts;
  private Optional<MeshNumbers> numbers = Optional.empty();
  private int lastOrder;
  private boolean text;

  Element(String part, XmlTag tag, ElementRule rule, Optional<Element> parent) {
    this.part = part;
    this.tag = tag;
    this.rule = rule;
    this.parent = parent;
    this.counts = rule.children().isEmpty() ? NONE : new int[rule.children().size()];
    this.number = parent.map(up -> up.counts[rule.number()]++).orElse(0);
  }

  String part() {
    return part;
  }

  XmlTag tag() {
    return tag;
  }

  ElementRule rule() {
    return rule;
  }

  Element parent() {
    return parent.orElseThrow();
  }

  Optional<Element> ifParent() {
    return parent;
  }

  /** Its number among the children of its parent that have its name, from 0. */
  int number() {
    return number;
  }

  boolean is(String namespace, String name) {
    return tag.name().equals(name) && tag.namespace().equals(namespace);
  }

  boolean isCore(String name) {
    return is(Names.CORE, name);
  }

  /** Value of an attribute without a prefix. */
  Optional<String> value(String name) {
    return tag.value(name);
  }

  /** Number in an attribute without a prefix; -1 if there is none or it is no index. */
  int index(String name) {
    return tag.value(name).map(NumberText::index).orElse(-1);
  }

  /** Numbers in a list attribute; -1 for what is none. */
  int[] indices(String name) {
    List<String> words = NumberText.words(tag.value(name).orElse(""));
    return words.stream().mapToInt(NumberText::index).toArray();
  }

  /** Number in an attribute without a prefix, or what stands for a missing one. */
  double number(String name, double otherwise) {
    return tag.value(name).map(NumberText::number).orElse(otherwise);
  }

  /** How many children of a name it has so far. */
  int count(String namespace, String name) {
    return rule.child(namespace, name).map(this::count).orElse(0);
  }

  /** How many children a rule of the table is about. */
  int count(ElementRule child) {
    return counts[child.number()];
  }

  /** Notes the place of a child in the table; false if it should have come earlier. */
  boolean inOrder(ElementRule child) {
    boolean ascending = child.order() == ElementRule.ANYWHERE || child.order() >= lastOrder;
    lastOrder = Math.max(lastOrder, child.order());
    return ascending;
  }

  void setNumbers(MeshNumbers list) {
    numbers = Optional.of(list);
  }

  /** Its content if it is a vertex or triangle list in the plain form. */
  Optional<MeshNumbers> numbers() {
    return numbers;
  }

  void noteText(String characters) {
    text = text || !characters.isBlank();
  }

  /** Whether there is anything but blanks in it, up to now. */
  boolean hasText() {
    return text;
  }

  /** Where it stands. */
  Place place() {
    return tag.place().at(path());
  }

  /** Where one of the triangles of its plain list stands. */
  Place place(int triangle) {
    return numbers.orElseThrow().place(triangle).at(path() + "/triangle " + triangle);
  }

  /** Steps from the root to it. */
  String path() {
    String step = tag.name();
    int id = index("id");
    if (id >= 0) {
      step += " " + id;
    } else if (rule.isRepeated()) {
      step += " " + number;
    }
    return parent.isPresent() ? parent.get().path() + '/' + step : step;
  }

  @Override
  public String toString() {
    return part + ' ' + path();
  }
}

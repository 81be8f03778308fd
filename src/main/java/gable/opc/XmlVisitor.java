package gable.opc;

/** Is told of the elements of a part in the order of the text. */
public interface XmlVisitor {

  /** An element starts. */
  void started(XmlTag tag);

  /** Characters inside the innermost element; they may come in pieces. */
  default void characters(String text) {}

  /** The innermost element ends. */
  void ended();
}

package gable.validate;

/** Looks at the elements of one part as they come. */
interface Checker {

  /** An element starts that stands where the table has it. */
  default void started(Element element) {}

  /** An element ends; its children have been told of. */
  default void ended(Element element) {}
}

package gable.compare;

/**
 * Something with a name and a value, or with content of some length, in one or both files.
 *
 * @param kind what became of it
 * @param name what it is; raw
 * @param before its value in the first file; raw, empty if it is not there
 * @param after its value in the second file
 */
public record Value(Kind kind, String name, String before, String after) {}

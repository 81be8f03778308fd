package gable.threemf;

/**
 * The first element of a vertex or triangle list that cannot be what it should be.
 *
 * @param index its number in the list, from 0
 * @param place byte offset of its tag in the part
 * @param found what was found, in words
 * @param expected what should have been there
 */
record ListFault(int index, int place, String found, String expected) {}

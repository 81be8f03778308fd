/**
 * First and last stage of the way: the package. A 3MF file is a ZIP archive whose items are parts
 * with names, content types and relationships (Open Packaging Conventions, ECMA-376 Part 2, first
 * edition, 2006; 3MF Core Specification 1.4, chapter 2).
 *
 * <p>Reading trusts nothing: the archive's two directories must agree, sizes are counted while
 * inflating, checksums are verified, and every limit is a component of {@link gable.opc.OpcLimits}.
 * Writing changes only what it is told to: bytes of other items are copied as they stand in the
 * file, and the relationships and content types are spliced, not written anew.
 *
 * <p>Goals: no byte changed without need; one meaning for every reader; the same bytes out whatever
 * the number of threads. Outline: {@link gable.opc.OpcPackage} opens and answers questions. What is
 * wrong is a {@link gable.opc.Problem}.
 */
@NullMarked
package gable.opc;

import org.jspecify.annotations.NullMarked;

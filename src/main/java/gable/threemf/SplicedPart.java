package gable.threemf;

import gable.opc.PartContent;

/**
 * A changed model part.
 *
 * @param name name of the part
 * @param content its new content, which shares the bytes that did not change with the old one
 */
public record SplicedPart(String name, PartContent content) {}

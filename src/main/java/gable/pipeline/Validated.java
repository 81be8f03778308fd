package gable.pipeline;

import gable.validate.Validation;

/**
 * A file that was held against the standard.
 *
 * @param source the file
 * @param validation what was found
 */
public record Validated(Source source, Validation validation) {}

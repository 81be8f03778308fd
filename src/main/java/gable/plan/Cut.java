package gable.plan;

/**
 * One convex body to take away or to add.
 *
 * @param operation which of the two
 * @param tool the body, in print space
 */
public record Cut(Operation operation, ConvexTool tool) {}

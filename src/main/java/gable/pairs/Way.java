package gable.pairs;

import gable.geom.Vec3;

/**
 * A way into a bore.
 *
 * @param bore the bore
 * @param into unit direction in which a pin goes
 * @param mouth point of the axis where the bore begins
 * @param closed whether there is a bottom at the other end
 */
record Way(BoreHalf bore, Vec3 into, Vec3 mouth, boolean closed) {}

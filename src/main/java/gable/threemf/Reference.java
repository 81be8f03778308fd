package gable.threemf;

import gable.geom.Affine3;

/**
 * A build item or a component: the use of an object at a place.
 *
 * @param number number of the element in its part, for the writer
 * @param part name of the model part that holds the object
 * @param objectId id of the object in that part
 * @param transform where the object goes; its translation is in millimetres
 * @param index which item of the build or which component of its object this is, from 0
 */
public record Reference(int number, String part, int objectId, Affine3 transform, int index) {}

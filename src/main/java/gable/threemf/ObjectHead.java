package gable.threemf;

/**
 * What every object has.
 *
 * @param part name of the model part that holds it
 * @param id id, unique in the part
 * @param name name for people, or nothing
 * @param type what it is for; counts for meshes only
 * @param number number of its element in the part, for the writer
 */
public record ObjectHead(String part, int id, String name, ObjectType type, int number) {}

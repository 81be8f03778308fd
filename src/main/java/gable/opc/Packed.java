package gable.opc;

/**
 * Bytes of an item as they stand in the archive, with what its headers say about them.
 *
 * @param bytes the bytes as stored or deflated
 * @param size length of the inflated bytes
 * @param sum CRC-32 of the inflated bytes
 */
record Packed(PartContent bytes, long size, long sum) {}

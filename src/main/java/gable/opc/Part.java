package gable.opc;

/**
 * A part of the package.
 *
 * @param name its name, starting with a slash, spelled as in the archive
 * @param contentType its content type; empty if the package does not say (then OPC does not count
 *     it as a part, but it is kept all the same)
 * @param size its size in bytes as the archive claims; reading checks it
 */
public record Part(String name, String contentType, long size) {

  /** Content type of every model part (3MF Core C.1). */
  public static final String MODEL_TYPE = "application/vnd.ms-package.3dmanufacturing-3dmodel+xml";
}

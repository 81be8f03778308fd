package gable.pipeline;

/**
 * The file that a result is about.
 *
 * @param name as the caller named it
 * @param bytes its length; 0 if it could not be read
 * @param sha256 SHA-256 of its bytes in lower-case hex (FIPS 180-4); empty if it could not be read
 */
public record Source(String name, long bytes, String sha256) {

  /** A file of which nothing but the name is known. */
  static Source unread(String name) {
    return new Source(name, 0, "");
  }
}

package gable.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;

/**
 * Who made a report.
 *
 * @param name name of the program
 * @param version its version
 */
public record Tool(String name, String version) {

  /** This program, as it was built. */
  public static Tool here() {
    return new Tool("gable", facts().getProperty("version", "unknown"));
  }

  /** Version of three.js that the program was built with. */
  static String threeVersion() {
    return facts().getProperty("three", "unknown");
  }

  private static Properties facts() {
    Properties facts = new Properties();
    try (InputStream in = Tool.class.getResourceAsStream("/gable/tool.properties")) {
      if (in == null) {
        throw new IllegalStateException("the jar lacks gable/tool.properties");
      }
      facts.load(in);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return facts;
  }
}

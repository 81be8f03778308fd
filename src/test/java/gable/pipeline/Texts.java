package gable.pipeline;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Looks into texts of model parts, and makes some. */
final class Texts {

  static final String TETRAHEDRON =
      "<mesh><vertices><vertex x=\"50\" y=\"0\" z=\"0\"/><vertex x=\"60\" y=\"0\" z=\"0\"/>"
          + "<vertex x=\"50\" y=\"10\" z=\"0\"/><vertex x=\"50\" y=\"0\" z=\"10\"/></vertices>"
          + "<triangles><triangle v1=\"0\" v2=\"2\" v3=\"1\"/><triangle v1=\"0\" v2=\"1\" v3=\"3\"/>"
          + "<triangle v1=\"1\" v2=\"2\" v3=\"3\"/><triangle v1=\"0\" v2=\"3\" v3=\"2\"/></triangles>"
          + "</mesh>";

  static final String HALF_RED =
      "<m:colorgroup id=\"5\"><m:color color=\"#FF0000\"/><m:color color=\"#0000FF\"/>"
          + "</m:colorgroup>";

  private Texts() {}

  static List<String> all(String pattern, String text) {
    List<String> found = new ArrayList<>();
    for (Matcher matcher = Pattern.compile(pattern).matcher(text); matcher.find(); ) {
      found.add(matcher.group(matcher.groupCount()));
    }
    return found;
  }

  static String between(String text, String from, String to) {
    int start = text.indexOf(from) + from.length();
    return text.substring(start, text.indexOf(to, start));
  }

  static String scaled(String mesh, double factor) {
    return Pattern.compile("([xyz])=\"([^\"]*)\"")
        .matcher(mesh)
        .replaceAll(
            found ->
                found.group(1)
                    + "=\""
                    + BigDecimal.valueOf(Double.parseDouble(found.group(2)) * factor)
                        .toPlainString()
                    + '"');
  }

  static int number(String tag, String attribute) {
    return Integer.parseInt(between(tag, attribute + "=\"", "\""));
  }
}

package gable.cli;

import gable.report.Words;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.apache.commons.cli.Option;

/**
 * Settings in a text file, in UTF-8: lines such as {@code slope = 50}, with the names of the
 * options; what takes no value is {@code yes} or {@code no}. Lines after a heading such as {@code
 * [petg]} count only if they are asked for by that name. From {@code #} on a line is a remark.
 */
final class SettingsFile {

  private static final long MOST_BYTES = 1 << 20;
  private static final String YES = "yes";
  private static final String NO = "no";

  private final String name;
  private final Map<String, Option> known;
  private final Map<String, Map<String, Setting>> headings = new LinkedHashMap<>();

  /**
   * A setting.
   *
   * @param value as it is written
   * @param place file and line
   */
  record Setting(String value, String place) {
    boolean isNo() {
      return value.equals(NO);
    }
  }

  private SettingsFile(String name, Map<String, Option> known) {
    this.name = Words.safe(name);
    this.known = known;
  }

  /**
   * The settings that a call asks for.
   *
   * @return by the names of options without dashes; of several headings the last counts
   */
  static Map<String, Setting> of(Given call) throws WrongCall {
    if (!call.has(Grammar.SETTINGS)) {
      if (call.has(Grammar.USE)) {
        throw new WrongCall(Grammar.USE + " needs " + Grammar.SETTINGS);
      }
      return Map.of();
    }
    String name = call.value(Grammar.SETTINGS).orElseThrow();
    SettingsFile file = new SettingsFile(name, SettingOptions.inFiles());
    file.read(lines(name));
    Map<String, Setting> all = new LinkedHashMap<>(file.under(""));
    for (String heading : call.values(Grammar.USE)) {
      all.putAll(file.under(heading.strip()));
    }
    all.entrySet().removeIf(each -> file.isFlag(each.getKey()) && each.getValue().isNo());
    return all;
  }

  private boolean isFlag(String key) {
    Option option = known.get(key);
    return option != null && !option.hasArg();
  }

  private static List<String> lines(String name) throws WrongCall {
    Path path = Ends.path(name);
    try {
      if (Files.size(path) > MOST_BYTES) {
        throw new WrongCall(shown(name) + " is too large for a file of settings");
      }
      return Files.readString(path, StandardCharsets.UTF_8).lines().toList();
    } catch (CharacterCodingException e) {
      throw new WrongCall(shown(name) + " is no text in UTF-8");
    } catch (IOException e) {
      throw new WrongCall(shown(name) + " cannot be read");
    }
  }

  private static String shown(String name) {
    return Grammar.SETTINGS + ": '" + Words.safe(name) + "'";
  }

  private Map<String, Setting> under(String heading) throws WrongCall {
    Map<String, Setting> settings = headings.get(heading);
    if (settings == null) {
      throw new WrongCall(
          Grammar.USE
              + ": "
              + name
              + " has no heading ["
              + Words.safe(heading)
              + "]; it has: "
              + String.join(", ", new TreeSet<>(headings.keySet())).replaceFirst("^, ", ""));
    }
    return settings;
  }

  private void read(List<String> lines) throws WrongCall {
    String heading = "";
    headings.put("", new LinkedHashMap<>());
    List<String> plain = new ArrayList<>(lines);
    for (int number = 1; number <= plain.size(); number++) {
      String line =
          plain.get(number - 1).replaceFirst("^\uFEFF", "").replaceFirst("#.*", "").strip();
      String place = name + ", line " + number;
      if (line.startsWith("[") && line.endsWith("]") && line.length() > 2) {
        heading = line.substring(1, line.length() - 1).strip();
        if (headings.putIfAbsent(heading, new LinkedHashMap<>()) != null) {
          throw new WrongCall(place + ": the heading " + Words.safe(line) + " is there twice");
        }
      } else if (!line.isEmpty()) {
        put(headings.getOrDefault(heading, new LinkedHashMap<>()), line, place);
      }
    }
  }

  private void put(Map<String, Setting> settings, String line, String place) throws WrongCall {
    int middle = line.indexOf('=');
    if (middle < 1) {
      throw new WrongCall(place + ": expected a line such as slope = 50, or [NAME]");
    }
    String key = line.substring(0, middle).strip();
    String value = line.substring(middle + 1).strip();
    Option option = known.get(key);
    if (option == null) {
      throw new WrongCall(
          place
              + ": there is no setting '"
              + Words.safe(key)
              + "'; there are: "
              + String.join(", ", new TreeSet<>(known.keySet())));
    }
    boolean fits = option.hasArg() ? !value.isEmpty() : value.equals(YES) || value.equals(NO);
    if (!fits) {
      throw new WrongCall(
          place + ": " + key + (option.hasArg() ? " needs a value" : " is yes or no"));
    }
    if (settings.put(key, new Setting(value, place)) != null) {
      throw new WrongCall(place + ": " + key + " is there twice under one heading");
    }
  }
}

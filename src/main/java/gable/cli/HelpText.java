package gable.cli;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.cli.Option;

/** The text of {@code --help}: lines of at most 90 characters. */
final class HelpText {

  private static final int WIDTH = 90;
  private static final int COLUMN = 28;

  private final List<String> lines = new ArrayList<>();

  private HelpText() {}

  /** The text for one command. */
  static String of(Syntax command) {
    HelpText text = new HelpText();
    text.head(command);
    if (!command.filesWords().isEmpty()) {
      text.entry("      FILE", command.filesWords());
    }
    text.options(command);
    return text.toString();
  }

  /** The text for the program: its commands, and what else is to be said. */
  static String of(Syntax program, List<Syntax> commands, List<String> footer) {
    HelpText text = new HelpText();
    text.head(program);
    text.options(program);
    text.lines.add("Commands:");
    commands.forEach(command -> text.entry("  " + command.name(), firstSentence(command)));
    text.lines.addAll(footer);
    return text.toString();
  }

  /** The first sentence says what it does; the rest is for its own help. */
  static String firstSentence(Syntax command) {
    String words = command.description();
    int end = words.indexOf(". ");
    return end < 0 ? words : words.substring(0, end + 1);
  }

  private void head(Syntax command) {
    for (String synopsis : command.synopses()) {
      lines.add((lines.isEmpty() ? "Usage: " : "       ") + synopsis);
    }
    lines.addAll(wrapped(command.description(), WIDTH));
  }

  private void options(Syntax command) {
    command.options().forEach(option -> entry(names(option), option.getDescription()));
  }

  static String names(Option option) {
    String shortName = option.getOpt() == null ? "      " : "  -" + option.getOpt() + ", ";
    String argument = option.hasArg() ? "=" + option.getArgName() : "";
    String more = option.hasValueSeparator() ? "[," + option.getArgName() + "...]" : "";
    return shortName + "--" + option.getLongOpt() + argument + more;
  }

  /** An option as one that belongs to something named above it. */
  static String setting(Option option) {
    HelpText text = new HelpText();
    text.entry("    " + names(option).strip(), option.getDescription());
    return String.join(System.lineSeparator(), text.lines);
  }

  private void entry(String left, String words) {
    List<String> right = wrapped(words, WIDTH - COLUMN);
    boolean fits = left.length() + 1 < COLUMN;
    if (!fits) {
      lines.add(left);
    }
    for (int k = 0; k < right.size(); k++) {
      String start = k == 0 && fits ? left : "";
      lines.add(start + " ".repeat(COLUMN - start.length()) + right.get(k));
    }
  }

  private static List<String> wrapped(String words, int width) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : words.split(" ", -1)) {
      if (line.length() > 0 && line.length() + 1 + word.length() > width) {
        lines.add(line.toString());
        line.setLength(0);
      }
      line.append(line.length() > 0 ? " " : "").append(word);
    }
    lines.add(line.toString());
    return lines;
  }

  @Override
  public String toString() {
    return String.join(System.lineSeparator(), lines) + System.lineSeparator();
  }
}

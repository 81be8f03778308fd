package gable.cli;

import gable.report.Tool;
import java.util.List;
import org.apache.commons.cli.Option;

/** The manual page, in the language of man(7), made from the same grammar as the help. */
final class Manual {

  private final StringBuilder text = new StringBuilder();

  private Manual() {}

  /** The page; ends with a line feed. */
  static String page() {
    Manual manual = new Manual();
    manual.write();
    return manual.text.toString();
  }

  private void write() {
    Syntax program = Grammar.gable();
    text.append(".TH GABLE 1 \"\" \"gable ").append(Tool.here().version()).append("\"\n");
    heading("NAME");
    line("gable - makes holes in 3MF models print without support");
    heading("SYNOPSIS");
    line("gable COMMAND [OPTION...] [FILE...]");
    heading("DESCRIPTION");
    line(program.description());
    heading("COMMANDS");
    Grammar.commands().forEach(this::command);
    heading("FILE OF SETTINGS");
    Grammar.settingsWords().forEach(this::paragraph);
    heading("EXIT STATUS");
    Grammar.exitCodes().forEach((code, words) -> entry(String.valueOf(code), words));
    heading("EXAMPLES");
    for (String example : Grammar.examples()) {
      text.append(".PP\n");
      line("    " + example);
    }
  }

  private void command(Syntax command) {
    text.append(".SS ").append(command.name()).append('\n');
    command.synopses().forEach(this::paragraph);
    paragraph(command.description());
    if (!command.filesWords().isEmpty()) {
      entry("FILE", command.filesWords());
    }
    for (Option option : command.options()) {
      entry(HelpText.names(option).strip(), option.getDescription());
    }
  }

  private void heading(String words) {
    text.append(".SH ").append(words).append('\n');
  }

  private void paragraph(String words) {
    text.append(".PP\n");
    line(words);
  }

  private void entry(String left, String words) {
    text.append(".TP\n.B ").append(escaped(left)).append('\n');
    line(words);
  }

  private void line(String words) {
    text.append(escaped(words)).append('\n');
  }

  /** Text in which nothing is a command: no leading dot or quote, no backslash, plain hyphens. */
  private static String escaped(String words) {
    String plain = words.replace("\\", "\\e").replace("-", "\\-");
    return List.of(".", "'").stream().anyMatch(plain::startsWith) ? "\\&" + plain : plain;
  }
}

package gable.cli;

import java.util.List;
import java.util.stream.Collectors;
import org.apache.commons.cli.Option;

/**
 * Scripts that let shells complete calls, made from the same grammar as the help. They hold nothing
 * but words of this program: letters, digits, hyphens, and quoted sentences.
 */
final class Completion {

  private Completion() {}

  /** For bash. */
  static String bash() {
    StringBuilder cases = new StringBuilder();
    for (Syntax command : Grammar.commands()) {
      cases.append("    ").append(command.name()).append(") options='");
      cases.append(words(command)).append("' ;;\n");
    }
    StringBuilder values = new StringBuilder();
    Grammar.choices()
        .forEach(
            (option, words) ->
                values
                    .append("    ")
                    .append(option)
                    .append(") COMPREPLY=($(compgen -W '")
                    .append(String.join(" ", words))
                    .append("' -- \"$word\")); return ;;\n"));
    return """
        # bash completion for gable
        _gable() {
          local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD-1]} options=
          COMPREPLY=()
          if [ "$COMP_CWORD" -eq 1 ]; then
            COMPREPLY=($(compgen -W '%s --help --version' -- "$word"))
            return
          fi
          case $before in
        %s  esac
          case ${COMP_WORDS[1]} in
        %s  esac
          if [[ $word == -* ]]; then
            COMPREPLY=($(compgen -W "$options" -- "$word"))
          else
            compopt -o filenames 2> /dev/null
            local IFS=$'\\n'
            COMPREPLY=($(compgen -f -- "$word"))
          fi
        }
        complete -F _gable gable
        """
        .formatted(names(), values, cases);
  }

  /** For zsh. */
  static String zsh() {
    StringBuilder commands = new StringBuilder();
    StringBuilder cases = new StringBuilder();
    for (Syntax command : Grammar.commands()) {
      commands.append("    '").append(command.name()).append(':');
      commands.append(plain(HelpText.firstSentence(command))).append("'\n");
      cases.append("    ").append(command.name()).append(")\n      _arguments");
      for (Option option : command.options()) {
        cases.append(" \\\n        ").append(argument(option));
      }
      cases.append(files(command)).append(" ;;\n");
    }
    return """
        #compdef gable
        # zsh completion for gable
        _gable() {
          local -a commands
          commands=(
        %s  )
          if (( CURRENT == 2 )); then
            _describe command commands
            return
          fi
          local command=$words[2]
          shift words
          (( CURRENT-- ))
          case $command in
        %s  esac
        }
        _gable "$@"
        """
        .formatted(commands, cases);
  }

  private static String files(Syntax command) {
    List<String> choices = Grammar.choices().getOrDefault(command.name(), List.of());
    String what = choices.isEmpty() ? "_files" : "(" + String.join(" ", choices) + ")";
    return " \\\n        '*:file:" + what + "'";
  }

  private static String argument(Option option) {
    String name = "--" + option.getLongOpt();
    String text = plain(option.getDescription());
    if (!option.hasArg()) {
      return "'" + name + "[" + text + "]'";
    }
    List<String> choices = Grammar.choices().getOrDefault(name, List.of());
    String what = choices.isEmpty() ? "_files" : "(" + String.join(" ", choices) + ")";
    return "'" + name + "=[" + text + "]:" + option.getArgName() + ":" + what + "'";
  }

  /** Text without what has a meaning in a quoted specification. */
  private static String plain(String words) {
    return words.replaceAll("[\\[\\]:'\\\\]", "");
  }

  private static String names() {
    return Grammar.commands().stream().map(Syntax::name).collect(Collectors.joining(" "));
  }

  private static String words(Syntax command) {
    String options =
        command.options().stream()
            .map(option -> "--" + option.getLongOpt())
            .collect(Collectors.joining(" "));
    return command.options().stream().anyMatch(option -> "o".equals(option.getOpt()))
        ? options + " -o"
        : options;
  }
}

package gable.cli;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.cli.CommandLine;
import org.apache.commons.cli.DefaultParser;
import org.apache.commons.cli.MissingArgumentException;
import org.apache.commons.cli.Option;
import org.apache.commons.cli.Options;
import org.apache.commons.cli.ParseException;
import org.apache.commons.cli.UnrecognizedOptionException;

/**
 * One command: its name, the words that explain it, its options, and how many files it takes. Turns
 * a call into what was given, or says what is wrong with it.
 */
final class Syntax {

  private final String name;
  private final List<String> synopses = new ArrayList<>();
  private final String description;
  private final Options options = new Options();
  private final List<Option> order = new ArrayList<>();
  private final List<Option> repeated = new ArrayList<>();
  private String filesWords = "";
  private int fewest;
  private int most;

  /**
   * A command without options and files.
   *
   * @param name its name, as it is called; empty for the program without a command
   * @param synopsis what a call looks like
   * @param description what it does
   */
  Syntax(String name, String synopsis, String description) {
    this.name = name;
    this.synopses.add(synopsis);
    this.description = description;
  }

  /** Lets it take between {@code fewest} and {@code most} files. */
  Syntax files(int fewest, int most, String words) {
    this.fewest = fewest;
    this.most = most;
    this.filesWords = words;
    return this;
  }

  Syntax option(Option option) {
    options.addOption(option);
    order.add(option);
    return this;
  }

  /** An option with one value, which may come again for another. */
  Syntax repeated(Option option) {
    repeated.add(option);
    return option(option);
  }

  String name() {
    return name;
  }

  /** Adds another form of the call. */
  Syntax synopsis(String other) {
    synopses.add(other);
    return this;
  }

  List<String> synopses() {
    return synopses;
  }

  String description() {
    return description;
  }

  String filesWords() {
    return filesWords;
  }

  List<Option> options() {
    return order;
  }

  /** What a call asks for. */
  Given parse(List<String> words) throws WrongCall {
    CommandLine line = line(words);
    Given given = new Given(line);
    if (given.has(Grammar.HELP)) {
      return given;
    }
    for (Option option : order) {
      String shown = shown(option);
      if (option.isRequired() && !line.hasOption(option)) {
        throw wrong("the option " + shown + " is missing");
      }
      // an option that takes one value and comes twice is an error of the caller's; lists may
      String[] values = line.getOptionValues(option);
      if (values != null
          && values.length > 1
          && !option.hasValueSeparator()
          && !repeated.contains(option)) {
        throw wrong("the option " + shown + " is given twice");
      }
    }
    int files = line.getArgList().size();
    if (files < fewest) {
      throw wrong("a FILE is missing");
    }
    if (files > most) {
      throw wrong("'" + line.getArgList().get(most) + "' is one too many");
    }
    return given;
  }

  private CommandLine line(List<String> words) throws WrongCall {
    // what is required is asked for afterwards, so that --help needs nothing else
    Options lenient = new Options();
    for (Option option : order) {
      Option copy = (Option) option.clone();
      copy.setRequired(false);
      lenient.addOption(copy);
    }
    try {
      return DefaultParser.builder()
          .setAllowPartialMatching(false)
          .setStripLeadingAndTrailingQuotes(false)
          .get()
          .parse(lenient, words.toArray(String[]::new));
    } catch (UnrecognizedOptionException e) {
      throw wrong("there is no option " + e.getOption());
    } catch (MissingArgumentException e) {
      throw wrong("the option " + shown(e.getOption()) + " needs a value");
    } catch (ParseException e) {
      throw wrong(String.valueOf(e.getMessage()));
    }
  }

  private WrongCall wrong(String what) {
    return new WrongCall(
        what + "; see " + (name.isEmpty() ? "gable" : "gable " + name) + " --help");
  }

  private static String shown(Option option) {
    return option.getOpt() == null ? "--" + option.getLongOpt() : "-" + option.getOpt();
  }
}

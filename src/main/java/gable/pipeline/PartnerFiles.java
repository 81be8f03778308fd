package gable.pipeline;

import gable.opc.OpcPackage;
import gable.opc.PackageException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Other files whose parts go together with those of a file that is reshaped.
 *
 * @param stocks their parts, in the order in which they were named
 * @param notices what the result should say of them
 * @param refusal why one of them cannot be used, if so: without it joints would be missing
 */
record PartnerFiles(List<Stock> stocks, List<Notice> notices, Optional<Notice> refusal) {

  PartnerFiles {
    stocks = List.copyOf(stocks);
    notices = List.copyOf(notices);
  }

  /** Reads the partners of a run. */
  static PartnerFiles of(Work work) {
    List<Stock> stocks = new ArrayList<>();
    List<Notice> notices = new ArrayList<>();
    for (Path path : work.partners()) {
      try {
        Opened opened = Opened.of(Input.file(path));
        try (OpcPackage content = opened.content()) {
          Stock stock = Stock.of(content, work.forPartners());
          stocks.add(stock);
          notices.add(about(stocks.size(), opened.source(), stock));
        }
      } catch (PackageException e) {
        String why = Problems.notice(e.problem()).sentence();
        return new PartnerFiles(List.of(), List.of(), Optional.of(unread(path, why)));
      } catch (IOException e) {
        throw new IllegalStateException("closing what was only read does not fail", e);
      }
    }
    return new PartnerFiles(stocks, notices, Optional.empty());
  }

  private static Notice unread(Path path, String why) {
    String found = "the partner '" + path + "' cannot be used: " + why;
    return new Notice("partner-unread", Notice.Level.ERROR, "", found);
  }

  private static Notice about(int number, Source source, Stock stock) {
    String words =
        stock.isNothing()
            ? "partner %d, '%s' (SHA-256 %s): no object in it could be examined, so no joint with it is known;"
                + " expected at least one closed mesh in its build. To do: look at it with gable inspect"
            : "partner %d is '%s' (SHA-256 %s); it is looked at only";
    return new Notice(
        stock.isNothing() ? "partner-nothing" : "partner",
        stock.isNothing() ? Notice.Level.WARNING : Notice.Level.NOTE,
        "",
        String.format(Locale.ROOT, words, number, source.name(), source.sha256()));
  }
}

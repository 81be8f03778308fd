package gable.catalogue;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * The results as comma-separated values (RFC 4180), UTF-8, with a head line. Spreadsheets take a
 * text that begins with =, +, - or @ for a formula; such a text gets an apostrophe in front.
 */
final class Table {

  private static final String HEAD =
      "file,result,cause,reshaped,left,left_hanging,remarks,overhang_before_mm2,overhang_after_mm2,"
          + "reasons,message";

  private final List<Row> rows;

  Table(List<Row> rows) {
    this.rows = rows;
  }

  String text() {
    StringBuilder text = new StringBuilder(HEAD).append("\r\n");
    for (Row row : rows) {
      text.append(line(row)).append("\r\n");
    }
    return text.toString();
  }

  private static String line(Row row) {
    return String.join(
        ",",
        quoted(row.file()),
        row.result(),
        row.cause(),
        Integer.toString(row.reshaped()),
        Integer.toString(row.left()),
        Integer.toString(row.open()),
        Integer.toString(row.remarks()),
        area(row.before()),
        area(row.after()),
        quoted(reasons(row)),
        quoted(row.message()));
  }

  private static String reasons(Row row) {
    return row.reasons().entrySet().stream()
        .sorted(Map.Entry.comparingByKey())
        .map(each -> each.getValue() + " " + each.getKey())
        .collect(Collectors.joining("; "));
  }

  /** An area to two decimals. */
  static String area(double value) {
    return BigDecimal.valueOf(value).setScale(2, RoundingMode.HALF_EVEN).toPlainString();
  }

  private static String quoted(String raw) {
    boolean formula = !raw.isEmpty() && "=+-@\t\r".indexOf(raw.charAt(0)) >= 0;
    String text = formula ? "'" + raw : raw;
    boolean plain = text.chars().noneMatch(c -> c == ',' || c == '"' || c == '\r' || c == '\n');
    return plain ? text : '"' + text.replace("\"", "\"\"") + '"';
  }
}

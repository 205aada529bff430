// How a CSV document separates and quotes its cells, and finding that out from its first lines.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace rangebook {

struct CsvDialect {
  char delimiter = ',';
  std::optional<char> quote = '"';  ///< nothing: quotes are text
  std::optional<char> escape;       ///< besides doubled quotes
  /// Two or more spaces separate, as in columns lined up by hand; `delimiter` is a space then.
  bool gaps = false;

  bool operator==(const CsvDialect&) const = default;
};

/// What the user says about a dialect; the rest is detected.
struct CsvDialectOptions {
  std::optional<char> delimiter;
  std::optional<char> quote;
  bool no_quotes = false;  ///< quotes are text
};

/// The dialect under which the sample is most like a table: rows of one width, wide rather than
/// narrow, cells without stray quotes (the measure of van den Burg, Nazábal and Sutton, "Wrangling
/// messy CSV files by detecting row and type patterns", 2019), and above all a header of known
/// names. `whole` says that nothing follows the sample.
CsvDialect detect_dialect(std::string_view sample, bool whole,
                          const CsvDialectOptions& options = {});

/// `comma`, `bar`, `wide gap`; a sign without a name stands for itself.
std::string delimiter_name(const CsvDialect& dialect);
/// `double`, `single`, `none`, or the sign; `double, escaped by backslash`.
std::string quote_name(const CsvDialect& dialect);

/// `delimiter=semicolon quote=single escape=backslash`; what is usual is left out.
std::string to_string(const CsvDialect& dialect);

}  // namespace rangebook

// What the user may say about a table where detection is wrong, and the words it is said in: the
// same on the command line and in the book.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "schema/raw_row.h"

namespace rangebook {

/// What one column is for, where its name does not tell.
struct ColumnChoice {
  std::string column;          ///< its name, compared as all names are; or `#3`, counted from 1
  std::optional<Field> field;  ///< nothing: the column is not read, unless it is `colour_size`
  bool colour_size = false;    ///< it holds a colour and a size: `Navy / 12`

  bool operator==(const ColumnChoice&) const = default;
};

/// Whatever is not said is detected.
struct TableOptions {
  std::optional<char> delimiter;
  std::optional<char> quote;
  bool no_quotes = false;                   ///< quotes are text
  std::string encoding;                     ///< `windows-1252`, by any name ICU knows
  std::optional<std::uint64_t> header_row;  ///< line of the column names, from 1
  bool no_header = false;                   ///< the table has no line of column names
  std::optional<char> decimal;              ///< '.' or ','
  std::string sheet;                        ///< of a workbook, by its name
  std::vector<ColumnChoice> columns;        ///< these win over what names say

  bool operator==(const TableOptions&) const = default;
  bool empty() const { return *this == TableOptions{}; }
};

/// Why a word cannot be taken for an option.
struct OptionProblem {
  std::string what;                  ///< one sentence with the word
  std::vector<std::string> allowed;  ///< words to choose from, where there is a list
  std::string word;                  ///< what was said in the place of one of these
};

/// Takes one option as said: `delimiter` `semicolon`, `column` `Preis=price`. Columns add up; a
/// later word about the same column replaces the earlier one. Names: delimiter, quote, encoding,
/// header-row, decimal, sheet, column.
std::optional<OptionProblem> set_option(TableOptions& options, std::string_view name,
                                        std::string_view word);

/// What is said, as names and words that set_option() takes, in a fixed order.
std::vector<std::pair<std::string, std::string>> option_words(const TableOptions& options);

/// For the book: `name=word` a line; line ends and backslashes of a word are written `\n`, `\\`.
std::string to_text(const TableOptions& options);
/// Nothing when the text is damaged.
std::optional<TableOptions> table_options_of(std::string_view text);

/// What `more` says, and what only `options` says.
TableOptions overlaid(TableOptions options, const TableOptions& more);

/// The words for what a column can mean: the fields, `colour+size`, `ignore`.
std::vector<std::string> column_uses();

}  // namespace rangebook

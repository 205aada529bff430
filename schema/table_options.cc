// Words for signs, and one line of text for each option.
#include "schema/table_options.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>

#include "schema/one_line.h"

namespace rangebook {
namespace {

using SignNames = std::array<std::pair<char, std::string_view>, 5>;

constexpr SignNames kDelimiters{
    {{',', "comma"}, {';', "semicolon"}, {'\t', "tab"}, {'|', "bar"}, {' ', "space"}}};
constexpr std::string_view kColourSize = "colour+size";
constexpr std::string_view kIgnore = "ignore";
constexpr std::string_view kNone = "none";

using Problem = std::optional<OptionProblem>;

/// One printed sign that is neither letter nor digit.
bool is_sign(std::string_view word) {
  if (word.size() != 1 || word[0] <= ' ' || word[0] > '~') return false;
  const char sign = word[0];
  return !(sign >= '0' && sign <= '9') && !(sign >= 'A' && sign <= 'Z') &&
         !(sign >= 'a' && sign <= 'z');
}

Problem set_delimiter(TableOptions& options, std::string_view word) {
  std::vector<std::string> names;
  for (const auto& [sign, name] : kDelimiters) {
    if (name == word || (word.size() == 1 && word[0] == sign)) {
      options.delimiter = sign;
      return std::nullopt;
    }
    names.emplace_back(name);
  }
  if (is_sign(word) && std::string_view("\"'.").find(word) == std::string_view::npos) {
    options.delimiter = word[0];
    return std::nullopt;
  }
  return OptionProblem{
      fmt::format("\"{}\" is no delimiter; name one, or give the sign itself.", word),
      std::move(names), std::string(word)};
}

Problem set_quote(TableOptions& options, std::string_view word) {
  options.no_quotes = word == kNone;
  options.quote.reset();
  if (options.no_quotes) return std::nullopt;
  if (word == "double" || word == "\"") options.quote = '"';
  if (word == "single" || word == "'") options.quote = '\'';
  if (!options.quote && is_sign(word)) options.quote = word[0];
  if (options.quote) return std::nullopt;
  return OptionProblem{fmt::format("\"{}\" is no quote.", word),
                       {"double", "single", std::string(kNone)},
                       std::string(word)};
}

Problem set_header_row(TableOptions& options, std::string_view word) {
  options.header_row.reset();
  options.no_header = word == kNone;
  if (options.no_header) return std::nullopt;
  std::uint64_t row = 0;
  const char* const end = word.data() + word.size();
  const auto [at, error] = std::from_chars(word.data(), end, row);
  if (error == std::errc{} && at == end && row > 0) {
    options.header_row = row;
    return std::nullopt;
  }
  return OptionProblem{
      fmt::format("\"{}\" is no line: give the number of the line with the column names, counted "
                  "from 1, or the word none.",
                  word),
      {},
      std::string(word)};
}

Problem set_decimal(TableOptions& options, std::string_view word) {
  options.decimal.reset();
  if (word == "point" || word == ".") options.decimal = '.';
  if (word == "comma" || word == ",") options.decimal = ',';
  if (options.decimal) return std::nullopt;
  return OptionProblem{
      fmt::format("\"{}\" is no decimal sign.", word), {"point", "comma"}, std::string(word)};
}

Problem set_column_use(ColumnChoice& choice, std::string_view word) {
  choice.colour_size = word == kColourSize;
  if (choice.colour_size || word == kIgnore) return std::nullopt;
  for (std::size_t i = 0; i < kFieldCount; ++i) {
    if (to_string(static_cast<Field>(i)) == word) choice.field = static_cast<Field>(i);
  }
  if (choice.field) return std::nullopt;
  return OptionProblem{fmt::format("\"{}\" is nothing a column can mean.", word), column_uses(),
                       std::string(word)};
}

void put_choice(std::vector<ColumnChoice>& columns, const ColumnChoice& choice) {
  const auto same = [&](const ColumnChoice& other) { return other.column == choice.column; };
  std::erase_if(columns, same);
  columns.push_back(choice);
}

Problem set_column(TableOptions& options, std::string_view word) {
  const std::size_t at = word.rfind('=');
  if (at == word.npos || at == 0) {
    return OptionProblem{
        fmt::format("\"{}\" does not say which column means what; write it as \"Preis=price\", or "
                    "\"#3=price\" for the third column.",
                    word),
        {},
        std::string(word)};
  }
  ColumnChoice choice;
  choice.column = word.substr(0, at);
  if (auto problem = set_column_use(choice, word.substr(at + 1))) return problem;
  put_choice(options.columns, choice);
  return std::nullopt;
}

std::string delimiter_word(char sign) {
  for (const auto& [known, name] : kDelimiters) {
    if (known == sign) return std::string(name);
  }
  return std::string(1, sign);
}

std::string quote_word(char sign) {
  return sign == '"' ? "double" : sign == '\'' ? "single" : std::string(1, sign);
}

std::string column_word(const ColumnChoice& choice) {
  const std::string_view use = choice.colour_size ? kColourSize
                               : choice.field     ? to_string(*choice.field)
                                                  : kIgnore;
  return fmt::format("{}={}", choice.column, use);
}

}  // namespace

std::vector<std::string> column_uses() {
  std::vector<std::string> uses;
  for (std::size_t i = 0; i < kFieldCount; ++i) {
    uses.emplace_back(to_string(static_cast<Field>(i)));
  }
  uses.emplace_back(kColourSize);
  uses.emplace_back(kIgnore);
  return uses;
}

std::optional<OptionProblem> set_option(TableOptions& options, std::string_view name,
                                        std::string_view word) {
  if (name == "delimiter") return set_delimiter(options, word);
  if (name == "quote") return set_quote(options, word);
  if (name == "header-row") return set_header_row(options, word);
  if (name == "decimal") return set_decimal(options, word);
  if (name == "column") return set_column(options, word);
  if (name == "encoding") {
    options.encoding = word;
  } else if (name == "sheet") {
    options.sheet = word;
  } else {
    return OptionProblem{fmt::format("There is no option \"{}\".", name), {}, std::string(name)};
  }
  return std::nullopt;
}

std::vector<std::pair<std::string, std::string>> option_words(const TableOptions& options) {
  std::vector<std::pair<std::string, std::string>> words;
  const auto add = [&](std::string_view name, std::string word) {
    words.emplace_back(name, std::move(word));
  };
  if (options.delimiter) add("delimiter", delimiter_word(*options.delimiter));
  if (options.quote) add("quote", quote_word(*options.quote));
  if (options.no_quotes) add("quote", std::string(kNone));
  if (!options.encoding.empty()) add("encoding", options.encoding);
  if (options.header_row) add("header-row", fmt::format("{}", *options.header_row));
  if (options.no_header) add("header-row", std::string(kNone));
  if (options.decimal) add("decimal", *options.decimal == '.' ? "point" : "comma");
  if (!options.sheet.empty()) add("sheet", options.sheet);
  for (const auto& choice : options.columns) add("column", column_word(choice));
  return words;
}

std::string to_text(const TableOptions& options) {
  std::string text;
  for (const auto& [name, word] : option_words(options)) {
    text += fmt::format("{}={}\n", name, on_one_line(word));
  }
  return text;
}

std::optional<TableOptions> table_options_of(std::string_view text) {
  TableOptions options;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    const std::string_view line = text.substr(0, end);
    const std::size_t at = line.find('=');
    if (at == line.npos) return std::nullopt;
    if (set_option(options, line.substr(0, at), off_one_line(line.substr(at + 1))))
      return std::nullopt;
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return options;
}

TableOptions overlaid(TableOptions options, const TableOptions& more) {
  if (more.delimiter) options.delimiter = more.delimiter;
  if (more.quote || more.no_quotes) {
    options.quote = more.quote;
    options.no_quotes = more.no_quotes;
  }
  if (!more.encoding.empty()) options.encoding = more.encoding;
  if (more.header_row || more.no_header) {
    options.header_row = more.header_row;
    options.no_header = more.no_header;
  }
  if (more.decimal) options.decimal = more.decimal;
  if (!more.sheet.empty()) options.sheet = more.sheet;
  for (const auto& choice : more.columns) put_choice(options.columns, choice);
  return options;
}

}  // namespace rangebook

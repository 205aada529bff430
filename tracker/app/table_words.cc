// Every word goes through set_option(), so the command line and the book know the same ones.
#include "tracker/app/table_words.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <CLI/CLI.hpp>
#include <utility>

#include "importers/text_encoding.h"
#include "schema/nearest_word.h"
#include "tracker/app/scope_words.h"

namespace rangebook {
namespace {

/// For the nearest word; any other name ICU knows will do too.
const std::vector<std::string>& usual_encodings() {
  static const std::vector<std::string> kUsual{
      "utf-8",        "utf-16",     "windows-1252", "windows-1250", "windows-1251", "windows-1253",
      "windows-1254", "iso-8859-1", "iso-8859-2",   "iso-8859-15",  "utf-16le",     "utf-16be",
      "ibm850",       "macintosh",  "shift_jis",    "gb18030"};
  return kUsual;
}

std::string message_of(const std::string& name, const OptionProblem& problem) {
  std::string message = fmt::format("--{}: {}", name, problem.what);
  if (problem.allowed.empty()) return message;
  return message + did_you_mean(problem.word, problem.allowed) +
         fmt::format(" There are: {}.", joined(problem.allowed));
}

std::string encoding_fault(const std::string& word) {
  if (word.empty() || encoding_named(word)) return {};
  return fmt::format("--encoding: There is no encoding called \"{}\".{} Usual ones are: {}.", word,
                     did_you_mean(word, usual_encodings()), joined(usual_encodings()));
}

bool needs_quotes(std::string_view word) {
  return word.empty() || word.find_first_of(" \t\"'|;&#$<>*?()[]{}!\\`~") != word.npos;
}

}  // namespace

void add_table_words(CLI::App& command, TableWords& words) {
  const auto add = [&](const std::string& name, auto& place, const std::string& what,
                       const std::string& type) {
    command.add_option(name, place, what)->type_name(type)->group("Where a table is misread");
  };
  add("--column", words.columns,
      "What a column means: \"Preis=price\", \"#3=price\" for the third, \"Notes=ignore\"; in a "
      "feed "
      "a name or the way to it, \"variants.price=price\"; again for each",
      "COLUMN=MEANING");
  add("--delimiter", words.delimiter, "comma, semicolon, tab, bar, space, or the sign", "SIGN");
  add("--quote", words.quote, "double, single, none", "SIGN");
  add("--encoding", words.encoding, "Such as utf-8 or windows-1252", "NAME");
  add("--header-row", words.header_row, "Line of the column names, from 1, or none", "LINE");
  add("--decimal", words.decimal, "Sign of the decimals in prices: point or comma", "SIGN");
  add("--sheet", words.sheet, "Sheet of a workbook, by its name", "NAME");
}

std::variant<TableOptions, std::string> options_of(const TableWords& words) {
  TableOptions options;
  std::string message = encoding_fault(words.encoding);
  const auto take = [&](const std::string& name, const std::string& word) {
    if (word.empty() || !message.empty()) return;
    if (const auto problem = set_option(options, name, word)) message = message_of(name, *problem);
  };
  take("delimiter", words.delimiter);
  take("quote", words.quote);
  take("encoding", words.encoding);
  take("header-row", words.header_row);
  take("decimal", words.decimal);
  take("sheet", words.sheet);
  for (const auto& column : words.columns) take("column", column);
  if (!message.empty()) return message;
  return options;
}

std::string said(const TableOptions& options) {
  std::vector<std::string> parts;
  for (const auto& [name, word] : option_words(options)) {
    parts.push_back(fmt::format("--{} {}", name, needs_quotes(word) ? '"' + word + '"' : word));
  }
  return fmt::format("{}", fmt::join(parts, " "));
}

}  // namespace rangebook

// Clean tables, polluted one way at a time, as exports in the wild are: delimiters, quotes,
// escapes, line ends, titles above, notes below, several tables, missing headers, ragged rows,
// encodings. The kinds are common practice; the tables are invented. Scored out of 10 as published
// comparisons of loaders do: loaded at all, and precision, recall and F1 of header, records and
// cells.
#include <gtest/gtest.h>

#include <functional>
#include <numeric>

#include "tests/importers/loaded_table.h"
#include "tests/importers/recoded.h"

namespace rangebook {
namespace {

const Cells kShopNames{"line_code", "name",     "colour", "size",       "price",
                       "currency",  "in_stock", "url",    "description"};
const Cells kStrangeNames{"DATE", "TIME", "Qty", "REF", "Amount", "Kind", "Text", "LINK", "Remark"};

/// 84 rows, with commas, quotes and line ends in the last column.
LoadedTable shop_table(const Cells& names = kShopNames) {
  const Cells kNames{"Maya wrap dress", "Nora crêpe blouse", "Ida knit", "Lotte Mantel",
                     "Zoë trousers"};
  const Cells kColours{"navy", "ecru", "bordeaux", "rosé"};
  const Cells kTexts{"Soft, fluid cloth",  "With a \"tulip\" hem",
                     "Long; lined",        "Plain",
                     "Two lines\nof text", ""};
  LoadedTable table;
  table.header = names;
  for (int i = 0; i < 84; ++i) {
    const auto n = static_cast<std::size_t>(i);
    table.rows.push_back({"L" + std::to_string(1000 + i / 4), kNames[n / 4 % kNames.size()],
                          kColours[n / 2 % kColours.size()], std::to_string(8 + 2 * (i % 4)),
                          std::to_string(40 + i / 4) + ".90", "EUR", i % 5 == 0 ? "no" : "yes",
                          "https://harbour.example/p/" + std::to_string(1000 + i),
                          kTexts[n % kTexts.size()]});
  }
  return table;
}

LoadedTable strange_table() {
  LoadedTable table = shop_table(kStrangeNames);
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    table.rows[i][0] = "12/0" + std::to_string(1 + i % 9) + "/2025";
    table.rows[i][1] = "1" + std::to_string(i % 10) + ":30";
  }
  return table;
}

struct Style {
  std::string delimiter = ",";
  char quote = '"';
  std::string escape = "\"";  ///< stands before a quote in a quoted cell
  std::string line_end = "\n";
  bool always_quote = false;
};

std::string written(const std::string& cell, const Style& style) {
  const bool special = cell.find_first_of(style.delimiter + style.quote + "\"\n") != cell.npos;
  if (!special && !style.always_quote) return cell;
  std::string out(1, style.quote);
  for (const char sign : cell) {
    if (sign == style.quote || (style.escape == "\\" && sign == '\\')) out += style.escape;
    out += sign;
  }
  return out + style.quote;
}

std::string line_of(const Cells& cells, const Style& style) {
  std::string out;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    out += (i == 0 ? "" : style.delimiter) + written(cells[i], style);
  }
  return out + style.line_end;
}

std::string text_of(const LoadedTable& table, const Style& style = {}) {
  std::string out = table.header.empty() ? "" : line_of(table.header, style);
  for (const auto& row : table.rows) out += line_of(row, style);
  return out;
}

struct Case {
  std::string name;
  std::string text;
  LoadedTable wanted;
};

using Cases = std::vector<Case>;

void add_styles(Cases& cases, const LoadedTable& table) {
  const auto add = [&](const std::string& name, const Style& style) {
    cases.push_back({name, text_of(table, style), table});
  };
  add("clean", {});
  add("semicolon", {.delimiter = ";"});
  add("tab", {.delimiter = "\t"});
  add("bar", {.delimiter = "|"});
  add("caret", {.delimiter = "^"});
  add("space", {.delimiter = " "});
  add("comma and space", {.delimiter = ", "});
  add("all quoted", {.always_quote = true});
  add("single quotes", {.quote = '\''});
  add("single quotes, all", {.delimiter = ";", .quote = '\'', .always_quote = true});
  add("backslash", {.escape = "\\"});
  add("CR", {.line_end = "\r"});
  add("CRLF", {.line_end = "\r\n"});
}

void add_shapes(Cases& cases, const LoadedTable& table) {
  const std::string text = text_of(table);
  cases.push_back({"no line end at the end", text.substr(0, text.size() - 1), table});
  cases.push_back({"two line ends at the end", text + "\n", table});
  LoadedTable bare = table;
  bare.header.clear();
  cases.push_back({"no header", text_of(bare), bare});
  LoadedTable empty = table;
  empty.rows.clear();
  cases.push_back({"header only", text_of(empty), empty});
  LoadedTable one = table;
  one.rows.resize(1);
  cases.push_back({"one row", text_of(one), one});
  cases.push_back({"title above", "Range list\nmade on 1 May 2026 by hand\n\n" + text, table});
  cases.push_back({"padded title above", "Range list,,,,,,,,\n,,,,,,,,\n" + text, table});
  cases.push_back({"comment above", "# exported, 84 rows\n# all prices with tax\n" + text, table});
  cases.push_back({"note below", text + "\nAll prices with tax.\n", table});
  cases.push_back({"total below", text + "Total,,,,4200.00,,,,\n", table});
  cases.push_back({"empty rows", text + ",,,,,,,,\n,,,,,,,,\n", table});
}

/// Changes one line of the text, from 0.
std::string with_line(const std::string& text, std::size_t line,
                      const std::function<std::string(std::string)>& change) {
  std::size_t from = 0;
  for (std::size_t i = 0; i < line; ++i) from = text.find('\n', from) + 1;
  const std::size_t to = text.find('\n', from);
  return text.substr(0, from) + change(text.substr(from, to - from)) + text.substr(to);
}

void add_broken_rows(Cases& cases, const LoadedTable& table) {
  LoadedTable flat = table;
  for (auto& row : flat.rows) row.back() = row.back().substr(0, row.back().find('\n'));
  const std::string text = text_of(flat);
  const auto add = [&](const std::string& name, std::size_t line, auto change) {
    cases.push_back({name, with_line(text, line, change), flat});
  };
  add("extra delimiter at the end", 9, [](const auto& line) { return line + ","; });
  add("delimiters missing at the end", 12, [](auto line) {  // its last cell is empty
    line.pop_back();
    return line;
  });
  add("a row with semicolons", 4, [](auto line) {
    std::replace(line.begin(), line.end(), ',', ';');
    return line;
  });
  add("a stray quote within a quoted cell", 7,
      [](auto line) { return line.substr(0, line.size() - 1) + "\"x\""; });
  cases.back().wanted.rows[6].back() = "Soft, fluid cloth\"x";
  add("a header in the middle", 40, [&](const auto& line) {
    return line + "\n" + line_of(flat.header, {}).substr(0, line_of(flat.header, {}).size() - 1);
  });
  add("an empty line in the middle", 40, [](const auto& line) { return line + "\n"; });
  add("a comment in the middle", 40, [](const auto& line) { return line + "\n# checked"; });
}

void add_encodings(Cases& cases, const LoadedTable& table) {
  const std::string text = text_of(table);
  cases.push_back({"UTF-8 with mark", "\xEF\xBB\xBF" + text, table});
  for (const char* name : {"UTF-16LE", "UTF-16BE"}) {
    cases.push_back({name, recoded(text, name), table});
    cases.push_back({std::string(name) + " with mark", recoded("\uFEFF" + text, name), table});
  }
  for (const char* name : {"windows-1252", "ISO-8859-1", "ISO-8859-15"}) {
    cases.push_back({name, recoded(text, name), table});
  }
}

Cases all_cases() {
  Cases cases;
  for (const auto& table : {shop_table(), strange_table()}) {
    add_styles(cases, table);
    add_shapes(cases, table);
    add_broken_rows(cases, table);
    add_encodings(cases, table);
  }
  return cases;
}

TEST(PollutedCsv, LoadsWellHoweverPolluted) {
  double sum = 0;
  const Cases cases = all_cases();
  for (const auto& one : cases) {
    const LoadedTable found = load_table(one.text);
    const double score = loading_score(found, one.wanted);
    EXPECT_GE(score, 9.5) << one.name << ": " << found.told << ", " << found.rows.size()
                          << " rows, header " << ::testing::PrintToString(found.header);
    sum += score;
  }
  EXPECT_GE(sum / static_cast<double>(cases.size()), 9.95);
}

TEST(PollutedCsv, ChunksDoNotMatter) {
  for (const auto& one : all_cases()) {
    const LoadedTable whole = load_table(one.text);
    const LoadedTable pieces = load_table(one.text, {}, 61);
    EXPECT_EQ(pieces.rows, whole.rows) << one.name;
    EXPECT_EQ(pieces.told, whole.told) << one.name;
  }
}

}  // namespace
}  // namespace rangebook

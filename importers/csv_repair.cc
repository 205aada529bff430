// One pass over a single record; never used while records keep to the rules.
#include "importers/csv_repair.h"

#include <algorithm>
#include <utility>

#include "importers/byte_scan.h"
#include "importers/byte_search.h"

namespace rangebook {
namespace {

constexpr std::string_view kUsualDelimiters = ",;\t|";

bool is_blank(char sign) { return sign == ' ' || sign == '\t'; }

std::string_view without_edge_blanks(std::string_view text, char delimiter) {
  const auto blank = [&](char sign) { return is_blank(sign) && sign != delimiter; };
  while (!text.empty() && blank(text.front())) text.remove_prefix(1);
  while (!text.empty() && blank(text.back())) text.remove_suffix(1);
  return text;
}

/// Where the quoted cell that opens at the front of `text` closes; nothing if it never does.
std::optional<std::size_t> closing_quote(std::string_view text, const CsvDialect& dialect) {
  for (std::size_t at = 1; at < text.size(); ++at) {
    if (text[at] == dialect.escape) {
      ++at;
    } else if (text[at] == dialect.quote) {
      std::size_t past = at + 1;
      while (past < text.size() && is_blank(text[past]) && text[past] != dialect.delimiter) ++past;
      if (past == text.size() || text[past] == dialect.delimiter) return at;
      if (text[at + 1] == dialect.quote) ++at;
    }
  }
  return std::nullopt;
}

/// Takes the first cell off `rest`, and its delimiter; false when it was the last.
bool take_cell(std::string_view& rest, const CsvDialect& dialect, std::string& cell) {
  const std::string_view trimmed = without_edge_blanks(rest, dialect.delimiter);
  if (!trimmed.empty() && trimmed.front() == dialect.quote) {
    if (const auto close = closing_quote(trimmed, dialect)) {
      unescape_cell(trimmed.substr(1, *close - 1), dialect, cell);
      rest = trimmed.substr(*close + 1);
      const std::size_t at = rest.find(dialect.delimiter);
      rest = at == rest.npos ? std::string_view{} : rest.substr(at + 1);
      return at != std::string_view::npos;
    }
  }
  const std::size_t at = rest.find(dialect.delimiter);
  cell = rest.substr(0, at);
  rest = at == rest.npos ? std::string_view{} : rest.substr(at + 1);
  return at != std::string_view::npos;
}

}  // namespace

void unescape_cell(std::string_view cell, const CsvDialect& dialect, std::string& out) {
  out.clear();
  const auto stands_for_itself = [&](char sign) {
    return sign == dialect.quote || sign == dialect.escape || sign == dialect.delimiter;
  };
  const char quote = dialect.quote.value_or('\0');
  const char escape = dialect.escape.value_or(quote);
  const char* at = cell.data();
  const char* const end = at + cell.size();
  while (at != end) {
    const char* const stop = find_any_of(at, end, quote, escape, quote);
    out.append(at, stop);
    if (stop == end) return;
    const bool pair = stop + 1 != end;
    const bool doubled = pair && *stop == dialect.quote && stop[1] == dialect.quote;
    const bool escaped = pair && *stop == dialect.escape && stands_for_itself(stop[1]);
    at = doubled || escaped ? stop + 1 : stop;
    out.push_back(*at++);
  }
}

std::string_view without_quotes(std::string_view cell, const CsvDialect& dialect) {
  cell = without_edge_blanks(cell, dialect.delimiter);
  const bool quoted =
      cell.size() >= 2 && cell.front() == dialect.quote && cell.back() == dialect.quote;
  return quoted ? cell.substr(1, cell.size() - 2) : cell;
}

std::vector<std::string> split_leniently(std::string_view text, const CsvDialect& dialect) {
  std::vector<std::string> cells;
  while (take_cell(text, dialect, cells.emplace_back())) continue;
  return cells;
}

std::optional<std::vector<std::string>> split_otherwise(std::string_view text,
                                                        const CsvDialect& dialect,
                                                        std::size_t columns) {
  auto cells = split_leniently(text, dialect);
  if (cells.size() == columns) return cells;
  std::optional<std::vector<std::string>> found;
  for (const char delimiter : kUsualDelimiters) {
    if (delimiter == dialect.delimiter) continue;
    CsvDialect other = dialect;
    other.delimiter = delimiter;
    cells = split_leniently(text, other);
    if (cells.size() != columns) continue;
    if (found) return std::nullopt;
    found = std::move(cells);
  }
  return found;
}

}  // namespace rangebook

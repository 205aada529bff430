// Blocks of a page by their elements; paragraphs of a text by its line breaks.
#include "importers/policy_lines.h"

#include <algorithm>
#include <array>
#include <utility>

#include "importers/byte_search.h"
#include "importers/policy_tokens.h"
#include "importers/schema_org_words.h"

namespace rangebook {
namespace {

constexpr std::size_t kWrappedWidth = 55;  // a line this long may go on in the next one

constexpr auto kSilent = std::to_array<std::string_view>(
    {"head", "script", "style", "noscript", "template", "iframe", "svg", "textarea", "nav",
     "footer", "header", "select", "button", "form"});
constexpr auto kInline = std::to_array<std::string_view>(
    {"a",     "abbr", "b",    "bdi",   "bdo",  "data",   "del", "em",  "font", "i", "ins",
     "mark",  "meta", "s",    "small", "span", "strike", "sub", "sup", "time", "u", "strong",
     "label", "img",  "code", "cite",  "q",    "dfn",    "kbd", "var", "wbr"});

template <typename Names>
bool is_one_of(const Names& names, std::string_view name) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

bool is_heading(std::string_view name) {
  return name == "summary" || name == "legend" || name == "caption" || name == "dt" ||
         (name.size() == 2 && name[0] == 'h' && name[1] >= '1' && name[1] <= '6');
}

bool is_bare_number(std::string_view text) {
  return !text.empty() && std::any_of(text.begin(), text.end(), is_ascii_digit) &&
         std::none_of(text.begin(), text.end(), is_ascii_letter);
}

/// What a header says about the bare numbers below it: a sign of money or a unit of days.
std::string completed(const std::string& cell, const std::string& header) {
  if (!is_bare_number(cell)) return cell;
  std::string lower = header;
  std::transform(lower.begin(), lower.end(), lower.begin(), ascii_lower);
  for (const std::string_view sign : {"£", "€", "$", "GBP", "EUR", "CHF", "USD"}) {
    if (header.find(sign) != header.npos && cell.find(sign) == cell.npos) {
      return std::string(sign) + " " + cell;
    }
  }
  const bool days = lower.find("day") != lower.npos || lower.find("tage") != lower.npos ||
                    lower.find("jours") != lower.npos || lower.find("dagen") != lower.npos;
  return days && cell.find_first_of("£€$") == cell.npos ? cell + " " + header : cell;
}

struct TableRow {
  std::uint32_t byte = 0;
  std::vector<std::string> cells;
};

enum class CellKind : std::uint8_t { none, amount, other };

/// Amounts and "free" stand in columns, or in the rows of a table that is turned.
CellKind kind_of_cell(const std::string& cell) {
  const auto tokens = policy_tokens(cell);
  const bool dash = tokens.empty() || (tokens.size() == 1 && tokens[0].word == "-");
  if (dash) return CellKind::none;
  const auto marks = policy_marks(cell, tokens, Currency::from_code("EUR"));
  const bool amount = std::any_of(marks.begin(), marks.end(), [](const PolicyMark& one) {
    return one.role == PolicyRole::money || one.role == PolicyRole::free;
  });
  return amount && tokens.size() <= 6 ? CellKind::amount : CellKind::other;
}

/// Also "30.00 to 59.99".
bool holds_amount(const std::string& cell) {
  const auto tokens = policy_tokens(cell);
  const auto marks = policy_marks(cell, tokens, Currency::from_code("EUR"));
  const auto amounts = std::count_if(marks.begin(), marks.end(), [](const PolicyMark& one) {
    return one.role == PolicyRole::money;
  });
  return kind_of_cell(cell) == CellKind::amount || (amounts == 2 && tokens.size() <= 12);
}

/// Ways of delivery side by side, their prices in one row: each row has one kind of cells, and not
/// each column.
bool is_turned(const std::vector<TableRow>& rows) {
  const std::size_t columns = rows.empty() ? 0 : rows.front().cells.size();
  if (rows.size() < 2 || columns < 3) return false;
  const auto kind = [&](std::size_t row, std::size_t column) {
    return column < rows[row].cells.size() ? kind_of_cell(rows[row].cells[column]) : CellKind::none;
  };
  bool amounts = false;
  for (std::size_t row = 1; row < rows.size(); ++row) {
    if (kind(row, 0) == CellKind::none) return false;
    bool all = true;
    bool any = false;
    for (std::size_t column = 1; column < columns; ++column) {
      any = any || kind(row, column) == CellKind::amount;
      all = all && kind(row, column) != CellKind::other;
    }
    if (any && !all) return false;
    amounts = amounts || any;
  }
  if (!amounts) return false;
  for (std::size_t column = 1; column < columns; ++column) {
    bool any = false;
    bool all = true;
    for (std::size_t row = 1; row < rows.size(); ++row) {
      any = any || kind(row, column) == CellKind::amount;
      all = all && kind(row, column) != CellKind::other;
    }
    if (any && !all) return true;
  }
  return false;
}

std::vector<TableRow> turned(const std::vector<TableRow>& rows) {
  std::vector<TableRow> result(rows.front().cells.size());
  for (std::size_t column = 0; column < result.size(); ++column) {
    result[column].byte = rows.front().byte;
    for (const TableRow& row : rows) {
      result[column].cells.push_back(column < row.cells.size() ? row.cells[column] : std::string{});
    }
  }
  return result;
}

/// "free from", "orders over 50", "25 - 60", "up to 2 kg": what is read together with the amounts
/// below it; nothing for another header.
std::string order_values_of(const std::string& header) {
  const auto tokens = policy_tokens(header);
  const auto marks = policy_marks(header, tokens, Currency::from_code("EUR"));
  const auto count = [&](PolicyRole role) {
    return std::count_if(marks.begin(), marks.end(),
                         [&](const PolicyMark& one) { return one.role == role; });
  };
  if (count(PolicyRole::grams) > 0) return header + " ";
  const bool bound = count(PolicyRole::from) + count(PolicyRole::over) +
                         count(PolicyRole::or_more) + count(PolicyRole::under) >
                     0;
  const bool amounts = count(PolicyRole::money) > 0;
  const bool order = count(PolicyRole::order) > 0;
  const bool known = count(PolicyRole::free) > 0 || (order && amounts);
  if ((bound && known) || (order && !amounts)) return header + " ";
  const bool range = count(PolicyRole::money) == 2;
  return amounts && (bound || range) ? "order " + header + " " : std::string{};
}

class PageLines {
 public:
  explicit PageLines(const HtmlTree& tree) : tree_(tree) {}

  std::vector<PolicyLine> read() {
    for (HtmlId id = 1; id < tree_.size() && lines_.size() < kMaxPolicyLines;) {
      const HtmlNode& node = tree_[id];
      if (node.is_text) {
        add_text(id);
        ++id;
      } else if (is_one_of(kSilent, node.name) && !holds_title(id)) {
        flush();
        id = node.end;
      } else if (node.name == "table" && is_data_table(id)) {
        flush();
        read_table(id);
        id = node.end;
      } else {
        if (!is_one_of(kInline, node.name)) flush();
        ++id;
      }
    }
    flush();
    return std::move(lines_);
  }

 private:
  bool holds_title(HtmlId id) const { return tree_.is(id, "form"); }

  HtmlId block_of(HtmlId id) const {
    HtmlId up = tree_[id].parent;
    while (up != 0 && is_one_of(kInline, tree_[up].name)) up = tree_[up].parent;
    return up;
  }

  void add_text(HtmlId id) {
    const HtmlId block = block_of(id);
    if (block != block_) flush();
    block_ = block;
    if (text_.empty()) byte_ = tree_[id].byte;
    text_ += tree_[id].text;
  }

  PolicyLineKind kind_of(HtmlId block) const {
    for (int levels = 0; block != 0 && levels < 3; ++levels, block = tree_[block].parent) {
      if (is_heading(tree_[block].name)) return PolicyLineKind::heading;
      if (tree_.is(block, "li")) return PolicyLineKind::item;
    }
    return PolicyLineKind::text;
  }

  void flush() {
    std::string text = clean_text(text_);
    text_.clear();
    if (!text.empty()) lines_.push_back({std::move(text), byte_, kind_of(block_), {}});
  }

  /// Tables that only lay out a page hold blocks in their cells.
  bool is_data_table(HtmlId table) const {
    std::size_t rows = 0;
    for (HtmlId id = table + 1; id < tree_[table].end; ++id) {
      const bool heading = is_heading(tree_[id].name) && !tree_.is(id, "caption");
      if (tree_.is(id, "table") || heading) return false;
      rows += tree_.is(id, "tr") ? 1 : 0;
    }
    return rows > 1;
  }

  void read_table(HtmlId table) {
    std::vector<TableRow> rows;
    bool headed = false;
    for (HtmlId id = table + 1; id < tree_[table].end; ++id) {
      if (tree_.is(id, "caption")) {
        std::string text = clean_text(tree_.text(id));
        if (!text.empty()) {
          lines_.push_back({std::move(text), tree_[id].byte, PolicyLineKind::heading, {}});
        }
      }
      if (!tree_.is(id, "tr")) continue;
      bool heads = true;
      auto cells = cells_of(id, heads);
      if (cells.empty()) continue;
      headed = headed || (rows.empty() && heads);
      rows.push_back({tree_[id].byte, std::move(cells)});
    }
    if (is_turned(rows)) {
      rows = turned(rows);
      headed = true;
    }
    const std::vector<std::string> header =
        headed ? rows.front().cells : std::vector<std::string>{};
    for (std::size_t i = headed ? 1 : 0; i < rows.size(); ++i) add_row(rows[i], header);
  }

  std::vector<std::string> cells_of(HtmlId row, bool& heads) const {
    std::vector<std::string> cells;
    for (HtmlId id = row + 1; id < tree_[row].end; ++id) {
      const bool head = tree_.is(id, "th");
      if (!head && !tree_.is(id, "td")) continue;
      heads = heads && head;
      cells.push_back(clean_text(tree_.text(id)));
    }
    return cells;
  }

  void add_row(const TableRow& row, const std::vector<std::string>& header) {
    PolicyLine line;
    line.kind = PolicyLineKind::row;
    line.byte = row.byte;
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
      const std::string head = i < header.size() ? header[i] : std::string{};
      if (!head.empty()) line.header += (line.header.empty() ? "" : " | ") + head;
      if (kind_of_cell(row.cells[i]) == CellKind::none) continue;
      const bool amount = holds_amount(row.cells[i]);
      line.text += line.text.empty() ? "" : " | ";
      line.text += (amount ? order_values_of(head) : std::string{}) + completed(row.cells[i], head);
    }
    if (!line.text.empty()) lines_.push_back(std::move(line));
  }

  const HtmlTree& tree_;
  std::vector<PolicyLine> lines_;
  std::string text_;
  std::uint32_t byte_ = 0;
  HtmlId block_ = 0;
};

bool goes_on(std::string_view before, std::string_view next) {
  if (before.size() < kWrappedWidth || next.empty()) return false;
  const char last = before.back();
  const bool ended = last == '.' || last == ':' || last == '!' || last == '?' || last == ';';
  const char first = next.front();
  const auto byte = static_cast<unsigned char>(first);
  const bool capital =
      byte == 0xC3 && next.size() > 1 && static_cast<unsigned char>(next[1]) < 0xA0;
  // "An order of", and on the next line "CHF 110.00"
  const auto blank = before.rfind(' ');
  const std::string_view word = blank == before.npos ? before : before.substr(blank + 1);
  static constexpr std::string_view kOpen[] = {
      "of",  "the", "to",   "and",  "or",  "for", "from", "a",    "in",    "von",
      "der", "die", "das",  "dem",  "den", "des", "und",  "oder", "ab",    "bis",
      "im",  "mit", "nach", "fur",  "zum", "zur", "ein",  "eine", "einer", "bei",
      "le",  "la",  "les",  "de",   "du",  "et",  "ou",   "a",    "van",   "het",
      "een", "en",  "of",   "voor", "bij", "con", "por",  "y",    "el",    "los"};
  const bool open = std::find(std::begin(kOpen), std::end(kOpen), word) != std::end(kOpen);
  return !ended && (open || (first >= 'a' && first <= 'z') || is_ascii_digit(first) ||
                    first == '(' || (byte >= 0x80 && !capital));
}

/// Cuts the mark or the number of a list item off.
bool take_bullet(std::string_view& line) {
  const auto digits = line.find_first_not_of("0123456789");
  if (digits != line.npos && digits > 0 && digits < 3 && digits + 2 < line.size() &&
      (line[digits] == '.' || line[digits] == ')') && line[digits + 1] == ' ' &&
      !is_ascii_digit(line[digits + 2])) {
    line.remove_prefix(digits + 2);
    return true;
  }
  // "(a) by courier", "b) by post"
  const std::size_t open = line.starts_with('(') ? 1 : 0;
  if (line.size() > open + 3 && is_ascii_letter(line[open]) && line[open + 1] == ')' &&
      line[open + 2] == ' ') {
    line.remove_prefix(open + 3);
    return true;
  }
  for (const std::string_view mark :
       {"- ", "* ", "• ", "– ", "— ", "· ", "o ", "+ ", "( ) ", "[ ] ", "✔ ",
        "✓ ", "✗ ", "✘ ", "→ ", "► ", "▪ ", "■ ", "● ", "★ ",   "» ",   "› "}) {
    if (!line.starts_with(mark)) continue;
    line.remove_prefix(mark.size());
    return true;
  }
  return false;
}

}  // namespace

std::vector<PolicyLine> lines_of_text(std::string_view text) {
  std::vector<PolicyLine> lines;
  bool joined_before = false;
  for (std::size_t at = 0; at < text.size() && lines.size() < kMaxPolicyLines;) {
    const auto end = std::min(text.find('\n', at), text.size());
    std::string_view raw = text.substr(at, end - at);
    const std::size_t lead = std::min(raw.find_first_not_of(" \t\r"), raw.size());
    raw.remove_prefix(lead);
    PolicyLine line;
    line.byte = static_cast<std::uint32_t>(at + lead);
    if (take_bullet(raw)) line.kind = PolicyLineKind::item;
    line.text = clean_text(raw);
    at = end + 1;
    if (line.text.empty()) {
      joined_before = false;
      continue;
    }
    if (joined_before && line.kind == PolicyLineKind::text &&
        goes_on(lines.back().text, line.text)) {
      lines.back().text += " " + line.text;
    } else {
      lines.push_back(std::move(line));
    }
    joined_before = true;
  }
  return lines;
}

std::vector<PolicyLine> lines_of_page(const HtmlTree& tree) { return PageLines(tree).read(); }

}  // namespace rangebook

// Pairing the lines of two syntaxes, then their rows, then their cells.
#include "importers/page_merge.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <iterator>
#include <set>
#include <string>
#include <utility>

#include "importers/html_tag.h"
#include "importers/saved_page.h"

namespace rangebook {
namespace {

constexpr auto kLineFields =
    std::to_array<Field>({Field::line_code, Field::name, Field::category, Field::composition,
                          Field::description, Field::url, Field::image});
constexpr auto kVariantFields = std::to_array<Field>(
    {Field::colour, Field::size, Field::in_stock, Field::gtin, Field::variant_code});
constexpr auto kKeys =
    std::to_array<Field>({Field::line_code, Field::gtin, Field::url, Field::name});

using Rows = std::vector<ProductRow>;

bool same_cell(const ProductRow& a, const ProductRow& b, Field field) {
  return !a[field].empty() && equals_ignoring_case(a[field], b[field]);
}

bool differ(const ProductRow& a, const ProductRow& b, Field field) {
  return !a[field].empty() && !b[field].empty() && !equals_ignoring_case(a[field], b[field]);
}

// The lines of a list of rows: those that share a code or, without one, a name.
std::string line_key(const ProductRow& row) {
  return row[Field::line_code].empty() ? "n" + row[Field::name] : "c" + row[Field::line_code];
}

std::size_t count_lines_of(const Rows& rows) {
  std::set<std::string> lines;
  for (const auto& row : rows) lines.insert(line_key(row));
  return lines.size();
}

bool same_line(const ProductRow& a, const ProductRow& b) {
  return std::any_of(kKeys.begin(), kKeys.end(),
                     [&](Field field) { return same_cell(a, b, field); });
}

bool same_variant(const ProductRow& a, const ProductRow& b) {
  if (same_cell(a, b, Field::gtin) || same_cell(a, b, Field::variant_code)) return true;
  if (differ(a, b, Field::colour) || differ(a, b, Field::size)) return false;
  return same_cell(a, b, Field::size) || same_cell(a, b, Field::colour);
}

void fill(ProductRow& row, const ProductRow& other, Field field) {
  // The name of a saved picture gives way to its address.
  const bool better =
      field == Field::image && is_web_address(other[field]) && !is_web_address(row[field]);
  if (row[field].empty() || better) row[field] = other[field];
}

// A price and its currency belong together, so they come from one place or both are doubted.
void fill_price(ProductRow& row, const ProductRow& other) {
  if (row[Field::price].empty() && !row.doubt) {
    row[Field::price] = other[Field::price];
    fill(row, other, Field::full_price);
  }
  const bool same = comparable_amount(row[Field::price]) == comparable_amount(other[Field::price]);
  if (same) {
    fill(row, other, Field::currency);
    fill(row, other, Field::full_price);
  }
}

bool is_sold_out(std::string_view stock) {
  return stock == "OutOfStock" || stock == "SoldOut" || stock == "Discontinued";
}

bool stock_conflicts(const std::string& a, const std::string& b) {
  const bool known = (is_sold_out(a) || a == "InStock") && (is_sold_out(b) || b == "InStock");
  return known && is_sold_out(a) != is_sold_out(b);
}

bool amount_conflicts(const std::string& a, const std::string& b) {
  const auto left = comparable_amount(a);
  const auto right = comparable_amount(b);
  return left && right && *left != *right;
}

void note_conflict(ProductRow& row, Field field, const std::string& other, PageSyntax kept,
                   PageSyntax against) {
  const std::string own = row[field];
  row.notes.push_back(
      {.field = field,
       .what = fmt::format("The page's {} says \"{}\" for {}, its {} says \"{}\"; "
                           "the first was taken.",
                           to_string(kept), own, to_string(field), to_string(against), other),
       .how_to_fix = "Look at the page; if the other is right, type the line into "
                     "a CSV.",
       .excerpt = own + " | " + other,
       .conflict = SyntaxConflict{.line = row[Field::name],
                                  .field = field,
                                  .taken_from = std::string(to_string(kept)),
                                  .taken = own,
                                  .other_from = std::string(to_string(against)),
                                  .other = other}});
}

void compare(ProductRow& row, const ProductRow& other, PageSyntax kept, PageSyntax against) {
  if (amount_conflicts(row[Field::price], other[Field::price])) {
    note_conflict(row, Field::price, other[Field::price], kept, against);
  }
  if (differ(row, other, Field::currency)) {
    note_conflict(row, Field::currency, other[Field::currency], kept, against);
  }
  if (stock_conflicts(row[Field::in_stock], other[Field::in_stock])) {
    note_conflict(row, Field::in_stock, other[Field::in_stock], kept, against);
  }
}

void take_notes(ProductRow& row, const ProductRow& other) {
  row.notes.insert(row.notes.end(), other.notes.begin(), other.notes.end());
  const bool answered = !row[Field::price].empty();
  if (!row.doubt && !answered) row.doubt = other.doubt;
}

/// Merges the rows of one line into those of the same line in an earlier syntax.
class LineMerge {
 public:
  LineMerge(Rows own, const Rows& other, PageSyntax kept, PageSyntax against)
      : own_(std::move(own)), other_(other), kept_(kept), against_(against) {}

  Rows run() {
    for (auto& row : own_) {
      for (const Field field : kLineFields) fill(row, other_.front(), field);
    }
    if (own_.size() == 1 && other_.size() == 1) {
      one_to_one(own_.front(), other_.front());
    } else if (own_.size() == 1 && own_.front()[Field::size].empty()) {
      spread();
    } else if (other_.size() == 1) {
      from_whole_line();
    } else {
      pair_variants();
    }
    return std::move(own_);
  }

 private:
  void one_to_one(ProductRow& row, const ProductRow& other) {
    compare(row, other, kept_, against_);
    for (const Field field : kVariantFields) fill(row, other, field);
    fill_price(row, other);
    take_notes(row, other);
  }

  // The sizes of the later syntax, each with what the earlier one says of the whole line.
  void spread() {
    Rows rows;
    for (const auto& other : other_) {
      ProductRow row = own_.front();
      if (!rows.empty()) row.doubt.reset(), row.notes.clear();
      if (amount_conflicts(row[Field::price], other[Field::price])) {
        note_conflict(row, Field::price, other[Field::price], kept_, against_);
      }
      const bool sold_out = is_sold_out(row[Field::in_stock]);
      if (!sold_out && !other[Field::in_stock].empty()) row[Field::in_stock].clear();
      for (const Field field : kVariantFields) fill(row, other, field);
      fill_price(row, other);
      take_notes(row, other);
      rows.push_back(std::move(row));
    }
    own_ = std::move(rows);
  }

  void from_whole_line() {
    const ProductRow& other = other_.front();
    const auto has_price = [](const ProductRow& row) {
      return !row[Field::price].empty() || row.doubt;
    };
    const bool priced = std::any_of(own_.begin(), own_.end(), has_price);
    const bool known = std::any_of(own_.begin(), own_.end(), [&](const ProductRow& row) {
      return !amount_conflicts(row[Field::price], other[Field::price]);
    });
    if (!known) note_conflict(own_.front(), Field::price, other[Field::price], kept_, against_);
    for (auto& row : own_) {
      if (!priced) fill_price(row, other);
      if (row[Field::colour].empty()) row[Field::colour] = other[Field::colour];
    }
    take_notes(own_.front(), other);
  }

  void pair_variants() {
    for (auto& row : own_) {
      const auto found = std::find_if(other_.begin(), other_.end(), [&](const ProductRow& other) {
        return same_variant(row, other);
      });
      if (found != other_.end()) one_to_one(row, *found);
    }
  }

  Rows own_;
  const Rows& other_;
  PageSyntax kept_;
  PageSyntax against_;
};

// Takes the rows of the line that `row` belongs to out of `rows`.
Rows take_line(Rows& rows, const ProductRow& like, bool one_line) {
  Rows taken;
  const auto belongs = [&](const ProductRow& row) { return one_line || same_line(row, like); };
  std::copy_if(rows.begin(), rows.end(), std::back_inserter(taken), belongs);
  if (!taken.empty() && !one_line) {
    const std::string key = line_key(taken.front());
    std::erase_if(taken, [&](const ProductRow& row) { return line_key(row) != key; });
    std::erase_if(rows, [&](const ProductRow& row) { return line_key(row) == key; });
  } else if (one_line) {
    rows.clear();
  }
  return taken;
}

/// Beyond so many rows on both sides nothing is compared: the work grows with their product.
constexpr std::size_t kMaxCompared = 2000;

// What was read from visible text, or from data that is meant for the page's scripts, may be wrong,
// so each line says which of its cells are from there.
bool is_less_certain(PageSyntax syntax) {
  return syntax == PageSyntax::visible_text || syntax == PageSyntax::script_data;
}

void note_less_certain(Rows& rows, const ProductRow& before, PageSyntax syntax) {
  std::string fields;
  for (std::size_t i = 0; i < kFieldCount; ++i) {
    if (rows.front().cells[i].empty() || !before.cells[i].empty()) continue;
    fields += (fields.empty() ? "" : ", ") + std::string(to_string(static_cast<Field>(i)));
  }
  if (fields.empty()) return;
  const std::size_t lines = count_lines_of(rows);
  RowNote note{.kind = RejectionKind::bad_markup, .field = Field::name};
  note.what = fmt::format("The page does not mark up {}; read from its {}, with less confidence.",
                          fields, to_string(syntax));
  if (lines > 1) {
    note.what = fmt::format(
        "The page lists {} products without marking up {}; read from its "
        "visible text, with less detail and confidence than a product page.",
        lines, fields);
  }
  note.how_to_fix = "Compare the line with the page; if it is wrong, type it into a CSV.";
  note.excerpt = rows.front()[Field::price];
  rows.front().notes.push_back(std::move(note));
}

SyntaxRows alone(SyntaxRows other) {
  if (is_less_certain(other.syntax) && !other.rows.empty()) {
    note_less_certain(other.rows, ProductRow{}, other.syntax);
  }
  return other;
}

bool says_a_price(const Rows& rows) {
  return std::any_of(rows.begin(), rows.end(),
                     [](const ProductRow& row) { return !row[Field::price].empty() || row.doubt; });
}

SyntaxRows merge_two(SyntaxRows own, SyntaxRows other) {
  if (own.rows.empty()) return alone(std::move(other));
  if (other.rows.empty() || own.rows.size() > kMaxCompared || other.rows.size() > kMaxCompared) {
    return own;
  }
  if (other.syntax == PageSyntax::script_data && says_a_price(own.rows)) return own;
  const std::size_t own_lines = count_lines_of(own.rows);
  const bool one_line = own_lines == 1 && count_lines_of(other.rows) == 1;
  SyntaxRows merged{.syntax = own.syntax, .rows = {}};
  while (!own.rows.empty()) {
    const std::string key = line_key(own.rows.front());
    Rows line;
    for (const auto& row : own.rows) {
      if (line_key(row) == key) line.push_back(row);
    }
    std::erase_if(own.rows, [&](const ProductRow& row) { return line_key(row) == key; });
    const Rows same = take_line(other.rows, line.front(), one_line);
    if (!same.empty()) {
      const ProductRow before = line.front();
      line = LineMerge(std::move(line), same, own.syntax, other.syntax).run();
      if (is_less_certain(other.syntax)) note_less_certain(line, before, other.syntax);
    }
    merged.rows.insert(merged.rows.end(), line.begin(), line.end());
  }
  if (own_lines > 1 && other.syntax < PageSyntax::open_graph) {
    merged.rows.insert(merged.rows.end(), other.rows.begin(), other.rows.end());
  }
  return merged;
}

}  // namespace

std::string_view to_string(PageSyntax syntax) {
  switch (syntax) {
    case PageSyntax::json_ld:
      return "JSON-LD";
    case PageSyntax::microdata:
      return "microdata";
    case PageSyntax::rdfa:
      return "RDFa";
    case PageSyntax::open_graph:
      return "Open Graph";
    case PageSyntax::loose_properties:
      return "loose microdata";
    case PageSyntax::visible_text:
      return "visible text";
    case PageSyntax::script_data:
      return "data of a script";
  }
  return "";
}

std::vector<ProductRow> merge_page(std::vector<SyntaxRows> all) {
  std::sort(all.begin(), all.end(),
            [](const SyntaxRows& a, const SyntaxRows& b) { return a.syntax < b.syntax; });
  SyntaxRows merged;
  for (auto& rows : all) merged = merge_two(std::move(merged), std::move(rows));
  return std::move(merged.rows);
}

void fill_category(std::vector<ProductRow>& rows, std::string path) {
  if (rows.empty() || path.empty() || count_lines_of(rows) != 1) return;
  constexpr std::string_view kJoint = " > ";
  const auto joint = path.rfind(kJoint);
  const std::size_t last = joint == path.npos ? 0 : joint + kJoint.size();
  const bool itself =
      equals_ignoring_case(std::string_view(path).substr(last), rows.front()[Field::name]);
  if (itself) path.resize(joint == path.npos ? 0 : joint);
  for (auto& row : rows) {
    if (row[Field::category].empty()) row[Field::category] = path;
  }
}

std::optional<std::int64_t> comparable_amount(std::string_view price) {
  std::string digits;
  std::optional<std::size_t> after_sign;  // digits behind the last separator
  for (const char c : price) {
    if (is_ascii_digit(c)) {
      digits += c;
      if (after_sign) ++*after_sign;
      continue;
    }
    // "69\u20ac99" too; but digits behind a no-break space come in threes.
    const bool splits =
        c == '.' || c == ',' || (!after_sign && static_cast<unsigned char>(c) >= 0x80);
    if (splits && !digits.empty()) after_sign = 0;
  }
  constexpr std::size_t kMostDigits = 14;
  if (digits.empty() || digits.size() > kMostDigits) return std::nullopt;
  std::size_t decimals = after_sign.value_or(0);
  if (decimals == 3 || decimals > 4) decimals = decimals > 4 ? 4 : 0;
  std::int64_t amount = 0;
  for (const char c : digits) amount = amount * 10 + (c - '0');
  for (std::size_t i = decimals; i < 4; ++i) amount *= 10;
  return amount;
}

}  // namespace rangebook

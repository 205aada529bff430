// Each column is counted by what its cells look like; then the fields take their columns, surest
// first.
#include "importers/column_guess.h"

#include <algorithm>
#include <array>
#include <functional>
#include <set>
#include <string>
#include <unordered_set>
#include <vector>

#include "importers/byte_search.h"
#include "importers/header_words.h"
#include "schema/embedded.h"
#include "schema/gtin.h"
#include "schema/money.h"

namespace rangebook {
namespace {

/// So many of a hundred filled cells have to look alike.
constexpr std::size_t kShare = 90;
constexpr std::size_t kLongestCode = 24;
constexpr std::size_t kLongestName = 90;

std::string lower(std::string_view text) {
  std::string out(text);
  std::transform(out.begin(), out.end(), out.begin(), ascii_lower);
  return out;
}

std::unordered_set<std::string> words_of(std::string_view table, std::size_t column) {
  std::unordered_set<std::string> words;
  for (const auto& row : table_rows(table)) words.emplace(row.at(column));
  return words;
}

bool has_letter(std::string_view text) {
  return std::any_of(text.begin(), text.end(), [](char sign) {
    return is_ascii_letter(sign) || static_cast<unsigned char>(sign) >= 0x80;
  });
}

bool has_digit(std::string_view text) {
  return std::any_of(text.begin(), text.end(), is_ascii_digit);
}

bool is_address(std::string_view text) {
  return text.starts_with("https://") || text.starts_with("http://") || text.starts_with("www.");
}

bool is_picture(std::string_view text) {
  const std::string path = lower(text.substr(0, text.find_first_of("?#")));
  constexpr std::array<std::string_view, 6> kEndings{".jpg",  ".jpeg", ".png",
                                                     ".webp", ".gif",  ".avif"};
  return std::any_of(kEndings.begin(), kEndings.end(),
                     [&](auto ending) { return path.ends_with(ending); });
}

bool is_page_address(std::string_view text) { return is_address(text) && !is_picture(text); }

bool is_gtin(std::string_view text) { return text.size() >= 8 && Gtin::parse(text).has_value(); }

bool is_currency(std::string_view text) {
  return text.size() == 3 && Currency::from_code(text).has_value();
}

/// An amount with two decimals, perhaps with a currency beside it.
bool is_price(std::string_view text) {
  while (!text.empty() && !is_ascii_digit(text.front())) text.remove_prefix(1);
  while (!text.empty() && !is_ascii_digit(text.back())) text.remove_suffix(1);
  if (text.size() < 4 || text.size() > 12) return false;
  const char sign = text[text.size() - 3];
  return (sign == '.' || sign == ',') && text.find_first_not_of("0123456789.,' ") == text.npos;
}

bool is_composition(std::string_view text) {
  return text.find('%') != text.npos && has_letter(text) && has_digit(text);
}

bool is_stock_word(std::string_view text) {
  static const auto kWords = words_of("tables/stock_words.tsv", 1);
  std::string word;
  for (const char sign : lower(text)) {
    if (sign != ' ' && sign != '-' && sign != '_') word.push_back(sign);
  }
  return kWords.contains(word);
}

bool is_colour(std::string_view text) {
  static const auto kWords = words_of("tables/colours.tsv", 0);
  return kWords.contains(lower(text));
}

/// `8`, `XL`, `8-20`, `W30`: no more than a few signs around a number or letters of a size.
bool is_size(std::string_view text) {
  constexpr std::string_view kLetters = "xsml";
  if (text.size() > 7) return false;
  const std::string small = lower(text);
  if (small.find_first_not_of(kLetters) == small.npos) return true;
  return is_ascii_digit(small.back()) && small.find_first_not_of("0123456789-/wlx") == small.npos &&
         (small.size() <= 2 || small.find_first_of("-/wlx") != small.npos);
}

bool is_code(std::string_view text) {
  return text.size() >= 2 && text.size() <= kLongestCode && has_digit(text) &&
         text.find(' ') == text.npos && !is_price(text);
}

bool is_name(std::string_view text) {
  return has_letter(text) && text.size() >= 3 && text.size() <= kLongestName && !is_address(text);
}

bool is_long_text(std::string_view text) {
  return text.size() > kLongestName / 2 && has_letter(text);
}

/// The filled cells of one column.
struct Column {
  std::vector<std::string_view> cells;
  std::set<std::string_view> different;
  bool taken = false;

  bool looks_like(const std::function<bool(std::string_view)>& form) const {
    const auto count = static_cast<std::size_t>(std::count_if(cells.begin(), cells.end(), form));
    return !cells.empty() && count * 100 >= cells.size() * kShare;
  }
};

/// Whether the prices of one column are never lower than those of the other, row by row.
bool never_lower(const std::vector<std::string>& high, const std::vector<std::string>& low) {
  const auto minor = [](const std::string& text) {
    std::string digits;
    for (const char sign : text) {
      if (is_ascii_digit(sign)) digits.push_back(sign);
    }
    digits.erase(0, std::min(digits.find_first_not_of('0'), digits.size()));
    return digits;
  };
  for (std::size_t i = 0; i < high.size(); ++i) {
    const std::string a = minor(high[i]);
    const std::string b = minor(low[i]);
    if (a.empty() || b.empty()) continue;
    if (a.size() < b.size() || (a.size() == b.size() && a < b)) return false;
  }
  return true;
}

class Guesser {
 public:
  Guesser(std::span<const KeptRecord> records, std::size_t columns, const FieldMap& chosen)
      : records_(records), columns_(columns), map_(chosen) {
    for (const std::size_t column : chosen.chosen) columns_[column].taken = true;
    for (const auto& record : records) {
      for (std::size_t i = 0; i < std::min(columns, record.cells.size()); ++i) {
        const std::string_view cell = without_blanks(record.cells[i]);
        if (cell.empty()) continue;
        columns_[i].cells.push_back(cell);
        columns_[i].different.insert(cell);
      }
    }
  }

  FieldMap guess() {
    take_first(Field::image, is_picture);
    take_first(Field::url, is_page_address);
    take_first(Field::gtin, is_gtin);
    take_first(Field::currency, is_currency);
    take_first(Field::composition, is_composition);
    take_prices();
    take_first(Field::in_stock, is_stock_word);
    take_first(Field::size, is_size);
    take_first(Field::colour, is_colour);
    take_first(Field::line_code, is_code);
    take_most_different(Field::name, is_name);
    take_first(Field::description, is_long_text);
    if (!map_.has(Field::name)) return {};
    map_.columns = columns_.size();
    map_.guessed = true;
    return map_;
  }

 private:
  void take(Field field, std::size_t column) {
    map_.column[static_cast<std::size_t>(field)] = column;
    columns_[column].taken = true;
  }

  void take_first(Field field, const std::function<bool(std::string_view)>& form) {
    if (map_.has(field)) return;
    for (std::size_t i = 0; i < columns_.size(); ++i) {
      if (!columns_[i].taken && columns_[i].looks_like(form)) return take(field, i);
    }
  }

  void take_most_different(Field field, const std::function<bool(std::string_view)>& form) {
    if (map_.has(field)) return;
    std::optional<std::size_t> best;
    for (std::size_t i = 0; i < columns_.size(); ++i) {
      if (columns_[i].taken || !columns_[i].looks_like(form)) continue;
      if (!best || columns_[i].different.size() > columns_[*best].different.size()) best = i;
    }
    if (best) take(field, *best);
  }

  std::vector<std::string> cells_of(std::size_t column) const {
    std::vector<std::string> cells;
    for (const auto& record : records_) {
      cells.push_back(column < record.cells.size() ? record.cells[column] : std::string{});
    }
    return cells;
  }

  void take_prices() {
    if (map_.has(Field::full_price)) return take_first(Field::price, is_price);
    if (map_.has(Field::price)) return;
    std::vector<std::size_t> prices;
    for (std::size_t i = 0; i < columns_.size(); ++i) {
      if (!columns_[i].taken && columns_[i].looks_like(is_price)) prices.push_back(i);
    }
    if (prices.size() == 1) take(Field::price, prices[0]);
    if (prices.size() != 2) return;
    const auto first = cells_of(prices[0]);
    const auto second = cells_of(prices[1]);
    const bool first_high = never_lower(first, second);
    const bool second_high = never_lower(second, first);
    if (first_high == second_high) return;
    take(Field::full_price, prices[first_high ? 0 : 1]);
    take(Field::price, prices[first_high ? 1 : 0]);
  }

  std::span<const KeptRecord> records_;
  std::vector<Column> columns_;
  FieldMap map_;
};

}  // namespace

FieldMap guess_columns(std::span<const KeptRecord> records, std::size_t columns,
                       const FieldMap& chosen) {
  if (records.size() < kMinGuessRows) return {};
  return Guesser(records, columns, chosen).guess();
}

}  // namespace rangebook

// Splitting by separators and words; what does not fit stays whole.
#include "importers/cell_split.h"

#include <algorithm>
#include <array>
#include <string>
#include <unordered_map>

#include "importers/byte_search.h"
#include "importers/header_words.h"
#include "schema/embedded.h"

namespace rangebook {
namespace {

constexpr std::size_t kShortestTwoPrices = 9;
constexpr std::size_t kLongestPriceCell = 120;

bool is_size_word(std::string_view text) {
  constexpr std::array<std::string_view, 12> kWords{
      "xs", "s", "m", "l", "xl", "xxs", "xxl", "xxxl", "os", "one size", "onesize", "tu"};
  std::string folded(text);
  std::transform(folded.begin(), folded.end(), folded.begin(), ascii_lower);
  return std::find(kWords.begin(), kWords.end(), folded) != kWords.end();
}

bool looks_like_size(std::string_view text) {
  return is_size_word(text) || std::any_of(text.begin(), text.end(), is_ascii_digit);
}

bool is_word_byte(char sign) {
  return is_ascii_letter(sign) || static_cast<unsigned char>(sign) >= 0x80;
}

enum class PriceWord : std::uint8_t { none, now, was };

PriceWord price_word(std::string_view word) {
  static const auto kWords = [] {
    std::unordered_map<std::string, PriceWord> words;
    for (const auto& row : table_rows("tables/price_words.tsv")) {
      const std::string_view role = row.at(1);
      if (role == "was") words.emplace(row.at(0), PriceWord::was);
      if (role == "now") words.emplace(row.at(0), PriceWord::now);
    }
    return words;
  }();
  std::string folded(word);
  std::transform(folded.begin(), folded.end(), folded.begin(), ascii_lower);
  const auto found = kWords.find(folded);
  return found == kWords.end() ? PriceWord::none : found->second;
}

bool has_digit(std::string_view text) {
  return std::any_of(text.begin(), text.end(), is_ascii_digit);
}

/// Without brackets, separators and blanks at both ends.
std::string_view bare_amount(std::string_view text) {
  constexpr std::string_view kEdges = " \t()[]:;,|/-";
  while (!text.empty() && kEdges.find(text.front()) != text.npos) text.remove_prefix(1);
  while (!text.empty() && kEdges.find(text.back()) != text.npos) text.remove_suffix(1);
  return text;
}

/// Gives a stretch of text to the price its word announces; false when that one has its amount.
bool give(std::string_view stretch, PriceWord word, PriceParts& parts) {
  if (!has_digit(stretch)) return true;
  auto& part = word == PriceWord::was ? parts.was : parts.now;
  if (!part.empty()) return false;
  part = bare_amount(stretch);
  return true;
}

}  // namespace

ColourSize split_colour_size(std::string_view cell) {
  cell = without_blanks(cell);
  for (const std::string_view separator : {" / ", " | ", " - ", "/", "|", ", ", ",", ";"}) {
    const std::size_t at = cell.rfind(separator);
    if (at == cell.npos) continue;
    const std::string_view head = without_blanks(cell.substr(0, at));
    const std::string_view tail = without_blanks(cell.substr(at + separator.size()));
    if (looks_like_size(tail)) {
      // `8/10` alone is one size.
      if (looks_like_size(head) && separator.size() == 1) return {{}, cell};
      return {head, tail};
    }
    if (looks_like_size(head)) return {tail, head};
  }
  return looks_like_size(cell) ? ColourSize{{}, cell} : ColourSize{cell, {}};
}

std::string_view without_label(std::string_view cell, Field field) {
  return LabelMemo().without_label(cell, field);
}

std::string_view LabelMemo::without_label(std::string_view cell, Field field) {
  const std::size_t colon = cell.find(':');
  if (colon == cell.npos || colon == 0) return cell;
  const std::string_view label = cell.substr(0, colon);
  Last& last = last_[static_cast<std::size_t>(field)];
  if (last.label != label) {
    const auto meaning = column_meaning(label);
    last.label = label;
    last.same_field = meaning && meaning->role == ColumnRole::field && meaning->field == field;
  }
  return last.same_field ? without_blanks(cell.substr(colon + 1)) : cell;
}

bool may_hold_two_prices(std::string_view cell) {
  if (cell.size() < kShortestTwoPrices || cell.size() > kLongestPriceCell) return false;
  return std::any_of(cell.begin(), cell.end(), is_ascii_letter);
}

std::optional<PriceParts> split_price(std::string_view cell) {
  PriceParts parts;
  PriceWord word = PriceWord::now;
  std::size_t from = 0;
  bool was = false;
  for (std::size_t at = 0; at < cell.size();) {
    std::size_t end = at;
    while (end < cell.size() && is_word_byte(cell[end])) ++end;
    const PriceWord here = end > at ? price_word(cell.substr(at, end - at)) : PriceWord::none;
    if (here != PriceWord::none) {
      if (!give(cell.substr(from, at - from), word, parts)) return std::nullopt;
      word = here;
      from = end;
      was = was || here == PriceWord::was;
    }
    at = std::max(end, at + 1);
  }
  if (!give(cell.substr(from), word, parts)) return std::nullopt;
  if (!was || parts.now.empty() || parts.was.empty()) return std::nullopt;
  return parts;
}

}  // namespace rangebook

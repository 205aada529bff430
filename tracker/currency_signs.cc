// Matching of currency signs: an index by first character, longest sign first.
#include "tracker/currency_signs.h"

#include <algorithm>
#include <array>
#include <string>
#include <unordered_map>
#include <vector>

#include "schema/embedded.h"
#include "schema/error.h"
#include "schema/names.h"
#include "tracker/price_text.h"

namespace rangebook {
namespace {

constexpr NameTable<SignUse, 5> kUses{{{SignUse::own, "own"},
                                       {SignUse::usual, "usual"},
                                       {SignUse::shared, "shared"},
                                       {SignUse::word, "word"},
                                       {SignUse::past, "past"}}};
constexpr std::size_t kCodeLength = 3;

struct SignRow {
  std::u32string text;  // case folded
  SignUse use = SignUse::past;
  bool capitals_only = false;
  std::vector<Currency> currencies;
};

std::vector<Currency> read_codes(std::string_view cell) {
  std::vector<Currency> currencies;
  for (std::size_t at = 0; at + kCodeLength <= cell.size(); at += kCodeLength + 1) {
    const auto currency = Currency::from_code(cell.substr(at, kCodeLength));
    if (!currency) throw Error("the table of currency signs names an unknown currency");
    currencies.push_back(*currency);
  }
  return currencies;
}

bool is_capital_code(std::string_view sign) {
  return sign.size() == kCodeLength &&
         std::ranges::all_of(sign, [](char letter) { return letter >= 'A' && letter <= 'Z'; });
}

SignRow read_sign(const std::vector<std::string_view>& cells) {
  const auto use = cells.size() < 2 ? std::nullopt : value_of(kUses, cells[1]);
  if (!use) throw Error("the table of currency signs is damaged");
  SignRow row;
  row.text = fold_case(fold_price_text(cells[0]));
  row.use = *use;
  row.capitals_only = is_capital_code(cells[0]);
  if (cells.size() > 2) row.currencies = read_codes(cells[2]);
  return row;
}

/// The rows that begin with one character, longest first.
using SignRows = std::vector<SignRow>;

class SignIndex {
 public:
  SignIndex() {
    for (const auto& cells : table_rows("tables/currency_signs.tsv")) add(read_sign(cells));
    for (auto& rows : ascii_) sort(rows);
    for (auto& [first, rows] : others_) sort(rows);
  }

  const SignRows* starting_with(char32_t first) const {
    if (first < ascii_.size()) return &ascii_[first];
    const auto found = others_.find(first);
    return found == others_.end() ? nullptr : &found->second;
  }

 private:
  void add(SignRow row) {
    const char32_t first = row.text.front();
    (first < ascii_.size() ? ascii_[first] : others_[first]).push_back(std::move(row));
  }
  static void sort(SignRows& rows) {
    std::ranges::stable_sort(
        rows, [](const auto& a, const auto& b) { return a.text.size() > b.text.size(); });
  }

  std::array<SignRows, 128> ascii_;
  std::unordered_map<char32_t, SignRows> others_;
};

const SignIndex& sign_index() {
  static const SignIndex index;
  return index;
}

/// A sign that begins (ends) with a letter may not continue a word.
bool stands_alone(std::u32string_view chars, std::size_t at, std::size_t end) {
  const bool cut_before = at > 0 && is_word_char(chars[at]) && is_word_char(chars[at - 1]);
  const bool cut_after =
      end < chars.size() && is_word_char(chars[end - 1]) && is_word_char(chars[end]);
  return !cut_before && !cut_after;
}

/// One character of text against one of a sign, which is case folded.
bool fits(char32_t written, char32_t folded, bool capitals_only) {
  if (capitals_only) return written + 32 == folded;
  return folded == U' ' ? is_space(written) : fold_case(written) == folded;
}

bool spells(std::u32string_view chars, const SignRow& row) {
  const auto piece = chars.substr(0, row.text.size());
  return std::ranges::equal(piece, row.text, [&](char32_t written, char32_t folded) {
    return fits(written, folded, row.capitals_only);
  });
}

/// The length with the full stop that closes an abbreviation ("руб.", "Rs.500").
std::size_t with_full_stop(std::u32string_view chars, std::size_t at, std::size_t length) {
  const std::size_t end = at + length;
  const bool stopped = end < chars.size() && chars[end] == U'.' && is_word_char(chars[end - 1]);
  return length + (stopped ? 1 : 0);
}

std::optional<SignMatch> match_row(std::u32string_view chars, std::size_t at) {
  const SignRows* rows = sign_index().starting_with(fold_case(chars[at]));
  if (rows == nullptr) return std::nullopt;
  for (const SignRow& row : *rows) {
    if (!spells(chars.substr(at), row) || !stands_alone(chars, at, at + row.text.size())) continue;
    const std::size_t length =
        row.capitals_only ? row.text.size() : with_full_stop(chars, at, row.text.size());
    return SignMatch{length, row.use, std::nullopt, row.currencies};
  }
  return std::nullopt;
}

/// An ISO code that has no row of its own, in any case.
std::optional<SignMatch> match_code(std::u32string_view chars, std::size_t at) {
  if (at + kCodeLength > chars.size()) return std::nullopt;
  std::array<char, kCodeLength> letters{};
  for (std::size_t i = 0; i < kCodeLength; ++i) {
    if (chars[at + i] >= 0x80) return std::nullopt;
    letters[i] = static_cast<char>(chars[at + i]);
  }
  const auto currency = Currency::from_code({letters.data(), letters.size()});
  if (!currency || !stands_alone(chars, at, at + kCodeLength)) return std::nullopt;
  return SignMatch{kCodeLength, SignUse::own, currency, {}};
}

/// A code that is also a word counts in capitals only, so its row decides, not the list of codes.
bool is_word_code(Currency currency) {
  const auto* rows = sign_index().starting_with(static_cast<char32_t>(currency.code()[0] | 0x20));
  return rows != nullptr && std::ranges::any_of(*rows, [&](const SignRow& row) {
           return row.use == SignUse::word && row.currencies.front() == currency;
         });
}

}  // namespace

bool SignMatch::admits(Currency currency) const {
  return code == currency || std::ranges::find(currencies, currency) != currencies.end();
}

std::optional<Currency> SignMatch::resolve(std::optional<Currency> hint) const {
  if (code) return code;
  if (hint && admits(*hint)) return hint;
  switch (use) {
    case SignUse::own:
    case SignUse::usual:
      return currencies.front();
    case SignUse::shared:
    case SignUse::word:
    case SignUse::past:
      return std::nullopt;
  }
  return std::nullopt;
}

int SignMatch::widest_exponent() const {
  if (code) return code->exponent();
  if (currencies.empty()) return 2;
  return std::ranges::max(currencies, {}, &Currency::exponent).exponent();
}

std::optional<SignMatch> match_sign(std::u32string_view chars, std::size_t at) {
  auto row = match_row(chars, at);
  auto code = match_code(chars, at);
  if (code && is_word_code(*code->code)) code.reset();
  if (!row || (code && code->length > row->length)) return code;
  return row;
}

}  // namespace rangebook

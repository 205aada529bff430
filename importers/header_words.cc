// Headers are compared folded: without case, accents, and signs between words.
#include "importers/header_words.h"

#include <unicode/uchar.h>
#include <unicode/unorm2.h>
#include <unicode/ustring.h>

#include <algorithm>
#include <unordered_map>
#include <vector>

#include "importers/byte_search.h"
#include "importers/utf8.h"
#include "schema/embedded.h"
#include "schema/money.h"

namespace rangebook {
namespace {

/// Longer headers are sentences; they mean no field.
constexpr std::size_t kLongestHeader = 80;

bool is_word_sign(char sign) {
  return is_ascii_letter(sign) || is_ascii_digit(sign) || static_cast<unsigned char>(sign) >= 0x80;
}

/// Decomposed, without marks, case folded (ß becomes ss). Text that is not UTF-8 stays as it is.
std::string without_accents(std::string_view text) {
  UErrorCode error = U_ZERO_ERROR;
  std::u16string wide(text.size() + 1, u'\0');
  std::int32_t size = 0;
  u_strFromUTF8(wide.data(), static_cast<std::int32_t>(wide.size()), &size, text.data(),
                static_cast<std::int32_t>(text.size()), &error);
  std::u16string apart(text.size() * 4 + 8, u'\0');
  size = unorm2_normalize(unorm2_getNFKDInstance(&error), wide.data(), size, apart.data(),
                          static_cast<std::int32_t>(apart.size()), &error);
  if (U_FAILURE(error)) return std::string(text);
  apart.resize(static_cast<std::size_t>(size));
  std::erase_if(apart, [](char16_t unit) { return u_charType(unit) == U_NON_SPACING_MARK; });
  std::u16string folded(apart.size() * 3 + 1, u'\0');
  size = u_strFoldCase(folded.data(), static_cast<std::int32_t>(folded.size()), apart.data(),
                       static_cast<std::int32_t>(apart.size()), U_FOLD_CASE_DEFAULT, &error);
  std::string out(static_cast<std::size_t>(size) * 3 + 1, '\0');
  u_strToUTF8(out.data(), static_cast<std::int32_t>(out.size()), &size, folded.data(), size,
              &error);
  if (U_FAILURE(error)) return std::string(text);
  out.resize(static_cast<std::size_t>(size));
  return out;
}

using Meanings = std::unordered_map<std::string, ColumnMeaning>;

std::optional<ColumnMeaning> role_named(std::string_view role) {
  ColumnMeaning meaning;
  if (role == "sale_price") {
    meaning.role = ColumnRole::sale_price;
    meaning.field = Field::price;
    return meaning;
  }
  if (role == "colour_size") {
    meaning.role = ColumnRole::colour_size;
    meaning.field = Field::colour;
    return meaning;
  }
  for (std::size_t i = 0; i < kFieldCount; ++i) {
    meaning.field = static_cast<Field>(i);
    if (to_string(meaning.field) == role) return meaning;
  }
  return std::nullopt;
}

Meanings read_meanings() {
  Meanings meanings;
  for (const auto& row : table_rows("tables/fields.tsv")) {
    auto meaning = role_named(row.at(0));
    if (!meaning) continue;
    meaning->by_contract = meaning->role == ColumnRole::field && row.at(0) == row.at(1);
    meanings.emplace(folded_header(row.at(1)), *meaning);
  }
  return meanings;
}

std::optional<ColumnMeaning> meaning_of(const std::string& folded) {
  static const Meanings kMeanings = read_meanings();
  const auto found = kMeanings.find(folded);
  return found == kMeanings.end() ? std::nullopt : std::optional(found->second);
}

/// The currency a word of a header names: an ISO code in capitals, or a sign that means one.
std::string currency_of(std::string_view word) {
  if (word == "€") return "EUR";
  if (word == "£") return "GBP";
  const bool capitals = word.size() == 3 && std::all_of(word.begin(), word.end(), [](char sign) {
                          return sign >= 'A' && sign <= 'Z';
                        });
  return capitals && Currency::from_code(word) ? std::string(word) : std::string{};
}

/// Splits into runs of word signs; signs of currencies count as such, since they are not ASCII.
std::vector<std::string_view> words_of(std::string_view text) {
  std::vector<std::string_view> words;
  for (std::size_t at = 0; at < text.size();) {
    std::size_t end = at;
    while (end < text.size() && is_word_sign(text[end])) ++end;
    if (end > at) words.push_back(text.substr(at, end - at));
    at = end + 1;
  }
  return words;
}

std::string without_brackets(std::string_view header) {
  std::string out;
  std::size_t depth = 0;
  for (const char sign : header) {
    depth += sign == '(' || sign == '[' ? 1U : 0U;
    if (depth == 0) out.push_back(sign);
    if ((sign == ')' || sign == ']') && depth > 0) --depth;
  }
  return out;
}

/// Without the words that name a currency.
std::string without_currency(std::string_view header) {
  std::string out;
  for (const auto word : words_of(header)) {
    if (currency_of(word).empty()) out.append(word).push_back(' ');
  }
  return out;
}

std::string currency_in(std::string_view header) {
  for (const auto word : words_of(header)) {
    if (auto code = currency_of(word); !code.empty()) return code;
  }
  return {};
}

}  // namespace

std::string folded_header(std::string_view header) {
  const std::string text = is_plain_ascii(header) ? std::string(header) : without_accents(header);
  std::string out;
  for (const char sign : text) {
    if (is_word_sign(sign)) {
      out.push_back(ascii_lower(sign));
    } else if (!out.empty() && out.back() != '_' && sign != '\'') {
      out.push_back('_');
    }
  }
  while (!out.empty() && out.back() == '_') out.pop_back();
  return out;
}

std::optional<ColumnMeaning> column_meaning(std::string_view header) {
  if (header.size() > kLongestHeader) return std::nullopt;
  if (auto whole = meaning_of(folded_header(header))) return whole;
  auto meaning = meaning_of(folded_header(without_brackets(header)));
  if (!meaning) meaning = meaning_of(folded_header(without_currency(without_brackets(header))));
  if (!meaning) return std::nullopt;
  const bool price = meaning->field == Field::price || meaning->field == Field::full_price;
  if (price) meaning->currency = currency_in(header);
  meaning->by_contract = false;
  return meaning;
}

}  // namespace rangebook

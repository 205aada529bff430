// Cutting of price text. Numbers first, then the longest currency sign, then words.
#include "tracker/price_tokens.h"

#include <string>
#include <unordered_map>

#include "schema/embedded.h"
#include "schema/error.h"
#include "schema/names.h"
#include "tracker/price_number.h"
#include "tracker/price_text.h"

namespace rangebook {
namespace {

constexpr NameTable<WordRole, 11> kRoles{{{WordRole::was, "was"},
                                          {WordRole::now, "now"},
                                          {WordRole::saving, "saving"},
                                          {WordRole::off, "off"},
                                          {WordRole::per, "per"},
                                          {WordRole::joins, "joins"},
                                          {WordRole::limit, "limit"},
                                          {WordRole::scale, "scale"},
                                          {WordRole::measure, "measure"},
                                          {WordRole::free, "free"},
                                          {WordRole::label, "label"}}};

using WordTable = std::unordered_map<std::u32string, WordRole>;

WordTable read_words() {
  WordTable words;
  for (const auto& cells : table_rows("tables/price_words.tsv")) {
    const auto role = cells.size() < 2 ? std::nullopt : value_of(kRoles, cells[1]);
    if (!role) throw Error("the table of price words is damaged");
    words.emplace(fold_case(fold_price_text(cells[0])), *role);
  }
  return words;
}

WordRole role_of(std::u32string_view word) {
  static const WordTable words = read_words();
  const auto found = words.find(fold_case(word));
  return found == words.end() ? WordRole::none : found->second;
}

std::size_t word_length(std::u32string_view chars, std::size_t at) {
  std::size_t end = at;
  while (end < chars.size() && is_word_char(chars[end])) ++end;
  return end - at;
}

/// A separator opens a number (".75") only after nothing, white space or a currency sign.
bool may_open_number(std::u32string_view chars, std::size_t at,
                     const std::vector<PriceToken>& before) {
  if (is_digit(chars[at])) return true;
  if (at == 0 || is_space(chars[at - 1])) return true;
  return !before.empty() && before.back().end == at && before.back().kind == TokenKind::sign;
}

PriceToken token_at(std::u32string_view chars, std::size_t at,
                    const std::vector<PriceToken>& before) {
  PriceToken token;
  token.begin = at;
  token.spaced = at == 0 || is_space(chars[at - 1]);
  const std::size_t digits = may_open_number(chars, at, before) ? number_length(chars, at) : 0;
  if (digits > 0) {
    token.kind = TokenKind::number;
    token.end = at + digits;
  } else if (const auto sign = match_sign(chars, at)) {
    token.kind = TokenKind::sign;
    token.sign = *sign;
    token.end = at + sign->length;
  } else if (const std::size_t letters = word_length(chars, at); letters > 0) {
    token.kind = TokenKind::word;
    token.end = at + letters;
    token.role = role_of(chars.substr(at, letters));
  } else {
    token.end = at + 1;
  }
  return token;
}

}  // namespace

std::vector<PriceToken> price_tokens(std::u32string_view chars) {
  std::vector<PriceToken> tokens;
  for (std::size_t at = 0; at < chars.size();) {
    if (is_space(chars[at])) {
      ++at;
      continue;
    }
    tokens.push_back(token_at(chars, at, tokens));
    at = tokens.back().end;
  }
  return tokens;
}

}  // namespace rangebook

// One pass over the text; percent signs may stand before or behind their number.
#include "tracker/composition_tokens.h"

#include <algorithm>
#include <array>
#include <optional>

#include "tracker/text_fold.h"

namespace rangebook {
namespace {

using Type = CompositionToken::Type;

constexpr std::array<std::string_view, 6> kPercentWords{"percent", "per cent", "pct",
                                                        "prozent", "procent",  "pour cent"};
constexpr std::int32_t kWhole = 10000;

bool is_word_byte(char c) {
  return is_ascii_letter(c) || is_ascii_digit(c) || static_cast<unsigned char>(c) >= 0x80;
}

/// Folded text of a spelled-out percent sign at the start of `text`.
std::size_t percent_length(std::string_view text) {
  if (text.starts_with('%')) return 1;
  if (text.empty() || (text.front() != 'p' && text.front() != 'P')) return 0;
  for (const auto word : kPercentWords) {
    const bool here = text.size() >= word.size() && fold_text(text.substr(0, word.size())) == word;
    if (here && (text.size() == word.size() || !is_word_byte(text[word.size()]))) {
      return word.size();
    }
  }
  return 0;
}

struct Number {
  std::int32_t hundredths = 0;
  std::size_t length = 0;
};

std::size_t digits_at(std::string_view text, std::size_t from) {
  std::size_t n = 0;
  while (from + n < text.size() && is_ascii_digit(text[from + n])) ++n;
  return n;
}

/// A number of at most three digits with at most two decimals that count; more are cut off.
std::optional<Number> number_at(std::string_view text) {
  const auto digits = digits_at(text, 0);
  if (digits == 0 || digits > 3) return std::nullopt;
  Number number{0, digits};
  for (const char c : text.substr(0, digits))
    number.hundredths = number.hundredths * 10 + (c - '0');
  number.hundredths *= 100;
  const bool sign = digits < text.size() && (text[digits] == '.' || text[digits] == ',');
  const auto decimals = sign ? digits_at(text, digits + 1) : 0;
  if (decimals == 0) return number;
  number.hundredths += 10 * (text[digits + 1] - '0');
  if (decimals > 1) number.hundredths += text[digits + 2] - '0';
  number.length += 1 + decimals;
  return number;
}

std::size_t spaces_at(std::string_view text) {
  std::size_t n = 0;
  while (n < text.size() && text[n] == ' ') ++n;
  return n;
}

/// `65 %`, `65%`, `%65`, and `65` alone where that counts.
std::optional<Number> share_at(std::string_view text, ShareStyle style) {
  const std::size_t front = text.starts_with('%') ? 1 : 0;
  auto number = number_at(text.substr(front));
  if (!number) return std::nullopt;
  number->length += front;
  const auto rest = text.substr(number->length);
  const auto gap = spaces_at(rest);
  const auto sign = front > 0 ? 0 : percent_length(rest.substr(gap));
  if (sign > 0) number->length += gap + sign;
  const bool marked = front > 0 || sign > 0 || style == ShareStyle::bare;
  if (!marked || number->hundredths > kWhole || number->hundredths == 0) return std::nullopt;
  return number;
}

std::size_t word_length(std::string_view text) {
  if (is_ascii_digit(text.front())) return digits_at(text, 0);
  std::size_t n = 0;
  while (n < text.size() && is_word_byte(text[n]) && !is_ascii_digit(text[n])) ++n;
  return n;
}

bool is_stop(char c) { return std::string_view(",;./|\n\r+&").find(c) != std::string_view::npos; }

}  // namespace

std::vector<CompositionToken> composition_tokens(std::string_view text, ShareStyle style) {
  std::vector<CompositionToken> tokens;
  bool bracketed = false;
  while (!text.empty()) {
    const char c = text.front();
    std::size_t length = 1;
    if (const auto share = share_at(text, style)) {
      tokens.push_back({Type::share, share->hundredths, {}});
      length = share->length;
    } else if (is_word_byte(c)) {
      length = word_length(text);
      const auto word = text.substr(0, length);
      if (tokens.empty() || tokens.back().type != Type::phrase)
        tokens.push_back({Type::phrase, 0, {}});
      tokens.back().words.push_back({word, fold_text(word), bracketed});
    } else if (is_stop(c)) {
      tokens.push_back({Type::stop, 0, {}});
    } else if (c == ':') {
      tokens.push_back({Type::colon, 0, {}});
    } else if (c == '(' || c == '[' || c == ')' || c == ']') {
      bracketed = c == '(' || c == '[';
    }
    text.remove_prefix(length);
  }
  return tokens;
}

bool has_percent(std::string_view text) {
  if (text.find('%') != std::string_view::npos) return true;
  const auto folded = fold_text(text);
  return std::any_of(kPercentWords.begin(), kPercentWords.end(),
                     [&](std::string_view word) { return folded.find(word) != std::string::npos; });
}

}  // namespace rangebook

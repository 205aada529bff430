// Cutting size labels into tokens and looking up their words.
#include "tracker/size_words.h"

#include <algorithm>
#include <array>
#include <string>
#include <utility>

#include "tracker/text_fold.h"

namespace rangebook {
namespace {

template <typename Value, std::size_t N>
std::optional<Value> look_up(const std::array<std::pair<std::string_view, Value>, N>& table,
                             std::string_view word) {
  for (const auto& [entry, value] : table) {
    if (entry == word) return value;
  }
  return std::nullopt;
}

constexpr std::array<std::pair<std::string_view, SizeSystem>, 14> kSystemWords{{
    {"uk", SizeSystem::uk},
    {"gb", SizeSystem::uk},
    {"us", SizeSystem::us},
    {"usa", SizeSystem::us},
    {"eu", SizeSystem::eu},
    {"eur", SizeSystem::eu},
    {"de", SizeSystem::eu},
    {"fr", SizeSystem::fr},
    {"es", SizeSystem::fr},
    {"it", SizeSystem::it},
    {"au", SizeSystem::au},
    {"aus", SizeSystem::au},
    {"nz", SizeSystem::au},
    {"jp", SizeSystem::jp},
}};

constexpr std::array<std::pair<std::string_view, FitRange>, 15> kFitWords{{
    {"petite", FitRange::petite},
    {"petites", FitRange::petite},
    {"pet", FitRange::petite},
    {"short", FitRange::petite},
    {"kurz", FitRange::petite},
    {"tall", FitRange::tall},
    {"long", FitRange::tall},
    {"lang", FitRange::tall},
    {"plus", FitRange::plus},
    {"curve", FitRange::plus},
    {"maternity", FitRange::maternity},
    {"mat", FitRange::maternity},
    {"regular", FitRange::regular},
    {"reg", FitRange::regular},
    {"normal", FitRange::regular},
}};

constexpr std::array<std::pair<std::string_view, FitRange>, 5> kFitLetters{{
    {"p", FitRange::petite},
    {"s", FitRange::petite},
    {"t", FitRange::tall},
    {"l", FitRange::tall},
    {"r", FitRange::regular},
}};

constexpr std::array<std::string_view, 11> kSizeWords{
    "size", "sz", "gr", "grosse", "groesse", "taille", "t", "talla", "taglia", "tg", "maat"};

constexpr std::array<std::string_view, 16> kOneSize{
    "onesize",         "os",           "osfa",       "osfm",        "onesizefitsall",
    "onesizefitsmost", "tailleunique", "tallaunica", "tagliaunica", "einheitsgrosse",
    "einheitsgroesse", "unisize",      "tu",         "freesize",    "1size",
    "eenmaat"};

std::size_t run_length(std::string_view text, bool (*belongs)(char)) {
  std::size_t n = 0;
  while (n < text.size() && belongs(text[n])) ++n;
  return n;
}

/// Letters beyond ASCII stay part of a word, so that they never look like a sign.
bool is_word_byte(char c) { return is_ascii_letter(c) || static_cast<unsigned char>(c) >= 0x80; }

/// Length of a decimal behind a number ("38.5", "38,5"), with its sign; 0 if there is none.
std::size_t decimal_length(std::string_view rest) {
  if (rest.size() < 2 || (rest[0] != '.' && rest[0] != ',')) return 0;
  return is_ascii_digit(rest[1]) ? 1 + run_length(rest.substr(1), is_ascii_digit) : 0;
}

constexpr std::size_t kMaxDigits = 3;

std::optional<SizeToken> number_token(std::string_view text) {
  const auto digits = run_length(text, is_ascii_digit);
  const auto decimals = decimal_length(text.substr(digits));
  if (digits > kMaxDigits || decimals > 2) return std::nullopt;
  int value = 0;
  for (const char c : text.substr(0, digits)) value = value * 10 + (c - '0');
  value *= 10;
  if (value == 0 && digits > 1) value = digits == 2 ? -10 : -20;
  if (decimals > 0) value += text[digits + 1] - '0';
  return SizeToken{SizeToken::Type::number, text.substr(0, digits + decimals), value};
}

std::optional<SizeToken> next_token(std::string_view text) {
  if (is_ascii_digit(text.front())) return number_token(text);
  if (const auto letters = run_length(text, is_word_byte); letters > 0) {
    return SizeToken{SizeToken::Type::word, text.substr(0, letters), 0};
  }
  return SizeToken{SizeToken::Type::sign, text.substr(0, 1), 0};
}

/// `38 1/2` becomes 38.5.
void join_fraction(std::vector<SizeToken>& tokens) {
  if (tokens.size() < 4) return;
  for (std::size_t i = 0; i + 3 < tokens.size(); ++i) {
    const bool half = tokens[i].type == SizeToken::Type::number && tokens[i + 1].text == "1" &&
                      tokens[i + 2].is_sign('/') && tokens[i + 3].text == "2";
    if (!half || tokens[i].tenths % 10 != 0) continue;
    tokens[i].tenths += 5;
    const auto at = tokens.begin() + static_cast<std::ptrdiff_t>(i) + 1;
    tokens.erase(at, at + 3);
  }
}

bool all_x(std::string_view word) {
  return word.find_first_not_of('x') == std::string_view::npos && !word.empty();
}

/// The last word of an alpha size: how many x, and s, m or l.
struct AlphaEnd {
  int xs = 0;
  char letter = 'm';
};

std::optional<AlphaEnd> alpha_end(std::string_view word) {
  const auto xs = run_length(word, [](char c) { return c == 'x'; });
  const auto rest = word.substr(xs);
  const int count = static_cast<int>(std::min<std::size_t>(xs, 10));
  if (rest == "s" || rest == "small") return AlphaEnd{count, 's'};
  if (rest == "l" || rest == "large") return AlphaEnd{count, 'l'};
  if (xs == 0 && (rest == "m" || rest == "medium" || rest == "med")) return AlphaEnd{0, 'm'};
  return std::nullopt;
}

constexpr int kMaxXs = 9;

std::optional<AlphaSize> ranked_alpha(std::optional<int> number, int xs, AlphaEnd end,
                                      FitRange fit) {
  xs += end.xs;
  if (number) {
    if (xs != 1 || *number == 0) return std::nullopt;
    xs = *number;
  }
  if (xs > kMaxXs || (end.letter == 'm' && xs > 0)) return std::nullopt;
  const int rank = end.letter == 'm' ? 0 : end.letter == 's' ? -10 - 10 * xs : 10 + 10 * xs;
  return AlphaSize{rank, fit};
}

/// `LT`, `2XLT`, `MP` and `PM`: letters with the fit in the same word.
std::optional<std::pair<AlphaEnd, FitRange>> alpha_with_fit(std::string_view word) {
  if (word.size() < 2) return std::nullopt;
  const auto front = alpha_end(word.substr(0, word.size() - 1));
  if (front && word.back() == 't') return std::pair{*front, FitRange::tall};
  if (front && word.back() == 'p') return std::pair{*front, FitRange::petite};
  const auto back = alpha_end(word.substr(1));
  if (back && word.front() == 'p') return std::pair{*back, FitRange::petite};
  return std::nullopt;
}

/// The x of all tokens but the last: `x`, `xx`, `extra`, with hyphens; nothing for other words.
std::optional<int> leading_xs(std::span<const SizeToken> tokens) {
  int xs = 0;
  for (const auto& token : tokens) {
    if (token.is_word("extra")) {
      ++xs;
    } else if (token.type == SizeToken::Type::word && all_x(token.text)) {
      xs += static_cast<int>(token.text.size());
    } else if (!token.is_sign('-') || xs == 0) {
      return std::nullopt;
    }
  }
  return xs;
}

}  // namespace

std::optional<std::vector<SizeToken>> size_tokens(std::string_view folded) {
  std::vector<SizeToken> tokens;
  while (!folded.empty()) {
    if (folded.front() == ' ') {
      folded.remove_prefix(1);
      continue;
    }
    const auto token = next_token(folded);
    if (!token || tokens.size() == kMaxSizeTokens) return std::nullopt;
    tokens.push_back(*token);
    folded.remove_prefix(token->text.size());
  }
  join_fraction(tokens);
  return tokens;
}

std::optional<SizeSystem> system_word(std::string_view word) { return look_up(kSystemWords, word); }
std::optional<FitRange> fit_word(std::string_view word) { return look_up(kFitWords, word); }
std::optional<FitRange> fit_letter(std::string_view word) { return look_up(kFitLetters, word); }
bool is_size_word(std::string_view word) {
  return std::find(kSizeWords.begin(), kSizeWords.end(), word) != kSizeWords.end();
}

bool is_one_size(std::string_view folded) {
  std::string letters;
  for (const char c : folded) {
    if (is_ascii_letter(c) || is_ascii_digit(c)) letters.push_back(c);
  }
  return std::find(kOneSize.begin(), kOneSize.end(), letters) != kOneSize.end();
}

std::optional<AlphaSize> alpha_size(std::span<const SizeToken> tokens) {
  std::optional<int> number;
  if (!tokens.empty() && tokens.front().type == SizeToken::Type::number) {
    number = tokens.front().tenths / 10;
    if (tokens.front().tenths % 10 != 0 || *number < 0 || *number > kMaxXs) return std::nullopt;
    tokens = tokens.subspan(1);
  }
  if (tokens.empty() || tokens.back().type != SizeToken::Type::word) return std::nullopt;
  const auto last = tokens.back().text;
  if (number && tokens.size() == 1 && last == "x") return AlphaSize{*number * 10, FitRange::plus};
  const auto xs = leading_xs(tokens.first(tokens.size() - 1));
  if (!xs) return std::nullopt;
  if (const auto end = alpha_end(last)) return ranked_alpha(number, *xs, *end, FitRange::regular);
  const auto fitted = alpha_with_fit(last);
  return fitted ? ranked_alpha(number, *xs, fitted->first, fitted->second) : std::nullopt;
}

std::optional<int> cup_rank(std::string_view word) {
  if (word.empty() || word.size() > 4 || word.front() < 'a' || word.front() > 'k') {
    return std::nullopt;
  }
  if (word.find_first_not_of(word.front()) != std::string_view::npos) return std::nullopt;
  const int doubled = 10 * static_cast<int>(word.size() - 1);
  return word.front() == 'a' ? 40 - doubled : 40 * (word.front() - 'a' + 1) + doubled;
}

}  // namespace rangebook

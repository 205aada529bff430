// Collecting the numbers of a price text with the signs, words and marks that belong to each.
#include <algorithm>

#include "tracker/price_choice.h"
#include "tracker/price_text.h"

namespace rangebook {
namespace {

constexpr std::size_t kNone = static_cast<std::size_t>(-1);  // before the first token, by wrapping

/// One walk over the tokens; keeps which signs are taken by a number.
class NumberCollector {
 public:
  NumberCollector(std::u32string_view chars, const std::vector<PriceToken>& tokens,
                  const MoneyHints& hints)
      : chars_(chars), tokens_(tokens), hints_(hints), taken_(tokens.size(), false) {}

  std::vector<PriceNumber> run() {
    std::vector<PriceNumber> numbers;
    int depth = 0;
    for (std::size_t i = 0; i < tokens_.size(); ++i) {
      depth += is_mark(i, U"([") ? 1 : is_mark(i, U")]") ? -1 : 0;
      if (!is(i, TokenKind::number)) continue;
      auto number = collect(i);
      if (!number) continue;
      number->enclosed = depth > 0;
      number->doubtful = number->doubtful || (number->enclosed && whole_text_is_enclosed());
      numbers.push_back(std::move(*number));
    }
    return numbers;
  }

 private:
  bool is(std::size_t i, TokenKind kind) const {
    return i < tokens_.size() && tokens_[i].kind == kind;
  }
  bool is_mark(std::size_t i, std::u32string_view marks) const {
    return is(i, TokenKind::mark) && marks.find(chars_[tokens_[i].begin]) != marks.npos;
  }
  bool is_word(std::size_t i, WordRole role) const {
    return is(i, TokenKind::word) && tokens_[i].role == role;
  }
  /// Token i touches the one before it.
  bool touches(std::size_t i) const { return i < tokens_.size() && !tokens_[i].spaced; }
  std::u32string_view text(std::size_t i) const {
    return chars_.substr(tokens_[i].begin, tokens_[i].end - tokens_[i].begin);
  }
  bool whole_text_is_enclosed() const {
    return is_mark(0, U"([") && is_mark(tokens_.size() - 1, U")]");
  }

  /// The sign before number i that no other number has: "US$: 12", "(EUR) 12", "£-5".
  std::size_t sign_before(std::size_t i) const {
    std::size_t at = i - 1;
    while (at != kNone && is_mark(at, U":-)")) --at;
    return at != kNone && is(at, TokenKind::sign) && !taken_[at] ? at : kNone;
  }

  /// The sign after number i: "12 €", "49,- kr"; not one that touches the next number.
  std::size_t sign_after(std::size_t i, bool has_sign_before) const {
    std::size_t at = i + 1;
    while (is_mark(at, U".,-")) ++at;
    if (!is(at, TokenKind::sign)) return kNone;
    const bool number_follows = is(at + 1, TokenKind::number);
    const bool of_next = number_follows && tokens_[at].spaced && touches(at + 1);
    return of_next || (number_follows && has_sign_before) ? kNone : at;
  }

  std::optional<Currency> settle(std::size_t before, std::size_t after) const {
    if (before == kNone && after == kNone) return std::nullopt;
    if (before == kNone) return tokens_[after].sign.resolve(hints_.currency);
    if (after == kNone) return tokens_[before].sign.resolve(hints_.currency);
    const SignMatch& one = tokens_[before].sign;
    const SignMatch& other = tokens_[after].sign;
    const auto by_other = other.resolve(hints_.currency);
    if (by_other && one.admits(*by_other)) return by_other;
    const auto by_one = one.resolve(hints_.currency);
    return by_one && other.admits(*by_one) ? by_one : std::nullopt;
  }

  int exponent(const PriceNumber& number, std::size_t sign) const {
    if (number.currency) return number.currency->exponent();
    if (sign != kNone) return tokens_[sign].sign.widest_exponent();
    return hints_.currency ? hints_.currency->exponent() : 2;
  }

  /// "12€50": two digits that touch the euro sign are cents.
  bool is_split_by_euro(std::size_t i) const {
    return touches(i + 1) && is(i + 1, TokenKind::sign) && text(i + 1) == U"€" && touches(i + 2) &&
           is(i + 2, TokenKind::number) && text(i + 2).size() == 2 &&
           is_digit(text(i + 2).front()) && std::ranges::all_of(text(i), is_digit) &&
           !touches(i + 3);
  }

  std::optional<PriceNumber> collect(std::size_t i) {
    if (skip_ == i) return std::nullopt;
    const std::size_t before = sign_before(i);
    const std::size_t after = sign_after(i, before != kNone);
    if (before != kNone) taken_[before] = true;
    if (after != kNone) taken_[after] = true;
    const std::size_t first = before == kNone ? i : before;
    const std::size_t last = after == kNone ? i : after;
    if (is_no_price(i, last)) return std::nullopt;
    PriceNumber number;
    number.text = text(i);
    number.has_sign = first != last;
    number.currency = settle(before, after);
    number.readings = read_number(number.text, exponent(number, before == kNone ? after : before),
                                  hints_.decimal_sign);
    if (is_split_by_euro(i)) {
      skip_ = i + 2;
      number.readings.front().fraction = to_utf8(text(i + 2));
    }
    look_around(number, i, first, last);
    return number;
  }

  /// A percentage, a quantity, a reduction, or part of a code.
  bool is_no_price(std::size_t i, std::size_t last) const {
    const bool percent = is_mark(i + 1, U"%\u066A") || (touches(i) && is_mark(i - 1, U"%#"));
    const bool quantity =
        is_word(i + 1, WordRole::measure) || (is_mark(i + 1, U"\"°") && touches(i + 1));
    const bool reduction = is_word(last + 1, WordRole::off) || words_before(i, WordRole::saving);
    return percent || quantity || reduction || is_in_code(i);
  }

  /// Touches a word that is not known to stand beside prices: "MX924", "SKU-123".
  bool is_in_code(std::size_t i) const {
    if (!touches(i)) return false;
    const std::size_t at = is_mark(i - 1, U"-_/") && touches(i - 1) ? i - 2 : i - 1;
    return is_word(at, WordRole::none) && (at == i - 1 || touches(at + 1));
  }

  /// A word of `role` stands between number i and the number before it.
  bool words_before(std::size_t i, WordRole role) const {
    for (std::size_t at = i - 1; at != kNone && !is(at, TokenKind::number); --at) {
      if (is_word(at, role)) return true;
    }
    return false;
  }

  bool number_before(std::size_t i) const {
    return std::any_of(tokens_.begin(), tokens_.begin() + static_cast<std::ptrdiff_t>(i),
                       [](const PriceToken& token) { return token.kind == TokenKind::number; });
  }

  /// A dash, slash, plus or joining word directly before token i, after an earlier number.
  bool joined_before(std::size_t i) const {
    return (is_mark(i - 1, U"-/+&×") || is_word(i - 1, WordRole::joins)) && number_before(i - 1);
  }
  bool joined_after(std::size_t i) const {
    const bool joint = is_mark(i + 1, U"-/+&×") || is_word(i + 1, WordRole::joins);
    return joint && (is(i + 2, TokenKind::number) ||
                     (is(i + 2, TokenKind::sign) && is(i + 3, TokenKind::number)));
  }

  bool is_negative(std::size_t i, std::size_t first) const {
    if (first != i && is_mark(i - 1, U"-")) return true;
    if (!is_mark(first - 1, U"-") || joined_before(first)) return false;
    const bool after_word = is(first - 2, TokenKind::word);
    return first - 2 == kNone || !after_word || (tokens_[first - 1].spaced && touches(first));
  }

  bool marks_make_doubt(std::size_t i, std::size_t first) const {
    const bool clock =
        (touches(i) && is_mark(i - 1, U":") && touches(i - 1) && first == i &&
         is(i - 2, TokenKind::number)) ||
        (touches(i + 1) && is_mark(i + 1, U":") && touches(i + 2) && is(i + 2, TokenKind::number));
    const bool bound = is_mark(first - 1, U"+~≈<>≤≥×");
    const bool stray_point = touches(i) && is_mark(i - 1, U".,'");
    const bool trailing_minus = touches(i + 1) && is_mark(i + 1, U"-");
    return clock || bound || stray_point || trailing_minus;
  }

  bool neighbours_make_doubt(std::size_t i, std::size_t last) const {
    const bool numeral =
        is(i + 1, TokenKind::mark) && is_numeral_mark(chars_[tokens_[i + 1].begin]);
    const bool numeral_before =
        i > 0 && is(i - 1, TokenKind::mark) && is_numeral_mark(chars_[tokens_[i - 1].begin]);
    const bool scale = is_word(i + 1, WordRole::scale) || is_word(last + 1, WordRole::scale);
    const bool glued_word = touches(i + 1) && is(i + 1, TokenKind::word);
    const bool bound = words_before(i, WordRole::limit) ||
                       (words_before(i, WordRole::off) && !words_before(i, WordRole::now));
    return numeral || numeral_before || scale || glued_word || bound;
  }

  void look_around(PriceNumber& number, std::size_t i, std::size_t first, std::size_t last) const {
    number.negative = is_negative(i, first);
    number.doubtful = marks_make_doubt(i, first) || neighbours_make_doubt(i, last);
    number.linked = joined_before(first) || joined_after(last);
    number.worded = is(i - 1, TokenKind::word) || is(i + 1, TokenKind::word);
    const bool per = is_word(last + 1, WordRole::per) || is_mark(last + 1, U"/");
    if (per) number.role = WordRole::per;
    if (words_before(i, WordRole::was)) number.role = WordRole::was;
    if (words_before(i, WordRole::now)) number.role = WordRole::now;
  }

  std::u32string_view chars_;
  const std::vector<PriceToken>& tokens_;
  const MoneyHints& hints_;
  std::vector<bool> taken_;   // signs that belong to a number already
  std::size_t skip_ = kNone;  // a number that was the cents of the one before
};

}  // namespace

std::vector<PriceNumber> price_numbers(std::u32string_view chars,
                                       const std::vector<PriceToken>& tokens,
                                       const MoneyHints& hints) {
  return NumberCollector(chars, tokens, hints).run();
}

}  // namespace rangebook

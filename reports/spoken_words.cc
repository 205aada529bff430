// A scan from left to right; numbers are spelled by ICU's rules for English.
#include "reports/spoken_words.h"

#include <fmt/format.h>
#include <unicode/locid.h>
#include <unicode/rbnf.h>
#include <unicode/ucurr.h>
#include <unicode/unistr.h>

#include <algorithm>
#include <array>
#include <memory>
#include <optional>

#include "schema/error.h"
#include "schema/money.h"

namespace rangebook {
namespace {

constexpr std::string_view kEnDash = "–";

bool is_digit(char sign) { return sign >= '0' && sign <= '9'; }
bool is_letter(char sign) {
  return (sign >= 'a' && sign <= 'z') || (sign >= 'A' && sign <= 'Z') ||
         static_cast<unsigned char>(sign) >= 0x80;
}

std::string utf8(const icu::UnicodeString& text) {
  std::string out;
  text.toUTF8String(out);
  return out;
}

class Speller {
 public:
  Speller() {
    UErrorCode status = U_ZERO_ERROR;
    rules_ = std::make_unique<icu::RuleBasedNumberFormat>(icu::URBNF_SPELLOUT,
                                                          icu::Locale("en", "GB"), status);
    if (U_FAILURE(status)) throw Error("ICU has no rules to spell numbers in English");
  }

  std::string cardinal(std::int64_t number) const {
    return by("%spellout-cardinal-verbose", number);
  }
  std::string ordinal(std::int64_t number) const { return by("%spellout-ordinal-verbose", number); }
  std::string year(std::int64_t number) const { return by("%spellout-numbering-year", number); }

 private:
  std::string by(const char* rule, std::int64_t number) const {
    UErrorCode status = U_ZERO_ERROR;
    icu::UnicodeString text;
    icu::FieldPosition place;
    rules_->format(number, icu::UnicodeString(rule), text, place, status);
    if (U_FAILURE(status)) throw Error("ICU cannot spell a number in English");
    return utf8(text);
  }

  std::unique_ptr<icu::RuleBasedNumberFormat> rules_;
};

const Speller& speller() {
  static const Speller kSpeller;
  return kSpeller;
}

/// A number as written: `79.90`.
struct Number {
  std::string whole;
  std::string decimals;

  std::int64_t value() const { return std::stoll(whole); }
  std::string said() const {
    std::string text = speller().cardinal(value());
    // Reports write whole shares as 25.0%.
    if (decimals.empty() || decimals == "0") return text;
    text += " point";
    for (const char digit : decimals) text += " " + speller().cardinal(digit - '0');
    return text;
  }
};

/// Names of money that is said in two numbers.
struct CoinNames {
  std::string_view sign;
  std::string_view one;
  std::string_view more;
  std::string_view coin;
  std::string_view coins;
};
constexpr std::array<CoinNames, 2> kCoins{
    {{"£", "pound", "pounds", "penny", "pence"}, {"€", "euro", "euros", "cent", "cents"}}};

std::string said_money(const Number& number, const CoinNames& names) {
  const std::int64_t coins = number.decimals.empty() ? 0 : std::stoll(number.decimals);
  if (number.value() == 0 && coins > 0) {
    return fmt::format("{} {}", speller().cardinal(coins), coins == 1 ? names.coin : names.coins);
  }
  std::string text = fmt::format("{} {}", speller().cardinal(number.value()),
                                 number.value() == 1 ? names.one : names.more);
  if (coins == 0) return text;
  if (coins < 10)
    return fmt::format("{} and {} {}", text, speller().cardinal(coins),
                       coins == 1 ? names.coin : names.coins);
  return text + " " + speller().cardinal(coins);
}

/// `Swedish kronor`.
std::string currency_name(std::string_view code) {
  UErrorCode status = U_ZERO_ERROR;
  const icu::UnicodeString wide =
      icu::UnicodeString::fromUTF8(icu::StringPiece(code.data(), static_cast<int>(code.size())));
  std::int32_t length = 0;
  const char16_t* name = ucurr_getPluralName(icu::UnicodeString(wide).getTerminatedBuffer(),
                                             "en_GB", nullptr, "other", &length, &status);
  if (U_FAILURE(status)) return std::string(code);
  return utf8(icu::UnicodeString(name, length));
}

class Scan {
 public:
  explicit Scan(std::string_view text) : rest_(text) {}

  std::string said() {
    while (!rest_.empty()) step();
    return std::move(out_);
  }

 private:
  void step() {
    if (word_with_digits() || signed_money() || number()) return;
    if (is_digit(rest_[0]))
      return copy(std::min(rest_.find_first_not_of("0123456789"), rest_.size()));
    if (rest_.starts_with(kEnDash)) {
      out_ += " to ";
      rest_.remove_prefix(kEnDash.size());
      return;
    }
    copy(1);
  }

  void copy(std::size_t bytes) {
    out_ += rest_.substr(0, bytes);
    rest_.remove_prefix(bytes);
  }

  bool at_word_start() const {
    return out_.empty() || !(is_letter(out_.back()) || is_digit(out_.back()));
  }

  /// Words, and codes such as `AW26` and `12W`, as they are.
  bool word_with_digits() {
    std::size_t end = 0;
    bool letters = false;
    while (end < rest_.size() && !rest_.substr(end).starts_with(kEnDash) &&
           !rest_.substr(end).starts_with("£") && !rest_.substr(end).starts_with("€") &&
           (is_letter(rest_[end]) || is_digit(rest_[end]))) {
      letters = letters || is_letter(rest_[end]);
      ++end;
    }
    if (!letters) return false;
    copy(end);
    return true;
  }

  static std::optional<Number> number_at(std::string_view text) {
    constexpr std::size_t kMostDigits = 15;
    Number number;
    std::size_t at = 0;
    while (at < text.size() && is_digit(text[at])) number.whole += text[at++];
    if (number.whole.empty() || number.whole.size() > kMostDigits) return std::nullopt;
    if (at + 1 < text.size() && text[at] == '.' && is_digit(text[at + 1])) {
      ++at;
      while (at < text.size() && is_digit(text[at])) number.decimals += text[at++];
      if (number.decimals.size() > kMostDigits) return std::nullopt;
    }
    return number;
  }

  static std::size_t bytes_of(const Number& number) {
    return number.whole.size() + (number.decimals.empty() ? 0 : number.decimals.size() + 1);
  }

  std::string_view sign_at(std::string_view text) const {
    if (!at_word_start() || text.empty()) return {};
    return text[0] == '+' ? "plus " : text[0] == '-' ? "minus " : std::string_view{};
  }

  bool signed_money() {
    const auto sign = sign_at(rest_);
    std::string_view after = rest_.substr(sign.empty() ? 0 : 1);
    for (const CoinNames& names : kCoins) {
      if (!after.starts_with(names.sign)) continue;
      const auto number = number_at(after.substr(names.sign.size()));
      if (!number) return false;
      out_ += sign;
      out_ += said_money(*number, names);
      rest_ = after.substr(names.sign.size() + bytes_of(*number));
      return true;
    }
    return false;
  }

  bool number() {
    const auto sign = sign_at(rest_);
    const std::string_view after = rest_.substr(sign.empty() ? 0 : 1);
    const auto found = number_at(after);
    if (!found) return false;
    out_ += sign;
    rest_ = after.substr(bytes_of(*found));
    if (rest_.starts_with('%')) {
      out_ += found->said() + " per cent";
      rest_.remove_prefix(1);
    } else if (!date(*found) && !money_by_code(*found)) {
      out_ += found->said();
    }
    return true;
  }

  /// `2 September 2026`.
  bool date(const Number& day) {
    static constexpr std::array<std::string_view, 12> kMonths{
        "January", "February", "March",     "April",   "May",      "June",
        "July",    "August",   "September", "October", "November", "December"};
    for (const auto month : kMonths) {
      const std::string with_spaces = fmt::format(" {} ", month);
      if (!rest_.starts_with(with_spaces)) continue;
      const auto year = number_at(rest_.substr(with_spaces.size()));
      if (!year || !day.decimals.empty()) return false;
      out_ += fmt::format("the {} of {} {}", speller().ordinal(day.value()), month,
                          speller().year(year->value()));
      rest_.remove_prefix(with_spaces.size() + bytes_of(*year));
      return true;
    }
    return false;
  }

  /// `79.90 SEK`.
  bool money_by_code(const Number& amount) {
    constexpr std::size_t kCode = 3;
    if (rest_.size() <= kCode || rest_[0] != ' ') return false;
    const std::string_view code = rest_.substr(1, kCode);
    const bool ends = rest_.size() == kCode + 1 || !is_letter(rest_[kCode + 1]);
    if (!ends || !Currency::from_code(code) ||
        code.find_first_of("abcdefghijklmnopqrstuvwxyz") != code.npos)
      return false;
    out_ += fmt::format("{} {}", amount.said(), currency_name(code));
    rest_.remove_prefix(kCode + 1);
    return true;
  }

  std::string_view rest_;
  std::string out_;
};

}  // namespace

std::string spoken_words(std::string_view figure) { return Scan(figure).said(); }

}  // namespace rangebook

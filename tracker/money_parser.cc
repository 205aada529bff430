// Reading of one price: a short path for plain digits, which most exports are made of, and the
// general path over tokens. Text is only built when something is wrong.
#include "tracker/money_parser.h"

#include <algorithm>
#include <charconv>
#include <limits>

#include "tracker/price_choice.h"
#include "tracker/price_text.h"

namespace rangebook {
namespace {

constexpr std::size_t kPlainDigits = 17;  // with a place to spare below the limit of 64 bits

/// "89", "89.00", "89,5": digits with at most one separator before the one or two last of them.
struct PlainText {
  std::int64_t unscaled = 0;
  int scale = 0;
  char point = 0;  // 0: none
};

/// Nothing for any other text. Allocates nothing: most cells of most exports end here.
std::optional<PlainText> scan_plain(std::string_view text) {
  if (text.empty() || text.size() > kPlainDigits) return std::nullopt;
  PlainText plain;
  std::size_t after_point = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char sign = text[i];
    if (sign >= '0' && sign <= '9') {
      plain.unscaled = plain.unscaled * 10 + (sign - '0');
    } else if ((sign == '.' || sign == ',') && after_point == 0 && i > 0) {
      plain.point = sign;
      after_point = i + 1;
    } else {
      return std::nullopt;
    }
  }
  if (after_point == 0) return plain;
  plain.scale = static_cast<int>(text.size() - after_point);
  return plain.scale == 1 || plain.scale == 2 ? std::optional(plain) : std::nullopt;
}

std::optional<Money> parse_plain(std::string_view text, Currency currency) {
  const auto plain = scan_plain(text);
  if (!plain || plain->scale > currency.exponent()) return std::nullopt;
  const int missing = currency.exponent() - plain->scale;
  if (text.size() + static_cast<std::size_t>(missing) > kPlainDigits) return std::nullopt;
  Money money{plain->unscaled, currency};
  for (int i = 0; i < missing; ++i) money.minor *= 10;
  return money;
}

/// The sign that a shop with this home currency most likely writes.
std::string_view home_sign(std::string_view code) {
  if (code == "EUR") return "€";
  if (code == "GBP") return "£";
  return code == "USD" ? "$" : code;
}

/// The text without the sign or code of the hinted currency at one end, and the space beside it.
std::string_view without_home_sign(std::string_view text, Currency currency) {
  for (const auto sign : {home_sign(currency.code()), currency.code()}) {
    if (text.starts_with(sign)) {
      text.remove_prefix(sign.size());
      return text.substr(text.starts_with(' ') ? 1 : 0);
    }
    if (text.ends_with(sign)) {
      text.remove_suffix(sign.size());
      return text.substr(0, text.size() - (text.ends_with(' ') ? 1 : 0));
    }
  }
  return text;
}

std::optional<Money> parse_short(std::string_view text, std::optional<Currency> hint) {
  if (!hint) return std::nullopt;
  if (const auto money = parse_plain(text, *hint)) return money;
  return parse_plain(without_home_sign(text, *hint), *hint);
}

/// A text with its tokens and what may be its price.
struct PriceText {
  std::u32string chars;
  std::vector<PriceToken> tokens;
  std::vector<PriceNumber> numbers;  // as choose_price leaves them
};

PriceText read_price_text(std::string_view text, const MoneyHints& hints) {
  PriceText price;
  price.chars = fold_price_text(text);
  price.tokens = price_tokens(price.chars);
  price.numbers = choose_price(price_numbers(price.chars, price.tokens, hints), hints.currency);
  for (auto& number : price.numbers) number.text = {};
  return price;
}

/// "Free!", "gratis": one word for nothing to pay, with nothing else but marks and signs.
bool says_free(const PriceText& price) {
  int free_words = 0;
  for (const PriceToken& token : price.tokens) {
    const bool free = token.kind == TokenKind::word && token.role == WordRole::free;
    const bool other = token.kind == TokenKind::number || token.kind == TokenKind::word;
    if (other && !free) return false;
    free_words += free ? 1 : 0;
  }
  return free_words == 1;
}

bool is_clear(const PriceNumber& number) { return !number.doubtful && number.readings.size() == 1; }

/// The one number that is the price; nothing when there is none or the text leaves it open.
const PriceNumber* clear_price(const PriceText& price) {
  const bool clear = price.numbers.size() == 1 && is_clear(price.numbers.front());
  return clear ? &price.numbers.front() : nullptr;
}

/// The single currency of all signs of the text. Signs that only the hint could settle, and codes
/// that are words, say nothing when it does not.
std::optional<Currency> currency_of(const std::vector<PriceToken>& tokens,
                                    std::optional<Currency> hint) {
  std::optional<Currency> found;
  for (const PriceToken& token : tokens) {
    const auto currency = token.kind == TokenKind::sign ? token.sign.resolve(hint) : std::nullopt;
    if (!currency || currency == found) continue;
    if (found) return std::nullopt;
    found = currency;
  }
  return found;
}

bool has_sign(const std::vector<PriceToken>& tokens) {
  return std::ranges::any_of(tokens,
                             [](const auto& token) { return token.kind == TokenKind::sign; });
}

std::optional<Currency> price_currency(const PriceText& price, std::optional<Currency> hint) {
  if (!price.numbers.empty() && price.numbers.front().has_sign)
    return price.numbers.front().currency;
  const auto named = currency_of(price.tokens, hint);
  return named ? named : hint;
}

MoneyProblem problem(MoneyProblem::Kind kind, std::string_view text, std::string_view what) {
  return {kind, quoted(text) + " " + std::string(what), {}};
}

MoneyProblem ambiguous(const PriceText& price, std::string_view text) {
  const bool several = price.numbers.size() > 1;
  auto found = problem(
      MoneyProblem::Kind::ambiguous, text,
      several
          ? "holds several amounts: keep the one that is the price"
          : "can be read in more than one way: write the amount with digits and one decimal sign");
  for (const PriceNumber& number : price.numbers) {
    for (const PlainNumber& reading : number.readings) {
      found.readings.push_back(decimal_text(reading));
    }
  }
  return found;
}

MoneyProblem no_currency(std::string_view text, bool signed_text) {
  return problem(MoneyProblem::Kind::no_currency, text,
                 signed_text ? "has a currency sign that does not say which currency is meant: "
                               "name one by its ISO 4217 code, for instance EUR"
                             : "has no currency: name one for the column or the shop");
}

/// All digits of the amount in minor units; nothing when the number has more digits than that.
std::optional<std::string> minor_digits(const PlainNumber& number, int exponent) {
  std::string digits = number.whole;
  const auto places = static_cast<std::size_t>(exponent);
  std::string fraction = number.fraction;
  while (fraction.size() > places && fraction.back() == '0') fraction.pop_back();
  if (fraction.size() > places) return std::nullopt;
  fraction.append(places - fraction.size(), '0');
  return digits + fraction;
}

std::optional<std::int64_t> to_integer(std::string_view digits) {
  std::int64_t value = 0;
  const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
  return error == std::errc() && end == digits.data() + digits.size() ? std::optional(value)
                                                                      : std::nullopt;
}

MoneyProblem too_precise(const PlainNumber& number, std::string_view text, Currency currency) {
  auto found = problem(MoneyProblem::Kind::too_precise, text,
                       "has more decimal digits than " + std::string(currency.code()) + " has (" +
                           std::to_string(currency.exponent()) +
                           "): round it, or mark the separator as thousands");
  found.readings = {decimal_text(number)};
  const bool one_group = number.fraction.size() == 3 && number.whole.size() <= 3;
  if (one_group && number.whole != "0") found.readings.push_back(number.whole + number.fraction);
  return found;
}

MoneyResult to_money(const PlainNumber& number, std::string_view text, Currency currency) {
  const auto digits = minor_digits(number, currency.exponent());
  if (!digits) return too_precise(number, text, currency);
  const auto minor = to_integer(*digits);
  if (minor) return Money{*minor, currency};
  return problem(MoneyProblem::Kind::out_of_range, text,
                 "is too large for a price: check the text");
}

MoneyResult parse_general(std::string_view text, const MoneyHints& hints) {
  const PriceText price = read_price_text(text, hints);
  const bool free = price.numbers.empty() && says_free(price);
  if (price.numbers.empty() && !free) {
    return problem(MoneyProblem::Kind::no_amount, text, "has no price: give an amount in digits");
  }
  const PriceNumber* number = clear_price(price);
  if (number == nullptr && !free) return ambiguous(price, text);
  if (!free && number->negative) {
    return problem(MoneyProblem::Kind::negative, text, "is negative: a price is zero or more");
  }
  const auto currency = price_currency(price, hints.currency);
  if (!currency) return no_currency(text, has_sign(price.tokens));
  return free ? MoneyResult(Money{0, *currency})
              : to_money(number->readings.front(), text, *currency);
}

}  // namespace

MoneyResult parse_money(std::string_view text, const MoneyHints& hints) {
  if (const auto money = parse_short(text, hints.currency)) return *money;
  if (text.size() > kMaxPriceBytes) {
    return problem(MoneyProblem::Kind::out_of_range, text,
                   "is longer than a price (" + std::to_string(kMaxPriceBytes) + " bytes)");
  }
  return parse_general(text, hints);
}

std::optional<DecimalAmount> parse_amount(std::string_view text, const MoneyHints& hints) {
  if (const auto plain = scan_plain(text)) return DecimalAmount{plain->unscaled, plain->scale};
  if (text.size() > kMaxPriceBytes) return std::nullopt;
  const PriceText price = read_price_text(text, hints);
  if (price.numbers.empty() && says_free(price)) return DecimalAmount{};
  const PriceNumber* number = clear_price(price);
  if (number == nullptr) return std::nullopt;
  const PlainNumber& plain = number->readings.front();
  const auto unscaled = to_integer(plain.whole + plain.fraction);
  if (!unscaled) return std::nullopt;
  return DecimalAmount{number->negative ? -*unscaled : *unscaled,
                       static_cast<int>(plain.fraction.size())};
}

std::optional<Currency> find_currency(std::string_view text, std::optional<Currency> hint) {
  if (text.size() > kMaxPriceBytes || scan_plain(text)) return std::nullopt;
  return currency_of(price_tokens(fold_price_text(text)), hint);
}

std::optional<char> proven_decimal_sign(std::string_view text) {
  if (const auto plain = scan_plain(text)) {
    return plain->point == 0 ? std::nullopt : std::optional(plain->point);
  }
  if (text.size() > kMaxPriceBytes) return std::nullopt;
  const std::u32string chars = fold_price_text(text);
  std::optional<char> proven;
  for (const PriceToken& token : price_tokens(chars)) {
    if (token.kind != TokenKind::number) continue;
    const std::u32string_view digits(chars.data() + token.begin, token.end - token.begin);
    const auto sign = proven_sign_of(digits);
    if (!sign) continue;
    if (proven && proven != sign) return std::nullopt;
    proven = sign;
  }
  return proven;
}

}  // namespace rangebook

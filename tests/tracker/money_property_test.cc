// Random amounts written in many ways are read back or refused as ambiguous, never misread. The
// seed is fixed; RANGEBOOK_SEED sets another.
#include <gtest/gtest.h>

#include <cstdlib>
#include <string>

#include "tests/bench/random.h"
#include "tracker/money_parser.h"

namespace rangebook {
namespace {

using bench::Random;

constexpr std::uint64_t kSeed = 20260901;
constexpr std::uint64_t kRounds = 40000;

std::uint64_t seed() {
  const char* given = std::getenv("RANGEBOOK_SEED");
  return given == nullptr ? kSeed : std::strtoull(given, nullptr, 10);
}

struct Style {
  const char* group;
  const char* point;
};
constexpr Style kStyles[] = {{",", "."},      {".", ","},      {"'", "."}, {"’", ","}, {" ", ","},
                             {"\u00A0", ","}, {"\u202F", ","}, {" ", "."}, {"", "."},  {"", ","}};
struct Sign {
  const char* code;
  const char* text;
};
constexpr Sign kSigns[] = {{"EUR", "€"},   {"GBP", "£"},    {"USD", "$"},   {"SEK", "kr"},
                           {"PLN", "zł"},  {"CZK", "Kč"},   {"CHF", "CHF"}, {"JPY", "円"},
                           {"JPY", "JPY"}, {"HUF", "Ft"},   {"KWD", "KD"},  {"OMR", "OMR"},
                           {"BRL", "R$"},  {"RUB", "руб."}, {"ISK", "kr."}, {"CLF", "CLF"}};

std::string grouped(std::string whole, const char* group) {
  for (std::size_t at = whole.size(); at > 3;) whole.insert(at -= 3, group);
  return whole;
}

/// The amount in one style; a fraction of zeros may be left out, as shops do.
std::string number_text(const Money& money, const Style& style, bool short_form) {
  const std::string plain = decimal_text(money);
  const auto point = plain.find('.');
  const std::string whole = grouped(plain.substr(0, point), style.group);
  if (point == std::string::npos) return whole;
  const std::string fraction = plain.substr(point + 1);
  const bool zeros = fraction.find_first_not_of('0') == std::string::npos;
  return zeros && short_form ? whole : whole + style.point + fraction;
}

std::string priced(Random& random, const std::string& number, const char* sign) {
  switch (random.below(5)) {
    case 0:
      return sign + number;
    case 1:
      return std::string(sign) + " " + number;
    case 2:
      return number + sign;
    case 3:
      return number + "\u00A0" + sign;
    default:
      return number;
  }
}

/// Amounts of every length are as likely as each other; half of them are whole units.
Money random_money(Random& random, Currency currency) {
  MinorUnits minor = random.below(1000);
  for (std::uint32_t more = random.below(4); more > 0; --more)
    minor = minor * 10 + random.below(10);
  if (random.below(2) == 0) {
    for (int i = 0; i < currency.exponent(); ++i) minor *= 10;
  }
  return {minor, currency};
}

TEST(MoneyProperty, WrittenAmountsAreReadBackOrRefused) {
  std::uint64_t read = 0;
  for (std::uint64_t round = 0; round < kRounds; ++round) {
    Random random(seed(), round, 1);
    const Sign& sign = random.one_of(kSigns);
    const Money money = random_money(random, *Currency::from_code(sign.code));
    const auto number = number_text(money, random.one_of(kStyles), random.below(2) == 0);
    const std::string text = priced(random, number, sign.text);
    const auto result = parse_money(text, {money.currency, std::nullopt});
    if (const auto* back = std::get_if<Money>(&result)) {
      ++read;
      ASSERT_EQ(to_string(*back), to_string(money)) << text << ", round " << round;
    } else {
      ASSERT_EQ(std::get<MoneyProblem>(result).kind, MoneyProblem::Kind::ambiguous) << text;
    }
  }
  EXPECT_GT(read, kRounds * 9 / 10);
}

TEST(MoneyProperty, TheStyleOfTheDocumentLeavesNothingAmbiguousButSpacedPairs) {
  for (std::uint64_t round = 0; round < kRounds; ++round) {
    Random random(seed(), round, 2);
    const Sign& sign = random.one_of(kSigns);
    const Money money = random_money(random, *Currency::from_code(sign.code));
    const Style& style = kStyles[random.below(4)];
    const std::string text = number_text(money, style, random.below(2) == 0);
    const MoneyHints hints{money.currency, *style.point};
    const auto result = parse_money(text, hints);
    const auto* back = std::get_if<Money>(&result);
    ASSERT_NE(back, nullptr) << text << ", round " << round;
    ASSERT_EQ(to_string(*back), to_string(money)) << text << ", round " << round;
  }
}

/// Random strings of the characters prices are made of.
std::string noise(Random& random) {
  constexpr const char* kPieces[] = {"0",    "1", "9",  "12", "299",  "000", ".",   ",",
                                     " ",    "'", "-",  "€",  "£",    "$",   "kr",  "EUR",
                                     "%",    "(", ")",  "/",  "x",    "was", "now", "\u00A0",
                                     "\xFF", "٣", "万", ":",  "free", "e5"};
  std::string text;
  for (std::uint32_t count = random.below(12); count > 0; --count) text += random.one_of(kPieces);
  return text;
}

TEST(MoneyProperty, NoiseNeverGivesANegativeOrChangingPrice) {
  for (std::uint64_t round = 0; round < kRounds; ++round) {
    Random random(seed(), round, 3);
    const std::string text = noise(random);
    const MoneyHints hints{Currency::from_code("EUR"), std::nullopt};
    const auto result = parse_money(text, hints);
    const auto* money = std::get_if<Money>(&result);
    if (money == nullptr) continue;
    ASSERT_GE(money->minor, 0) << text;
    const auto again = parse_money(to_string(*money), hints);
    ASSERT_TRUE(std::holds_alternative<Money>(again)) << text;
    ASSERT_EQ(to_string(std::get<Money>(again)), to_string(*money)) << text;
  }
}

}  // namespace
}  // namespace rangebook

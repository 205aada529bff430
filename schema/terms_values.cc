// Amounts, shares, dates, spans and windows of terms as text. Lists stand in terms_lists.cc.
#include "schema/terms_values.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "schema/embedded.h"
#include "schema/terms_names.h"

namespace rangebook {
namespace {

bool is_blank(char c) { return static_cast<unsigned char>(c) <= ' '; }
bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// A whole number of the text's digits alone.
std::optional<int> read_count(std::string_view text) {
  text = trimmed(text);
  if (text.empty() || text.size() > 6) return std::nullopt;
  int value = 0;
  for (const char c : text) {
    if (!is_digit(c)) return std::nullopt;
    value = value * 10 + (c - '0');
  }
  return value <= kMaxTermsCount ? std::optional(value) : std::nullopt;
}

/// Cuts a leading word (and the blank behind it) off; false if the text begins otherwise.
bool take(std::string_view& text, std::string_view word) {
  if (!text.starts_with(word)) return false;
  const auto rest = text.substr(word.size());
  if (!rest.empty() && !is_blank(rest.front())) return false;
  text = trimmed(rest);
  return true;
}

bool take_last(std::string_view& text, std::string_view word) {
  if (!text.ends_with(word)) return false;
  const auto rest = text.substr(0, text.size() - word.size());
  if (!rest.empty() && !is_blank(rest.back())) return false;
  text = trimmed(rest);
  return true;
}

/// A currency by code, or by a sign that means one currency or one before all others.
std::optional<Currency> currency_of(std::string_view sign) {
  if (const auto code = Currency::from_code(sign)) return code;
  static const auto rows = table_rows("tables/currency_signs.tsv");
  const std::string lower = plain_words(sign);
  for (const auto& row : rows) {
    if (row.at(0) != lower || (row.at(1) != "own" && row.at(1) != "usual")) continue;
    return Currency::from_code(row.at(2).substr(0, 3));
  }
  return std::nullopt;
}

/// Digits with at most one decimal sign and groups of three, as minor units.
std::optional<MinorUnits> read_minor(std::string_view text, int exponent) {
  const auto last = text.find_last_of(".,");
  const bool both = text.find('.') != text.npos && text.find(',') != text.npos;
  std::string whole;
  std::string part;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] == '.' || text[i] == ',') {
      if (i != last && (!both || text[i] == text[last])) return std::nullopt;
      if (i != last && (i == 0 || text.find_first_of(".,", i + 1) - i != 4)) return std::nullopt;
    } else if (!is_digit(text[i])) {
      return std::nullopt;
    } else {
      (last != text.npos && i > last ? part : whole) += text[i];
    }
  }
  if (whole.empty() || whole.size() > 10) return std::nullopt;
  if (last != text.npos && part.size() != static_cast<std::size_t>(exponent)) return std::nullopt;
  part.resize(static_cast<std::size_t>(exponent), '0');
  MinorUnits minor = 0;
  for (const char c : whole + part) minor = minor * 10 + (c - '0');
  return minor <= kMaxTermsAmount ? std::optional(minor) : std::nullopt;
}

std::optional<DayUnit> take_unit(std::string_view& text, int& factor) {
  struct Unit {
    std::string_view words;
    DayUnit unit;
    int factor;
  };
  static constexpr std::array kUnits{Unit{"working days", DayUnit::working_days, 1},
                                     Unit{"working day", DayUnit::working_days, 1},
                                     Unit{"business days", DayUnit::working_days, 1},
                                     Unit{"business day", DayUnit::working_days, 1},
                                     Unit{"days", DayUnit::days, 1},
                                     Unit{"day", DayUnit::days, 1},
                                     Unit{"weeks", DayUnit::days, 7},
                                     Unit{"week", DayUnit::days, 7},
                                     Unit{"months", DayUnit::months, 1},
                                     Unit{"month", DayUnit::months, 1},
                                     Unit{"years", DayUnit::months, 12},
                                     Unit{"year", DayUnit::months, 12}};
  for (const auto& one : kUnits) {
    if (!take_last(text, one.words)) continue;
    factor = one.factor;
    return one.unit;
  }
  return std::nullopt;
}

std::string unit_text(int count, DayUnit unit) {
  auto words = to_string(unit);
  if (count == 1) words.remove_suffix(1);
  return std::string(words);
}

template <typename Enum, std::size_t N>
std::optional<Enum> read_name(const NameTable<Enum, N>& table, std::string_view text) {
  std::string name = plain_words(text);
  std::replace(name.begin(), name.end(), '-', ' ');
  return value_of(table, name);
}

/// Bounds without a unit: `3-5`, `up to 5`, `from 3`, `5`.
bool read_bounds(std::string_view text, DaySpan& span) {
  if (take(text, "up to")) {
    span.max = read_count(text);
    return span.max.has_value();
  }
  if (take(text, "from")) {
    span.min = read_count(text);
    return span.min.has_value();
  }
  auto between = text.find('-');
  std::size_t width = 1;
  if (between == text.npos && (between = text.find(" to ")) != text.npos) width = 4;
  span.min = read_count(text.substr(0, between));
  span.max = between == text.npos ? span.min : read_count(text.substr(between + width));
  return span.min && span.max && *span.min <= *span.max;
}

std::optional<unsigned> month_of(std::string_view word) {
  static constexpr std::array<std::string_view, 12> kLong{
      "january", "february", "march",     "april",   "may",      "june",
      "july",    "august",   "september", "october", "november", "december"};
  for (std::size_t i = 0; i < kLong.size(); ++i) {
    if (word.size() >= 3 && kLong[i].starts_with(word)) return static_cast<unsigned>(i + 1);
  }
  return std::nullopt;
}

}  // namespace

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && is_blank(text.front())) text.remove_prefix(1);
  while (!text.empty() && is_blank(text.back())) text.remove_suffix(1);
  return text;
}

std::string plain_words(std::string_view text) {
  std::string words;
  for (const char c : trimmed(text)) {
    if (is_blank(c)) {
      if (words.back() != ' ') words += ' ';
    } else {
      words += c == '_' ? '-' : c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c;
    }
  }
  return words;
}

std::optional<Money> read_money(std::string_view text, std::optional<Currency> home) {
  text = trimmed(text);
  std::string_view number = text;
  if (plain_words(text) == "free") number = "0";
  const auto first = number.find_first_of("0123456789");
  const auto last = number.find_last_of("0123456789");
  if (first == number.npos) return std::nullopt;
  const auto before = trimmed(number.substr(0, first));
  const auto behind = trimmed(number.substr(last + 1));
  if (!before.empty() && !behind.empty()) return std::nullopt;
  const auto sign = before.empty() ? behind : before;
  const auto currency = sign.empty() ? home : currency_of(sign);
  if (!currency) return std::nullopt;
  const auto minor = read_minor(number.substr(first, last - first + 1), currency->exponent());
  if (!minor) return std::nullopt;
  return Money{*minor, *currency};
}

std::optional<std::int32_t> read_share(std::string_view text) {
  text = trimmed(text);
  if (!text.ends_with('%')) return std::nullopt;
  text = trimmed(text.substr(0, text.size() - 1));
  const auto point = text.find_first_of(".,");
  std::string part(point == text.npos ? std::string_view{} : text.substr(point + 1));
  if (point != text.npos && (part.empty() || part.size() > 2)) return std::nullopt;
  part.resize(2, '0');
  const auto whole = read_count(text.substr(0, point));
  const auto rest = read_count(part);
  if (!whole || !rest || *whole > 100 || *whole * 100 + *rest > 10'000) return std::nullopt;
  return *whole * 100 + *rest;
}

std::string share_text(std::int32_t hundredths) {
  std::string text = fmt::format("{}.{:02}", hundredths / 100, hundredths % 100);
  while (text.back() == '0') text.pop_back();
  if (text.back() == '.') text.pop_back();
  return text + "%";
}

std::optional<SeasonDay> read_season_day(std::string_view text) {
  SeasonDay result;
  if (const auto whole = parse_day(trimmed(text))) {
    const date::year_month_day parts{*whole};
    result = {static_cast<int>(parts.year()), static_cast<unsigned>(parts.month()),
              static_cast<unsigned>(parts.day())};
    return is_possible(result) ? std::optional(result) : std::nullopt;
  }
  const std::string words = plain_words(text);
  std::string_view rest = words;
  const auto next = [&] {
    const auto end = std::min(rest.find(' '), rest.size());
    const auto word = rest.substr(0, end);
    rest = trimmed(rest.substr(end));
    return word;
  };
  const auto day = read_count(next());
  const auto month = month_of(next());
  if (!day || !month) return std::nullopt;
  result = {std::nullopt, *month, static_cast<unsigned>(*day)};
  if (!rest.empty()) {
    result.year = read_count(rest);
    if (!result.year || rest.size() != 4) return std::nullopt;
  }
  return is_possible(result) ? std::optional(result) : std::nullopt;
}

std::string value_text(bool value) { return value ? "yes" : "no"; }
std::string value_text(const std::string& value) { return value; }
std::string value_text(const Money& value) { return to_string(value); }
std::string value_text(ThresholdBasis value) { return std::string(to_string(value)); }
std::string value_text(CountedFrom value) { return std::string(to_string(value)); }
std::string value_text(Payer value) { return std::string(to_string(value)); }
std::string value_text(ItemRule value) { return std::string(to_string(value)); }

std::string value_text(const Threshold& value) {
  return (value.inclusive ? "" : "over ") + to_string(value.amount);
}

std::string value_text(const DaySpan& value) {
  if (!value.min) {
    return fmt::format("up to {} {}", value.max.value_or(0),
                       unit_text(value.max.value_or(0), value.unit));
  }
  if (!value.max) return fmt::format("from {} {}", *value.min, unit_text(*value.min, value.unit));
  if (*value.min == *value.max) {
    return fmt::format("{} {}", *value.min, unit_text(*value.min, value.unit));
  }
  return fmt::format("{}-{} {}", *value.min, *value.max, to_string(value.unit));
}

std::string value_text(const ReturnWindow& value) {
  if (!value.count) return "no limit";
  std::string text = fmt::format("{} {}", *value.count, unit_text(*value.count, value.unit));
  if (value.from) text += fmt::format(" from {}", to_string(*value.from));
  return text;
}

template <>
std::optional<bool> read_value(std::string_view text, std::optional<Currency> /*home*/) {
  const std::string word = plain_words(text);
  if (word != "yes" && word != "no") return std::nullopt;
  return word == "yes";
}

template <>
std::optional<std::string> read_value(std::string_view text, std::optional<Currency> /*home*/) {
  text = trimmed(text);
  if (text.empty() || text.size() > kMaxTermsText) return std::nullopt;
  if (std::any_of(text.begin(), text.end(),
                  [](char c) { return static_cast<unsigned char>(c) < ' '; })) {
    return std::nullopt;
  }
  return std::string(text);
}

template <>
std::optional<Money> read_value(std::string_view text, std::optional<Currency> home) {
  return read_money(text, home);
}

template <>
std::optional<Threshold> read_value(std::string_view text, std::optional<Currency> home) {
  const std::string words = plain_words(text);
  std::string_view rest = words;
  const bool over = take(rest, "over") || take(rest, "more than");
  if (!over && !take_last(rest, "or more")) take(rest, "from");
  const auto amount = read_money(rest, home);
  if (!amount) return std::nullopt;
  return Threshold{*amount, !over};
}

template <>
std::optional<DaySpan> read_value(std::string_view text, std::optional<Currency> /*home*/) {
  const std::string words = plain_words(text);
  std::string_view rest = words;
  int factor = 1;
  const auto unit = take_unit(rest, factor);
  DaySpan span;
  if (!unit || !read_bounds(rest, span)) return std::nullopt;
  span.unit = *unit;
  if (span.min) *span.min *= factor;
  if (span.max) *span.max *= factor;
  if (std::max(span.min.value_or(0), span.max.value_or(0)) > kMaxTermsCount) return std::nullopt;
  return span;
}

template <>
std::optional<ReturnWindow> read_value(std::string_view text, std::optional<Currency> /*home*/) {
  const std::string words = plain_words(text);
  std::string_view rest = words;
  ReturnWindow window;
  if (rest == "no limit") return window;
  for (const auto& [from, name] : kCountedFroms) {
    if (!take_last(rest, name)) continue;
    if (!take_last(rest, "from")) return std::nullopt;
    window.from = from;
    break;
  }
  int factor = 1;
  const auto unit = take_unit(rest, factor);
  window.count = read_count(rest);
  if (!unit || !window.count) return std::nullopt;
  window.unit = *unit;
  *window.count *= factor;
  if (*window.count > kMaxTermsCount) return std::nullopt;
  return window;
}

template <>
std::optional<ThresholdBasis> read_value(std::string_view text, std::optional<Currency> /*home*/) {
  return read_name(kThresholdBases, text);
}
template <>
std::optional<CountedFrom> read_value(std::string_view text, std::optional<Currency> /*home*/) {
  return read_name(kCountedFroms, text);
}
template <>
std::optional<Payer> read_value(std::string_view text, std::optional<Currency> /*home*/) {
  return read_name(kPayers, text);
}
template <>
std::optional<ItemRule> read_value(std::string_view text, std::optional<Currency> /*home*/) {
  return read_name(kItemRules, text);
}

}  // namespace rangebook

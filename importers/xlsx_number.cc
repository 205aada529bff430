// Serial days by ECMA-376 part 1, 18.17.4: day 60 of the 1900 system is a 29 February that never
// was.
#include "importers/xlsx_number.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstdint>

#include "importers/byte_search.h"
#include "schema/day.h"

namespace rangebook {
namespace {

constexpr std::int64_t kSecondsADay = 86'400;
/// 31 December 9999, the last day of a workbook.
constexpr double kLastSerial = 2'958'465;
/// The day that never was, in the 1900 system.
constexpr std::int64_t kLeapDayOf1900 = 60;
constexpr std::size_t kLongestFormat = 256;
/// A binary fraction holds so many decimal digits whatever they are: such text is not noise.
constexpr std::size_t kSureDigits = 15;

std::optional<double> number_of(std::string_view text) {
  double value = 0;
  const char* const end = text.data() + text.size();
  const auto [at, error] = std::from_chars(text.data(), end, value);
  if (error != std::errc{} || at != end || !std::isfinite(value)) return std::nullopt;
  return value;
}

bool is_as_short_as_can_be(std::string_view text) {
  return text.size() <= kSureDigits && text.find_first_not_of("-0123456789.") == text.npos &&
         (text.find('.') == text.npos || text.back() != '0');
}

bool is_high(char sign) { return static_cast<unsigned char>(sign) >= 0x80; }

/// Which letters with a meaning a format code has outside quotes.
struct Letters {
  bool day_or_year = false;
  bool month = false;  ///< or minutes, beside hours or seconds
  bool clock = false;
  bool percent = false;

  void see(char sign) {
    const char lower = ascii_lower(sign);
    day_or_year = day_or_year || lower == 'd' || lower == 'y';
    month = month || lower == 'm';
    clock = clock || lower == 'h' || lower == 's';
    percent = percent || sign == '%';
  }
};

/// Takes a quoted or bracketed stretch off a format code; false when the code has neither next.
bool take_literal(std::string_view& code, std::string& shown, Letters& letters) {
  if (code.front() == '\\' || code.front() == '_' || code.front() == '*') {
    if (code.front() == '\\') shown += code.substr(1, 1);
    code.remove_prefix(std::min<std::size_t>(2, code.size()));
    return true;
  }
  const char close = code.front() == '"' ? '"' : code.front() == '[' ? ']' : '\0';
  if (close == '\0') return false;
  const std::size_t end = std::min(code.find(close, 1), code.size() - 1);
  std::string_view inside = code.substr(1, end > 0 ? end - 1 : 0);
  if (close == '"') shown += inside;
  if (close == ']' && inside.starts_with('$')) {
    shown += inside.substr(1, std::min(inside.find('-', 1), inside.size()) - 1);
  }
  // `[h]` counts hours beyond a day; `[Red]` and `[>9]` say how to show a number.
  const bool elapsed = close == ']' && inside.find_first_not_of("hHmMsS") == inside.npos;
  letters.clock = letters.clock || (elapsed && !inside.empty());
  code.remove_prefix(end + 1);
  return true;
}

/// The currency among the literal text of a format.
std::string currency_in(std::string_view shown) {
  constexpr std::array<std::string_view, 12> kKnown{"€",   "£",   "EUR", "GBP", "USD", "CHF",
                                                    "SEK", "NOK", "DKK", "PLN", "kr",  "zł"};
  for (const auto known : kKnown) {
    if (shown.find(known) != shown.npos) return std::string(known);
  }
  return shown.find('$') == shown.npos ? std::string{} : "$";
}

std::string clock_text(std::int64_t seconds) {
  return fmt::format("{:02}:{:02}:{:02}", seconds / 3600, seconds / 60 % 60, seconds % 60);
}

}  // namespace

NumberFormat builtin_format(unsigned id) {
  using Kind = NumberFormat::Kind;
  const bool date =
      (id >= 14 && id <= 17) || id == 22 || (id >= 27 && id <= 36) || (id >= 50 && id <= 58);
  const bool time = (id >= 18 && id <= 21) || (id >= 45 && id <= 47);
  const bool percent = id == 9 || id == 10;
  return {date ? Kind::date : time ? Kind::time : percent ? Kind::percent : Kind::number, {}};
}

NumberFormat read_format(std::string_view code) {
  using Kind = NumberFormat::Kind;
  std::string shown;
  Letters letters;
  code = code.substr(0, kLongestFormat);
  while (!code.empty() && code.front() != ';') {
    if (code.starts_with("General")) {
      code.remove_prefix(std::string_view("General").size());
    } else if (!take_literal(code, shown, letters)) {
      letters.see(code.front());
      if (code.front() == '$' || is_high(code.front())) shown += code.front();
      code.remove_prefix(1);
    }
  }
  if (letters.day_or_year || (letters.month && !letters.clock)) return {Kind::date, {}};
  if (letters.clock) return {Kind::time, {}};
  if (letters.percent) return {Kind::percent, {}};
  return {Kind::number, currency_in(shown)};
}

std::string short_number(std::string_view text) {
  if (is_as_short_as_can_be(text)) return std::string(text);
  const auto value = number_of(text);
  if (!value) return std::string(text);
  std::array<char, 400> buffer{};
  const auto [end, error] =
      std::to_chars(buffer.data(), buffer.data() + buffer.size(), *value, std::chars_format::fixed);
  return error == std::errc{} ? std::string(buffer.data(), end) : std::string(text);
}

std::string plain_decimal(std::string_view written) {
  const bool has_exponent = written.find_first_of("eE") != std::string_view::npos;
  const std::string spelled_out = has_exponent ? short_number(written) : std::string();
  std::string_view number = has_exponent ? spelled_out : written;
  const std::size_t point = number.find('.');
  if (point == number.npos) return std::string(number);
  while (number.back() == '0') number.remove_suffix(1);
  if (number.back() == '.') return std::string(number.substr(0, point));
  constexpr std::size_t kGroup = 3;
  std::string_view whole = number.substr(0, point);
  if (whole.starts_with('-')) whole.remove_prefix(1);
  const bool like_thousands = number.size() - point - 1 == kGroup && whole.size() <= kGroup &&
                              !whole.empty() && whole.front() != '0';
  return std::string(number) + (like_thousands ? "0" : "");
}

std::string percent_text(std::string_view text) {
  std::string number = short_number(text);
  if (number.empty() || number.find_first_not_of("-0123456789.") != number.npos) return number;
  const std::size_t point = std::min(number.find('.'), number.size());
  if (point < number.size()) number.erase(point, 1);
  number.append(point + 2 > number.size() ? point + 2 - number.size() : 0, '0');
  number.insert(point + 2, ".");
  while (number.back() == '0') number.pop_back();
  if (number.back() == '.') number.pop_back();
  std::size_t first = number.front() == '-' ? 1 : 0;
  while (first + 1 < number.size() && number[first] == '0' && number[first + 1] != '.') {
    number.erase(first, 1);
  }
  return number + "%";
}

std::optional<std::string> date_text(std::string_view serial, bool from_1904) {
  const auto value = number_of(serial);
  if (!value || *value < 0 || *value > kLastSerial) return std::nullopt;
  const auto all_seconds = static_cast<std::int64_t>(std::llround(*value * kSecondsADay));
  const std::int64_t days = all_seconds / kSecondsADay;
  const std::int64_t seconds = all_seconds % kSecondsADay;
  if (days == 0 && seconds != 0) return clock_text(seconds);
  if (!from_1904 && (days == 0 || days == kLeapDayOf1900)) return std::nullopt;
  const Day epoch = from_1904 ? Day(date::year{1904} / 1 / 1) : Day(date::year{1899} / 12 / 30);
  const std::int64_t early = !from_1904 && days < kLeapDayOf1900 ? 1 : 0;
  const std::string day = to_string(epoch + date::days{days + early});
  return seconds == 0 ? day : day + "T" + clock_text(seconds);
}

}  // namespace rangebook

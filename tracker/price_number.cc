// Readings of a number token: the token is split into digit groups and separators, and the shape
// of the groups decides.
#include "tracker/price_number.h"

#include <algorithm>

#include "tracker/price_text.h"

namespace rangebook {
namespace {

constexpr std::size_t kThousand = 3;  // digits of a group
constexpr std::size_t kCents = 2;

/// Digit groups and the separators between them: always one separator fewer than groups. A leading
/// separator (".75") leaves an empty first group.
struct Groups {
  std::vector<std::u32string_view> digits;
  std::vector<char32_t> separators;
};

bool is_point(char32_t sign) { return sign == U'.' || sign == U',' || sign == kArabicDecimal; }

bool is_glue(char32_t sign) { return is_space(sign) || sign == U'\''; }

std::size_t digits_from(std::u32string_view chars, std::size_t at) {
  std::size_t end = at;
  while (end < chars.size() && is_digit(chars[end])) ++end;
  return end - at;
}

Groups split(std::u32string_view token) {
  Groups groups;
  for (std::size_t at = 0;;) {
    const std::size_t count = digits_from(token, at);
    groups.digits.push_back(token.substr(at, count));
    at += count;
    if (at >= token.size()) return groups;
    groups.separators.push_back(token[at++]);
    while (at < token.size() && is_space(token[at])) ++at;  // "119. 95"
  }
}

std::string ascii(std::u32string_view digits) {
  std::string text;
  for (const char32_t digit : digits) text.push_back(static_cast<char>(digit));
  return text;
}

/// The first `whole_groups` groups as the whole part, the rest as the fraction.
PlainNumber join(const Groups& groups, std::size_t whole_groups) {
  PlainNumber number;
  for (std::size_t i = 0; i < groups.digits.size(); ++i) {
    (i < whole_groups ? number.whole : number.fraction) += ascii(groups.digits[i]);
  }
  number.whole.erase(0, std::min(number.whole.find_first_not_of('0'), number.whole.size()));
  if (number.whole.empty()) number.whole = "0";
  return number;
}

PlainNumber as_integer(const Groups& groups) { return join(groups, groups.digits.size()); }
PlainNumber as_decimal(const Groups& groups) { return join(groups, groups.digits.size() - 1); }

/// Groups 0..count-1 are a whole number in thousands: 1-3 digits without a leading zero, then
/// threes; or in the Indian way, 1-2 digits, twos, then three.
bool are_thousands(const Groups& groups, std::size_t count, bool indian) {
  const auto first = groups.digits.front();
  if (first.empty() || first.size() > kThousand || first.front() == U'0') return false;
  if (groups.digits[count - 1].size() != kThousand && count > 1) return false;
  const auto fits = [&](std::size_t width) {
    return std::all_of(groups.digits.begin() + 1,
                       groups.digits.begin() + static_cast<std::ptrdiff_t>(count - 1),
                       [&](auto group) { return group.size() == width; });
  };
  return count < 2 || fits(kThousand) || (indian && first.size() <= 2 && fits(2));
}

/// One '.' or ',' and nothing else: does its place prove it to be the decimal sign?
bool place_proves_decimal(const Groups& groups) {
  const auto whole = groups.digits.front();
  return groups.digits.back().size() != kThousand || whole.empty() || whole == U"0" ||
         (whole.size() > kThousand && whole.front() != U'0');
}

std::vector<PlainNumber> read_one_point(const Groups& groups, int exponent,
                                        std::optional<char> decimal_sign) {
  const char32_t point = groups.separators.front();
  if (point == kArabicDecimal || place_proves_decimal(groups)) return {as_decimal(groups)};
  if (groups.digits.front().front() == U'0') return {};
  const bool hinted = decimal_sign.has_value();
  const bool hint_is_point = hinted && static_cast<char32_t>(*decimal_sign) == point;
  if (hinted && !hint_is_point) return {as_integer(groups)};
  if (hint_is_point && exponent > 0) return {as_decimal(groups)};
  if (!hinted && exponent < static_cast<int>(kThousand)) return {as_integer(groups)};
  return {as_decimal(groups), as_integer(groups)};
}

/// "1.144.000", "1,23,456" or "1.299.00".
std::vector<PlainNumber> read_repeated_point(const Groups& groups) {
  const std::size_t count = groups.digits.size();
  const bool comma = groups.separators.front() == U',';
  if (are_thousands(groups, count, comma)) return {as_integer(groups)};
  const bool cents = groups.digits.back().size() == kCents;
  if (cents && are_thousands(groups, count - 1, false)) return {as_decimal(groups)};
  return {};
}

/// Different separators: all but the last alike, and the last a point.
std::vector<PlainNumber> read_mixed(const Groups& groups) {
  const auto& signs = groups.separators;
  const char32_t group_sign = signs.front();
  const bool alike = std::all_of(signs.begin(), signs.end() - 1, [&](char32_t sign) {
    return sign == group_sign || (is_space(sign) && is_space(group_sign));
  });
  const bool shaped = are_thousands(groups, groups.digits.size() - 1, group_sign == U',');
  if (!alike || !is_point(signs.back()) || !shaped) return {};
  return {as_decimal(groups)};
}

bool may_be_two_prices(const Groups& groups) {
  return groups.digits.size() == 2 && groups.separators.front() == U' ' &&
         groups.digits[0].size() == kThousand && groups.digits[1].front() != U'0';
}

std::vector<PlainNumber> read_glued(const Groups& groups) {
  if (!are_thousands(groups, groups.digits.size(), false)) return {};
  std::vector<PlainNumber> readings = {as_integer(groups)};
  if (may_be_two_prices(groups)) {
    for (const auto group : groups.digits) readings.push_back({ascii(group), ""});
  }
  return readings;
}

bool all_alike(const std::vector<char32_t>& signs) {
  return std::ranges::all_of(signs, [&](char32_t sign) {
    return sign == signs.front() || (is_space(sign) && is_space(signs.front()));
  });
}

/// The digits of the group after a space at `at`, when it can be a group of thousands.
std::size_t spaced_group(std::u32string_view chars, std::size_t at) {
  const std::size_t count = digits_from(chars, at + 1);
  return count == kThousand ? count : 0;
}

/// "119. 95" at the very end of the text: the cents of a split element.
bool cents_end_text(std::u32string_view chars, std::size_t point) {
  if (chars[point] != U'.' || point + 2 >= chars.size() || !is_space(chars[point + 1]))
    return false;
  return digits_from(chars, point + 2) == kCents && point + 2 + kCents == chars.size();
}

/// The fraction without its trailing zeros.
std::string_view significant(std::string_view fraction) {
  const auto last = fraction.find_last_not_of('0');
  return fraction.substr(0, last == std::string_view::npos ? 0 : last + 1);
}

}  // namespace

std::string decimal_text(const PlainNumber& number) {
  return number.fraction.empty() ? number.whole : number.whole + "." + number.fraction;
}

bool same_amount(const PlainNumber& one, const PlainNumber& other) {
  return one.whole == other.whole && significant(one.fraction) == significant(other.fraction);
}

bool smaller_amount(const PlainNumber& one, const PlainNumber& other) {
  if (one.whole.size() != other.whole.size()) return one.whole.size() < other.whole.size();
  if (one.whole != other.whole) return one.whole < other.whole;
  return significant(one.fraction) < significant(other.fraction);
}

std::size_t number_length(std::u32string_view chars, std::size_t at) {
  if (at >= chars.size()) return 0;
  const bool leading_point = is_point(chars[at]);
  const std::size_t first = leading_point ? 0 : digits_from(chars, at);
  if (!leading_point && first == 0) return 0;
  std::size_t end = at + first;
  bool pointed = false;
  while (end < chars.size()) {
    const char32_t sign = chars[end];
    const bool spaced = is_space(sign);
    if (spaced && (pointed || leading_point || first > kThousand)) break;
    if (!is_point(sign) && !is_glue(sign)) break;
    const std::size_t count = spaced ? spaced_group(chars, end) : digits_from(chars, end + 1);
    if (count == 0) break;
    pointed = pointed || !spaced;
    end += 1 + count;
  }
  if (leading_point && end == at) return 0;
  if (!pointed && end < chars.size() && cents_end_text(chars, end)) end = chars.size();
  return end - at;
}

std::vector<PlainNumber> read_number(std::u32string_view token, int exponent,
                                     std::optional<char> decimal_sign) {
  const Groups groups = split(token);
  if (groups.separators.empty()) return {as_integer(groups)};
  if (!all_alike(groups.separators)) return read_mixed(groups);
  if (!is_point(groups.separators.front())) return read_glued(groups);
  if (groups.separators.size() > 1) return read_repeated_point(groups);
  return read_one_point(groups, exponent, decimal_sign);
}

std::optional<char> proven_sign_of(std::u32string_view token) {
  const Groups groups = split(token);
  if (groups.separators.empty()) return std::nullopt;
  const char32_t last = groups.separators.back();
  if (last != U'.' && last != U',') return std::nullopt;
  if (groups.separators.size() == 1) {
    if (!place_proves_decimal(groups)) return std::nullopt;
  } else if (all_alike(groups.separators) || read_mixed(groups).empty()) {
    return std::nullopt;
  }
  return static_cast<char>(last);
}

}  // namespace rangebook

// Reading and writing GTINs; the check digit is the GS1 modulo 10 sum with weights 3 and 1.
#include "schema/gtin.h"

namespace rangebook {
namespace {

constexpr int kLongest = 14;

bool is_filler(char sign) { return sign == ' ' || sign == '\t' || sign == '-'; }

bool is_gtin_length(int count) { return count == 8 || (count >= 12 && count <= kLongest); }

/// True when the digits, weighted 1, 3, 1, ... from the right, sum to a multiple of ten.
bool check_digit_is_right(std::uint64_t value) {
  std::uint64_t sum = 0;
  for (std::uint64_t weight = 1; value != 0; value /= 10, weight = 4 - weight) {
    sum += weight * (value % 10);
  }
  return sum % 10 == 0;
}

}  // namespace

std::optional<Gtin> Gtin::parse(std::string_view text) {
  std::uint64_t value = 0;
  int count = 0;
  for (const char sign : text) {
    if (is_filler(sign)) continue;
    if (sign < '0' || sign > '9' || ++count > kLongest) return std::nullopt;
    value = value * 10 + static_cast<std::uint64_t>(sign - '0');
  }
  if (!is_gtin_length(count) || value == 0 || !check_digit_is_right(value)) return std::nullopt;
  return Gtin(value);
}

std::string to_string(Gtin gtin) {
  std::string digits = std::to_string(gtin.value());
  const std::size_t width = digits.size() <= 8 ? 8 : digits.size() <= 13 ? 13 : kLongest;
  return std::string(width > digits.size() ? width - digits.size() : 0, '0') + digits;
}

}  // namespace rangebook

// Global Trade Item Number (GS1): the number under the barcode, the best evidence that two
// variants are the same article.
#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace rangebook {

/// A GTIN whose check digit is right, kept as its value: GTIN-8, -12, -13 and -14 of the same
/// number are equal, as GS1 defines them (left-padded with zeros to 14 digits).
class Gtin {
 public:
  /// Reads 8, 12, 13 or 14 digits; spaces, tabs and hyphens are ignored. Nothing when the length
  /// or the check digit is wrong (GS1 General Specifications, section 7.9), and nothing for all
  /// zeros: exports fill empty cells with them, and they would make strangers the same article.
  static std::optional<Gtin> parse(std::string_view text);
  /// From a stored value that was a valid GTIN before.
  static Gtin from_value(std::uint64_t value) { return Gtin(value); }

  std::uint64_t value() const { return value_; }
  auto operator<=>(const Gtin&) const = default;

 private:
  explicit Gtin(std::uint64_t value) : value_(value) {}
  std::uint64_t value_;
};

/// A GTIN that may not be stated, in the space of one: a capture has a million of them. Converts
/// to and from std::optional<Gtin>. No GTIN is all zeros.
class OptionalGtin {
 public:
  OptionalGtin() = default;
  OptionalGtin(std::nullopt_t) {}                    // NOLINT(google-explicit-constructor)
  OptionalGtin(Gtin gtin) : value_(gtin.value()) {}  // NOLINT(google-explicit-constructor)
  OptionalGtin(const std::optional<Gtin>& gtin)      // NOLINT(google-explicit-constructor)
      : value_(gtin ? gtin->value() : 0) {}

  operator std::optional<Gtin>() const {  // NOLINT(google-explicit-constructor)
    return has_value() ? std::optional(Gtin::from_value(value_)) : std::nullopt;
  }
  bool has_value() const { return value_ != 0; }
  explicit operator bool() const { return has_value(); }
  Gtin operator*() const { return Gtin::from_value(value_); }

  bool operator==(const OptionalGtin&) const = default;

 private:
  std::uint64_t value_ = 0;
};

/// The shortest of GTIN-8, -12, -13, -14 forms that holds the value, with leading zeros; 12-digit
/// values are written as GTIN-13.
std::string to_string(Gtin gtin);

}  // namespace rangebook

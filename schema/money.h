// Money: an integer count of minor units and a currency. Never floating point: a price said in
// public has to be the price that was read.
#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace rangebook {

/// Amount in the currency's minor unit (cents, pence; whole yen).
using MinorUnits = std::int64_t;

/// A currency of the ISO 4217 list (schema/tables/currencies.tsv). Cheap to copy and compare.
class Currency {
 public:
  /// By alphabetic code, any case. Nothing if ISO 4217 does not list it.
  static std::optional<Currency> from_code(std::string_view code);

  /// The alphabetic code, for instance `EUR`.
  std::string_view code() const;
  /// Digits of the minor unit by ISO 4217: 2 for EUR, 0 for JPY, 3 for KWD.
  int exponent() const;

  auto operator<=>(const Currency&) const = default;

 private:
  explicit Currency(std::uint16_t row) : row_(row) {}
  std::uint16_t row_;  // row of the embedded table
};

struct Money {
  MinorUnits minor = 0;
  Currency currency;

  auto operator<=>(const Money&) const = default;
};

/// Plain decimal with the currency's own number of digits and a dot: `79.90`, `1200` for JPY.
std::string decimal_text(const Money& money);

/// `79.90 EUR`: unambiguous in any country, the form used in text output.
std::string to_string(const Money& money);

}  // namespace rangebook

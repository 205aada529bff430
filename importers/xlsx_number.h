// The numbers of a sheet as text: without the noise of binary fractions, and as dates where the
// number format says that they are.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace rangebook {

/// How a number of a cell is shown.
struct NumberFormat {
  enum class Kind : std::uint8_t { number, date, time, percent };
  Kind kind = Kind::number;
  std::string currency;  ///< sign or ISO code that the format writes beside the number; else empty

  bool operator==(const NumberFormat&) const = default;
};

/// The formats without a code of their own, by number (ECMA-376 part 1, 18.8.30).
NumberFormat builtin_format(unsigned id);
/// Reads a code such as `#,##0.00\ [$€-407]` or `dd/mm/yyyy`.
NumberFormat read_format(std::string_view code);

/// The shortest decimal form that means the same number: `79.900000000000006` -> `79.9`. Text that
/// is no number stays as it is.
std::string short_number(std::string_view text);

/// A number that is known to have a decimal point, so written that no reader of prices can take the
/// point for one of thousands: `66.387` -> `66.3870`, `79.900` -> `79.9`, `1.5e2` -> `150`. Others
/// stay as they are.
std::string plain_decimal(std::string_view written);

/// Hundredths as a sheet shows them: `0.94` -> `94%`.
std::string percent_text(std::string_view text);

/// A serial day as ISO 8601: `2026-09-01`, with the time where there is one, `2026-09-01T14:30:00`;
/// the time alone for a fraction of the first day. Nothing for what no calendar holds. `from_1904`:
/// the workbook counts days from 1904, as those from old Macintosh computers do.
std::optional<std::string> date_text(std::string_view serial, bool from_1904);

}  // namespace rangebook

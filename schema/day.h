// Calendar days. A capture has a date, not a time: the shop may change within the day, and what
// the stylist says is "as of this date".
#pragma once

#include <date/date.h>

#include <optional>
#include <string>
#include <string_view>

namespace rangebook {

/// A day in the proleptic Gregorian calendar (Howard Hinnant's date library).
using Day = date::sys_days;

/// Reads an ISO 8601 calendar date, `2026-09-01`. Nothing for any other form or an impossible day.
std::optional<Day> parse_day(std::string_view text);

/// `2026-09-01`.
std::string to_string(Day day);

}  // namespace rangebook

// Counting days the way terms do: calendar days, working days, months.
#pragma once

#include "schema/day.h"
#include "schema/order.h"
#include "schema/terms.h"

namespace rangebook {

/// False on Saturdays, Sundays and holidays.
bool is_working_day(Day day, const Holidays& holidays);

/// `count` units after `start`, which is day 0 (`count` 0 or more). Working days: the count-th
/// working day after `start`. Months: the same day of a later month, or its last day where that
/// month is shorter (31 January + 1 month = 28 or 29 February).
Day add_time(Day start, int count, DayUnit unit, const Holidays& holidays);

/// The first day on or after `after` that `day` means; a day with a year means just that one.
/// 29 February without a year means the next leap year's.
Day on_or_after(const SeasonDay& day, Day after);

/// True when `day` lies from `from` to `to`, both included. Without years the span is one of every
/// year and may pass New Year; a missing end is open.
bool within_season(Day day, const std::optional<SeasonDay>& from,
                   const std::optional<SeasonDay>& to);

}  // namespace rangebook

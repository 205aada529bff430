// Day arithmetic by Howard Hinnant's date library.
#include "tracker/calendar.h"

#include <algorithm>

namespace rangebook {
namespace {

constexpr int kYearsToLeapDay = 8;  // 1896 to 1904, 2096 to 2104

date::year_month_day in_year(const SeasonDay& day, date::year year) {
  return year / date::month{day.month} / date::day{day.day};
}

/// The place of a day in any year.
unsigned place(unsigned month, unsigned day) { return month * 32 + day; }
unsigned place(const SeasonDay& day) { return place(day.month, day.day); }

}  // namespace

bool is_working_day(Day day, const Holidays& holidays) {
  const date::weekday weekday(day);
  if (weekday == date::Saturday || weekday == date::Sunday) return false;
  return !std::binary_search(holidays.days.begin(), holidays.days.end(), day);
}

Day add_time(Day start, int count, DayUnit unit, const Holidays& holidays) {
  switch (unit) {
    case DayUnit::days:
      return start + date::days{count};
    case DayUnit::months: {
      const auto then = date::year_month_day(start) + date::months{count};
      return then.ok() ? Day(then) : Day(then.year() / then.month() / date::last);
    }
    case DayUnit::working_days:
      break;
  }
  Day day = start;
  for (int left = count; left > 0;) {
    day += date::days{1};
    if (is_working_day(day, holidays)) --left;
  }
  return day;
}

Day on_or_after(const SeasonDay& day, Day after) {
  if (day.year) {
    const auto exact = in_year(day, date::year{*day.year});
    return exact.ok() ? Day(exact) : Day(exact.year() / exact.month() / date::last);
  }
  const date::year first = date::year_month_day(after).year();
  for (int later = 0; later <= kYearsToLeapDay; ++later) {
    const auto candidate = in_year(day, first + date::years{later});
    if (candidate.ok() && Day(candidate) >= after) return Day(candidate);
  }
  return after;
}

bool within_season(Day day, const std::optional<SeasonDay>& from,
                   const std::optional<SeasonDay>& to) {
  const bool dated = (from && from->year) || (to && to->year);
  if (dated || !from || !to) {
    const date::year_month_day today(day);
    const auto exact = [&](const SeasonDay& bound) {
      return on_or_after(bound, Day(today.year() / date::January / 1));
    };
    if (from && day < exact(*from)) return false;
    return !to || day <= exact(*to);
  }
  const date::year_month_day today(day);
  const unsigned at =
      place(static_cast<unsigned>(today.month()), static_cast<unsigned>(today.day()));
  const unsigned begin = place(*from);
  const unsigned end = place(*to);
  return begin <= end ? begin <= at && at <= end : begin <= at || at <= end;
}

}  // namespace rangebook

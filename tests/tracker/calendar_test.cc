// Counting days. Facts of the Gregorian calendar; the weekdays were checked with `cal` of
// util-linux.
#include "tracker/calendar.h"

#include <gtest/gtest.h>

namespace rangebook {
namespace {

Day day(std::string_view text) { return parse_day(text).value(); }

TEST(Calendar, CalendarDaysPassMonthsAndLeapDays) {
  EXPECT_EQ(add_time(day("2026-11-20"), 28, DayUnit::days, {}), day("2026-12-18"));
  EXPECT_EQ(add_time(day("2028-02-01"), 28, DayUnit::days, {}), day("2028-02-29"));
  EXPECT_EQ(add_time(day("2026-11-20"), 0, DayUnit::days, {}), day("2026-11-20"));
}

TEST(Calendar, AMonthEndsOnTheLastDayOfAShorterOne) {
  EXPECT_EQ(add_time(day("2027-01-31"), 1, DayUnit::months, {}), day("2027-02-28"));
  EXPECT_EQ(add_time(day("2028-01-31"), 1, DayUnit::months, {}), day("2028-02-29"));
  EXPECT_EQ(add_time(day("2026-11-30"), 3, DayUnit::months, {}), day("2027-02-28"));
  EXPECT_EQ(add_time(day("2026-11-15"), 2, DayUnit::months, {}), day("2027-01-15"));
}

TEST(Calendar, WorkingDaysLeaveOutWeekendsAndHolidays) {
  // 20 November 2026 is a Friday.
  EXPECT_EQ(add_time(day("2026-11-20"), 1, DayUnit::working_days, {}), day("2026-11-23"));
  EXPECT_EQ(add_time(day("2026-11-20"), 5, DayUnit::working_days, {}), day("2026-11-27"));
  const Holidays christmas{{day("2026-12-25"), day("2026-12-28")}};
  EXPECT_EQ(add_time(day("2026-12-24"), 1, DayUnit::working_days, christmas), day("2026-12-29"));
  EXPECT_FALSE(is_working_day(day("2026-12-28"), christmas));
  EXPECT_TRUE(is_working_day(day("2026-12-28"), {}));
}

TEST(Calendar, ADayWithoutAYearIsTheNextOne) {
  const SeasonDay january{std::nullopt, 1, 31};
  EXPECT_EQ(on_or_after(january, day("2026-12-10")), day("2027-01-31"));
  EXPECT_EQ(on_or_after(january, day("2027-01-31")), day("2027-01-31"));
  EXPECT_EQ(on_or_after({std::nullopt, 2, 29}, day("2097-01-01")), day("2104-02-29"));
  EXPECT_EQ(on_or_after({2027, 1, 31}, day("2026-12-10")), day("2027-01-31"));
}

TEST(Calendar, SeasonsMayPassNewYear) {
  const SeasonDay november{std::nullopt, 11, 1};
  const SeasonDay january{std::nullopt, 1, 5};
  EXPECT_TRUE(within_season(day("2026-11-01"), november, january));
  EXPECT_TRUE(within_season(day("2027-01-05"), november, january));
  EXPECT_FALSE(within_season(day("2027-01-06"), november, january));
  EXPECT_FALSE(within_season(day("2026-10-31"), november, january));
  EXPECT_TRUE(within_season(day("2026-12-24"), november, SeasonDay{std::nullopt, 12, 24}));
  EXPECT_FALSE(within_season(day("2025-12-01"), SeasonDay{2026, 11, 1}, SeasonDay{2026, 12, 24}));
  EXPECT_TRUE(within_season(day("2026-12-01"), SeasonDay{2026, 11, 1}, SeasonDay{2026, 12, 24}));
  EXPECT_TRUE(within_season(day("2026-12-01"), std::nullopt, SeasonDay{2026, 12, 24}));
}

}  // namespace
}  // namespace rangebook

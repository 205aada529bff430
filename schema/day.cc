// Reading and writing ISO 8601 calendar dates.
#include "schema/day.h"

#include <fmt/format.h>

#include <algorithm>

namespace rangebook {
namespace {

bool is_iso_shape(std::string_view text) {
  constexpr std::string_view kShape = "dddd-dd-dd";
  return text.size() == kShape.size() &&
         std::equal(text.begin(), text.end(), kShape.begin(), [](char sign, char shape) {
           return shape == 'd' ? sign >= '0' && sign <= '9' : sign == shape;
         });
}

unsigned number(std::string_view digits) {
  unsigned value = 0;
  for (const char digit : digits) value = value * 10 + static_cast<unsigned>(digit - '0');
  return value;
}

}  // namespace

std::optional<Day> parse_day(std::string_view text) {
  if (!is_iso_shape(text)) return std::nullopt;
  const date::year_month_day day{date::year{static_cast<int>(number(text.substr(0, 4)))},
                                 date::month{number(text.substr(5, 2))},
                                 date::day{number(text.substr(8, 2))}};
  if (!day.ok()) return std::nullopt;
  return Day{day};
}

std::string to_string(Day day) {
  const date::year_month_day parts{day};
  return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(parts.year()),
                     static_cast<unsigned>(parts.month()), static_cast<unsigned>(parts.day()));
}

}  // namespace rangebook

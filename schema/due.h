// What is due on a day: shops to go back to, picks to look at again.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "schema/capture.h"
#include "schema/day.h"
#include "schema/pick.h"

namespace rangebook {

/// A quarter: shops change at least part of their range that often (common practice, no source).
inline constexpr int kRevisitDays = 90;

struct DueRequest {
  Day on{};
  int every = kRevisitDays;  ///< a shop is due this many days after its last capture
  int ahead = 0;             ///< also what falls due within this many days after `on`
};

struct DueShop {
  Shop shop;
  std::optional<CaptureInfo> last;   ///< nothing: never captured, due at once
  std::optional<CaptureInfo> whole;  ///< the latest that looked at the whole range
  Day due{};                         ///< the day `on` where there is no capture

  bool operator==(const DueShop&) const = default;
};

/// As it stood on `request.on`: later captures and picks do not count.
struct DueList {
  DueRequest request;
  std::vector<DueShop> shops;       ///< longest ago first, never captured before all
  std::vector<FollowedPick> picks;  ///< by review date, then number
  std::size_t shops_later = 0;      ///< not due yet
  std::size_t picks_later = 0;      ///< likewise
  std::size_t picks_undated = 0;    ///< without a review date
  std::optional<Day> next;          ///< the first day on which one of the later falls due
};

}  // namespace rangebook

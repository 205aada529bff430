// Price slopes: one stroke a line from its price then to its price now. Strokes that would lie on
// each other are drawn once; names stand only where there is room, most telling first.
#include <fmt/format.h>

#include <algorithm>
#include <limits>
#include <set>

#include "reports/chart_scale.h"

namespace rangebook {
namespace {

constexpr int kThen = 62;
constexpr int kNow = 168;
constexpr int kNames = kNow + 8;
constexpr int kTop = 24;
constexpr int kBottom = 284;
constexpr std::size_t kNamed = 14;

/// Names with the heights they want, given room from the top down.
struct Names {
  std::set<int> taken;

  bool fits(int y) const {
    return std::none_of(taken.begin(), taken.end(),
                        [y](int other) { return std::abs(other - y) < kTextHeight; });
  }
};

}  // namespace

std::vector<Drawing> draw(const SlopesChart& chart, const NumberStyle& numbers) {
  if (chart.slopes.empty()) return {};
  MinorUnits low = std::numeric_limits<MinorUnits>::max();
  MinorUnits high = 0;
  for (const auto& each : chart.slopes) {
    low = std::min({low, each.then.minor, each.now.minor});
    high = std::max({high, each.then.minor, each.now.minor});
  }
  const Currency currency = chart.slopes.front().now.currency;
  const Scale scale = round_scale(low, high, 6);
  Drawing sheet;
  sheet.height = kBottom + 12;
  sheet.text("quiet", kThen, 12, "then", kThen, Mark::Anchor::middle);
  sheet.text("quiet", kNow, 12, "now", kThen, Mark::Anchor::middle);
  for (std::int64_t mark = scale.first; mark <= scale.last; mark += scale.step) {
    const int y = scale.at(mark, kBottom, kTop);
    sheet.line("grid", kThen, y, kNow, y);
    sheet.text("quiet", kThen - 6, y + 4, round_money({mark, currency}, numbers), kThen - 6,
               Mark::Anchor::end);
  }
  std::set<std::pair<int, int>> drawn;
  Names names;
  std::size_t named = 0;
  for (const auto& each : chart.slopes) {
    const int then = scale.at(each.then.minor, kBottom, kTop);
    const int now = scale.at(each.now.minor, kBottom, kTop);
    const bool names_it = named < kNamed && names.fits(now);
    if (!names_it && !drawn.insert({then, now}).second) continue;
    drawn.insert({then, now});
    sheet.line(names_it ? "slope" : "slope-other", kThen, then, kNow, now);
    if (!names_it) continue;
    ++named;
    names.taken.insert(now);
    sheet.dot("then", kThen, then, 3);
    sheet.dot("now", kNow, now, 3);
    const std::string price = numbers.money(each.now);
    const int room = kSheetWidth - kNames - text_width(price) - 8;
    sheet.text("", kNames, now + 4, each.label, room);
    sheet.text("quiet", kSheetWidth, now + 4, price, kSheetWidth - kNames, Mark::Anchor::end);
  }
  return {std::move(sheet)};
}

}  // namespace rangebook

// Price ladders: a rail from the entry price to the top, a box over the middle half of the lines
// and a rung at the median; then above, now below.
#include <algorithm>
#include <limits>

#include "reports/chart_scale.h"

namespace rangebook {
namespace {

constexpr int kFrom = 4;
constexpr int kTo = kSheetWidth - 4;
constexpr int kHead = 24;  // scale
constexpr int kRow = 58;
constexpr std::size_t kRows = 10;  // a sheet

struct Sketch {
  const Scale& scale;
  const NumberStyle& numbers;

  int x(MinorUnits amount) const { return scale.at(amount, kFrom, kTo); }

  void ladder(Drawing& sheet, const PriceLadder& prices, std::string_view style, int y) const {
    constexpr int kTall = 10;
    const int left = x(prices.lower_quartile);
    const int right = std::max(left + 2, x(prices.upper_quartile));
    const std::string rail = std::string(style) + "-rail";
    sheet.line(rail, x(prices.entry), y + kTall / 2, left, y + kTall / 2);
    sheet.line(rail, right, y + kTall / 2, x(prices.top), y + kTall / 2);
    sheet.line(rail, x(prices.entry), y + 1, x(prices.entry), y + kTall - 1);
    sheet.line(rail, x(prices.top), y + 1, x(prices.top), y + kTall - 1);
    sheet.box(style, left, y, right - left, kTall);
    const int middle = x(prices.median);
    sheet.line(std::string(style) + "-rung", middle, y - 1, middle, y + kTall + 1);
  }

  /// `from £35.00, then £39.00`.
  std::string entry(const LadderChart::Row& row) const {
    const auto money = [this](const PriceLadder& side) {
      return numbers.money({side.entry, side.currency});
    };
    if (!row.now) return "then from " + money(*row.then);
    if (!row.then) return "from " + money(*row.now);
    if (row.now->entry == row.then->entry) return "from " + money(*row.now) + ", as then";
    return "from " + money(*row.now) + ", then " + money(*row.then);
  }

  void row(Drawing& sheet, const LadderChart::Row& row, int y) const {
    const std::string prices = entry(row);
    const int taken = text_width(prices);
    sheet.text("", 0, y + 13, row.label, kSheetWidth - taken - 10);
    sheet.text("quiet", kSheetWidth, y + 13, prices, kSheetWidth, Mark::Anchor::end);
    if (row.then) ladder(sheet, *row.then, "then", y + 22);
    if (row.now) ladder(sheet, *row.now, "now", y + 36);
  }
};

}  // namespace

std::vector<Drawing> draw(const LadderChart& chart, const NumberStyle& numbers) {
  MinorUnits low = std::numeric_limits<MinorUnits>::max();
  MinorUnits high = 0;
  std::optional<Currency> currency;
  for (const auto& row : chart.rows) {
    for (const auto& side : {row.then, row.now}) {
      if (!side) continue;
      low = std::min(low, side->entry);
      high = std::max(high, side->top);
      currency = side->currency;
    }
  }
  if (!currency) return {};
  const Scale scale = price_scale(low, high, *currency, kTo - kFrom, numbers);
  const Sketch sketch{scale, numbers};
  std::vector<Drawing> sheets;
  for (std::size_t i = 0; i < chart.rows.size(); ++i) {
    if (i % kRows == 0) {
      sheets.emplace_back();
      sheets.back().height = kHead;
      draw_scale(sheets.back(), scale, *currency, kFrom, kTo, kHead - 8, numbers);
    }
    sketch.row(sheets.back(), chart.rows[i], sheets.back().height);
    sheets.back().height += kRow;
  }
  return sheets;
}

}  // namespace rangebook

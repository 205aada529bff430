// Marks of a price scale.
#include "reports/chart_scale.h"

#include <algorithm>

namespace rangebook {

std::string round_money(const Money& money, const NumberStyle& numbers) {
  std::string text = numbers.money(money);
  if (!numbers.plain() || money.currency.exponent() == 0) return text;
  const std::string zeros =
      "." + std::string(static_cast<std::size_t>(money.currency.exponent()), '0');
  const auto place = text.find(zeros);
  if (place != std::string::npos) text.erase(place, zeros.size());
  return text;
}

Scale price_scale(MinorUnits low, MinorUnits high, Currency currency, int room,
                  const NumberStyle& numbers) {
  constexpr int kMost = 5;
  constexpr int kBetween = 10;
  Scale scale;
  for (int most = kMost; most > 0; --most) {
    scale = round_scale(low, high, most);
    const int widest = text_width(round_money({scale.last, currency}, numbers)) + kBetween;
    const auto marks = static_cast<int>((scale.last - scale.first) / scale.step) + 1;
    if (widest * marks <= room) break;
  }
  return scale;
}

void draw_scale(Drawing& sheet, const Scale& scale, Currency currency, int from, int to, int y,
                const NumberStyle& numbers) {
  sheet.line("axis", from, y, to, y);
  for (std::int64_t mark = scale.first; mark <= scale.last; mark += scale.step) {
    const int x = scale.at(mark, from, to);
    auto anchor = Mark::Anchor::middle;
    if (mark == scale.first) anchor = Mark::Anchor::start;
    if (mark == scale.last) anchor = Mark::Anchor::end;
    sheet.line("axis", x, y, x, y + 4);
    sheet.text("quiet", x, y - 4, round_money({mark, currency}, numbers), to - from, anchor);
  }
}

}  // namespace rangebook

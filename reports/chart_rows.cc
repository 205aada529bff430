// Pictures made of rows: shares, coverage, terms over time.
#include <fmt/format.h>

#include <algorithm>

#include "reports/chart_scale.h"

namespace rangebook {
namespace {

/// Lays rows out on sheets of at most `most` rows.
template <typename Row, typename DrawRow>
std::vector<Drawing> sheets_of(const std::vector<Row>& rows, std::size_t most, DrawRow draw_row) {
  std::vector<Drawing> sheets;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (i % most == 0) sheets.emplace_back();
    draw_row(sheets.back(), rows[i]);
  }
  return sheets;
}

std::string_view seen_words(CoverageChart::Seen seen) {
  switch (seen) {
    case CoverageChart::Seen::whole:
      return "looked at";
    case CoverageChart::Seen::part:
      return "in part";
    case CoverageChart::Seen::outside:
      return "not all";
    case CoverageChart::Seen::unlooked:
      return "not";
  }
  return {};
}

void coverage_cell(Drawing& sheet, int x, int y, CoverageChart::Seen seen) {
  constexpr int kWidth = 74;
  constexpr int kTall = 18;
  const bool whole = seen == CoverageChart::Seen::whole;
  const bool none = seen == CoverageChart::Seen::unlooked;
  sheet.box(whole ? "now" : none ? "unlooked" : "then", x, y, kWidth, kTall);
  sheet.text(whole ? "reversed" : "", x + kWidth / 2, y + 13, seen_words(seen), kWidth,
             Mark::Anchor::middle);
}

}  // namespace

std::vector<Drawing> draw(const BarsChart& chart, const NumberStyle& numbers) {
  constexpr std::size_t kRows = 14;
  const std::string outlined = fmt::format(", {} ", side_words(chart.sides).outlined);
  const std::string filled = chart.sides == ChartSides::then_now ? "" : "in stock ";
  return sheets_of(chart.rows, kRows, [&](Drawing& sheet, const BarsChart::Row& row) {
    const int y = sheet.height;
    const auto length = [](std::uint32_t per_mille) {
      return static_cast<int>(std::min(per_mille, 1000U)) * (kSheetWidth - 2) / 1000;
    };
    const std::string shares =
        filled + numbers.percent(row.now, false) + outlined + numbers.percent(row.then, false);
    const int taken = text_width(shares);
    sheet.text("", 0, y + 13, row.label, kSheetWidth - taken - 10);
    sheet.text("quiet", kSheetWidth, y + 13, shares, kSheetWidth, Mark::Anchor::end);
    sheet.box("then", 1, y + 18, std::max(length(row.then), row.then > 0 ? 2 : 0), 7);
    sheet.box("now", 1, y + 27, std::max(length(row.now), row.now > 0 ? 2 : 0), 7);
    sheet.height += 44;
  });
}

std::vector<Drawing> draw(const CoverageChart& chart, const NumberStyle&) {
  constexpr std::size_t kRows = 20;
  constexpr int kThen = 200;
  constexpr int kNow = 284;
  return sheets_of(chart.rows, kRows, [](Drawing& sheet, const CoverageChart::Row& row) {
    if (sheet.height == 0) {
      sheet.text("quiet", kThen, 12, "then", kThen);
      sheet.text("quiet", kNow, 12, "now", kThen);
      sheet.height = 18;
    }
    sheet.text("", 0, sheet.height + 13, row.label, kThen - 10);
    coverage_cell(sheet, kThen, sheet.height, row.then);
    coverage_cell(sheet, kNow, sheet.height, row.now);
    sheet.height += 24;
  });
}

std::vector<Drawing> draw(const TimelineChart& chart, const NumberStyle& numbers) {
  constexpr std::size_t kRows = 8;
  Day first = chart.last;
  for (const auto& row : chart.rows) {
    for (const auto& stay : row.stays) first = std::min(first, stay.from);
  }
  const int days = std::max(1, static_cast<int>((chart.last - first).count()));
  const auto place = [first, days](Day day) {
    return 1 + static_cast<int>(std::int64_t{(day - first).count()} * (kSheetWidth - 2) / days);
  };
  return sheets_of(chart.rows, kRows, [&](Drawing& sheet, const TimelineChart::Row& row) {
    sheet.text("", 0, sheet.height + 13, row.label, kSheetWidth);
    sheet.height += 18;
    for (std::size_t i = 0; i < row.stays.size(); ++i) {
      const bool is_last = i + 1 == row.stays.size();
      const int from = std::min(place(row.stays[i].from), kSheetWidth - 4);
      const int to = is_last ? kSheetWidth - 1 : place(row.stays[i + 1].from);
      sheet.box(is_last ? "now" : "then", from, sheet.height, std::max(3, to - from - 2), 8);
    }
    sheet.height += 10;
    for (const auto& stay : row.stays) {
      sheet.text("quiet", 0, sheet.height + 12, numbers.day(stay.from) + ": " + stay.words,
                 kSheetWidth);
      sheet.height += kTextHeight;
    }
    sheet.height += 8;
  });
}

std::vector<Drawing> draw(const CostsChart& chart, const NumberStyle& numbers) {
  constexpr std::size_t kRows = 14;
  constexpr int kFrom = 1;
  constexpr int kTo = kSheetWidth - 18;  // room for an open end
  constexpr int kTall = 10;
  MinorUnits most = 1;
  for (const auto& row : chart.rows) most = std::max(most, row.delivery + row.way_back);
  const Scale scale{0, 1, most};
  return sheets_of(chart.rows, kRows, [&](Drawing& sheet, const CostsChart::Row& row) {
    const int y = sheet.height;
    const MinorUnits sum = row.delivery + row.way_back;
    const std::string said =
        (row.complete ? "" : "at least ") + numbers.money({sum, chart.currency});
    sheet.text("", 0, y + 13, row.label, kSheetWidth - text_width(said) - 10);
    sheet.text("quiet", kSheetWidth, y + 13, said, kSheetWidth, Mark::Anchor::end);
    const int middle = scale.at(row.delivery, kFrom, kTo);
    const int end = scale.at(sum, kFrom, kTo);
    sheet.box("now", kFrom, y + 18, middle - kFrom, kTall);
    sheet.box("then", middle, y + 18, end - middle, kTall);
    if (sum == 0) sheet.line("axis", kFrom, y + 18, kFrom, y + 18 + kTall);
    for (int i = 1; !row.complete && i <= 3; ++i) {
      const int x = end + i * 4;
      sheet.line("axis", x, y + 18, x, y + 18 + kTall);
    }
    sheet.height += 40;
  });
}

}  // namespace rangebook

// How the lines then became the lines now: two columns of one scale, what is carried between them.
#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "reports/chart_drawing.h"
#include "reports/wording.h"

namespace rangebook {
namespace {

constexpr int kTall = 150;  // the larger of both ranges
constexpr int kTop = 22;
constexpr int kColumn = 18;
constexpr int kThen = 4;
constexpr int kNow = kSheetWidth - 4 - kColumn;
constexpr int kLabelRoom = kSheetWidth / 2 - kThen - kColumn - 12;

struct Part {
  std::uint32_t lines = 0;
  std::string_view words;
  std::string_view style;
};

/// Parts below the carried ones of a column, with their labels beside it; the lowest place used.
template <std::size_t N>
int column(Drawing& sheet, const std::array<Part, N>& parts, int x, int y, std::uint32_t whole,
           bool right) {
  int label = y + 12;
  for (const Part& part : parts) {
    if (part.lines == 0) continue;
    const int tall = std::max(2, static_cast<int>(std::int64_t{part.lines} * kTall / whole));
    sheet.box(part.style, x, y, kColumn, tall);
    label = std::max(label, y + tall / 2 + 4);
    const std::string words = fmt::format("{} {}", part.lines, part.words);
    if (right) {
      sheet.text("", x - 6, label, words, kLabelRoom, Mark::Anchor::end);
    } else {
      sheet.text("", x + kColumn + 6, label, words, kLabelRoom);
    }
    label += kTextHeight;
    y += tall;
  }
  return std::max(y, label - kTextHeight + 4);
}

}  // namespace

std::vector<Drawing> draw(const FlowChart& chart, const NumberStyle&) {
  const Reconciliation& sums = chart.sums;
  const std::uint32_t whole = std::max({sums.lines_then, sums.lines_now, 1U});
  Drawing sheet;
  sheet.text("quiet", kThen, 13, "then: " + lines_words(sums.lines_then), kSheetWidth / 2);
  sheet.text("quiet", kNow + kColumn, 13, "now: " + lines_words(sums.lines_now), kSheetWidth / 2,
             Mark::Anchor::end);
  const int carried = static_cast<int>(std::int64_t{sums.carried} * kTall / whole);
  if (sums.carried > 0) {
    const int tall = std::max(kTextHeight + 3, carried);
    sheet.box("carried", kThen, kTop, kNow + kColumn - kThen, tall);
    sheet.text("", kSheetWidth / 2, kTop + tall / 2 + 4, fmt::format("{} carried", sums.carried),
               kSheetWidth, Mark::Anchor::middle);
  }
  const int below = kTop + (sums.carried > 0 ? std::max(kTextHeight + 3, carried) + 3 : 0);
  const std::array<Part, 2> then{Part{sums.dropped, "gone", "then"},
                                 Part{sums.not_covered, "not looked at now", "unlooked"}};
  const std::array<Part, 3> now{Part{sums.added, "new", "now"}, Part{sums.returned, "back", "back"},
                                Part{sums.unseen_then, "not looked at then", "unlooked"}};
  const int left = column(sheet, then, kThen, below, whole, false);
  const int right = column(sheet, now, kNow, below, whole, true);
  sheet.height = std::max({left, right, below}) + 4;
  return {std::move(sheet)};
}

}  // namespace rangebook

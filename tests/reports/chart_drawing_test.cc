// Pictures as marks: nothing overlaps or leaves its sheet, with 1 or 40 categories, no change or
// 5,000, and names of any length.
#include "reports/chart_drawing.h"

#include <gtest/gtest.h>

#include "tests/reports/fixture/change_set.h"

namespace rangebook {
namespace {

struct Edges {
  int left, top, right, bottom;
};

Edges edges_of(const Mark& text) {
  int left = text.x;
  if (text.anchor == Mark::Anchor::middle) left -= text.width / 2;
  if (text.anchor == Mark::Anchor::end) left -= text.width;
  return {left, text.y - 9, left + text.width, text.y + 3};
}

void expect_tidy(const std::vector<Drawing>& sheets) {
  for (const Drawing& sheet : sheets) {
    std::vector<Edges> texts;
    for (const Mark& mark : sheet.marks) {
      if (mark.shape != Mark::Shape::text) {
        EXPECT_GE(mark.x, 0);
        EXPECT_LE(mark.shape == Mark::Shape::box ? mark.x + mark.width : mark.x, kSheetWidth);
        EXPECT_LE(mark.y, sheet.height);
        continue;
      }
      const Edges edges = edges_of(mark);
      EXPECT_GE(edges.left, 0) << mark.content;
      EXPECT_LE(edges.right, kSheetWidth) << mark.content;
      EXPECT_LE(edges.bottom, sheet.height) << mark.content;
      for (const Edges& other : texts) {
        const bool apart = edges.left >= other.right || other.left >= edges.right ||
                           edges.top >= other.bottom || other.top >= edges.bottom;
        EXPECT_TRUE(apart) << mark.content << " at " << mark.x << "," << mark.y;
      }
      texts.push_back(edges);
    }
  }
}

std::string long_name(std::size_t i) {
  return std::to_string(i) + " Hand-finished double-breasted wool-blend wrap coat with a belt";
}

PriceLadder ladder(MinorUnits entry) {
  return {fixture::currency("GBP"), 9, entry, entry + 900, entry + 1900, entry + 2900, 990000, 1};
}

TEST(ChartDrawing, LaddersOfOneAndOfFortyCategories) {
  for (const std::size_t rows : {1U, 40U}) {
    LadderChart chart;
    for (std::size_t i = 0; i < rows; ++i) {
      chart.rows.push_back({long_name(i), ladder(1900), ladder(2100)});
    }
    const auto sheets = draw(chart, {});
    EXPECT_EQ(sheets.size(), (rows + 9) / 10);
    expect_tidy(sheets);
  }
  EXPECT_TRUE(draw(LadderChart{}, {}).empty());
}

TEST(ChartDrawing, SlopesOfNoneOneAndFiveThousandLines) {
  EXPECT_TRUE(draw(SlopesChart{}, {}).empty());
  for (const std::size_t lines : {1U, 5000U}) {
    SlopesChart chart;
    for (std::size_t i = 0; i < lines; ++i) {
      const auto pence = static_cast<MinorUnits>(2000 + i * 7919 % 20000);
      chart.slopes.push_back({long_name(i), fixture::pounds(pence), fixture::pounds(pence + 500)});
    }
    const auto sheets = draw(chart, {});
    expect_tidy(sheets);
    EXPECT_LT(sheets.front().marks.size(), 1200U) << "strokes on one another are drawn once";
  }
}

TEST(ChartDrawing, StepsTakeAsManySheetsAsTheirLabelsNeed) {
  StepsChart chart;
  for (int size = 4; size <= 40; size += 2) chart.steps.push_back({std::to_string(size), 0, 1000});
  EXPECT_EQ(draw(chart, {}).size(), 2U);
  expect_tidy(draw(chart, {}));
  for (auto& step : chart.steps) step.label += " Tall";
  EXPECT_EQ(draw(chart, {}).size(), 2U) << "what all labels share is left out";
  for (auto& step : chart.steps) step.label = "W32 L" + step.label;
  expect_tidy(draw(chart, {}));
}

TEST(ChartDrawing, FlowsOfEveryKindOfRange) {
  for (const Reconciliation& sums :
       {Reconciliation{70, 68, 58, 9, 1, 0, 9, 3}, Reconciliation{0, 0, 0, 0, 0, 0, 0, 0},
        Reconciliation{10000, 1, 1, 0, 0, 0, 9999, 0}, Reconciliation{5, 5, 0, 3, 1, 1, 3, 2},
        Reconciliation{1000000, 1000000, 999998, 1, 1, 0, 1, 1}}) {
    ASSERT_TRUE(sums.adds_up());
    expect_tidy(draw(FlowChart{sums}, {}));
  }
}

/// The columns stand for the lines: same scale on both sides, parts in proportion.
TEST(ChartDrawing, FlowColumnsAddUp) {
  const auto sheet = draw(FlowChart{{100, 80, 60, 15, 5, 0, 30, 10}}, {}).front();
  std::map<std::string, int> tall;
  for (const Mark& mark : sheet.marks) {
    if (mark.shape == Mark::Shape::box) tall[mark.style] = mark.height;
  }
  EXPECT_EQ(tall["carried"], 90);
  EXPECT_EQ(tall["then"], 45);
  EXPECT_EQ(tall["unlooked"], 15);
  EXPECT_EQ(tall["carried"] + tall["then"] + tall["unlooked"], 150) << "all 100 lines then";
  EXPECT_EQ(tall["now"] + tall["back"], 22 + 7) << "20 of 100, cut to whole pixels";
}

TEST(ChartDrawing, RowsOfSharesCoverageAndTerms) {
  BarsChart bars;
  CoverageChart coverage;
  TimelineChart terms;
  terms.last = fixture::day("2026-09-02");
  for (std::size_t i = 0; i < 40; ++i) {
    using enum CoverageChart::Seen;
    bars.rows.push_back({long_name(i), 1000, static_cast<std::uint32_t>(i)});
    coverage.rows.push_back(
        {long_name(i), i % 2 == 0 ? whole : part, i % 3 == 0 ? unlooked : outside});
    terms.rows.push_back({long_name(i),
                          {{fixture::day("2025-09-03"), long_name(i)},
                           {fixture::day("2026-09-02"), "28 days from delivery"}}});
  }
  CostsChart costs{*Currency::from_code("GBP"), {}};
  for (std::size_t i = 0; i < 40; ++i) {
    const auto amount = static_cast<MinorUnits>(i * 37);
    costs.rows.push_back({long_name(i), amount, i % 4 == 0 ? 0 : 395, i % 3 != 0});
  }
  for (const Drawable& shows :
       {Drawable(bars), Drawable(coverage), Drawable(terms), Drawable(costs)}) {
    const auto sheets = std::visit([](const auto& each) { return draw(each, {}); }, shows);
    EXPECT_GT(sheets.size(), 1U);
    expect_tidy(sheets);
  }
}

TEST(ChartDrawing, ColoursKeepTheirColourAndGreysStandApart) {
  ColoursChart chart;
  chart.dots = {{"navy", {0, 0, 128}, 3062, 130, false, 2, 3},
                {"white", {255, 255, 255}, 0, 1000, true, 1, 0}};
  const auto sheet = draw(chart, {}).front();
  expect_tidy({sheet});
  std::vector<std::string> fills;
  for (const Mark& mark : sheet.marks) {
    if (mark.shape == Mark::Shape::dot) fills.push_back(mark.style + mark.content);
  }
  EXPECT_EQ(fills, (std::vector<std::string>{"dot-then", "dot-now#000080", "dot-then"}));
}

TEST(ChartDrawing, TextIsCutBetweenCharacters) {
  EXPECT_EQ(fitted("Maya", 100), "Maya");
  const std::string cut = fitted("سترة صوف طويلة جدا مع حزام", 60);
  EXPECT_TRUE(cut.ends_with("…"));
  EXPECT_LE(text_width(cut), 60);
  EXPECT_EQ(fitted("ÄÖÜ", 12), "…");
}

TEST(ChartDrawing, ScalesAreRoundAndHoldTheirValues) {
  for (const auto& [low, high] : std::vector<std::pair<std::int64_t, std::int64_t>>{
           {0, 0}, {1900, 23900}, {5, 6}, {0, 999'999'999'999}, {2999, 3001}}) {
    const Scale scale = round_scale(low, high, 5);
    EXPECT_LE(scale.first, low);
    EXPECT_GE(scale.last, high);
    EXPECT_LE((scale.last - scale.first) / scale.step, 5);
    EXPECT_EQ(scale.at(scale.first, 10, 110), 10);
    EXPECT_EQ(scale.at(scale.last, 10, 110), 110);
    EXPECT_EQ(scale.at(scale.first, 110, 10), 110);
  }
}

}  // namespace
}  // namespace rangebook

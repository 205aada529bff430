// Size reach: the share of lines that offer a size now stands on the line, the share then hangs
// below it, so a step gained or lost shows by its shape.
#include <algorithm>

#include "reports/chart_drawing.h"

namespace rangebook {
namespace {

constexpr int kTallest = 46;    // a share of 100 %
constexpr int kAxisNow = 52;    // foot of the upper bars
constexpr int kAxisThen = 72;   // head of the lower bars; the labels stand between
constexpr int kNarrowest = 26;  // one step
constexpr int kWidest = 110;

int bar_height(std::uint32_t per_mille) {
  if (per_mille == 0) return 0;
  return std::max(2, (static_cast<int>(per_mille) * kTallest + 500) / 1000);
}

/// Room for the words of both sides.
int left_of(ChartSides sides) { return sides == ChartSides::then_now ? 34 : 56; }

Drawing panel(const StepsChart& chart, std::size_t first, std::size_t last, int step) {
  Drawing sheet;
  sheet.height = kAxisThen + kTallest + 6;
  const auto& steps = chart.steps;
  const int left = left_of(chart.sides);
  const int width = left + static_cast<int>(last - first) * step;
  const SideWords words = side_words(chart.sides);
  sheet.text("quiet", 0, kAxisNow - 3, words.filled, left);
  sheet.text("quiet", 0, kAxisThen + 11, words.outlined, left);
  const int bar = std::min(22, step - 6);
  for (std::size_t i = first; i < last; ++i) {
    const int middle = left + static_cast<int>(i - first) * step + step / 2;
    const int up = bar_height(steps[i].now);
    sheet.box("now", middle - bar / 2, kAxisNow - up, bar, up);
    sheet.box("then", middle - bar / 2, kAxisThen, bar, bar_height(steps[i].then));
    sheet.text("", middle, kAxisNow + 14, steps[i].label, step - 2, Mark::Anchor::middle);
  }
  sheet.line("axis", left, kAxisNow, width, kAxisNow);
  sheet.line("axis", left, kAxisThen, width, kAxisThen);
  return sheet;
}

/// `8`, `10` for `8 Petite`, `10 Petite`: the title says which fit it is.
StepsChart without_shared_end(StepsChart chart) {
  const auto end_of = [](const StepsChart::Step& step) {
    return step.label.substr(std::min(step.label.find(' '), step.label.size()));
  };
  if (chart.steps.size() < 2) return chart;
  const std::string end = end_of(chart.steps.front());
  const bool shared = std::all_of(chart.steps.begin(), chart.steps.end(),
                                  [&](const auto& step) { return end_of(step) == end; });
  if (!shared) return chart;
  for (auto& step : chart.steps) step.label.resize(step.label.size() - end.size());
  return chart;
}

}  // namespace

SideWords side_words(ChartSides sides) {
  if (sides == ChartSides::then_now) return {"now", "then"};
  return {"in stock", "offered"};
}

std::vector<Drawing> draw(const StepsChart& given, const NumberStyle&) {
  const StepsChart chart = without_shared_end(given);
  int step = kNarrowest;
  for (const auto& each : chart.steps) step = std::max(step, text_width(each.label) + 6);
  step = std::min(step, kWidest);
  const auto most = static_cast<std::size_t>((kSheetWidth - left_of(chart.sides)) / step);
  std::vector<Drawing> sheets;
  for (std::size_t first = 0; first < chart.steps.size(); first += most) {
    sheets.push_back(panel(chart, first, std::min(first + most, chart.steps.size()), step));
  }
  return sheets;
}

}  // namespace rangebook

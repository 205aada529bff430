// Colours in a map of hue and lightness, each in its own colour value; greys have no hue and stand
// in a strip of their own.
#include <algorithm>
#include <array>
#include <cmath>

#include "reports/chart_drawing.h"

namespace rangebook {
namespace {

constexpr int kStrip = 24;  // middle of the strip of greys
constexpr int kLeft = 58;
constexpr int kRight = kSheetWidth - 12;
constexpr int kTop = 14;
constexpr int kBottom = 234;

/// Where hues have their names: middles of the families in tracker/colour_traits, in tenths.
struct HueName {
  int hue;
  std::string_view name;
};
constexpr std::array<HueName, 6> kHues{{{300, "red"},
                                        {900, "yellow"},
                                        {1450, "green"},
                                        {2100, "teal"},
                                        {2700, "blue"},
                                        {3250, "purple"}}};

int across(int hue) { return kLeft + hue * (kRight - kLeft) / 3600; }

int radius(std::uint32_t colourways) {
  int size = 4;
  for (std::uint32_t limit = 2; limit <= colourways && size < 10; limit *= 2) ++size;
  return size;
}

}  // namespace

std::vector<Drawing> draw(const ColoursChart& chart, const NumberStyle&) {
  Drawing sheet;
  sheet.height = kBottom + 24;
  sheet.line("grid", kLeft - 12, kTop, kLeft - 12, kBottom);
  sheet.line("axis", 0, kBottom, kSheetWidth, kBottom);
  sheet.text("quiet", kStrip, kBottom + 16, "grey", kLeft - 8, Mark::Anchor::middle);
  for (const HueName& each : kHues) {
    sheet.text("quiet", across(each.hue), kBottom + 16, each.name, 50, Mark::Anchor::middle);
  }
  // Large ones first, so that none hides a smaller one.
  std::vector<const ColoursChart::Dot*> dots;
  for (const auto& dot : chart.dots) dots.push_back(&dot);
  std::stable_sort(dots.begin(), dots.end(), [](const auto* a, const auto* b) {
    return std::max(a->then, a->now) > std::max(b->then, b->now);
  });
  for (const auto* dot : dots) {
    const int x = dot->grey ? kStrip : across(static_cast<int>(dot->hue));
    const int y =
        kBottom - static_cast<int>(std::min(dot->lightness, 1000U)) * (kBottom - kTop) / 1000;
    if (dot->then > 0) sheet.dot("dot-then", x, y, radius(dot->then) + 3);
    if (dot->now > 0) sheet.dot("dot-now", x, y, radius(dot->now), to_string(dot->colour));
  }
  return {std::move(sheet)};
}

std::string_view reading_of(const Drawable& shows) {
  struct Reading {
    std::string_view operator()(const StepsChart& chart) const {
      if (chart.sides == ChartSides::offered_in_stock) {
        return "Filled bars stand on the line: lines that have the size in stock. Outlined bars "
               "hang below it: lines that offer it. A bar of full height is every line.";
      }
      return "Filled bars stand on the line: now. Outlined bars hang below it: then. A bar of full "
             "height is every line.";
    }
    std::string_view operator()(const LadderChart&) const {
      return "Rails run from the entry price to the top, boxes hold the middle half of the lines, "
             "rungs mark the median. Outlined: then. Filled: now.";
    }
    std::string_view operator()(const SlopesChart&) const {
      return "One stroke a line, from its price then to its price now. Names stand where there is "
             "room.";
    }
    std::string_view operator()(const FlowChart&) const {
      return "Left column: the lines then. Right column: the lines now. The band between them is "
             "carried. Outlined: gone. Filled: new. Dotted: nobody looked.";
    }
    std::string_view operator()(const BarsChart& chart) const {
      if (chart.sides == ChartSides::offered_in_stock) {
        return "Outlined: lines that offer it. Filled: lines that have it in stock. A bar across "
               "the whole width is 100%.";
      }
      return "Outlined: then. Filled: now. A bar across the whole width is 100%.";
    }
    std::string_view operator()(const CoverageChart&) const {
      return "Filled: looked at. Outlined: in part. Dotted: not looked at.";
    }
    std::string_view operator()(const ColoursChart&) const {
      return "Light colours stand high, deep ones low, by hue from left to right. Filled: now, in "
             "the colour the name stands for. Ring alone: then and gone.";
    }
    std::string_view operator()(const TimelineChart&) const {
      return "Filled: what holds by the latest capture. Outlined: what held before, from the day "
             "it was captured.";
    }
    std::string_view operator()(const CostsChart&) const {
      return "Filled: delivery. Outlined: the way back. An open end: a part is not stated.";
    }
  };
  return std::visit(Reading{}, shows);
}

}  // namespace rangebook

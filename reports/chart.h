// Pictures of a report as values: what each shows, in figures. The drawing is done in chart_svg,
// from these values alone, so a picture and the table behind it cannot disagree.
//
// One look for all: what was then is an outline, as chalk on cloth; what is now is filled. That
// holds in greyscale print, in dark mode and for readers who do not see colours.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "reports/phrase.h"
#include "schema/change.h"
#include "schema/colour.h"

namespace rangebook {

/// What the two sides of a picture of shares are.
enum class ChartSides : std::uint8_t {
  then_now,          ///< outlined: then; filled: now
  offered_in_stock,  ///< of one capture; outlined (`then`): offered; filled (`now`): in stock
};

/// Share of lines that offer each size, in tenths of a percent: one step a size.
struct StepsChart {
  struct Step {
    std::string label;
    std::uint32_t then = 0;
    std::uint32_t now = 0;
    bool operator==(const Step&) const = default;
  };
  std::vector<Step> steps;
  ChartSides sides = ChartSides::then_now;
  bool operator==(const StepsChart&) const = default;
};

/// Prices of a category from the entry to the top, in one currency.
struct LadderChart {
  struct Row {
    std::string label;
    std::optional<PriceLadder> then;
    std::optional<PriceLadder> now;
    bool operator==(const Row&) const = default;
  };
  std::vector<Row> rows;
  bool operator==(const LadderChart&) const = default;
};

/// Prices of single lines then and now, in one currency; the most telling first.
struct SlopesChart {
  struct Slope {
    std::string label;
    Money then;
    Money now;
    bool operator==(const Slope&) const = default;
  };
  std::vector<Slope> slopes;
  bool operator==(const SlopesChart&) const = default;
};

/// How the lines then became the lines now.
struct FlowChart {
  Reconciliation sums;
  bool operator==(const FlowChart&) const = default;
};

/// Shares in tenths of a percent, one row each.
struct BarsChart {
  struct Row {
    std::string label;
    std::uint32_t then = 0;
    std::uint32_t now = 0;
    bool operator==(const Row&) const = default;
  };
  std::vector<Row> rows;
  ChartSides sides = ChartSides::then_now;
  bool operator==(const BarsChart&) const = default;
};

/// What each capture looked at.
struct CoverageChart {
  enum class Seen : std::uint8_t {
    whole,     ///< looked at, nothing known to be missing
    part,      ///< looked at, but rows were refused or sizes are not stated
    outside,   ///< lines are known that the capture did not look for
    unlooked,  ///< not looked at
  };
  struct Row {
    std::string label;
    Seen then = Seen::whole;
    Seen now = Seen::whole;
    bool operator==(const Row&) const = default;
  };
  std::vector<Row> rows;
  bool operator==(const CoverageChart&) const = default;
};

/// Colours by hue (across) and lightness (up), in their real colour values.
struct ColoursChart {
  struct Dot {
    std::string name;
    Srgb colour;
    std::uint32_t hue = 0;        ///< of CIELAB, in tenths of a degree
    std::uint32_t lightness = 0;  ///< likewise, 0 to 1000
    bool grey = false;            ///< too little chroma to have a hue: drawn in a strip of its own
    std::uint32_t then = 0;       ///< colourways
    std::uint32_t now = 0;
    bool operator==(const Dot&) const = default;
  };
  std::vector<Dot> dots;
  bool operator==(const ColoursChart&) const = default;
};

/// What held from which day on, one row a term.
struct TimelineChart {
  struct Stay {
    Day from{};
    std::string words;  ///< `28 days from delivery`
    bool operator==(const Stay&) const = default;
  };
  struct Row {
    std::string label;
    std::vector<Stay> stays;  ///< in the order of days
    bool operator==(const Row&) const = default;
  };
  std::vector<Row> rows;
  Day last{};  ///< end of the picture
  bool operator==(const TimelineChart&) const = default;
};

/// What an order costs to try, one row a shop: delivery, then the way back.
struct CostsChart {
  struct Row {
    std::string label;
    MinorUnits delivery = 0;
    MinorUnits way_back = 0;
    bool complete = true;  ///< no: a part is not stated, the sum is the least it can be
    bool operator==(const Row&) const = default;
  };
  Currency currency;
  std::vector<Row> rows;
  bool operator==(const CostsChart&) const = default;
};

using Drawable = std::variant<StepsChart, LadderChart, SlopesChart, FlowChart, BarsChart,
                              CoverageChart, ColoursChart, TimelineChart, CostsChart>;

struct Chart {
  Phrase finding;  ///< its title: what the picture shows, as a sentence
  Drawable shows;
  bool operator==(const Chart&) const = default;
};

}  // namespace rangebook

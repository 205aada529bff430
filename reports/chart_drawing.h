// A drawn picture before it is written: marks on a sheet of fixed width. Whole numbers only, so
// the same figures give the same picture on every machine.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "reports/chart.h"
#include "reports/number_style.h"

namespace rangebook {

/// Width of every sheet: a telephone's, so that text is 12 px there and nothing has to scroll.
inline constexpr int kSheetWidth = 360;
/// Height of a line of text, from one to the next.
inline constexpr int kTextHeight = 15;

struct Mark {
  enum class Shape : std::uint8_t { box, line, dot, text };
  Shape shape = Shape::box;
  std::string style;    ///< classes, see brief_style
  int x = 0;            ///< left of a box, centre of a dot, anchor of a text
  int y = 0;            ///< top of a box, centre of a dot, baseline of a text
  int width = 0;        ///< of a line: x of its end; of a dot: radius; of a text: what it takes up
  int height = 0;       ///< of a line: y of its end
  std::string content;  ///< of a text; fill of a dot, if it has one of its own
  enum class Anchor : std::uint8_t { start, middle, end };
  Anchor anchor = Anchor::start;
};

/// One sheet of a picture; a long picture has several, so that paper can break between them.
struct Drawing {
  std::vector<Mark> marks;
  int height = 0;

  void box(std::string_view style, int x, int y, int width, int height_of_box);
  void line(std::string_view style, int x1, int y1, int x2, int y2);
  void dot(std::string_view style, int x, int y, int radius, std::string fill = {});
  /// Shortened to `room`, with an ellipsis.
  void text(std::string_view style, int x, int y, std::string_view content, int room,
            Mark::Anchor anchor = Mark::Anchor::start);
};

/// What a text of 12 px takes up at most, by the widths of common serif faces: an estimate on the
/// safe side, since the reader's face is not known.
int text_width(std::string_view text);
/// The text, or its beginning and an ellipsis where it is wider than `room`.
std::string fitted(std::string_view text, int room);

/// Round amounts from at or below `low` to at or above `high`, at most `most` steps: 1, 2 or 5
/// times a power of ten apart.
struct Scale {
  std::int64_t first = 0;
  std::int64_t step = 1;
  std::int64_t last = 1;
  /// Place between `from` and `to`, rounded.
  int at(std::int64_t value, int from, int to) const;
};
Scale round_scale(std::int64_t low, std::int64_t high, int most);

/// The words of the filled and of the outlined side.
struct SideWords {
  std::string_view filled;
  std::string_view outlined;
};
SideWords side_words(ChartSides sides);

std::vector<Drawing> draw(const StepsChart& chart, const NumberStyle& numbers);
std::vector<Drawing> draw(const LadderChart& chart, const NumberStyle& numbers);
std::vector<Drawing> draw(const SlopesChart& chart, const NumberStyle& numbers);
std::vector<Drawing> draw(const FlowChart& chart, const NumberStyle& numbers);
std::vector<Drawing> draw(const BarsChart& chart, const NumberStyle& numbers);
std::vector<Drawing> draw(const CoverageChart& chart, const NumberStyle& numbers);
std::vector<Drawing> draw(const ColoursChart& chart, const NumberStyle& numbers);
std::vector<Drawing> draw(const TimelineChart& chart, const NumberStyle& numbers);
std::vector<Drawing> draw(const CostsChart& chart, const NumberStyle& numbers);

/// How to read a picture of this kind, in a sentence.
std::string_view reading_of(const Drawable& shows);

}  // namespace rangebook

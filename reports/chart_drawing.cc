// Marks, widths of text and round scales.
#include "reports/chart_drawing.h"

#include <algorithm>
#include <utility>

#include "reports/utf8.h"

namespace rangebook {
namespace {

/// In tenths of a pixel at 12 px.
int character_width(std::string_view character) {
  constexpr std::string_view kNarrow = " ijltfrI.,:;'|!()[]-";
  constexpr std::string_view kWide = "mwMW@%&";
  if (character.size() > 1) return character.size() > 2 && character[0] != '\xE2' ? 124 : 78;
  if (kNarrow.find(character[0]) != std::string_view::npos) return 42;
  if (kWide.find(character[0]) != std::string_view::npos) return 112;
  return character[0] >= 'A' && character[0] <= 'Z' ? 86 : 66;
}

}  // namespace

int text_width(std::string_view text) {
  int tenths = 0;
  while (!text.empty()) {
    const Utf8Step step = utf8_step(text);
    tenths += character_width(text.substr(0, step.bytes));
    text.remove_prefix(step.bytes);
  }
  return (tenths + 9) / 10;
}

std::string fitted(std::string_view text, int room) {
  constexpr std::string_view kEllipsis = "…";
  if (text_width(text) <= room) return std::string(text);
  const int tenths = room * 10 - character_width(kEllipsis);
  std::size_t bytes = 0;
  for (int taken = 0; bytes < text.size();) {
    const Utf8Step step = utf8_step(text.substr(bytes));
    taken += character_width(text.substr(bytes, step.bytes));
    if (taken > tenths) break;
    bytes += step.bytes;
  }
  std::string short_text(text.substr(0, bytes));
  while (!short_text.empty() && short_text.back() == ' ') short_text.pop_back();
  return short_text + std::string(kEllipsis);
}

void Drawing::box(std::string_view style, int x, int y, int width, int height_of_box) {
  if (width <= 0 || height_of_box <= 0) return;
  marks.push_back({Mark::Shape::box, std::string(style), x, y, width, height_of_box, {}, {}});
}

void Drawing::line(std::string_view style, int x1, int y1, int x2, int y2) {
  marks.push_back({Mark::Shape::line, std::string(style), x1, y1, x2, y2, {}, {}});
}

void Drawing::dot(std::string_view style, int x, int y, int radius, std::string fill) {
  marks.push_back({Mark::Shape::dot, std::string(style), x, y, radius, 0, std::move(fill), {}});
}

void Drawing::text(std::string_view style, int x, int y, std::string_view content, int room,
                   Mark::Anchor anchor) {
  std::string shown = fitted(content, room);
  const int width = text_width(shown);
  marks.push_back(
      {Mark::Shape::text, std::string(style), x, y, width, 0, std::move(shown), anchor});
}

int Scale::at(std::int64_t value, int from, int to) const {
  const std::int64_t span = std::max<std::int64_t>(1, last - first);
  const std::int64_t way = std::clamp(value, first, last) - first;
  // In steps of a millionth, so that even the largest amounts stay within 64 bits.
  const std::int64_t millionths =
      span > 1'000'000'000 ? way / (span / 1'000'000) : way * 1'000'000 / span;
  const std::int64_t twice = std::min<std::int64_t>(millionths, 1'000'000) * (to - from) * 2;
  return from + static_cast<int>((twice + (twice < 0 ? -1'000'000 : 1'000'000)) / 2'000'000);
}

Scale round_scale(std::int64_t low, std::int64_t high, int most) {
  constexpr std::int64_t kLargest = 1'000'000'000'000'000;
  low = std::clamp<std::int64_t>(low, 0, kLargest);
  high = std::clamp<std::int64_t>(high, low + 1, kLargest + 1);
  for (std::int64_t power = 1;; power *= 10) {
    for (const std::int64_t times : {1, 2, 5}) {
      const std::int64_t step = power * times;
      const std::int64_t first = low / step * step;
      const std::int64_t last = (high + step - 1) / step * step;
      if ((last - first) / step <= most) return {first, step, last};
    }
  }
}

}  // namespace rangebook

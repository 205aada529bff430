// Whole numbers only, so the same shares give the same picture on every machine.
#include "reports/brief_chart.h"

#include <fmt/format.h>

#include "reports/phrase.h"

namespace rangebook {
namespace {

constexpr std::size_t kLeft = 42;      // room for "now" and "then"
constexpr std::size_t kStep = 30;      // one size
constexpr std::size_t kBar = 22;       // width of a bar
constexpr std::size_t kTallest = 44;   // a share of 100 %
constexpr std::size_t kAxisNow = 50;   // bottom of the upper bars
constexpr std::size_t kAxisThen = 70;  // top of the lower bars; the labels stand between
constexpr std::size_t kHeight = kAxisThen + kTallest + 6;
constexpr std::size_t kLongestLabel = 5;

std::size_t bar_height(std::uint32_t per_mille) {
  if (per_mille == 0) return 0;
  return std::max<std::size_t>(1, (std::size_t{per_mille} * kTallest + 500) / 1000);
}

void bar(HtmlWriter& html, std::string_view style, std::size_t x, std::size_t y,
         std::size_t height) {
  if (height == 0) return;
  html.single("rect", {{"class", style},
                       {"x", std::to_string(x)},
                       {"y", std::to_string(y)},
                       {"width", std::to_string(kBar)},
                       {"height", std::to_string(height)}});
}

void axis(HtmlWriter& html, std::size_t y, std::size_t width) {
  html.single("line", {{"class", "axis"},
                       {"x1", std::to_string(kLeft)},
                       {"x2", std::to_string(width)},
                       {"y1", std::to_string(y)},
                       {"y2", std::to_string(y)}});
}

void label(HtmlWriter& html, std::string_view style, std::size_t x, std::size_t y,
           std::string_view anchor, std::string_view content) {
  html.element("text",
               {{"class", style},
                {"x", std::to_string(x)},
                {"y", std::to_string(y)},
                {"text-anchor", anchor}},
               content);
}

/// Labels have one step of room: `8` for `8 Petite`; longer ones are told by the table only.
std::string short_label(const Phrase& cell) {
  std::string text = plain_text(cell, false);
  if (text.size() > kLongestLabel) text.resize(std::min(text.find(' '), text.size()));
  return text.size() <= kLongestLabel ? text : "…";
}

}  // namespace

void write_reach_picture(HtmlWriter& html, const BriefTable& table) {
  const std::size_t width = kLeft + table.bars.size() * kStep;
  const std::string box = fmt::format("0 0 {} {}", width, kHeight);
  const auto svg = html.in("svg", {{"role", "img"},
                                   {"aria-label", "Picture of the table below: " + table.caption},
                                   {"width", std::to_string(width)},
                                   {"height", std::to_string(kHeight)},
                                   {"viewBox", box}});
  label(html, "quiet", 0, kAxisNow - 2, "start", "now");
  label(html, "quiet", 0, kAxisThen + 10, "start", "then");
  for (std::size_t i = 0; i < table.bars.size(); ++i) {
    const std::size_t x = kLeft + i * kStep + (kStep - kBar) / 2;
    const std::size_t up = bar_height(table.bars[i].now);
    bar(html, "now", x, kAxisNow - up, up);
    bar(html, "then", x, kAxisThen, bar_height(table.bars[i].then));
    label(html, "size", x + kBar / 2, kAxisNow + 14, "middle", short_label(table.rows[i].front()));
  }
  axis(html, kAxisNow, width);
  axis(html, kAxisThen, width);
}

}  // namespace rangebook

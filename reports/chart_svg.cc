// One element a mark.
#include "reports/chart_svg.h"

#include <fmt/format.h>

#include "reports/chart_drawing.h"

namespace rangebook {
namespace {

std::string_view anchor_word(Mark::Anchor anchor) {
  switch (anchor) {
    case Mark::Anchor::start:
      return "start";
    case Mark::Anchor::middle:
      return "middle";
    case Mark::Anchor::end:
      return "end";
  }
  return {};
}

void write_mark(HtmlWriter& html, const Mark& mark) {
  const auto text = [](int number) { return std::to_string(number); };
  switch (mark.shape) {
    case Mark::Shape::box:
      html.single("rect", {{"class", mark.style},
                           {"x", text(mark.x)},
                           {"y", text(mark.y)},
                           {"width", text(mark.width)},
                           {"height", text(mark.height)}});
      return;
    case Mark::Shape::line:
      html.single("line", {{"class", mark.style},
                           {"x1", text(mark.x)},
                           {"y1", text(mark.y)},
                           {"x2", text(mark.width)},
                           {"y2", text(mark.height)}});
      return;
    case Mark::Shape::dot:
      html.single("circle", {{"class", mark.style},
                             {"cx", text(mark.x)},
                             {"cy", text(mark.y)},
                             {"r", text(mark.width)},
                             {"fill", mark.content.empty() ? "none" : mark.content}});
      return;
    case Mark::Shape::text:
      html.element("text",
                   {{"class", mark.style},
                    {"x", text(mark.x)},
                    {"y", text(mark.y)},
                    {"text-anchor", anchor_word(mark.anchor)}},
                   mark.content);
      return;
  }
}

}  // namespace

void write_chart(HtmlWriter& html, const Chart& chart, std::string_view id,
                 const NumberStyle& numbers) {
  const auto sheets =
      std::visit([&numbers](const auto& shows) { return draw(shows, numbers); }, chart.shows);
  const std::string finding = plain_text(chart.finding, false);
  for (std::size_t i = 0; i < sheets.size(); ++i) {
    const std::string title = fmt::format("{}-{}-title", id, i + 1);
    const std::string words = fmt::format("{}-{}-words", id, i + 1);
    const std::string box = fmt::format("0 0 {} {}", kSheetWidth, sheets[i].height);
    const auto svg = html.in("svg", {{"role", "img"},
                                     {"viewBox", box},
                                     {"aria-labelledby", title},
                                     {"aria-describedby", words}});
    const std::string part =
        sheets.size() == 1 ? "" : fmt::format(" Sheet {} of {}.", i + 1, sheets.size());
    html.element("title", {{"id", title}}, finding + part);
    html.element("desc", {{"id", words}},
                 fmt::format("{} The figures stand in the table below.", reading_of(chart.shows)));
    for (const Mark& mark : sheets[i].marks) write_mark(html, mark);
  }
}

}  // namespace rangebook

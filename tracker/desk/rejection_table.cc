// Where, what is wrong with how to put it right, and the text in question.
#include "tracker/desk/rejection_table.h"

#include <fmt/format.h>

namespace rangebook {
namespace {

std::string place_of(const CaptureInfo& capture, const Rejection& rejection) {
  const std::string document = rejection.document < capture.documents.size()
                                   ? capture.documents[rejection.document].name
                                   : fmt::format("document {}", rejection.document + 1);
  return rejection.line ? fmt::format("{}, line {}", document, *rejection.line)
                        : fmt::format("{}, byte {}", document, rejection.byte);
}

std::string_view fate_of(Refused refused) {
  switch (refused) {
    case Refused::row:
      return "row left out";
    case Refused::cell:
      return "cell left out";
    case Refused::nothing:
      return "taken, doubted";
  }
  return "";
}

void cell(HtmlWriter& html, std::string_view text) {
  const auto inside = html.in("td");
  html.element("bdi", {}, text);
}

}  // namespace

void rejection_table(HtmlWriter& html, const CaptureInfo& capture,
                     const std::vector<Rejection>& rejections, std::uint64_t all) {
  const auto scroll = html.in("div", {{"class", "scroll"},
                                      {"role", "group"},
                                      {"tabindex", "0"},
                                      {"aria-label", "What was left out or doubted"}});
  const auto table = html.in("table");
  html.element("caption", {}, fmt::format("{} of {}", rejections.size(), all));
  {
    const auto head = html.in("thead");
    const auto row = html.in("tr");
    for (const char* heading : {"Where", "What", "Why, and what helps", "Text"}) {
      html.element("th", {{"scope", "col"}}, heading);
    }
  }
  const auto body = html.in("tbody");
  for (const auto& rejection : rejections) {
    const auto row = html.in("tr");
    {
      const auto head = html.in("th", {{"scope", "row"}});
      html.element("bdi", {}, place_of(capture, rejection));
    }
    cell(html, fate_of(rejection.refused));
    {
      const auto telling = html.in("td", {{"class", "telling"}});
      html.element("bdi", {}, fmt::format("{} {}", rejection.what, rejection.how_to_fix));
    }
    cell(html, rejection.excerpt);
  }
}

}  // namespace rangebook

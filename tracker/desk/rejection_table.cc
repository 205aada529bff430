// Where, what is wrong with how to put it right, and the text in question.
#include "tracker/desk/rejection_table.h"

#include <fmt/format.h>

#include "tracker/desk/desk_sheet.h"

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

}  // namespace

void rejection_table(HtmlWriter& html, const CaptureInfo& capture,
                     const std::vector<Rejection>& rejections, std::uint64_t all) {
  wide_table(html,
             {"What was left out or doubted",
              fmt::format("{} of {}", rejections.size(), all),
              {"Where", "What", "Why, and what helps", "Text"}},
             [&](HtmlWriter& body) {
               for (const auto& rejection : rejections) {
                 const auto row = body.in("tr");
                 {
                   const auto head = body.in("th", {{"scope", "row"}});
                   body.element("bdi", {}, place_of(capture, rejection));
                 }
                 text_cell(body, fate_of(rejection.refused));
                 {
                   const auto telling = body.in("td", {{"class", "telling"}});
                   body.element("bdi", {},
                                fmt::format("{} {}", rejection.what, rejection.how_to_fix));
                 }
                 text_cell(body, rejection.excerpt);
               }
             });
}

}  // namespace rangebook

// What a capture of a shop shows, to look for a line, go to its history and keep it as a pick.
#include <fmt/format.h>

#include "reports/seen_line.h"
#include "reports/wording.h"
#include "schema/shop_name.h"
#include "tracker/app/line_shelf.h"
#include "tracker/desk/asked_shop.h"
#include "tracker/desk/pick_pages.h"

namespace rangebook {
namespace {

void shelf_form(HtmlWriter& html, const Book& book, const LineShelf& shelf, const DeskAsk& ask) {
  std::vector<Choice> categories{{"", "every category"}};
  for (const auto& slug : shelf.categories) categories.push_back({slug, category_words(slug)});
  ask_form(html, "/lines", [&](HtmlWriter& form) {
    hidden_field(form, "shop", shelf.shop.slug);
    text_field(form, "words", "Words", ask.said("words"), "name, code, colour or fabric");
    choice_field(form, "category", "Category", categories, ask.said("category"));
    choice_field(form, "capture", "Capture", capture_choices(book, shelf.shop.slug, "the latest"),
                 ask.said("capture"));
    button(form, "Show");
  });
}

std::string price_text(const SeenLine& line) {
  if (!line.price) return "no price";
  std::string text = span_words(*line.price);
  if (line.marked_down > 0)
    text += line.marked_down == line.variants ? ", marked down" : ", some marked down";
  return text;
}

void name_cell(HtmlWriter& html, const LineCard& card, const std::string& address) {
  const auto head = html.in("th", {{"scope", "row"}});
  const auto way = html.in("a", {{"href", address}});
  html.element("bdi", {}, card.name.empty() ? card.line_code : card.name);
  if (card.name.empty() || card.line_code.empty()) return;
  html.text(" ");
  html.element("bdi", {{"class", "code"}}, card.line_code);
}

void keep_cell(HtmlWriter& html, const LineCard& card, const std::string& address) {
  const auto data = html.in("td");
  const auto way = html.in("a", {{"href", address}});
  html.text("Keep");
  html.element("span", {{"class", "hush"}}, " " + (card.name.empty() ? card.line_code : card.name));
}

void line_row(HtmlWriter& html, const LineShelf& shelf, const ShelfLine& each, const DeskAsk& ask) {
  const auto row = html.in("tr");
  std::vector<DeskField> line{{"shop", shelf.shop.slug, {}}, {"line", each.reference, {}}};
  name_cell(html, each.line.card, desk_address("/line", line));
  line.push_back({"capture", ask.said("capture"), {}});
  keep_cell(html, each.line.card, desk_address("/picks/keep", line));
  text_cell(html, category_words(each.line.category));
  text_cell(html, price_text(each.line));
  text_cell(html, sizes_words(each.line));
  text_cell(html, colours_words(each.line));
}

void shelf_table(HtmlWriter& html, const LineShelf& shelf, const DeskAsk& ask) {
  wide_table(html,
             {"Lines",
              fmt::format("{} of {}", shelf.lines.size(), lines_words(shelf.found)),
              {"Line", "As a pick", "Category", "Price", "Sizes", "Colours"}},
             [&](HtmlWriter& body) {
               for (const ShelfLine& each : shelf.lines) line_row(body, shelf, each, ask);
             });
}

}  // namespace

DeskAnswer lines_page(Desk& desk, const DeskAsk& ask) {
  const auto book = desk.book();
  if (!book) return no_book(desk);
  const auto found = lines_on_shelf(
      *book, {ask.said("shop"), ask.said("capture"), ask.said("words"), ask.said("category")});
  if (const auto* missing = std::get_if<NotThere>(&found)) {
    return trouble_sheet(desk, 404, missing->message);
  }
  const auto& shelf = std::get<LineShelf>(found);
  const SheetHead head{
      "/", "Line by line", std::string(shop_name(shelf.shop)),
      fmt::format("{}, seen {}", shelf.capture.season, day_words(shelf.capture.on))};
  return sheet(desk, head, [&](HtmlWriter& html) {
    shelf_form(html, *book, shelf, ask);
    part(html, "lines", "Lines", [&](HtmlWriter& matter) {
      if (shelf.lines.empty()) {
        matter.element("p", {}, "No line matches. Take a word away, or ask for every category.");
        return;
      }
      shelf_table(matter, shelf, ask);
      if (shelf.lines.size() < shelf.found) {
        matter.element("p", {}, "Not all are shown: add a word or choose a category.");
      }
    });
  });
}

}  // namespace rangebook

// The shop is one of the book or a new one; all else is about the capture.
#include "tracker/desk/upload_form.h"

#include <fmt/format.h>

#include "tracker/app/pipeline.h"
#include "tracker/app/scope_words.h"

namespace rangebook {
namespace {

std::vector<Choice> shop_choices(const std::optional<Book>& book) {
  std::vector<Choice> choices{{"", "a new one"}};
  if (!book) return choices;
  for (const auto& record : book->shops()) {
    const Shop& shop = record.shop;
    choices.push_back({shop.slug, shop.name.empty() ? shop.slug : shop.name});
  }
  return choices;
}

std::vector<Choice> system_choices() {
  std::vector<Choice> choices{{"", "not known yet"}};
  for (const auto& name : size_system_names()) choices.push_back({name, name});
  return choices;
}

void new_shop_fields(HtmlWriter& html, const UploadWords& words) {
  const auto said = [&words](std::string_view name) { return field_said(words, name); };
  field_group(html, "If the shop is new", [&](HtmlWriter& fields) {
    text_field(fields, "name", "Its name", said("name"));
    text_field(fields, "country", "Country", said("country"), "two letters, such as GB");
    text_field(fields, "currency", "Currency", said("currency"),
               "such as GBP; empty: as its prices say");
    choice_field(fields, "sizes", "Bare sizes are", system_choices(), said("sizes"));
  });
}

void capture_fields(HtmlWriter& html, const UploadWords& words) {
  const auto said = [&words](std::string_view name) { return field_said(words, name); };
  field_group(html, "The capture", [&](HtmlWriter& fields) {
    text_field(fields, "season", "Season", said("season"), "such as AW26");
    text_field(fields, "on", "Seen on", said("on").empty() ? to_string(today()) : said("on"),
               "the day the pages were saved", "date");
    choice_field(fields, "part", "What was looked at",
                 {{"", "the whole range"}, {"some", "these categories"}, {"picks", "only picks"}},
                 said("part"));
    text_field(fields, "categories", "Categories", said("categories"),
               "only where not the whole range was looked at: dresses, knitwear");
    tick_field(fields, "as-it-is", "The season is a name of its own, such as Cruise 26",
               !said("as-it-is").empty());
  });
}

}  // namespace

void upload_fields(HtmlWriter& html, const std::optional<Book>& book, const UploadWords& words) {
  field_group(html, "The shop", [&](HtmlWriter& fields) {
    choice_field(fields, "shop", "Shop", shop_choices(book), field_said(words, "shop"));
  });
  new_shop_fields(html, words);
  capture_fields(html, words);
}

std::string held_address(const HeldUpload& upload) {
  return desk_address("/held", {{"upload", upload.id, {}}});
}

std::string held_words(const HeldUpload& upload) {
  const std::size_t count = upload.documents.size();
  std::string words = count == 0 ? "A text of terms" : upload.documents.front().name;
  if (count > 1) words += fmt::format(" and {} more", count - 1);
  const std::string& season = field_said(upload.words, "season");
  return season.empty() ? words : fmt::format("{}, {}", words, season);
}

void held_list(HtmlWriter& html, const Desk& desk) {
  const auto held = desk.held().all();
  if (held.empty()) return;
  part(html, "held", "Not kept yet", [&](HtmlWriter& matter) {
    matter.element("p", {}, "Handed over, and waiting for you to look at what was understood.");
    const auto list = matter.in("ul", {{"class", "plain"}});
    for (const HeldUpload& upload : held) {
      const auto item = matter.in("li");
      link(matter, held_address(upload), held_words(upload));
    }
  });
}

}  // namespace rangebook

// What holds at a shop, what waits for a yes, and what changed when.
#include <fmt/format.h>

#include <charconv>

#include "reports/brief_terms.h"
#include "reports/terms_report.h"
#include "reports/wording.h"
#include "schema/shop_name.h"
#include "tracker/app/terms_desk.h"
#include "tracker/desk/asked_shop.h"
#include "tracker/desk/file_formats.h"
#include "tracker/desk/terms_pages.h"
#include "tracker/desk/terms_parts.h"

namespace rangebook {
namespace {

const std::vector<Choice> kTimelineForms{{"text", "plain text"}, {"json", "JSON"}};

std::string observed_words(std::string_view what, const std::optional<Day>& on) {
  return on ? fmt::format("{} as of {}", what, day_words(*on)) : fmt::format("no {} yet", what);
}

std::string observed_words(const TermsInForce& terms) {
  return fmt::format("{}; {}", observed_words("delivery", terms.delivery_on),
                     observed_words("returns", terms.returns_on));
}

void terms_ways(HtmlWriter& html, const std::string& slug) {
  const auto ways = html.in("p", {{"class", "ways"}});
  link(html, desk_address("/terms/read", {{"shop", slug, {}}}), "Read a policy");
  link(html, desk_address("/terms/type", {{"shop", slug, {}}}), "Type terms");
  link(html, "/order", "What an order costs");
}

void doubts_part(HtmlWriter& html, const Desk& desk, const std::string& slug,
                 const std::vector<OpenDoubt>& doubts) {
  if (doubts.empty()) return;
  part(html, "doubts", "Waits for a yes", [&](HtmlWriter& matter) {
    matter.element("p", {}, "None of these counts in a comparison until you say yes.");
    const auto list = matter.in("ul", {{"class", "shops"}});
    for (const OpenDoubt& doubt : doubts) {
      const auto item = matter.in("li");
      terms_doubt(matter, doubt.reading);
      post_form(matter, desk, "/terms/answer", [&](HtmlWriter& form) {
        hidden_field(form, "shop", slug);
        hidden_field(form, "doubt", std::to_string(doubt.id));
        for (const auto& [value, words] :
             {std::pair("yes", "Yes, it holds"), std::pair("no", "No, leave it out")}) {
          const auto submit =
              form.in("button", {{"type", "submit"}, {"name", "says"}, {"value", value}});
          form.text(words);
          form.element("span", {{"class", "hush"}}, ": " + terms_field_words(doubt.reading.field));
        }
      });
    }
  });
}

const TermsFact* fact_of(const std::optional<Fact>& side) {
  return side ? std::get_if<TermsFact>(&*side) : nullptr;
}

std::string_view direction_words(TermsDirection direction) {
  switch (direction) {
    case TermsDirection::better:
      return "better for the customer";
    case TermsDirection::worse:
      return "worse for the customer";
    case TermsDirection::neutral:
      return "";
  }
  return {};
}

void fact_cell(HtmlWriter& html, const TermsFact* fact) {
  const auto cell = html.in("td");
  if (!fact) return html.text("not stated");
  html.element("bdi", {}, terms_value_words(fact->value));
  if (fact->sentence.empty()) return;
  html.text(" ");
  const auto small = html.in("small");
  html.element("q", {}, one_line(fact->sentence));
}

void step_table(HtmlWriter& html, const TermsStep& step, const std::string& caption) {
  wide_table(html, {caption, caption, {"Field", "Then", "Now", "Which is"}}, [&](HtmlWriter& body) {
    for (const Change& change : step.changes) {
      const TermsFact* then = fact_of(change.before);
      const TermsFact* now = fact_of(change.after);
      const TermsFact* either = now ? now : then;
      if (!either) continue;
      const auto row = body.in("tr");
      body.element("th", {{"scope", "row"}}, terms_field_words(either->field));
      fact_cell(body, then);
      fact_cell(body, now);
      body.element("td", {}, direction_words(either->direction));
    }
  });
}

/// The newest version first.
void timeline_part(HtmlWriter& html, const std::vector<TermsStep>& steps, const DeskAsk& ask) {
  part(html, "timeline", "Over time", [&](HtmlWriter& matter) {
    for (auto step = steps.rbegin(); step != steps.rend(); ++step) {
      matter.element("h3", {}, day_words(step->on));
      if (std::next(step) == steps.rend()) {
        matter.element("p", {}, "The first terms in the book.");
      } else if (step->changes.empty()) {
        matter.element("p", {}, "Nothing changed.");
      } else {
        step_table(matter, *step, counted(step->changes.size(), "field changed", "fields changed"));
      }
    }
    keep_as(matter, ask, kTimelineForms);
  });
}

DeskAnswer shops_sheet(const Desk& desk, const Book& book) {
  return sheet(desk, {"/terms", "Delivery and returns", "Terms"}, [&](HtmlWriter& html) {
    part(html, "shops", "Shop by shop", [&](HtmlWriter& matter) {
      const auto list = matter.in("ul", {{"class", "shops"}});
      for (const ShopRecord& record : book.shops()) {
        const auto item = matter.in("li");
        {
          const auto name = matter.in("h3");
          link(matter, desk_address("/terms", {{"shop", record.shop.slug, {}}}),
               shop_name(record.shop));
        }
        matter.element("p", {{"class", "dates"}},
                       observed_words(terms_in_force(book, record, today())));
        const std::size_t waiting = open_doubts(book, record).size();
        if (waiting > 0) {
          matter.element("p", {},
                         counted(waiting, "reading waits for a yes", "readings wait for a yes"));
        }
      }
    });
  });
}

}  // namespace

DeskAnswer terms_page(Desk& desk, const DeskAsk& ask) {
  const auto book = desk.book();
  if (!book) return no_book(desk);
  const std::string& slug = ask.said("shop");
  if (slug.empty()) return shops_sheet(desk, *book);
  const auto found = find_shop(*book, slug);
  if (const auto* missing = std::get_if<NotThere>(&found)) {
    return trouble_sheet(desk, 404, missing->message);
  }
  const auto& shop = std::get<ShopRecord>(found);
  const auto steps = terms_timeline(*book, shop);
  const std::string format = asked_format(ask, kTimelineForms);
  if (!format.empty()) {
    return kept_file(format == "json" ? timeline_json(slug, steps) : timeline_text(steps), format,
                     slug + "-terms");
  }
  const TermsInForce terms = terms_in_force(*book, shop, today());
  const SheetHead head{"/terms", "Delivery and returns", std::string(shop_name(shop.shop)),
                       observed_words(terms)};
  return sheet(desk, head, [&](HtmlWriter& html) {
    terms_ways(html, slug);
    doubts_part(html, desk, slug, open_doubts(*book, shop));
    if (steps.empty()) {
      html.element("p", {}, "The book has no terms of this shop. Read its policy, or type them.");
      return;
    }
    part(html, "holds", "What holds", [&](HtmlWriter& matter) {
      terms_fields_table(matter, terms.terms, observed_words(terms));
      terms_caution(matter);
    });
    timeline_part(html, steps, ask);
  });
}

DeskAnswer answer_terms_doubt(Desk& desk, const DeskAsk& ask) {
  auto book = desk.book();
  if (!book) return no_book(desk);
  const auto found = find_shop(*book, ask.said("shop"));
  if (const auto* missing = std::get_if<NotThere>(&found)) {
    return trouble_sheet(desk, 404, missing->message);
  }
  const std::string& says = ask.said("says");
  if (says != "yes" && says != "no") return trouble_sheet(desk, 400, "Say yes or no.");
  const std::string& word = ask.said("doubt");
  std::int64_t doubt = 0;
  std::from_chars(word.data(), word.data() + word.size(), doubt);
  // One that does not wait any more was answered by the same form before.
  answer_doubt(*book, std::get<ShopRecord>(found), doubt, says == "yes");
  return gone_to(desk_address("/terms", {{"shop", ask.said("shop"), {}}}) + "#doubts");
}

}  // namespace rangebook

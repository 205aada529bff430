// What she recommended and what became of it, theme by theme; and what is due.
#include <fmt/format.h>

#include <algorithm>
#include <charconv>

#include "reports/due_report.h"
#include "reports/pick_report.h"
#include "reports/pick_words.h"
#include "reports/seen_line.h"
#include "reports/wording.h"
#include "tracker/app/cli_words.h"
#include "tracker/app/pick_desk.h"
#include "tracker/app/pick_forms.h"
#include "tracker/desk/asked_shop.h"
#include "tracker/desk/file_formats.h"
#include "tracker/desk/form_fields.h"
#include "tracker/desk/phrase_html.h"
#include "tracker/desk/pick_pages.h"

namespace rangebook {
namespace {

void filter_form(HtmlWriter& html, const Book& book, const DeskAsk& ask) {
  std::vector<Choice> shops{{"", "every shop"}};
  for (const ShopRecord& record : book.shops()) {
    shops.push_back({record.shop.slug, std::string(shop_name(record.shop))});
  }
  std::vector<Choice> themes{{"", "every theme"}};
  for (const std::string& theme : pick_themes(book)) themes.push_back({theme, theme});
  ask_form(html, ask.path, [&](HtmlWriter& form) {
    choice_field(form, "shop", "Shop", shops, ask.said("shop"));
    choice_field(form, "theme", "Theme", themes, ask.said("theme"));
    button(form, "Show");
  });
}

void labelled(HtmlWriter& html, std::string_view label, const std::string& words) {
  if (words.empty()) return;
  const auto line = html.in("p");
  html.element("span", {{"class", "label"}}, label);
  html.text(" ");
  html.element("bdi", {}, words);
}

/// `Picked on 3 September 2026 at Mill for £49.00, as captured on 1 September 2026`
void picked_line(HtmlWriter& html, const FollowedPick& each) {
  const auto line = html.in("p", {{"class", "dates"}});
  html.text(fmt::format("Picked on {} at ", day_words(each.pick.on)));
  html.element("bdi", {}, shop_name(each.shop));
  if (each.then && each.then->price) {
    html.text(fmt::format(" for {}, as captured on {}", span_words(*each.then->price),
                          day_words(each.pick.seen_on)));
  }
}

void ways_of_pick(HtmlWriter& html, const Pick& pick) {
  const auto list = html.in("ul", {{"class", "ways"}});
  const std::vector<DeskField> number{{"pick", std::to_string(pick.number), {}}};
  for (const auto& [path, words] :
       {std::pair("/picks/change", "Change"), std::pair("/picks/drop", "Drop")}) {
    const auto item = html.in("li");
    const auto way = html.in("a", {{"href", desk_address(path, number)}});
    html.text(words);
    html.element("span", {{"class", "hush"}}, fmt::format(" pick {}", pick.number));
  }
}

void pick_item(HtmlWriter& html, const FollowedPick& each) {
  const auto item = html.in("li", {{"id", fmt::format("pick-{}", each.pick.number)}});
  {
    const auto heading = html.in("h4");
    if (each.reference.empty()) {
      write_phrase(html, pick_name(each));
    } else {
      const auto line =
          html.in("a", {{"href", desk_address("/line", {{"shop", each.shop.slug, {}},
                                                        {"line", each.reference, {}}})}});
      write_phrase(html, pick_name(each));
    }
  }
  {
    const auto outcome = html.in("p");
    SourceList unused({}, {});
    html.element("span", {{"class", "label"}}, "Now");
    html.text(" ");
    write_phrase(html, outcome_phrase(each, unused));
  }
  picked_line(html, each);
  labelled(html, "For", praise_words(each.pick));
  labelled(html, "Mind", chosen_words(each.pick, PickList::caution));
  labelled(html, "Note", each.pick.note);
  ways_of_pick(html, each.pick);
}

std::string review_words(const Pick& pick) {
  return pick.review ? "To look at again on " + day_words(*pick.review) : "Without a review date";
}

/// Picks of one theme, those of one review date below each other.
void theme_part(HtmlWriter& html, const std::vector<const FollowedPick*>& picks,
                std::size_t number) {
  const std::string& theme = picks.front()->pick.theme;
  part(html, fmt::format("theme-{}", number), theme.empty() ? "Without a theme" : theme,
       [&](HtmlWriter& matter) {
         for (std::size_t i = 0; i < picks.size();) {
           const auto& review = picks[i]->pick.review;
           matter.element("h3", {}, review_words(picks[i]->pick));
           const auto list = matter.in("ul", {{"class", "shops"}});
           for (; i < picks.size() && picks[i]->pick.review == review; ++i) {
             pick_item(matter, *picks[i]);
           }
         }
       });
}

void by_themes(HtmlWriter& html, const PickSheet& sheet) {
  std::vector<const FollowedPick*> together;
  std::size_t number = 0;
  for (const FollowedPick& each : sheet.picks) {
    if (!together.empty() && together.front()->pick.theme != each.pick.theme) {
      theme_part(html, together, ++number);
      together.clear();
    }
    together.push_back(&each);
  }
  if (!together.empty()) theme_part(html, together, ++number);
}

void picks_ways(HtmlWriter& html, const DeskAsk& ask) {
  const std::vector<DeskField> filter{{"shop", ask.said("shop"), {}},
                                      {"theme", ask.said("theme"), {}}};
  const auto ways = html.in("p", {{"class", "ways"}});
  link(html, desk_address("/picks/notes", filter), "Show notes");
  link(html, desk_address("/picks/follow", filter), "Follow-up with sources");
  link(html, "/picks/words", "Your words");
}

DeskAnswer picks_report(const Desk& desk, const DeskAsk& ask, PickView view, std::string_view name,
                        ReportPage (*page_of)(const PickSheet&)) {
  const auto book = desk.book();
  if (!book) return no_book(desk);
  auto followed = follow_picks(*book, {ask.said("shop"), ask.said("theme")});
  if (const auto* missing = std::get_if<NotThere>(&followed)) {
    return trouble_sheet(desk, 404, missing->message);
  }
  const PickSheet sheet = by_theme(std::get<PickSheet>(std::move(followed)));
  const std::string format = asked_format(ask, paper_and_csv());
  if (!format.empty()) {
    return kept_file(picks_in(sheet, view, as_file(format)), format, std::string(name));
  }
  ReportPage page = page_of(sheet);
  page.invented = desk.is_demo();
  return report_sheet(desk, "/picks", page,
                      [&](HtmlWriter& html) { keep_as(html, ask, paper_and_csv()); });
}

int asked_days(const DeskAsk& ask, std::string_view name, std::string_view label, int usual) {
  const std::string& word = ask.said(name);
  if (word.empty()) return usual;
  int days = 0;
  const auto read = std::from_chars(word.data(), word.data() + word.size(), days);
  if (read.ec != std::errc() || read.ptr != word.data() + word.size() || days < 0 || days > 3660) {
    throw UsageError{fmt::format("{}: \"{}\" is no number of days from 0 to 3660.", label, word)};
  }
  return days;
}

void due_form(HtmlWriter& html, const DeskAsk& ask) {
  ask_form(html, "/due", [&](HtmlWriter& form) {
    text_field(form, "on", "As of", ask.said("on"), "empty: today", "date");
    text_field(form, "every", "Days between visits", ask.said("every"),
               fmt::format("empty: {}", kRevisitDays));
    text_field(form, "ahead", "Days ahead", ask.said("ahead"), "also what falls due by then");
    button(form, "Show");
  });
}

}  // namespace

DeskAnswer picks_desk_page(Desk& desk, const DeskAsk& ask) {
  const auto book = desk.book();
  if (!book) return no_book(desk);
  auto followed = follow_picks(*book, {ask.said("shop"), ask.said("theme")});
  const auto* missing = std::get_if<NotThere>(&followed);
  const PickSheet picks =
      missing ? PickSheet{} : by_theme(std::get<PickSheet>(std::move(followed)));
  const SheetHead head{"/picks", "What you recommended", "Picks",
                       counted(picks.picks.size(), "pick", "picks")};
  return sheet(
      desk, head,
      [&](HtmlWriter& html) {
        filter_form(html, *book, ask);
        picks_ways(html, ask);
        if (missing) {
          alert(html, without_commands(missing->message));
        } else if (picks.picks.empty()) {
          html.element("p", {},
                       "No picks here yet. Go to the lines of a shop, or to the history of a line, "
                       "and keep one.");
        }
        by_themes(html, picks);
      },
      missing ? 404 : 200);
}

DeskAnswer pick_follow_page(Desk& desk, const DeskAsk& ask) {
  return picks_report(desk, ask, PickView::follow, "follow-up", follow_up_page);
}

DeskAnswer pick_notes_page(Desk& desk, const DeskAsk& ask) {
  return picks_report(desk, ask, PickView::notes, "show-notes", show_notes_page);
}

DeskAnswer due_desk_page(Desk& desk, const DeskAsk& ask) {
  const auto book = desk.book();
  if (!book) return no_book(desk);
  try {
    const DueRequest request{asked_day(ask, "on", "As of").value_or(today()),
                             asked_days(ask, "every", "Days between visits", kRevisitDays),
                             asked_days(ask, "ahead", "Days ahead", 0)};
    const DueList list = what_is_due(*book, request);
    const std::string format = asked_format(ask, paper_and_csv());
    if (!format.empty()) return kept_file(due_in(list, as_file(format)), format, "due");
    ReportPage page = due_page(list);
    page.invented = desk.is_demo();
    return report_sheet(desk, "/due", page, [&](HtmlWriter& html) {
      due_form(html, ask);
      keep_as(html, ask, paper_and_csv());
    });
  } catch (const UsageError& wrong) {
    return sheet(
        desk, {"/due", "Shops and picks", "What is due"},
        [&](HtmlWriter& html) {
          due_form(html, ask);
          alert(html, wrong.message);
        },
        400);
  }
}

}  // namespace rangebook

// Keeping, changing and dropping a pick. The form is filled from what was sent, or else from the
// pick: what was typed is never lost.
#include <fmt/format.h>

#include <charconv>

#include "reports/pick_words.h"
#include "reports/wording.h"
#include "tracker/app/cli_words.h"
#include "tracker/app/history_desk.h"
#include "tracker/app/pick_desk.h"
#include "tracker/desk/asked_shop.h"
#include "tracker/desk/form_fields.h"
#include "tracker/desk/phrase_html.h"
#include "tracker/desk/pick_list_words.h"
#include "tracker/desk/pick_pages.h"
#include "tracker/store/picks.h"

namespace rangebook {
namespace {

std::int64_t asked_number(const DeskAsk& ask) {
  const std::string& word = ask.said("pick");
  std::int64_t number = 0;
  const auto read = std::from_chars(word.data(), word.data() + word.size(), number);
  return read.ec == std::errc() && read.ptr == word.data() + word.size() ? number : 0;
}

PickWordChoice ticked_words(const DeskAsk& ask) {
  PickWordChoice words;
  for (const PickList list : kAllPickLists) words[list] = ask.all(to_string(list));
  return words;
}

/// Throws UsageError.
PickWish wish_of(const DeskAsk& ask) {
  PickWish wish;
  wish.shop = ask.said("shop");
  wish.line = ask.said("line");
  wish.capture = ask.said("capture");
  wish.on = asked_day(ask, "on", "Recommended on").value_or(today());
  wish.theme = ask.said("theme");
  wish.review = asked_day(ask, "review", "Look again on");
  wish.note = ask.said("note");
  wish.words = ticked_words(ask);
  return wish;
}

/// All of the form: what is empty in it is to be empty. Throws UsageError.
PickChange change_of(const DeskAsk& ask) {
  PickChange change;
  change.on = asked_day(ask, "on", "Recommended on");
  change.theme = ask.said("theme");
  change.review = asked_day(ask, "review", "Look again on");
  change.note = ask.said("note");
  change.words = ticked_words(ask);
  return change;
}

/// The pick as a form would send it.
DeskAsk filled(const Pick& pick) {
  DeskAsk ask{"/picks/change", {{"pick", std::to_string(pick.number), {}}}};
  ask.fields.push_back({"on", to_string(pick.on), {}});
  ask.fields.push_back({"theme", pick.theme, {}});
  if (pick.review) ask.fields.push_back({"review", to_string(*pick.review), {}});
  ask.fields.push_back({"note", pick.note, {}});
  for (const PickWord& word : pick.words) {
    ask.fields.push_back({std::string(to_string(word.list)), word.word, {}});
  }
  return ask;
}

void word_fields(HtmlWriter& html, const Book& book, const DeskAsk& ask) {
  const auto vocabulary = pick_vocabulary(book);
  for (const PickList list : kAllPickLists) {
    std::vector<std::string> words;
    for (const PickWord& each : vocabulary) {
      if (each.list == list) words.push_back(each.word);
    }
    if (!words.empty()) {
      tick_fields(html, to_string(list), list_words(list), words, ask.all(to_string(list)));
    }
  }
}

void pick_fields(HtmlWriter& html, const Book& book, const DeskAsk& ask) {
  offered_field(html, "theme", "Theme", ask.said("theme"), pick_themes(book),
                "what it is for, such as a show or an occasion");
  text_field(html, "review", "Look again on", ask.said("review"), "may stay empty", "date");
  text_field(html, "on", "Recommended on", ask.said("on"), "empty: today", "date");
  word_fields(html, book, ask);
  long_text_field(html, "note", "Note", ask.said("note"),
                  "Stands in show notes: leave out who it is for.", 3);
}

SheetHead head_of(std::string kind, const FollowedPick& followed) {
  return {
      "/picks", std::move(kind), plain_text(pick_name(followed), false),
      fmt::format("{}, captured {}", shop_name(followed.shop), day_words(followed.pick.seen_on))};
}

void words_way(HtmlWriter& html) {
  const auto way = html.in("p");
  link(html, "/picks/words", "Change the words that are offered");
}

std::string name_of(const LineHistory& history) {
  for (auto entry = history.entries.rbegin(); entry != history.entries.rend(); ++entry) {
    if (!entry->line) continue;
    const LineCard& card = entry->line->card;
    return card.name.empty() ? card.line_code : card.name;
  }
  return history.reference;
}

DeskAnswer keep_sheet(const Desk& desk, const Book& book, const DeskAsk& ask,
                      const std::string& wrong) {
  const auto found = line_history(book, ask.said("shop"), ask.said("line"));
  if (const auto* missing = std::get_if<NotThere>(&found)) {
    return trouble_sheet(desk, 404, missing->message);
  }
  const auto& history = std::get<LineHistory>(found);
  const SheetHead head{"/picks", "Keep a pick", name_of(history),
                       std::string(shop_name(history.shop))};
  return sheet(
      desk, head,
      [&](HtmlWriter& html) {
        alert(html, wrong);
        post_form(html, desk, "/picks/keep", [&](HtmlWriter& form) {
          hidden_field(form, "shop", ask.said("shop"));
          hidden_field(form, "line", ask.said("line"));
          choice_field(form, "capture", "As captured",
                       capture_choices(book, history.shop.slug, "the latest by that day"),
                       ask.said("capture"));
          pick_fields(form, book, ask);
          button(form, "Keep it");
        });
        words_way(html);
      },
      wrong.empty() ? 200 : 400);
}

DeskAnswer change_sheet(const Desk& desk, const Book& book, const DeskAsk& ask,
                        const FollowedPick& followed, const std::string& wrong) {
  return sheet(
      desk, head_of(fmt::format("Change pick {}", followed.pick.number), followed),
      [&](HtmlWriter& html) {
        alert(html, wrong);
        post_form(html, desk, "/picks/change", [&](HtmlWriter& form) {
          hidden_field(form, "pick", ask.said("pick"));
          pick_fields(form, book, ask);
          button(form, "Keep the change");
        });
        words_way(html);
      },
      wrong.empty() ? 200 : 400);
}

DeskAnswer to_pick(const Pick& pick) { return gone_to(fmt::format("/picks#pick-{}", pick.number)); }

}  // namespace

DeskAnswer keep_pick_page(Desk& desk, const DeskAsk& ask) {
  const auto book = desk.book();
  if (!book) return no_book(desk);
  return keep_sheet(desk, *book, ask, "");
}

DeskAnswer keep_pick_form(Desk& desk, const DeskAsk& ask) {
  auto book = desk.book();
  if (!book) return no_book(desk);
  try {
    const auto kept = keep_pick(*book, wish_of(ask));
    if (const auto* pick = std::get_if<FollowedPick>(&kept)) return to_pick(pick->pick);
    return keep_sheet(desk, *book, ask, without_commands(std::get<NotThere>(kept).message));
  } catch (const UsageError& wrong) {
    return keep_sheet(desk, *book, ask, wrong.message);
  }
}

DeskAnswer change_pick_page(Desk& desk, const DeskAsk& ask) {
  const auto book = desk.book();
  if (!book) return no_book(desk);
  const auto found = find_pick(*book, asked_number(ask));
  if (const auto* missing = std::get_if<NotThere>(&found)) {
    return trouble_sheet(desk, 404, missing->message);
  }
  const auto& followed = std::get<FollowedPick>(found);
  return change_sheet(desk, *book, filled(followed.pick), followed, "");
}

DeskAnswer change_pick_form(Desk& desk, const DeskAsk& ask) {
  auto book = desk.book();
  if (!book) return no_book(desk);
  const std::int64_t number = asked_number(ask);
  const auto found = find_pick(*book, number);
  if (const auto* missing = std::get_if<NotThere>(&found)) {
    return trouble_sheet(desk, 404, missing->message);
  }
  const auto& before = std::get<FollowedPick>(found);
  try {
    const auto changed = change_pick(*book, number, change_of(ask));
    if (const auto* pick = std::get_if<FollowedPick>(&changed)) return to_pick(pick->pick);
    return change_sheet(desk, *book, ask, before,
                        without_commands(std::get<NotThere>(changed).message));
  } catch (const UsageError& wrong) {
    return change_sheet(desk, *book, ask, before, wrong.message);
  }
}

DeskAnswer drop_pick_page(Desk& desk, const DeskAsk& ask) {
  const auto book = desk.book();
  if (!book) return no_book(desk);
  const auto found = find_pick(*book, asked_number(ask));
  if (const auto* missing = std::get_if<NotThere>(&found)) {
    return trouble_sheet(desk, 404, missing->message);
  }
  const auto& followed = std::get<FollowedPick>(found);
  return sheet(desk, head_of("Drop a pick", followed), [&](HtmlWriter& html) {
    html.element("p", {},
                 "Your theme, words and note about it go. The line and its history stay in the "
                 "book.");
    post_form(html, desk, "/picks/drop", [&](HtmlWriter& form) {
      hidden_field(form, "pick", ask.said("pick"));
      button(form, fmt::format("Drop pick {}", followed.pick.number));
    });
    const auto way = html.in("p");
    link(html, fmt::format("/picks#pick-{}", followed.pick.number), "Leave it");
  });
}

/// A pick that is not there any more was dropped by the same form before; numbers are never used
/// again.
DeskAnswer drop_pick_form(Desk& desk, const DeskAsk& ask) {
  auto book = desk.book();
  if (!book) return no_book(desk);
  drop_picks(*book, {asked_number(ask)});
  return gone_to("/picks");
}

}  // namespace rangebook

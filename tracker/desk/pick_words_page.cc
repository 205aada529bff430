// Her own words for picks: added, reworded on every pick at once, removed.
#include <fmt/format.h>

#include "tracker/app/cli_words.h"
#include "tracker/app/pick_desk.h"
#include "tracker/desk/asked_shop.h"
#include "tracker/desk/pick_list_words.h"
#include "tracker/desk/pick_pages.h"
#include "tracker/store/picks.h"

namespace rangebook {
namespace {

constexpr std::string_view kHere = "/picks";

/// The word that is named; throws UsageError for a list that there is not.
PickWord asked_word(const DeskAsk& ask) {
  if (const auto list = parse_pick_list(ask.said("list"))) return {*list, ask.said("word")};
  throw UsageError{fmt::format("There is no list \"{}\" of words.", ask.said("list"))};
}

std::string used_words(std::int64_t uses) {
  if (uses == 0) return "on no pick";
  return uses == 1 ? "on 1 pick" : fmt::format("on {} picks", uses);
}

void word_list(HtmlWriter& html, const Book& book, const std::vector<PickWord>& vocabulary,
               PickList list) {
  part(html, to_string(list), list_words(list), [&](HtmlWriter& matter) {
    const auto words = matter.in("ul", {{"class", "ways"}});
    for (const PickWord& word : vocabulary) {
      if (word.list != list) continue;
      const auto item = matter.in("li");
      const std::string address = desk_address(
          "/picks/word", {{"list", std::string(to_string(list)), {}}, {"word", word.word, {}}});
      const auto way = matter.in("a", {{"href", address}});
      matter.element("bdi", {}, word.word);
      const std::int64_t uses = uses_of(book, word);
      if (uses > 0) matter.text(fmt::format(", {}", used_words(uses)));
    }
  });
}

void add_form(HtmlWriter& html, const Desk& desk, const DeskAsk& ask) {
  std::vector<Choice> lists;
  for (const PickList list : kAllPickLists) {
    lists.push_back({std::string(to_string(list)), std::string(list_words(list))});
  }
  post_form(html, desk, "/picks/words/add", [&](HtmlWriter& form) {
    text_field(form, "word", "New word", ask.said("word"), "as you say it");
    choice_field(form, "list", "Of the list", lists, ask.said("list"));
    button(form, "Add it");
  });
}

DeskAnswer words_sheet(const Desk& desk, const Book& book, const DeskAsk& ask,
                       const std::string& wrong) {
  return sheet(
      desk, {kHere, "Picks", "Your words"},
      [&](HtmlWriter& html) {
        alert(html, wrong);
        add_form(html, desk, ask);
        const auto vocabulary = pick_vocabulary(book);
        for (const PickList list : kAllPickLists) word_list(html, book, vocabulary, list);
        const auto way = html.in("p");
        link(html, "/picks", "To the picks");
      },
      wrong.empty() ? 200 : 400);
}

DeskAnswer word_sheet(const Desk& desk, const Book& book, const PickWord& word,
                      const std::string& typed, const std::string& wrong) {
  const std::string list(to_string(word.list));
  return sheet(
      desk, {kHere, std::string(list_words(word.list)), word.word, used_words(uses_of(book, word))},
      [&](HtmlWriter& html) {
        alert(html, wrong);
        post_form(html, desk, "/picks/words/rename", [&](HtmlWriter& form) {
          hidden_field(form, "list", list);
          hidden_field(form, "word", word.word);
          text_field(form, "now", "Call it", typed, "on every pick at once");
          button(form, "Rename it");
        });
        post_form(html, desk, "/picks/words/remove", [&](HtmlWriter& form) {
          hidden_field(form, "list", list);
          hidden_field(form, "word", word.word);
          button(form, "Remove it, from picks too");
        });
        const auto way = html.in("p");
        link(html, "/picks/words", "Leave it");
      },
      wrong.empty() ? 200 : 400);
}

}  // namespace

DeskAnswer pick_words_page(Desk& desk, const DeskAsk& ask) {
  const auto book = desk.book();
  if (!book) return no_book(desk);
  return words_sheet(desk, *book, ask, "");
}

DeskAnswer pick_word_page(Desk& desk, const DeskAsk& ask) {
  const auto book = desk.book();
  if (!book) return no_book(desk);
  const PickWord word = asked_word(ask);
  return word_sheet(desk, *book, word, word.word, "");
}

DeskAnswer add_pick_word_form(Desk& desk, const DeskAsk& ask) {
  auto book = desk.book();
  if (!book) return no_book(desk);
  const auto done = add_to_vocabulary(*book, asked_word(ask));
  if (const auto* missing = std::get_if<NotThere>(&done)) {
    return words_sheet(desk, *book, ask, without_commands(missing->message));
  }
  return gone_to("/picks/words");
}

DeskAnswer rename_pick_word_form(Desk& desk, const DeskAsk& ask) {
  auto book = desk.book();
  if (!book) return no_book(desk);
  const PickWord word = asked_word(ask);
  const std::string& now = ask.said("now");
  const auto done = reword_vocabulary(*book, word, now);
  if (const auto* missing = std::get_if<NotThere>(&done)) {
    return word_sheet(desk, *book, word, now, without_commands(missing->message));
  }
  return gone_to("/picks/words");
}

/// A word that is not there any more was removed by the same form before.
DeskAnswer remove_pick_word_form(Desk& desk, const DeskAsk& ask) {
  auto book = desk.book();
  if (!book) return no_book(desk);
  remove_from_vocabulary(*book, asked_word(ask));
  return gone_to("/picks/words");
}

}  // namespace rangebook

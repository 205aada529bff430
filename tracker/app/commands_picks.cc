// Picks on the command line.
#include "tracker/app/commands_picks.h"

#include <fmt/format.h>

#include "reports/json_writer.h"
#include "reports/phrase.h"
#include "reports/pick_report.h"
#include "reports/pick_words.h"
#include "tracker/app/cli.h"
#include "tracker/store/picks.h"

namespace rangebook {
namespace {

int say_kept(std::string_view what, const FollowedPick& kept) {
  const Pick& pick = kept.pick;
  fmt::print("{} pick {}: {}, {}, as captured on {}{}{}.\n", what, pick.number,
             plain_text(pick_name(kept), false), clean_line(shop_name(kept.shop)),
             to_string(pick.seen_on),
             pick.theme.empty() ? "" : fmt::format("; theme {}", clean_line(pick.theme)),
             pick.review ? fmt::format("; look again on {}", to_string(*pick.review)) : "");
  return kDone;
}

std::string used_by(std::int64_t uses) {
  return uses == 0
             ? ""
             : fmt::format(", on {} too", uses == 1 ? "1 pick" : fmt::format("{} picks", uses));
}

std::string words_text(const std::vector<PickWord>& words) {
  std::string out;
  std::optional<PickList> last;
  for (const PickWord& word : words) {
    if (last != word.list) out += fmt::format("{}{}\n", last ? "\n" : "", to_string(word.list));
    out += fmt::format("  {}\n", clean_line(word.word));
    last = word.list;
  }
  return out.empty() ? "No words yet: rangebook picks words add palette warm\n" : out;
}

std::string words_json(const std::vector<PickWord>& words) {
  JsonWriter json;
  json.begin_object();
  json.member("format", "rangebook.pick-words/1");
  json.line_break();
  json.key("words");
  json.begin_array();
  for (const PickWord& word : words) {
    json.line_break();
    json.begin_object();
    json.member("list", to_string(word.list));
    json.member("word", word.word);
    json.end_object();
  }
  json.end_array();
  json.line_break();
  json.end_object();
  return json.take() + '\n';
}

}  // namespace

int command_picks(const std::string& book, const PickFilter& filter, PickView view,
                  const OutputChoice& output) {
  auto sheet = follow_picks(Book::open(book, false), filter);
  if (const auto* missing = std::get_if<NotThere>(&sheet)) return not_there(*missing);
  auto& picks = std::get<PickSheet>(sheet);
  if (view == PickView::notes) picks = by_theme(std::move(picks));
  write_output(picks_in(picks, view, output), output);
  return kDone;
}

int command_pick_add(const std::string& book, const PickWish& wish) {
  Book opened = Book::open(book, false);
  const auto kept = keep_pick(opened, wish);
  if (const auto* missing = std::get_if<NotThere>(&kept)) return not_there(*missing);
  return say_kept("Kept", std::get<FollowedPick>(kept));
}

int command_pick_change(const std::string& book, std::int64_t number, const PickChange& change) {
  Book opened = Book::open(book, false);
  const auto kept = change_pick(opened, number, change);
  if (const auto* missing = std::get_if<NotThere>(&kept)) return not_there(*missing);
  return say_kept("Changed", std::get<FollowedPick>(kept));
}

int command_pick_remove(const std::string& book, const std::vector<std::int64_t>& numbers) {
  Book opened = Book::open(book, false);
  const auto removed = drop_picks(opened, numbers);
  if (const auto* missing = std::get_if<NotThere>(&removed)) return not_there(*missing);
  for (const Pick& pick : std::get<std::vector<Pick>>(removed)) {
    fmt::print("Removed pick {} of {}.\n", pick.number, pick.shop);
  }
  return kDone;
}

int command_pick_words(const std::string& book, const OutputChoice& output) {
  const auto words = pick_vocabulary(Book::open(book, false));
  write_output(output.format == "json" ? words_json(words) : words_text(words), output);
  return kDone;
}

int command_pick_word_add(const std::string& book, const PickWord& word) {
  Book opened = Book::open(book, false);
  const auto done = add_to_vocabulary(opened, word);
  if (const auto* missing = std::get_if<NotThere>(&done)) return not_there(*missing);
  fmt::print("{} has the word \"{}\" now.\n", to_string(word.list), clean_line(word.word));
  return kDone;
}

int command_pick_word_remove(const std::string& book, const PickWord& word) {
  Book opened = Book::open(book, false);
  const auto done = remove_from_vocabulary(opened, word);
  if (const auto* missing = std::get_if<NotThere>(&done)) return not_there(*missing);
  fmt::print("\"{}\" is gone from {}{}.\n", clean_line(word.word), to_string(word.list),
             used_by(std::get<std::int64_t>(done)));
  return kDone;
}

int command_pick_word_rename(const std::string& book, const PickWord& word,
                             const std::string& now) {
  Book opened = Book::open(book, false);
  const auto done = reword_vocabulary(opened, word, now);
  if (const auto* missing = std::get_if<NotThere>(&done)) return not_there(*missing);
  fmt::print("\"{}\" is called \"{}\" in {} now{}.\n", clean_line(word.word), clean_line(now),
             to_string(word.list), used_by(std::get<std::int64_t>(done)));
  return kDone;
}

int command_due(const std::string& book, const DueRequest& request, const OutputChoice& output) {
  write_output(due_in(what_is_due(Book::open(book, false), request), output), output);
  return kDone;
}

}  // namespace rangebook

// Keeping picks: every word is checked before anything is written.
#include "tracker/app/pick_desk.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <set>
#include <utility>

#include "schema/nearest_word.h"
#include "tracker/app/line_search.h"
#include "tracker/app/pick_follow_up.h"
#include "tracker/store/picks.h"
#include "tracker/text_fold.h"

namespace rangebook {
namespace {

std::optional<NotThere> too_long(std::string_view what, std::string_view text, std::size_t most) {
  if (text.size() <= most) return std::nullopt;
  return NotThere{
      fmt::format("The {} is {} bytes long; at most {} are kept.", what, text.size(), most)};
}

NotThere no_word(const std::vector<PickWord>& vocabulary, const PickWord& word) {
  std::vector<std::string> known;
  for (const PickWord& each : vocabulary) {
    if (each.list == word.list) known.push_back(each.word);
  }
  return {
      fmt::format("\"{}\" is no word of {}.{} There are: {}. To add it: rangebook picks words "
                  "add {} \"{}\"",
                  word.word, to_string(word.list), did_you_mean(word.word, known),
                  known.empty() ? "none" : fmt::format("{}", fmt::join(known, ", ")),
                  to_string(word.list), word.word)};
}

bool has_word(const std::vector<PickWord>& vocabulary, const PickWord& word) {
  return std::binary_search(vocabulary.begin(), vocabulary.end(), word);
}

/// The chosen words, each one of the vocabulary.
std::variant<std::vector<PickWord>, NotThere> known_words(const Book& book,
                                                          const PickWordChoice& choice) {
  const auto vocabulary = pick_vocabulary(book);
  std::vector<PickWord> words;
  for (const auto& [list, chosen] : choice) {
    for (const std::string& each : chosen) {
      const PickWord word{list, std::string(trim_text(each))};
      if (!has_word(vocabulary, word)) return no_word(vocabulary, word);
      words.push_back(word);
    }
  }
  std::sort(words.begin(), words.end());
  words.erase(std::unique(words.begin(), words.end()), words.end());
  return words;
}

/// The sighting a pick is made from: in the capture that was named, else the latest by that day.
std::variant<SightingAt, NotThere> sighting_for(const Book& book, const PickWish& wish,
                                                const MeantLine& meant) {
  const Roll& roll = meant.lines->roll();
  const auto& seen = meant.lines->identities().lines[meant.line].seen;
  const auto info = [&roll](SightingAt at) -> const CaptureInfo& {
    return roll.captures[at.capture].info;
  };
  if (wish.capture.empty()) {
    const auto later = std::find_if(seen.begin(), seen.end(),
                                    [&](SightingAt at) { return info(at).on > wish.on; });
    if (later != seen.begin()) return *std::prev(later);
    return NotThere{fmt::format("\"{}\" was first captured on {}, after the day of the pick, {}.",
                                wish.line, to_string(info(seen.front()).on), to_string(wish.on))};
  }
  const auto found = find_capture(book, roll.shop.slug, wish.capture);
  if (const auto* missing = std::get_if<NotThere>(&found)) return *missing;
  const CaptureInfo& named = std::get<CaptureInfo>(found);
  for (const SightingAt at : seen) {
    if (info(at).id != named.id) continue;
    if (named.on <= wish.on) return at;
    return NotThere{fmt::format("The capture of {} is later than the day of the pick, {}.",
                                to_string(named.on), to_string(wish.on))};
  }
  return NotThere{fmt::format("The capture of {} does not show \"{}\"; it was last seen on {}.",
                              to_string(named.on), wish.line, to_string(info(seen.back()).on))};
}

std::optional<NotThere> kept_already(const Book& book, const Pick& pick) {
  for (const Pick& other : kept_picks(book, pick.shop)) {
    if (other.line != pick.line || other.on != pick.on || other.theme != pick.theme) continue;
    return NotThere{fmt::format("It is pick {} already. To change it: rangebook picks change {}",
                                other.number, other.number)};
  }
  return std::nullopt;
}

NotThere no_pick(const std::vector<Pick>& picks, std::int64_t number) {
  if (picks.empty()) return {fmt::format("There is no pick {}: no picks are kept yet.", number)};
  return {fmt::format("There is no pick {}. To see them: rangebook picks list", number)};
}

std::optional<Pick> with_number(const std::vector<Pick>& picks, std::int64_t number) {
  const auto at = std::find_if(picks.begin(), picks.end(),
                               [&](const Pick& pick) { return pick.number == number; });
  return at == picks.end() ? std::nullopt : std::optional(*at);
}

std::optional<NotThere> unknown_theme(const std::vector<Pick>& picks, const std::string& theme) {
  std::vector<std::string> themes;
  for (const Pick& pick : picks) themes.push_back(pick.theme);
  if (theme.empty() || std::find(themes.begin(), themes.end(), theme) != themes.end()) return {};
  std::erase(themes, "");
  return NotThere{
      fmt::format("No pick has the theme \"{}\".{}", theme, did_you_mean(theme, themes))};
}

}  // namespace

std::variant<FollowedPick, NotThere> keep_pick(Book& book, const PickWish& wish) {
  Pick pick;
  pick.on = wish.on;
  pick.review = wish.review;
  pick.theme = trim_text(wish.theme);
  pick.note = trim_text(wish.note);
  if (const auto fault = too_long("theme", pick.theme, kMaxPickWord)) return *fault;
  if (const auto fault = too_long("note", pick.note, kMaxPickNote)) return *fault;
  auto words = known_words(book, wish.words);
  if (auto* missing = std::get_if<NotThere>(&words)) return std::move(*missing);
  pick.words = std::move(std::get<std::vector<PickWord>>(words));
  LineSearch search(book, wish.shop);
  auto found = search.find(wish.line);
  if (auto* missing = std::get_if<NotThere>(&found)) return std::move(*missing);
  const MeantLine meant = std::get<MeantLine>(found);
  auto sighting = sighting_for(book, wish, meant);
  if (auto* missing = std::get_if<NotThere>(&sighting)) return std::move(*missing);
  const SightingAt at = std::get<SightingAt>(sighting);
  const RollCapture& capture = meant.lines->roll().captures[at.capture];
  pick.shop = capture.info.shop;
  pick.line = capture.lines[at.row];
  pick.seen_on = capture.info.on;
  if (const auto other = kept_already(book, pick)) return *other;
  pick.number = add_pick(book, pick);
  return FollowUp(book, Day::max()).of(pick);
}

std::variant<FollowedPick, NotThere> find_pick(const Book& book, std::int64_t number) {
  const auto picks = kept_picks(book, "");
  const auto pick = with_number(picks, number);
  if (!pick) return no_pick(picks, number);
  return FollowUp(book, Day::max()).of(*pick);
}

std::variant<FollowedPick, NotThere> change_pick(Book& book, std::int64_t number,
                                                 const PickChange& change) {
  const auto picks = kept_picks(book, "");
  auto pick = with_number(picks, number);
  if (!pick) return no_pick(picks, number);
  if (change.on) pick->on = *change.on;
  if (change.review) pick->review = *change.review;
  if (change.theme) pick->theme = trim_text(*change.theme);
  if (change.note) pick->note = trim_text(*change.note);
  if (pick->on < pick->seen_on) {
    return NotThere{fmt::format("Pick {} is from the capture of {}, which is later than {}.",
                                number, to_string(pick->seen_on), to_string(pick->on))};
  }
  if (const auto fault = too_long("theme", pick->theme, kMaxPickWord)) return *fault;
  if (const auto fault = too_long("note", pick->note, kMaxPickNote)) return *fault;
  auto words = known_words(book, change.words);
  if (auto* missing = std::get_if<NotThere>(&words)) return std::move(*missing);
  std::erase_if(pick->words,
                [&](const PickWord& word) { return change.words.contains(word.list); });
  for (PickWord& word : std::get<std::vector<PickWord>>(words)) {
    pick->words.push_back(std::move(word));
  }
  std::sort(pick->words.begin(), pick->words.end());
  store_pick(book, *pick);
  return FollowUp(book, Day::max()).of(*pick);
}

std::variant<std::vector<Pick>, NotThere> drop_picks(Book& book,
                                                     const std::vector<std::int64_t>& numbers) {
  const auto picks = kept_picks(book, "");
  std::vector<Pick> removed;
  for (const std::int64_t number : numbers) {
    auto pick = with_number(picks, number);
    if (!pick) return no_pick(picks, number);
    removed.push_back(std::move(*pick));
  }
  remove_picks(book, numbers);
  return removed;
}

std::variant<PickSheet, NotThere> follow_picks(const Book& book, const PickFilter& filter) {
  if (!filter.shop.empty() && !book.find_shop(filter.shop)) return no_shop(book, filter.shop);
  const auto picks = kept_picks(book, filter.shop);
  if (auto unknown = unknown_theme(picks, filter.theme)) return std::move(*unknown);
  FollowUp follow(book, Day::max());
  PickSheet sheet{filter.shop, filter.theme, {}};
  for (const Pick& pick : picks) {
    if (filter.theme.empty() || pick.theme == filter.theme) sheet.picks.push_back(follow.of(pick));
  }
  return sheet;
}

std::vector<std::string> pick_themes(const Book& book) {
  std::set<std::string> themes;
  for (const Pick& pick : kept_picks(book, "")) themes.insert(pick.theme);
  themes.erase("");
  return {themes.begin(), themes.end()};
}

std::variant<std::int64_t, NotThere> add_to_vocabulary(Book& book, const PickWord& word) {
  const PickWord trimmed{word.list, std::string(trim_text(word.word))};
  if (trimmed.word.empty()) return NotThere{"A word of the vocabulary cannot be empty."};
  if (const auto fault = too_long("word", trimmed.word, kMaxPickWord)) return *fault;
  if (add_pick_word(book, trimmed)) return std::int64_t{0};
  return NotThere{
      fmt::format("{} has the word \"{}\" already.", to_string(word.list), trimmed.word)};
}

std::variant<std::int64_t, NotThere> remove_from_vocabulary(Book& book, const PickWord& word) {
  const std::int64_t uses = uses_of(book, word);
  if (remove_pick_word(book, word)) return uses;
  return no_word(pick_vocabulary(book), word);
}

std::variant<std::int64_t, NotThere> reword_vocabulary(Book& book, const PickWord& word,
                                                       const std::string& now) {
  const PickWord after{word.list, std::string(trim_text(now))};
  const auto vocabulary = pick_vocabulary(book);
  if (!has_word(vocabulary, word)) return no_word(vocabulary, word);
  if (after.word.empty()) return NotThere{"A word of the vocabulary cannot be empty."};
  if (const auto fault = too_long("word", after.word, kMaxPickWord)) return *fault;
  if (has_word(vocabulary, after)) {
    return NotThere{
        fmt::format("{} has the word \"{}\" already.", to_string(word.list), after.word)};
  }
  rename_pick_word(book, word, after.word);
  return uses_of(book, after);
}

}  // namespace rangebook

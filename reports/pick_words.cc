// Sentences about picks.
#include "reports/pick_words.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "reports/wording.h"

namespace rangebook {
namespace {

/// What a change of price is called; empty for other changes, which the list of changes tells.
/// With a markdown, dearer or cheaper would be read as the price to pay.
std::string_view price_move_words(ChangeKind kind, bool marked_down) {
  if (kind == ChangeKind::price_up) return marked_down ? "full price up" : "dearer";
  if (kind == ChangeKind::price_down) return marked_down ? "full price down" : "cheaper";
  if (kind == ChangeKind::marked_down) return "marked down";
  if (kind == ChangeKind::markdown_changed) return "marked down otherwise";
  if (kind == ChangeKind::markdown_ended) return "no longer marked down";
  return {};
}

void add_moves(Phrase& phrase, const FollowedPick& followed, SourceList& sources) {
  for (const Change& change : followed.changes) {
    const auto words = price_move_words(change.kind, followed.now->marked_down > 0);
    if (words.empty()) continue;
    phrase.words("; ").words(words).words(", from ");
    phrase.append(side_phrase(change.kind, change.before));
    if (followed.then) phrase.note(pick_note(followed, followed.then->seen, sources));
    phrase.words(" to ").append(side_phrase(change.kind, change.after));
  }
}

Phrase there_phrase(const FollowedPick& followed, SourceList& sources) {
  Phrase phrase;
  phrase.words(followed.was_away ? "back on " : "there on ").day(followed.by->on);
  phrase.note(pick_note(followed, followed.now->seen, sources));
  if (!followed.new_colours.empty()) {
    phrase.words(followed.new_colours.size() == 1 ? ", in a new colour: " : ", in new colours: ");
    phrase.name(fmt::format("{}", fmt::join(followed.new_colours, ", ")));
  }
  add_moves(phrase, followed, sources);
  return phrase;
}

}  // namespace

Phrase pick_name(const FollowedPick& followed) {
  Phrase phrase;
  if (followed.name.empty()) return phrase.name(followed.code);
  phrase.name(followed.name);
  if (!followed.code.empty()) phrase.words(" ").code(followed.code);
  return phrase;
}

std::string chosen_words(const Pick& pick, PickList list) {
  std::string words;
  for (const PickWord& word : pick.words) {
    if (word.list == list) words += (words.empty() ? "" : ", ") + word.word;
  }
  return words;
}

std::string praise_words(const Pick& pick) {
  std::string words;
  for (const PickList list :
       {PickList::personality, PickList::palette, PickList::dress_code, PickList::body_shape}) {
    const std::string chosen = chosen_words(pick, list);
    if (!chosen.empty()) words += (words.empty() ? "" : "; ") + chosen;
  }
  return words;
}

std::size_t pick_note(const FollowedPick& followed, Sighting seen, SourceList& sources) {
  const std::string_view name = shop_name(followed.shop);
  seen.season = seen.season.empty() ? std::string(name) : fmt::format("{}, {}", name, seen.season);
  return sources.number(seen);
}

std::size_t pick_note(const FollowedPick& followed, const CaptureInfo& capture,
                      SourceList& sources) {
  return pick_note(followed, Sighting{capture.id, capture.on, capture.season, {}, {}}, sources);
}

std::string_view state_words(PickState state) {
  switch (state) {
    case PickState::there:
      return "there";
    case PickState::gone:
      return "gone";
    case PickState::not_looked:
      return "not looked at since";
    case PickState::refused:
      return "row not readable";
    case PickState::not_kept:
      return "capture not in the book";
  }
  return {};
}

Phrase outcome_phrase(const FollowedPick& followed, SourceList& sources) {
  Phrase phrase;
  switch (followed.state) {
    case PickState::there:
      phrase = there_phrase(followed, sources);
      break;
    case PickState::gone:
      return phrase.words("gone: looked for and not found on ")
          .day(followed.by->on)
          .note(pick_note(followed, *followed.by, sources));
    case PickState::not_looked:
      phrase.words("not looked at since ").day(followed.pick.seen_on);
      if (followed.then) phrase.note(pick_note(followed, followed.then->seen, sources));
      break;
    case PickState::refused:
      return phrase.words("not known: a row that may be it could not be read on ")
          .day(followed.by->on)
          .note(pick_note(followed, *followed.by, sources));
    case PickState::not_kept:
      return phrase.words("not known: the capture of ")
          .day(followed.pick.seen_on)
          .words(" it was picked from no longer shows it in this book");
  }
  if (!followed.sold_out.empty()) {
    phrase.words(followed.state == PickState::there ? "; sold out: " : "; sold out then: ");
    phrase.figure(sold_out_words(followed.sold_out));
  }
  return phrase;
}

std::string sold_out_words(const std::vector<SoldOutSize>& sizes) {
  std::string words;
  for (const SoldOutSize& each : sizes) {
    words += (words.empty() ? "" : ", ") + (each.size.empty() ? "its one size" : each.size);
    if (!each.colours.empty()) words += fmt::format(" in {}", fmt::join(each.colours, " and "));
  }
  return words;
}

}  // namespace rangebook

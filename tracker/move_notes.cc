// Moves to changes.
#include "tracker/move_notes.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <map>
#include <unordered_map>
#include <utility>

#include "tracker/line_pair.h"

namespace rangebook {
namespace {

constexpr std::size_t kNamedMoves = 3;

std::string words_for(const LineRef& line) {
  if (line.code.empty()) return line.name;
  return line.name.empty() ? line.code : fmt::format("{} {}", line.name, line.code);
}

class Telling {
 public:
  Telling(const LinkedCaptures& captures, Interpreter& interpreter, std::vector<Change>& changes)
      : captures_(captures), interpreter_(interpreter) {
    for (const Link& link : captures.links.links) from_of_to_[link.to] = link.from;
    for (Change& change : changes) {
      if (change.line) of_line_[{change.kind, change.line->id}].push_back(&change);
    }
  }

  void split(const ColourMove& move) {
    const LineRef whole = ref(captures_.from.lines[move.whole], 0);
    const LineRef part = ref(captures_.to.lines[move.part], 0);
    const std::string why = fmt::format("this was the colour {} of {}: {}", move.colour,
                                        words_for(whole), move.evidence);
    bool told = tell(ChangeKind::line_new, part, {Relation::split_from, whole, move.colour}, why);
    told |= tell(ChangeKind::line_returned, part, {Relation::split_from, whole, move.colour}, why);
    if (!told) return;
    const RelatedLine into{Relation::split_into, part, move.colour};
    tell_colour(ChangeKind::colour_dropped, whole, into);
    tell(ChangeKind::line_dropped, whole, into,
         fmt::format("its colour {} is now {}: {}", move.colour, words_for(part), move.evidence));
    splits_.push_back(
        fmt::format("{} of {} is now {}", move.colour, words_for(whole), words_for(part)));
  }

  void merge(const ColourMove& move) {
    const auto before = from_of_to_.find(move.whole);
    const LineState& state = captures_.to.lines[move.whole];
    const LineRef whole =
        ref(state, before == from_of_to_.end() ? 0 : captures_.from.lines[before->second].id);
    const LineRef part = ref(captures_.from.lines[move.part], 0);
    const bool told =
        tell(ChangeKind::line_dropped, part, {Relation::merged_into, whole, move.colour},
             fmt::format("this is now the colour {} of {}: {}", move.colour, words_for(whole),
                         move.evidence));
    if (!told) return;
    const RelatedLine from{Relation::merged_from, part, move.colour};
    tell_colour(ChangeKind::colour_added, whole, from);
    tell(ChangeKind::line_new, whole, from,
         fmt::format("its colour {} was {}: {}", move.colour, words_for(part), move.evidence));
    merges_.push_back(
        fmt::format("{} is now {} of {}", words_for(part), move.colour, words_for(whole)));
  }

  std::vector<std::string> sentences() {
    std::vector<std::string> all;
    add(all, splits_, "colour became a line of its own", "colours became lines of their own",
        "as a colour gone and as a new line");
    add(all, merges_, "line became a colour of another", "lines became colours of others",
        "as a line gone and as a colour added");
    return all;
  }

 private:
  LineRef ref(const LineState& state, LineId id) {
    return line_ref(id == 0 ? state.id : id, state, interpreter_.category(state.listing.card));
  }

  bool tell(ChangeKind kind, const LineRef& line, const RelatedLine& related,
            const std::string& why) {
    const auto found = of_line_.find({kind, line.id});
    if (found == of_line_.end()) return false;
    Change& change = *found->second.front();
    change.related.push_back(related);
    change.evidence.link += (change.evidence.link.empty() ? "" : "; ") + why;
    return true;
  }

  void tell_colour(ChangeKind kind, const LineRef& line, const RelatedLine& related) {
    const auto found = of_line_.find({kind, line.id});
    if (found == of_line_.end()) return;
    for (Change* change : found->second) {
      const auto& side = change->before ? change->before : change->after;
      const auto* colour = std::get_if<ColourFact>(&*side);
      if (colour != nullptr && colour->colour == related.colour) change->related.push_back(related);
    }
  }

  static void add(std::vector<std::string>& all, std::vector<std::string>& moves,
                  std::string_view one, std::string_view many, std::string_view twice) {
    if (moves.empty()) return;
    std::sort(moves.begin(), moves.end());
    const std::size_t count = moves.size();
    moves.resize(std::min(count, kNamedMoves));
    all.push_back(fmt::format("{} {} ({}{}): {} listed {}.", count, count == 1 ? one : many,
                              fmt::join(moves, "; "), count > kNamedMoves ? "; .." : "",
                              count == 1 ? "it is" : "each is", twice));
  }

  const LinkedCaptures& captures_;
  Interpreter& interpreter_;
  std::unordered_map<std::size_t, std::size_t> from_of_to_;
  std::map<std::pair<ChangeKind, LineId>, std::vector<Change*>> of_line_;
  std::vector<std::string> splits_;
  std::vector<std::string> merges_;
};

}  // namespace

std::vector<std::string> tell_colour_moves(const LinkedCaptures& captures, Interpreter& interpreter,
                                           std::vector<Change>& changes) {
  const ColourMoves moves =
      find_colour_moves(captures.from, captures.to, captures.links, interpreter);
  if (moves.split.empty() && moves.merged.empty()) return {};
  Telling telling(captures, interpreter, changes);
  for (const ColourMove& move : moves.split) telling.split(move);
  for (const ColourMove& move : moves.merged) telling.merge(move);
  return telling.sentences();
}

}  // namespace rangebook

// Linking by exact evidence. Each step looks only at the lines that the steps before left over and
// links where its key stands on exactly one line of each side; all steps are linear in the lines.
#include "tracker/linker.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <unordered_map>
#include <utility>

#include "tracker/decision_book.h"
#include "tracker/line_prices.h"
#include "tracker/link_keys.h"
#include "tracker/text_fold.h"

namespace rangebook {
namespace {

using Indices = std::vector<std::size_t>;

/// Where a key stands: the last line seen with it, and how many lines have it.
struct Seat {
  std::size_t line = 0;
  std::size_t count = 0;

  void add(std::size_t index) {
    if (count == 0 || line != index) ++count;
    line = index;
  }
  bool single() const { return count == 1; }
};

/// One key's seats on both sides.
struct Seats {
  Seat from;
  Seat to;
};

class Linking {
 public:
  Linking(const Snapshot& from, const Snapshot& to, const std::vector<LinkDecision>& decisions)
      : from_(from),
        to_(to),
        decisions_(decisions),
        left_from_(all_of(from)),
        left_to_(all_of(to)) {
    links_.reserve(std::min(from.lines.size(), to.lines.size()));
  }

  void by_decision();
  void by_line_code();
  void by_gtin();
  void by_group_id();
  void by_address();
  void by_name();
  void by_likeness(const Matcher& matcher);
  LinkSet finish();

 private:
  static Indices all_of(const Snapshot& snapshot);
  bool forbidden(std::size_t i, std::size_t j) const;
  void take(Link link);
  bool free(const Link& link) const;
  void by_from();
  void drop_taken();

  /// Links lines whose key, `key_of(line)`, is not empty and alone on both sides, if
  /// `agree(from, to)`; `sentence(from)` says why.
  template <typename KeyOf, typename Agree, typename Sentence>
  void by_key(LinkEvidence evidence, LinkAuthority authority, KeyOf key_of, Agree agree,
              Sentence sentence);

  const Snapshot& from_;
  const Snapshot& to_;
  DecisionBook decisions_;
  Indices left_from_;
  Indices left_to_;
  std::vector<char> taken_from_ = std::vector<char>(from_.lines.size());
  std::vector<char> taken_to_ = std::vector<char>(to_.lines.size());
  std::vector<Link> links_;
  std::vector<Link> ask_;
  std::set<std::size_t> asked_from_;
  std::set<std::size_t> asked_to_;
};

Indices Linking::all_of(const Snapshot& snapshot) {
  Indices indices(snapshot.lines.size());
  for (std::size_t i = 0; i < indices.size(); ++i) indices[i] = i;
  return indices;
}

bool Linking::forbidden(std::size_t i, std::size_t j) const {
  return decisions_.forbids(from_.lines[i].id, to_.lines[j].id);
}

void Linking::take(Link link) {
  taken_from_[link.from] = 1;
  taken_to_[link.to] = 1;
  links_.push_back(std::move(link));
}

void Linking::drop_taken() {
  std::erase_if(left_from_, [this](std::size_t i) { return taken_from_[i] != 0; });
  std::erase_if(left_to_, [this](std::size_t j) { return taken_to_[j] != 0; });
}

template <typename KeyOf, typename Agree, typename Sentence>
void Linking::by_key(LinkEvidence evidence, LinkAuthority authority, KeyOf key_of, Agree agree,
                     Sentence sentence) {
  using Key = decltype(key_of(from_.lines.front()));
  std::unordered_map<Key, Seats> seats;
  seats.reserve(left_from_.size());
  for (const std::size_t i : left_from_) {
    if (Key key = key_of(from_.lines[i]); !key.empty()) seats[std::move(key)].from.add(i);
  }
  if (seats.empty()) return;
  for (const std::size_t j : left_to_) {
    const auto found = seats.find(key_of(to_.lines[j]));
    if (found != seats.end()) found->second.to.add(j);
  }
  for (const auto& [key, seat] : seats) {
    if (!seat.from.single() || !seat.to.single()) continue;
    const std::size_t i = seat.from.line;
    const std::size_t j = seat.to.line;
    if (forbidden(i, j) || !agree(from_.lines[i].listing, to_.lines[j].listing)) continue;
    take({.from = i,
          .to = j,
          .evidence = {evidence},
          .authority = authority,
          .sentence = sentence(key)});
  }
  drop_taken();
}

bool always(const Listing&, const Listing&) { return true; }

// A yes links where its group has exactly one line on each side: with two, the decision does not
// say which of them to take, and the codes may.
void Linking::by_decision() {
  if (decisions_.empty()) return;
  std::unordered_map<LineId, Seats> groups;
  for (const std::size_t i : left_from_) {
    groups[decisions_.group_of(from_.lines[i].id)].from.add(i);
  }
  for (const std::size_t j : left_to_) groups[decisions_.group_of(to_.lines[j].id)].to.add(j);
  for (const auto& [group, seat] : groups) {
    if (!seat.from.single() || !seat.to.single() || forbidden(seat.from.line, seat.to.line))
      continue;
    // The same id on both sides was not decided by anyone.
    if (from_.lines[seat.from.line].id == to_.lines[seat.to.line].id) continue;
    take({.from = seat.from.line,
          .to = seat.to.line,
          .evidence = {},
          .authority = LinkAuthority::stylist,
          .sentence = "the stylist said that both are the same line"});
  }
  drop_taken();
}

void Linking::by_line_code() {
  by_key(
      LinkEvidence::line_code, LinkAuthority::code,
      [](const LineState& line) { return trim_text(line.listing.card.line_code); }, always,
      [](std::string_view key) { return fmt::format("same line code {} in both captures", key); });
}

void Linking::by_group_id() {
  by_key(
      LinkEvidence::group_id, LinkAuthority::code,
      [](const LineState& line) { return trim_text(line.listing.card.group_id); }, always,
      [](std::string_view key) { return fmt::format("same group id {} in both captures", key); });
}

// Some shops tell products apart by the query alone, so where it differs the name has to agree.
void Linking::by_address() {
  const auto agree = [](const Listing& a, const Listing& b) {
    return address_query(a.card.url) == address_query(b.card.url) ||
           space_folded(a.card.name) == space_folded(b.card.name);
  };
  by_key(
      LinkEvidence::address, LinkAuthority::code,
      [](const LineState& line) { return address_key(line.listing.card.url); }, agree,
      [](std::string_view key) { return fmt::format("same address {} in both captures", key); });
}

/// What else than its name identifies a line.
bool has_code(const LineCard& card) {
  return !trim_text(card.line_code).empty() || !trim_text(card.group_id).empty();
}

bool texts_contradict(std::string_view a, std::string_view b) {
  return !a.empty() && !b.empty() && a != b;
}

bool prices_contradict(const LineOffers& a, const LineOffers& b) {
  const auto lowest_a = lowest_undiscounted(a);
  const auto lowest_b = lowest_undiscounted(b);
  return lowest_a && lowest_b && lowest_a != lowest_b;
}

// Hand-typed captures often have nothing but names. Without any code on either side an equal name
// is the best there is, unless another page, or both cloth and price, speak against it; with a code
// it proves nothing, since shops use names again.
void Linking::by_name() {
  const auto agree = [](const Listing& a, const Listing& b) {
    if (texts_contradict(address_key(a.card.url), address_key(b.card.url))) return false;
    return !texts_contradict(fold_text(a.card.composition), fold_text(b.card.composition)) ||
           !prices_contradict(a.offers, b.offers);
  };
  by_key(
      LinkEvidence::likeness, LinkAuthority::rule,
      [](const LineState& line) {
        return has_code(line.listing.card) ? std::string() : space_folded(line.listing.card.name);
      },
      agree,
      [](std::string_view key) {
        return fmt::format("same name {} in both captures, and neither states a code", key);
      });
}

/// A GTIN of a line that is left over.
struct Mark {
  std::uint64_t gtin = 0;
  std::size_t line = 0;

  bool operator==(const Mark&) const = default;
  bool operator<(const Mark& other) const {
    return gtin != other.gtin ? gtin < other.gtin : line < other.line;
  }
};

/// The GTINs of the lines left over, each at one line only: a number two lines share tells nothing.
std::vector<Mark> single_marks(const Snapshot& snapshot, const Indices& left) {
  std::vector<Mark> marks;
  for (const std::size_t i : left) {
    for (const OptionalGtin gtin : snapshot.lines[i].listing.offers.gtins) {
      if (gtin) marks.push_back({(*gtin).value(), i});
    }
  }
  std::sort(marks.begin(), marks.end());
  marks.erase(std::unique(marks.begin(), marks.end()), marks.end());
  std::vector<Mark> single;
  for (std::size_t k = 0; k < marks.size(); ++k) {
    const bool again = (k > 0 && marks[k - 1].gtin == marks[k].gtin) ||
                       (k + 1 < marks.size() && marks[k + 1].gtin == marks[k].gtin);
    if (!again) single.push_back(marks[k]);
  }
  return single;
}

std::string gtin_sentence(const std::vector<std::uint64_t>& shared) {
  const std::string first = to_string(Gtin::from_value(shared.front()));
  if (shared.size() == 1) return fmt::format("same GTIN {} in both captures", first);
  return fmt::format("{} GTINs in common, the first is {}", shared.size(), first);
}

// Lines pair up only if all GTINs they share with anyone point to each other.
void Linking::by_gtin() {
  if (left_from_.empty() || left_to_.empty()) return;
  const std::vector<Mark> marks_from = single_marks(from_, left_from_);
  const std::vector<Mark> marks_to = single_marks(to_, left_to_);
  struct Shared {
    Seat partner;
    std::vector<std::uint64_t> gtins;
  };
  std::unordered_map<std::size_t, Shared> of_from;
  std::unordered_map<std::size_t, Seat> of_to;
  auto to = marks_to.begin();
  for (const Mark& mark : marks_from) {
    to = std::lower_bound(to, marks_to.end(), Mark{mark.gtin, 0});
    if (to == marks_to.end()) break;
    if (to->gtin != mark.gtin) continue;
    Shared& shared = of_from[mark.line];
    shared.partner.add(to->line);
    shared.gtins.push_back(mark.gtin);
    of_to[to->line].add(mark.line);
  }
  for (const auto& [i, shared] : of_from) {
    const std::size_t j = shared.partner.line;
    if (!shared.partner.single() || !of_to[j].single() || forbidden(i, j)) continue;
    take({.from = i,
          .to = j,
          .evidence = {LinkEvidence::gtin},
          .sentence = gtin_sentence(shared.gtins)});
  }
  drop_taken();
}

void Linking::by_likeness(const Matcher& matcher) {
  by_from();
  const auto no = [this](std::size_t i, std::size_t j) { return forbidden(i, j); };
  Matches found = matcher.match({from_, to_, left_from_, left_to_, links_, no});
  for (Link& link : found.links) {
    if (free(link)) take(std::move(link));
  }
  for (Link& link : found.ask) {
    if (!free(link)) continue;
    asked_from_.insert(link.from);
    asked_to_.insert(link.to);
    ask_.push_back(std::move(link));
  }
  drop_taken();
}

// A matcher is a guest: what it returns is checked.
bool Linking::free(const Link& link) const {
  return std::binary_search(left_from_.begin(), left_from_.end(), link.from) &&
         std::binary_search(left_to_.begin(), left_to_.end(), link.to) &&
         taken_from_[link.from] == 0 && taken_to_[link.to] == 0 &&
         !asked_from_.contains(link.from) && !asked_to_.contains(link.to) &&
         !forbidden(link.from, link.to);
}

void Linking::by_from() {
  std::sort(links_.begin(), links_.end(),
            [](const Link& a, const Link& b) { return a.from < b.from; });
}

LinkSet Linking::finish() {
  by_from();
  std::sort(ask_.begin(), ask_.end(), [](const Link& a, const Link& b) {
    return a.score != b.score ? a.score > b.score : a.from < b.from;
  });
  return {std::move(links_), std::move(left_from_), std::move(left_to_), std::move(ask_)};
}

}  // namespace

LinkSet link_lines(const Snapshot& from, const Snapshot& to,
                   const std::vector<LinkDecision>& decisions, const Matcher* matcher) {
  Linking linking(from, to, decisions);
  linking.by_decision();
  linking.by_line_code();
  linking.by_gtin();
  linking.by_group_id();
  linking.by_address();
  if (matcher != nullptr) {
    linking.by_likeness(*matcher);
  } else {
    linking.by_name();
  }
  return linking.finish();
}

}  // namespace rangebook

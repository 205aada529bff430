// The differ: linked lines one by one, lines of one side by what the other side looked at, and the
// figures of the shop from what was compared.
#include "tracker/differ.h"

#include <algorithm>
#include <deque>
#include <string_view>
#include <tuple>
#include <unordered_map>
#include <utility>

#include "tracker/capture_detail.h"
#include "tracker/category_book.h"
#include "tracker/change_order.h"
#include "tracker/coverage.h"
#include "tracker/interpreter.h"
#include "tracker/line_diff.h"
#include "tracker/line_pair.h"
#include "tracker/move_notes.h"
#include "tracker/refused_rows.h"
#include "tracker/shop_diff.h"
#include "tracker/whole_line_row.h"

namespace rangebook {
namespace {

using EarlierById = std::unordered_map<LineId, const EarlierLine*>;

/// The latest mention of each line.
EarlierById index_earlier(const std::vector<EarlierLine>& earlier) {
  EarlierById by_id;
  for (const EarlierLine& line : earlier) {
    const auto [found, added] = by_id.try_emplace(line.id, &line);
    const EarlierLine& known = *found->second;
    if (std::tie(known.on, known.capture) < std::tie(line.on, line.capture)) found->second = &line;
  }
  return by_id;
}

Sighting sighting_of(const EarlierLine& line) {
  Sighting sighting;
  sighting.capture = line.capture;
  sighting.on = line.on;
  sighting.season = line.season;
  return sighting;
}

/// The line as it was named when it was last seen.
NameFact name_then(const EarlierLine& then, const LineState& now) {
  return then.name.empty() ? name_fact(now) : NameFact{then.line_code, then.name};
}

/// Lines of a snapshot whose rows about the whole line stand beside rows of variants, without them.
class CleanedLines {
 public:
  explicit CleanedLines(const Snapshot& snapshot) : snapshot_(snapshot) {}

  const LineState& operator[](std::size_t index) {
    const LineState& line = snapshot_.lines[index];
    auto offers = without_whole_line_row(line.listing.offers);
    if (!offers) return line;
    LineState& cleaned = cleaned_.emplace_back(line);
    cleaned.listing.offers = *std::move(offers);
    return cleaned;
  }

 private:
  const Snapshot& snapshot_;
  std::deque<LineState> cleaned_;
};

bool has_price(const Listing& listing) {
  const auto& offers = listing.offers.offers;
  return std::any_of(offers.begin(), offers.end(),
                     [](const Offer& offer) { return offer.price.has_value(); });
}

class Comparison {
 public:
  Comparison(const Snapshot& from, const Snapshot& to, const std::vector<EarlierLine>& earlier)
      : from_(from), to_(to), earlier_(index_earlier(earlier)) {}

  ChangeSet run(const LinkSet& links);

 private:
  void carried(const Link& link);
  void only_from(const LineState& line);
  void only_to(const LineState& line);
  void shop_level();
  void book_before(std::string_view category, const Listing& then, const SizeRun& sizes);
  void book_after(std::string_view category, const Listing& now, const SizeRun& sizes);
  void book_doubts(const LinePair& pair, const CategoryPair& filed);
  bool in_common_scope(std::string_view category) const;
  void add_single(ChangeKind kind, const LineState& line, std::optional<NameFact> before,
                  std::optional<NameFact> after, ChangeEvidence evidence);

  const Snapshot& from_;
  const Snapshot& to_;
  EarlierById earlier_;
  CleanedLines lines_then_{from_};
  CleanedLines lines_now_{to_};
  Interpreter interpreter_{to_.shop.sizes};
  CaptureDetail detail_then_{from_, interpreter_};
  CaptureDetail detail_now_{to_, interpreter_};
  RefusedIndex refused_then_{from_.refused};
  RefusedIndex refused_now_{to_.refused};
  RefusedIndex missed_then_{refused_for(from_, to_)};  // for lines of one side alone
  RefusedIndex missed_now_{refused_for(to_, from_)};
  SilenceLog silences_;
  CategoryBook book_;
  ChangeSet result_;
};

bool Comparison::in_common_scope(std::string_view category) const {
  return scope_covers(from_.capture.scope, category) && scope_covers(to_.capture.scope, category);
}

void Comparison::book_before(std::string_view category, const Listing& then, const SizeRun& sizes) {
  if (in_common_scope(category)) {
    book_.add_before(category, then, sizes);
  } else {
    book_.add_outside_before(category);
  }
}

void Comparison::book_after(std::string_view category, const Listing& now, const SizeRun& sizes) {
  if (in_common_scope(category)) {
    book_.add_after(category, now, sizes);
  } else {
    book_.add_outside_after(category);
  }
}

// What the line itself keeps silent about must not show as a change of its category either.
void Comparison::book_doubts(const LinePair& pair, const CategoryPair& filed) {
  const bool unlike = pair.sizes_before->unranked != pair.sizes_after->unranked;
  if (pair.refused_then || unlike || !pair.sizes_before->stated) {
    book_.doubt_before(filed.now, pair.now(), *pair.sizes_after);
  }
  if (pair.refused_now || unlike || !pair.sizes_after->stated) {
    book_.doubt_after(filed.then, pair.then(), *pair.sizes_before);
  }
  if (pair.refused_then || !has_price(pair.then()))
    book_.doubt_prices_before(filed.now, pair.now());
  if (pair.refused_now || !has_price(pair.now())) book_.doubt_prices_after(filed.then, pair.then());
}

void Comparison::carried(const Link& link) {
  LinePair pair;
  pair.before = &lines_then_[link.from];
  pair.after = &lines_now_[link.to];
  pair.link = &link;
  const auto sizes = interpreter_.size_runs(pair.then().offers.sizes, pair.now().offers.sizes);
  pair.sizes_before = sizes.before;
  pair.sizes_after = sizes.after;
  pair.detail_before = &detail_then_;
  pair.detail_after = &detail_now_;
  const auto may_be = [&pair](const RefusedIndex& refused) {
    return refused.may_be(pair.then().card) || refused.may_be(pair.now().card);
  };
  pair.refused_then = may_be(refused_then_);
  pair.refused_now = may_be(refused_now_);
  if (pair.refused_then) silences_.add(Silence::refused_then, pair.now().card);
  if (pair.refused_now) silences_.add(Silence::refused_now, pair.now().card);
  PairChanges changes(pair, from_.capture, to_.capture, interpreter_, result_.changes);
  const auto prices = diff_line(pair, interpreter_, changes, silences_);
  ++result_.reconciliation.carried;
  const CategoryPair filed = categories_of(pair, interpreter_);
  book_.add_carried(filed.then, filed.now, prices);
  book_before(filed.then, pair.then(), *pair.sizes_before);
  book_after(filed.now, pair.now(), *pair.sizes_after);
  book_doubts(pair, filed);
}

void Comparison::add_single(ChangeKind kind, const LineState& line, std::optional<NameFact> before,
                            std::optional<NameFact> after, ChangeEvidence evidence) {
  Change change;
  change.kind = kind;
  change.line = line_ref(line.id, line, interpreter_.category(line.listing.card));
  change.before = std::move(before);
  change.after = std::move(after);
  change.evidence = std::move(evidence);
  result_.changes.push_back(std::move(change));
}

void Comparison::only_from(const LineState& line) {
  const LineCard& card = line.listing.card;
  const bool refused = missed_now_.may_be(card);
  const std::string_view category = interpreter_.category(card);
  const bool looked_for = scope_covers(to_.capture.scope, category);
  const SizeRun& sizes = interpreter_.size_run(line.listing.offers.sizes);
  book_before(category, line.listing, sizes);
  if (in_common_scope(category)) book_.alone_before(category, line.listing, sizes);
  if (refused) {
    book_.doubt_after(category, line.listing, sizes);
    book_.doubt_prices_after(category, line.listing);
  }
  const ChangeEvidence seen{sighting_of(from_.capture, line.listing.origin), std::nullopt, {}};
  if (refused || !looked_for) {
    ++result_.reconciliation.not_covered;
    book_.add_not_covered(category);
    add_single(ChangeKind::line_not_covered, line, name_fact(line), std::nullopt, seen);
    return;
  }
  ++result_.reconciliation.dropped;
  book_.add_dropped(category);
  add_single(ChangeKind::line_dropped, line, name_fact(line), std::nullopt, seen);
}

void Comparison::only_to(const LineState& line) {
  const LineCard& card = line.listing.card;
  const bool refused = missed_then_.may_be(card);
  const std::string_view category = interpreter_.category(card);
  const bool looked_for = scope_covers(from_.capture.scope, category);
  const SizeRun& sizes = interpreter_.size_run(line.listing.offers.sizes);
  book_after(category, line.listing, sizes);
  if (in_common_scope(category)) book_.alone_after(category, line.listing, sizes);
  if (refused) {
    book_.doubt_before(category, line.listing, sizes);
    book_.doubt_prices_before(category, line.listing);
  }
  ChangeEvidence seen{std::nullopt, sighting_of(to_.capture, line.listing.origin), {}};
  if (refused || !looked_for) {
    ++result_.reconciliation.unseen_then;
    book_.add_unseen_then(category);
    add_single(ChangeKind::line_not_covered, line, std::nullopt, name_fact(line), seen);
    return;
  }
  if (const auto known = earlier_.find(line.id); known != earlier_.end()) {
    ++result_.reconciliation.returned;
    book_.add_returned(category);
    seen.before = sighting_of(*known->second);
    add_single(ChangeKind::line_returned, line, name_then(*known->second, line), name_fact(line),
               seen);
    return;
  }
  ++result_.reconciliation.added;
  book_.add_new(category);
  add_single(ChangeKind::line_new, line, std::nullopt, name_fact(line), seen);
}

void Comparison::shop_level() {
  const CaptureLimits limits{
      from_.capture.scope.kind == Scope::Kind::all && to_.capture.scope.kind == Scope::Kind::all,
      !from_.refused.empty(), !to_.refused.empty()};
  for (CategoryFigures& figures : book_.figures(limits)) {
    diff_category(figures, from_.capture, to_.capture, result_.changes);
    result_.categories.push_back(std::move(figures.summary));
  }
}

ChangeSet Comparison::run(const LinkSet& links) {
  result_.shop = to_.shop;
  result_.from = from_.capture;
  result_.to = to_.capture;
  result_.reconciliation.lines_then = static_cast<std::uint32_t>(from_.lines.size());
  result_.reconciliation.lines_now = static_cast<std::uint32_t>(to_.lines.size());
  for (const Link& link : links.links) carried(link);
  for (const std::size_t i : links.only_from) only_from(lines_then_[i]);
  for (const std::size_t j : links.only_to) only_to(lines_now_[j]);
  const auto moves = tell_colour_moves({from_, to_, links}, interpreter_, result_.changes);
  shop_level();
  sort_changes(result_.changes);
  for (const Change& change : result_.changes)
    ++result_.counts[static_cast<std::size_t>(change.kind)];
  result_.coverage = coverage_of(from_, to_, result_.reconciliation, silences_);
  note_waiting(result_.coverage.notes, links.ask.size());
  result_.coverage.notes.insert(result_.coverage.notes.end(), moves.begin(), moves.end());
  return std::move(result_);
}

}  // namespace

ChangeSet diff_snapshots(const Snapshot& from, const Snapshot& to, const LinkSet& links,
                         const std::vector<EarlierLine>& earlier) {
  return Comparison(from, to, earlier).run(links);
}

}  // namespace rangebook

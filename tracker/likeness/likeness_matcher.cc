// Profiles, candidates, scores, assignment, bands.
#include "tracker/likeness/likeness_matcher.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <tuple>
#include <unordered_map>
#include <utility>

#include "tracker/likeness/assignment.h"
#include "tracker/likeness/pair_scores.h"
#include "tracker/likeness/reasons.h"

namespace rangebook {
namespace {

using Indices = std::vector<std::size_t>;

constexpr std::size_t kMostExamples = 300;

/// What the lines sort by, so that nothing depends on the order in which they came.
auto content_order(const Listing& listing) {
  const LineCard& card = listing.card;
  return std::tie(card.name, card.line_code, card.category, card.composition, card.url,
                  listing.offers.colours, listing.offers.sizes);
}

Indices in_content_order(const Snapshot& snapshot, Indices lines) {
  std::stable_sort(lines.begin(), lines.end(), [&](std::size_t a, std::size_t b) {
    return content_order(snapshot.lines[a].listing) < content_order(snapshot.lines[b].listing);
  });
  return lines;
}

std::vector<LineDetail> details_of(const Snapshot& snapshot, const Indices& lines,
                                   const DetailReader& reader) {
  if (reader) return reader(snapshot, lines);
  std::vector<LineDetail> details;
  for (const std::size_t line : lines) details.push_back(snapshot.lines[line].listing.detail);
  return details;
}

/// One capture's lines at work.
struct Side {
  const Snapshot& snapshot;
  Indices lines;
  std::vector<LineProfile> profiles = {};
  std::vector<WeighedLine> weighed = {};

  void profile(ProfileBuilder& builder, const DetailReader& reader) {
    const auto details = details_of(snapshot, lines, reader);
    for (std::size_t i = 0; i < lines.size(); ++i) {
      profiles.push_back(builder.build(snapshot.lines[lines[i]].listing, details[i]));
    }
  }
};

/// Some of the pairs that exact evidence linked, spread evenly.
std::pair<Indices, Indices> example_lines(const std::vector<Link>& known) {
  std::pair<Indices, Indices> lines;
  const std::size_t step = known.size() / kMostExamples + 1;
  for (std::size_t i = 0; i < known.size(); i += step) {
    lines.first.push_back(known[i].from);
    lines.second.push_back(known[i].to);
  }
  return lines;
}

// Equal codes are why the examples are known; they teach nothing about other codes.
std::vector<PairView> view_examples(const Side& from, const Side& to, const WordRates& rates) {
  std::vector<PairView> views;
  for (std::size_t i = 0; i < from.weighed.size(); ++i) {
    views.push_back(view_pair(from.weighed[i], to.weighed[i], rates));
    views.back()[static_cast<std::size_t>(Trait::code)] = {};
  }
  return views;
}

bool at_least(const PairView& view, Trait trait, std::uint8_t step) {
  const auto& seen = trait_of(view, trait).step;
  return seen && *seen >= step;
}

bool differs(const PairView& view, Trait trait, std::uint8_t from_step) {
  const auto& seen = trait_of(view, trait).step;
  return seen && *seen < from_step;
}

// Shops give the names of old styles to new ones. Another code, another cloth and another price
// say so; only nearly the same text or the same picture could still say otherwise.
bool is_reused_name(const PairView& view) {
  return differs(view, Trait::code, 1) &&
         differs(view, Trait::composition, steps::kCompositionNear) &&
         differs(view, Trait::price, steps::kPriceNear) &&
         !at_least(view, Trait::description, steps::kDescriptionNear) &&
         !at_least(view, Trait::picture, steps::kPictureEqual);
}

// The same where less is stated: the price is far off and nothing but the name speaks for the pair.
// That may be a markdown or a new style; only the stylist can tell.
bool is_bare_name(const PairView& view) {
  return differs(view, Trait::price, steps::kPriceNear - 2) &&
         !at_least(view, Trait::description, steps::kDescriptionMuch) &&
         !at_least(view, Trait::picture, steps::kPictureEqual) &&
         !at_least(view, Trait::composition, steps::kCompositionNear) &&
         !at_least(view, Trait::code, 1) && !at_least(view, Trait::colours, 1);
}

/// The pairs worth choosing from, with what stands in a chosen pair's way.
class Choice {
 public:
  explicit Choice(std::vector<ScoredPair> pairs) : pairs_(std::move(pairs)) {
    std::vector<WeightedPair> weighted;
    for (std::size_t i = 0; i < pairs_.size(); ++i) {
      const Candidate& lines = pairs_[i].lines;
      weighted.push_back({lines.from, lines.to, pairs_[i].score});
      of_from_[lines.from].push_back(i);
      of_to_[lines.to].push_back(i);
    }
    chosen_ = assign(weighted);
    for (const std::size_t pair : chosen_) {
      chosen_from_[pairs_[pair].lines.from] = pair;
      chosen_to_[pairs_[pair].lines.to] = pair;
    }
  }

  const std::vector<std::size_t>& chosen() const { return chosen_; }
  const ScoredPair& operator[](std::size_t pair) const { return pairs_[pair]; }

  /// By how much the best other explanation that takes one of the two lines away is worse: the
  /// rival pair, less what its other line has to give up, and what the line left alone then gets.
  double margin(std::size_t pair) const {
    double least = pairs_[pair].score;
    for (const std::size_t rival : of_from_.at(pairs_[pair].lines.from)) {
      if (rival != pair) least = std::min(least, loss(pair, rival, chosen_to_, false));
    }
    for (const std::size_t rival : of_to_.at(pairs_[pair].lines.to)) {
      if (rival != pair) least = std::min(least, loss(pair, rival, chosen_from_, true));
    }
    return least;
  }

 private:
  using Chosen = std::unordered_map<std::uint32_t, std::size_t>;

  double loss(std::size_t pair, std::size_t rival, const Chosen& taken, bool same_to) const {
    const Candidate& lines = pairs_[rival].lines;
    double loss = pairs_[pair].score - pairs_[rival].score;
    const auto holder = taken.find(same_to ? lines.from : lines.to);
    if (holder == taken.end()) return loss;
    loss += pairs_[holder->second].score;
    const Candidate& own = pairs_[pair].lines;
    const Candidate& other = pairs_[holder->second].lines;
    return loss - (same_to ? score_of(own.from, other.to) : score_of(other.from, own.to));
  }

  /// What two lines are worth to each other; 0 where staying alone is better.
  double score_of(std::uint32_t from, std::uint32_t to) const {
    for (const std::size_t pair : of_from_.at(from)) {
      if (pairs_[pair].lines.to == to) return pairs_[pair].score;
    }
    return 0;
  }

  std::vector<ScoredPair> pairs_;
  std::vector<std::size_t> chosen_;
  std::unordered_map<std::uint32_t, std::vector<std::size_t>> of_from_;
  std::unordered_map<std::uint32_t, std::vector<std::size_t>> of_to_;
  Chosen chosen_from_;
  Chosen chosen_to_;
};

/// The earlier capture comes first in all reckoning, so that swapping the sides changes nothing.
bool is_later(const CaptureInfo& a, const CaptureInfo& b) {
  return std::tie(a.on, a.id) > std::tie(b.on, b.id);
}

/// In thousandths, downwards: a score that prints as the bound has reached it.
double chance_of(double log_odds) { return std::floor(1000 / (1 + std::exp(-log_odds))) / 1000; }

class Run {
 public:
  Run(const Leftovers& left, const LikenessOptions& options, const DetailReader& reader)
      : left_(left),
        options_(options),
        swapped_(is_later(left.from.capture, left.to.capture)),
        from_{swapped_ ? left.to : left.from, {}},
        to_{swapped_ ? left.from : left.to, {}},
        builder_(left.from.shop.sizes) {
    from_.lines = in_content_order(from_.snapshot, swapped_ ? left.only_to : left.only_from);
    to_.lines = in_content_order(to_.snapshot, swapped_ ? left.only_from : left.only_to);
    from_.profile(builder_, reader);
    to_.profile(builder_, reader);
    read_examples(reader);
  }

  Matches run() {
    const WordRates rates(
        {&from_.profiles, &to_.profiles, &example_from_->profiles, &example_to_->profiles});
    for (Side* side : {&from_, &to_, &*example_from_, &*example_to_}) {
      side->weighed = weigh(side->profiles, rates);
    }
    const auto examples = view_examples(*example_from_, *example_to_, rates);
    const auto candidates = find_candidates(from_.profiles, to_.profiles, options_.candidates);
    return band(
        Choice(allowed(score_pairs({from_.weighed, to_.weighed, examples, rates}, candidates))));
  }

 private:
  void read_examples(const DetailReader& reader) {
    auto [from, to] = example_lines(left_.known);
    if (swapped_) std::swap(from, to);
    example_from_.emplace(Side{from_.snapshot, std::move(from)});
    example_to_.emplace(Side{to_.snapshot, std::move(to)});
    example_from_->profile(builder_, reader);
    example_to_->profile(builder_, reader);
  }

  std::vector<ScoredPair> allowed(std::vector<ScoredPair> pairs) const {
    std::erase_if(pairs, [this](const ScoredPair& pair) {
      if (pair.score <= 0 || is_reused_name(pair.view)) return true;
      const Link link = link_of(pair);
      return left_.forbidden && left_.forbidden(link.from, link.to);
    });
    return pairs;
  }

  Link link_of(const ScoredPair& pair) const {
    Link link;
    link.from = from_.lines[pair.lines.from];
    link.to = to_.lines[pair.lines.to];
    if (swapped_) std::swap(link.from, link.to);
    link.evidence = {LinkEvidence::likeness};
    link.authority = LinkAuthority::rule;
    return link;
  }

  std::string sentence(const ScoredPair& pair) const {
    const LineProfile& a = from_.profiles[pair.lines.from];
    const LineProfile& b = to_.profiles[pair.lines.to];
    return swapped_ ? reason_of(pair.view, b, a) : reason_of(pair.view, a, b);
  }

  /// Evidence enough to link, but a second partner nearly as good: one of them it is.
  bool is_torn(const ScoredPair& pair) const { return chance_of(pair.score) >= options_.link_from; }

  Matches band(const Choice& choice) const {
    Matches matches;
    for (const std::size_t chosen : choice.chosen()) {
      const double chance = chance_of(choice.margin(chosen));
      if (chance < options_.ask_from && !is_torn(choice[chosen])) continue;
      Link link = link_of(choice[chosen]);
      link.score = chance;
      link.sentence = sentence(choice[chosen]);
      const bool sure = chance >= options_.link_from && !is_bare_name(choice[chosen].view);
      (sure ? matches.links : matches.ask).push_back(std::move(link));
    }
    return matches;
  }

  const Leftovers& left_;
  const LikenessOptions& options_;
  bool swapped_;
  Side from_;
  Side to_;
  ProfileBuilder builder_;
  std::optional<Side> example_from_;
  std::optional<Side> example_to_;
};

}  // namespace

Matches LikenessMatcher::match(const Leftovers& left) const {
  if (left.only_from.empty() || left.only_to.empty()) return {};
  return Run(left, options_, details_).run();
}

}  // namespace rangebook

// Rows of one line on both sides, with the reason why they are one.
#include "tracker/identity/pair_links.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <deque>
#include <limits>
#include <map>
#include <utility>

#include "tracker/text_fold.h"

namespace rangebook {
namespace {

constexpr std::uint32_t kNone = std::numeric_limits<std::uint32_t>::max();

std::string_view season_of(const Roll& roll, std::uint32_t capture) {
  return roll.captures[capture].info.season;
}

/// The links of a line on the way between two of its sightings. Sightings of one number in the book
/// that no link parts stand together, so the way leads through numbers.
class Way {
 public:
  Way(const Roll& roll, const LineIdentity& line) : roll_(roll) {
    for (const FoundLink& link : line.links) {
      ties_[group_of(link.from)].push_back({&link, group_of(link.to)});
      ties_[group_of(link.to)].push_back({&link, group_of(link.from)});
    }
  }

  std::vector<const FoundLink*> between(SightingAt a, SightingAt b) {
    const Group start = group_of(a);
    const Group goal = group_of(b);
    std::map<Group, Tie> came{{start, {nullptr, start}}};
    for (std::deque<Group> open{start}; !open.empty(); open.pop_front()) {
      const Group at = open.front();
      for (const Tie& tie : ties_[at]) {
        if (came.try_emplace(tie.other, Tie{tie.link, at}).second) open.push_back(tie.other);
      }
    }
    std::vector<const FoundLink*> way;
    for (Group at = goal; at != start && came.contains(at); at = came[at].other) {
      way.push_back(came[at].link);
    }
    std::sort(way.begin(), way.end(),
              [](const FoundLink* x, const FoundLink* y) { return x->to < y->to; });
    return way;
  }

 private:
  /// A code is one group; of an unsure line every sighting is one.
  using Group = std::pair<LineId, std::uint32_t>;
  struct Tie {
    const FoundLink* link = nullptr;
    Group other;
  };

  Group group_of(SightingAt at) const {
    const LineId line = roll_.captures[at.capture].lines[at.row];
    return {line, is_unsure(roll_, line) ? at.capture : kNone};
  }

  const Roll& roll_;
  std::map<Group, std::vector<Tie>> ties_;
};

Link by_code(const LineCard& card) {
  const std::string_view code = trim_text(card.line_code);
  Link link;
  if (!code.empty()) {
    link.evidence = {LinkEvidence::line_code};
    link.sentence = fmt::format("same line code {} in both captures", code);
  } else {
    link.evidence = {LinkEvidence::group_id};
    link.sentence = fmt::format("same group id {} in both captures", trim_text(card.group_id));
  }
  return link;
}

void add_evidence(std::vector<LinkEvidence>& all, const std::vector<LinkEvidence>& more) {
  for (const LinkEvidence each : more) {
    if (std::find(all.begin(), all.end(), each) == all.end()) all.push_back(each);
  }
  std::sort(all.begin(), all.end());
}

/// Several links as one: as sure as the least sure of them.
Link joined(const Roll& roll, const std::vector<const FoundLink*>& way) {
  Link link;
  std::vector<std::string> sentences;
  for (const FoundLink* step : way) {
    add_evidence(link.evidence, step->evidence);
    link.authority = std::max(link.authority, step->authority);
    link.score = std::min(link.score, step->score);
    sentences.push_back(way.size() == 1
                            ? step->sentence
                            : fmt::format("{} to {}: {}", season_of(roll, step->from.capture),
                                          season_of(roll, step->to.capture), step->sentence));
  }
  link.sentence = fmt::format("{}", fmt::join(sentences, "; "));
  return link;
}

struct Ends {
  SightingAt a;
  SightingAt b;
};

/// Why two sightings are one line; the rows are left to the caller.
Link link_of(const Roll& roll, const LineIdentity& line, const Ends& ends, const LineCard& card) {
  const auto number = [&](SightingAt at) { return roll.captures[at.capture].lines[at.row]; };
  if (number(ends.a) == number(ends.b) && !is_unsure(roll, number(ends.a))) return by_code(card);
  const auto way = Way(roll, line).between(ends.a, ends.b);
  return way.empty() ? by_code(card) : joined(roll, way);
}

class PairLinks {
 public:
  PairLinks(const Roll& roll, const Identities& identities, const CapturePair& pair)
      : roll_(roll), identities_(identities), pair_(pair) {}

  LinkSet run() {
    find_rows();
    for (std::uint32_t i = 0; i < pair_.before.lines.size(); ++i) {
      const std::uint32_t row = row_in_to_[identities_.of_row[pair_.from][i]];
      if (row == kNone) {
        result_.only_from.push_back(i);
      } else {
        result_.links.push_back(link(i, row));
        linked_to_[row] = 1;
      }
    }
    for (std::uint32_t j = 0; j < linked_to_.size(); ++j) {
      if (linked_to_[j] == 0) result_.only_to.push_back(j);
    }
    add_questions();
    return std::move(result_);
  }

 private:
  void find_rows() {
    row_in_to_.assign(identities_.lines.size(), kNone);
    const auto& rows = identities_.of_row[pair_.to];
    for (std::uint32_t row = 0; row < rows.size(); ++row) row_in_to_[rows[row]] = row;
    linked_to_.assign(rows.size(), 0);
  }

  Link link(std::uint32_t i, std::uint32_t j) const {
    const LineIdentity& line = identities_.lines[identities_.of_row[pair_.from][i]];
    Link link =
        link_of(roll_, line, {{pair_.from, i}, {pair_.to, j}}, pair_.after.lines[j].listing.card);
    link.from = i;
    link.to = j;
    return link;
  }

  /// Questions about a line of one side alone and a line of the other; each line stands in one.
  void add_questions() {
    std::vector<std::uint32_t> row_in_from(identities_.lines.size(), kNone);
    const auto& rows = identities_.of_row[pair_.from];
    for (std::uint32_t row = 0; row < rows.size(); ++row) row_in_from[rows[row]] = row;
    std::vector<char> asked(identities_.lines.size());
    const auto alone = [&](std::uint32_t line, const auto& there, const auto& elsewhere) {
      return there[line] != kNone && elsewhere[line] == kNone;
    };
    for (const FoundLink& question : identities_.ask) {
      std::uint32_t a = identities_.at(question.from);
      std::uint32_t b = identities_.at(question.to);
      if (!alone(a, row_in_from, row_in_to_)) std::swap(a, b);
      if (!alone(a, row_in_from, row_in_to_) || !alone(b, row_in_to_, row_in_from)) continue;
      if (asked[a] != 0 || asked[b] != 0) continue;
      asked[a] = asked[b] = 1;
      result_.ask.push_back({row_in_from[a], row_in_to_[b], question.evidence, question.authority,
                             question.score, question.sentence});
    }
  }

  const Roll& roll_;
  const Identities& identities_;
  const CapturePair& pair_;
  LinkSet result_;
  std::vector<std::uint32_t> row_in_to_;  // by line
  std::vector<char> linked_to_;
};

}  // namespace

std::string link_sentence(const Roll& roll, const LineIdentity& line, SightingAt then,
                          SightingAt now, const LineCard& card) {
  return link_of(roll, line, {then, now}, card).sentence;
}

LinkSet links_between(const Roll& roll, const Identities& identities, const CapturePair& pair) {
  return PairLinks(roll, identities, pair).run();
}

}  // namespace rangebook

// Threads tied together by links, strongest first, unless something contradicts.
#include "tracker/identity/assembly.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <unordered_map>
#include <utility>

#include "tracker/decision_book.h"
#include "tracker/identity/decision_nodes.h"
#include "tracker/identity/threads.h"

namespace rangebook {
namespace {

using Thread = std::uint32_t;

/// Captures in which the threads of one line stand, ascending.
using Places = std::vector<std::uint32_t>;

bool overlap(const Places& a, const Places& b) {
  for (auto x = a.begin(), y = b.begin(); x != a.end() && y != b.end();) {
    if (*x == *y) return true;
    *x < *y ? ++x : ++y;
  }
  return false;
}

class Assembly {
 public:
  Assembly(const Roll& roll, const std::vector<CaptureFinds>& finds)
      : roll_(roll),
        finds_(finds),
        threads_(roll, finds.size()),
        leader_(threads_.count()),
        decisions_(decisions_between(roll, [this](SightingAt at) { return node_of(at); })) {
    std::iota(leader_.begin(), leader_.end(), Thread{0});
    for (const LinkDecision& decision : roll.decisions) note_decided(decision);
  }

  Identities run();

 private:
  std::optional<LineId> node_of(SightingAt at) const {
    if (at.capture >= finds_.size()) return std::nullopt;
    return LineId{threads_.at(at)};
  }

  void note_decided(const LinkDecision& decision);
  Thread find(Thread thread) const;
  Places& places(Thread leader);
  bool contradicts(Thread a, Thread b);
  void join(Thread a, Thread b);
  void tie(const FoundLink& link);
  void tie_all();
  void gather(Identities& result) const;
  void number(Identities& result) const;
  std::vector<FoundLink> open_questions();

  const Roll& roll_;
  const std::vector<CaptureFinds>& finds_;
  Threads threads_;
  mutable std::vector<Thread> leader_;
  DecisionBook decisions_;
  std::unordered_map<Thread, Places> places_;                // of leaders that a link touches
  std::unordered_map<Thread, std::vector<LineId>> decided_;  // nodes of a leader with decisions
  std::vector<const FoundLink*> tied_;
};

void Assembly::note_decided(const LinkDecision& decision) {
  for (const auto& [line, day] :
       {std::pair(decision.a, decision.a_on), std::pair(decision.b, decision.b_on)}) {
    const auto sighting = sighting_on(roll_, line, day);
    if (!sighting || sighting->capture >= finds_.size()) continue;
    const Thread thread = threads_.at(*sighting);
    decided_[thread].push_back(LineId{thread});
  }
}

Thread Assembly::find(Thread thread) const {
  while (leader_[thread] != thread) {
    leader_[thread] = leader_[leader_[thread]];
    thread = leader_[thread];
  }
  return thread;
}

// Only threads that a link touches need the list; those of one code are found by their line.
Places& Assembly::places(Thread leader) {
  const auto [found, added] = places_.try_emplace(leader);
  if (!added) return found->second;
  const SightingAt first = threads_.first(leader);
  const LineId line = roll_.captures[first.capture].lines[first.row];
  for (std::uint32_t capture = first.capture; capture < finds_.size(); ++capture) {
    const auto row = row_of(roll_.captures[capture], line);
    if (row && threads_.at({capture, *row}) == leader) found->second.push_back(capture);
  }
  return found->second;
}

bool Assembly::contradicts(Thread a, Thread b) {
  if (overlap(places(a), places(b))) return true;
  const auto of_a = decided_.find(a);
  const auto of_b = decided_.find(b);
  if (of_a == decided_.end() || of_b == decided_.end()) return false;
  for (const LineId x : of_a->second) {
    for (const LineId y : of_b->second) {
      if (decisions_.forbids(x, y)) return true;
    }
  }
  return false;
}

void Assembly::join(Thread a, Thread b) {
  const Thread leader = std::min(a, b);
  const Thread other = std::max(a, b);
  leader_[other] = leader;
  Places both;
  const Places& of_leader = places(leader);
  const Places& of_other = places(other);
  std::merge(of_leader.begin(), of_leader.end(), of_other.begin(), of_other.end(),
             std::back_inserter(both));
  places_[leader] = std::move(both);
  if (const auto decided = decided_.find(other); decided != decided_.end()) {
    auto& all = decided_[leader];
    all.insert(all.end(), decided->second.begin(), decided->second.end());
  }
}

void Assembly::tie(const FoundLink& link) {
  const Thread a = find(threads_.at(link.from));
  const Thread b = find(threads_.at(link.to));
  if (a == b || contradicts(a, b)) return;
  join(a, b);
  tied_.push_back(&link);
}

void Assembly::tie_all() {
  std::vector<const FoundLink*> links;
  for (const CaptureFinds& found : finds_) {
    for (const FoundLink& link : found.links) links.push_back(&link);
  }
  const auto rank = [](const FoundLink& link) {
    return std::tuple(link.authority != LinkAuthority::stylist, link.to.capture,
                      link.authority != LinkAuthority::code, -link.score, link.to, link.from);
  };
  std::sort(links.begin(), links.end(),
            [&](const FoundLink* a, const FoundLink* b) { return rank(*a) < rank(*b); });
  for (const FoundLink* link : links) tie(*link);
}

void Assembly::gather(Identities& result) const {
  std::vector<std::uint32_t> of_thread(threads_.count());
  std::uint32_t lines = 0;
  for (Thread thread = 0; thread < threads_.count(); ++thread) {
    const Thread leader = find(thread);
    of_thread[thread] = leader == thread ? lines++ : of_thread[leader];
  }
  result.lines.resize(lines);
  result.of_row = threads_.of_row();
  for (std::uint32_t capture = 0; capture < result.of_row.size(); ++capture) {
    auto& rows = result.of_row[capture];
    for (std::uint32_t row = 0; row < rows.size(); ++row) {
      rows[row] = of_thread[rows[row]];
      result.lines[rows[row]].seen.push_back({capture, row});
    }
  }
  for (const FoundLink* link : tied_) result.lines[result.at(link->from)].links.push_back(*link);
  for (LineIdentity& line : result.lines) {
    std::sort(line.links.begin(), line.links.end(),
              [](const FoundLink& a, const FoundLink& b) { return a.to < b.to; });
  }
}

// A name or a code given to another style begins another line under the same number.
void Assembly::number(Identities& result) const {
  constexpr LineId kNextStyle = 1'000'000'000'000;
  std::map<LineId, LineId> used;
  for (LineIdentity& line : result.lines) {
    const SightingAt first = line.seen.front();
    line.id = roll_.captures[first.capture].lines[first.row];
    const bool may_repeat = is_unsure(roll_, line.id) || !roll_.decisions.empty();
    if (may_repeat) line.id += kNextStyle * used[line.id]++;
  }
}

std::vector<FoundLink> Assembly::open_questions() {
  std::vector<FoundLink> open;
  for (const CaptureFinds& found : finds_) {
    for (const FoundLink& question : found.ask) {
      const Thread a = find(threads_.at(question.from));
      const Thread b = find(threads_.at(question.to));
      if (a != b && !contradicts(a, b)) open.push_back(question);
    }
  }
  std::stable_sort(open.begin(), open.end(),
                   [](const FoundLink& a, const FoundLink& b) { return a.score > b.score; });
  return open;
}

Identities Assembly::run() {
  Identities result;
  tie_all();
  gather(result);
  number(result);
  result.ask = open_questions();
  return result;
}

}  // namespace

Identities assemble(const Roll& roll, const std::vector<CaptureFinds>& finds) {
  return Assembly(roll, finds).run();
}

}  // namespace rangebook

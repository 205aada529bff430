// The lines away meet the rows that are new.
#include "tracker/identity/finder.h"

#include <algorithm>
#include <map>
#include <optional>
#include <unordered_map>
#include <utility>

#include "tracker/identity/decision_nodes.h"
#include "tracker/identity/threads.h"
#include "tracker/linker.h"

namespace rangebook {
namespace {

/// Pairs whose code says that they are the same, from which the likeness learns how a line looks a
/// season later. As many as the matcher takes.
constexpr std::size_t kExamples = 299;

class Finder {
 public:
  Finder(const Roll& roll, const Identities& before, std::uint32_t capture, LineSource& source)
      : roll_(roll), before_(before), capture_(capture), source_(source) {}

  CaptureFinds run(const LikenessOptions& options);

 private:
  struct Known {
    std::uint32_t line = 0;  ///< index into before_.lines
    std::uint32_t row = 0;
  };

  void sort_out();
  void choose_examples();
  std::vector<SightingAt> then_sightings() const;
  std::vector<SightingAt> now_sightings() const;
  std::vector<LineState> read(const std::vector<SightingAt>& sightings);
  std::vector<LineDetail> read_details(const std::vector<SightingAt>& sightings,
                                       const std::vector<std::size_t>& of);
  Snapshot snapshot_of(const std::vector<SightingAt>& sightings, const CaptureInfo& info);
  std::optional<LineId> node_of(SightingAt at) const;
  std::vector<LinkDecision> decisions() const;
  std::vector<FoundLink> found(const std::vector<Link>& links, const std::vector<SightingAt>& then,
                               const std::vector<SightingAt>& now) const;

  const Roll& roll_;
  const Identities& before_;
  std::uint32_t capture_;
  LineSource& source_;
  std::vector<Known> known_;          // rows that are a line of before by their code
  std::vector<std::uint32_t> fresh_;  // rows that begin a thread
  std::vector<std::uint32_t> away_;   // lines of before that are not among the known
  std::vector<LineId> node_of_row_;
};

/// Nodes of decisions: lines of before first, then fresh rows.
LineId line_node(std::uint32_t line) { return LineId{line} + 1; }

void Finder::sort_out() {
  const Threads threads(roll_, capture_ + 1);
  const auto& rows = threads.of_row()[capture_];
  std::vector<char> there(before_.lines.size());
  for (std::uint32_t row = 0; row < rows.size(); ++row) {
    const SightingAt first = threads.first(rows[row]);
    if (first.capture == capture_) {
      fresh_.push_back(row);
      node_of_row_.push_back(line_node(static_cast<std::uint32_t>(before_.lines.size()) + row));
      continue;
    }
    const std::uint32_t line = before_.at(first);
    known_.push_back({line, row});
    node_of_row_.push_back(line_node(line));
    there[line] = 1;
  }
  for (std::uint32_t line = 0; line < there.size(); ++line) {
    if (there[line] == 0) away_.push_back(line);
  }
}

// By what they say: numbers and order of rows tell in which order captures were taken in.
void Finder::choose_examples() {
  std::vector<std::uint32_t> rows;
  for (const Known& known : known_) rows.push_back(known.row);
  const auto hashes = source_.hashes(capture_, rows);
  std::vector<std::pair<std::uint64_t, std::size_t>> order;
  for (std::size_t i = 0; i < known_.size(); ++i) order.emplace_back(hashes[i], i);
  const auto chosen =
      order.begin() + static_cast<std::ptrdiff_t>(std::min(kExamples, order.size()));
  std::partial_sort(order.begin(), chosen, order.end());
  std::vector<Known> examples;
  for (auto each = order.begin(); each != chosen; ++each) examples.push_back(known_[each->second]);
  known_ = std::move(examples);
}

std::vector<SightingAt> Finder::then_sightings() const {
  std::vector<SightingAt> sightings;
  for (const std::uint32_t line : away_) sightings.push_back(before_.lines[line].seen.back());
  for (const Known& known : known_) sightings.push_back(before_.lines[known.line].seen.back());
  return sightings;
}

std::vector<SightingAt> Finder::now_sightings() const {
  std::vector<SightingAt> sightings;
  for (const std::uint32_t row : fresh_) sightings.push_back({capture_, row});
  for (const Known& known : known_) sightings.push_back({capture_, known.row});
  return sightings;
}

/// Calls `read(capture, rows, places)` once for each capture among the sightings.
template <typename Read>
void by_capture(const std::vector<SightingAt>& sightings, Read read) {
  std::map<std::uint32_t, std::pair<std::vector<std::uint32_t>, std::vector<std::size_t>>> wanted;
  for (std::size_t i = 0; i < sightings.size(); ++i) {
    auto& [rows, places] = wanted[sightings[i].capture];
    rows.push_back(sightings[i].row);
    places.push_back(i);
  }
  for (const auto& [capture, lists] : wanted) read(capture, lists.first, lists.second);
}

std::vector<LineState> Finder::read(const std::vector<SightingAt>& sightings) {
  std::vector<LineState> lines(sightings.size());
  by_capture(sightings, [&](std::uint32_t capture, const auto& rows, const auto& places) {
    auto read = source_.lines(capture, rows);
    for (std::size_t i = 0; i < places.size(); ++i) lines[places[i]] = std::move(read[i]);
  });
  return lines;
}

std::vector<LineDetail> Finder::read_details(const std::vector<SightingAt>& sightings,
                                             const std::vector<std::size_t>& of) {
  std::vector<SightingAt> wanted;
  wanted.reserve(of.size());
  for (const std::size_t i : of) wanted.push_back(sightings[i]);
  std::vector<LineDetail> details(of.size());
  by_capture(wanted, [&](std::uint32_t capture, const auto& rows, const auto& places) {
    auto read = source_.details(capture, rows);
    for (std::size_t i = 0; i < places.size(); ++i) details[places[i]] = std::move(read[i]);
  });
  return details;
}

Snapshot Finder::snapshot_of(const std::vector<SightingAt>& sightings, const CaptureInfo& info) {
  Snapshot snapshot{roll_.shop, info, read(sightings), {}};
  for (std::size_t i = 0; i < sightings.size(); ++i) {
    snapshot.lines[i].id = node_of(sightings[i]).value_or(0);
  }
  return snapshot;
}

std::optional<LineId> Finder::node_of(SightingAt at) const {
  if (at.capture < capture_) return line_node(before_.at(at));
  if (at.capture == capture_) return node_of_row_[at.row];
  return std::nullopt;
}

std::vector<LinkDecision> Finder::decisions() const {
  return decisions_between(roll_, [this](SightingAt at) { return node_of(at); });
}

std::vector<FoundLink> Finder::found(const std::vector<Link>& links,
                                     const std::vector<SightingAt>& then,
                                     const std::vector<SightingAt>& now) const {
  std::vector<FoundLink> result;
  for (const Link& link : links) {
    if (link.from >= away_.size() || link.to >= fresh_.size()) continue;  // an example
    result.push_back(
        {then[link.from], now[link.to], link.evidence, link.authority, link.score, link.sentence});
  }
  return result;
}

CaptureFinds Finder::run(const LikenessOptions& options) {
  sort_out();
  if (fresh_.empty() || away_.empty()) return {};
  choose_examples();
  const auto then = then_sightings();
  const auto now = now_sightings();
  const Snapshot from = snapshot_of(then, roll_.captures[capture_ - 1].info);
  const Snapshot to = snapshot_of(now, roll_.captures[capture_].info);
  const LikenessMatcher matcher(options, [&](const Snapshot& of, const auto& lines) {
    return read_details(&of == &from ? then : now, lines);
  });
  const LinkSet links = link_lines(from, to, decisions(), &matcher);
  return {found(links.links, then, now), found(links.ask, then, now)};
}

}  // namespace

CaptureFinds find_links(const Roll& roll, const Identities& before, std::uint32_t capture,
                        LineSource& source, const LikenessOptions& options) {
  if (capture == 0) return {};
  return Finder(roll, before, capture, source).run(options);
}

}  // namespace rangebook

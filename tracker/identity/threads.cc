// Numbering threads: one merge of sorted lists for each capture.
#include "tracker/identity/threads.h"

#include <algorithm>
#include <limits>

namespace rangebook {
namespace {

constexpr std::uint32_t kNone = std::numeric_limits<std::uint32_t>::max();

std::vector<LineId> lines_of(const Roll& roll, std::size_t captures) {
  std::vector<LineId> all;
  std::vector<LineId> both;
  for (std::size_t i = 0; i < captures; ++i) {
    both.clear();
    const auto& lines = roll.captures[i].lines;
    std::set_union(all.begin(), all.end(), lines.begin(), lines.end(), std::back_inserter(both));
    all.swap(both);
  }
  return all;
}

}  // namespace

Threads::Threads(const Roll& roll, std::size_t captures)
    : roll_(roll),
      known_(lines_of(roll, captures)),
      open_(known_.size(), kNone),
      opened_(known_.size()) {
  for (const LinkDecision& decision : roll.decisions) {
    if (decision.a == decision.b && !decision.same) breaks_[decision.a].push_back(decision.b_on);
  }
  for (std::size_t i = 0; i < captures; ++i) {
    add_capture(roll.captures[i], static_cast<std::uint32_t>(i));
  }
}

std::uint32_t Threads::begin_thread(SightingAt first) {
  first_.push_back(first);
  return static_cast<std::uint32_t>(first_.size() - 1);
}

void Threads::add_capture(const RollCapture& capture, std::uint32_t place) {
  const Day on = capture.info.on;
  const auto broken = [&](LineId line, Day since) {
    const auto found = breaks_.find(line);
    return found != breaks_.end() && std::any_of(found->second.begin(), found->second.end(),
                                                 [&](Day day) { return since < day && day <= on; });
  };
  auto& rows = of_row_.emplace_back();
  rows.reserve(capture.lines.size());
  std::size_t at = 0;
  for (std::uint32_t row = 0; row < capture.lines.size(); ++row) {
    const LineId line = capture.lines[row];
    while (known_[at] != line) ++at;
    if (open_[at] == kNone || is_unsure(roll_, line) ||
        (!breaks_.empty() && broken(line, opened_[at]))) {
      open_[at] = begin_thread({place, row});
      opened_[at] = on;
    }
    rows.push_back(open_[at]);
  }
}

}  // namespace rangebook

// Looking up lines in a roll.
#include "tracker/identity/roll.h"

#include <algorithm>
#include <tuple>

#include "tracker/season_parser.h"

namespace rangebook {
namespace {

std::vector<std::string> hashes_of(const CaptureInfo& capture) {
  std::vector<std::string> hashes;
  hashes.reserve(capture.documents.size());
  for (const DocumentInfo& document : capture.documents) hashes.push_back(document.sha256);
  std::sort(hashes.begin(), hashes.end());
  return hashes;
}

}  // namespace

bool capture_before(const CaptureInfo& a, const CaptureInfo& b) {
  if (a.on != b.on) return a.on < b.on;
  if (a.season != b.season) return season_less(parse_season(a.season), parse_season(b.season));
  if (a.scope != b.scope) {
    return std::tie(a.scope.kind, a.scope.categories) < std::tie(b.scope.kind, b.scope.categories);
  }
  const auto hashes_a = hashes_of(a);
  const auto hashes_b = hashes_of(b);
  return hashes_a != hashes_b ? hashes_a < hashes_b : a.id < b.id;
}

std::optional<std::uint32_t> row_of(const RollCapture& capture, LineId line) {
  const auto at = std::lower_bound(capture.lines.begin(), capture.lines.end(), line);
  if (at == capture.lines.end() || *at != line) return std::nullopt;
  return static_cast<std::uint32_t>(at - capture.lines.begin());
}

std::optional<SightingAt> sighting_on(const Roll& roll, LineId line, Day day) {
  std::optional<SightingAt> best;
  for (std::uint32_t capture = 0; capture < roll.captures.size(); ++capture) {
    const RollCapture& seen = roll.captures[capture];
    if (best && seen.info.on > day) break;
    if (const auto row = row_of(seen, line)) best = SightingAt{capture, *row};
  }
  return best;
}

bool is_unsure(const Roll& roll, LineId line) {
  return std::binary_search(roll.unsure.begin(), roll.unsure.end(), line);
}

}  // namespace rangebook

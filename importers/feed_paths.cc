// A feed is a list, so what repeats is the product; a list inside a product lies deeper.
#include "importers/feed_paths.h"

#include "importers/feed_rows.h"

namespace rangebook {
namespace {

struct Rank {
  bool repeats = false;
  std::size_t fields = 0;
  std::size_t depth = 0;

  bool beats(const Rank& other) const {
    if (repeats != other.repeats) return repeats;
    if (repeats && depth != other.depth) return depth < other.depth;
    if (fields != other.fields) return fields > other.fields;
    return depth < other.depth;
  }
};

}  // namespace

std::optional<std::string> choose_path(const PathSights& sights) {
  std::optional<std::string> best;
  Rank best_rank;
  for (const auto& [path, sight] : sights) {
    const auto fields = product_fields(sight.names);
    if (!fields) continue;
    const Rank rank{sight.count > 1, *fields, sight.depth};
    if (best && !rank.beats(best_rank)) continue;
    best = path;
    best_rank = rank;
  }
  return best;
}

}  // namespace rangebook

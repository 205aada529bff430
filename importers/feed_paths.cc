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

std::string frequent_names(const PathSights& sights) {
  constexpr std::size_t kShown = 12;
  const PathSight* most = nullptr;
  for (const auto& [path, sight] : sights) {
    if (sight.count > 1 && sight.names.size() > 1 &&
        (most == nullptr || sight.count > most->count)) {
      most = &sight;
    }
  }
  if (most == nullptr) return {};
  std::string all;
  std::size_t shown = 0;
  for (const auto& name : most->names) {
    if (shown++ == kShown) return all + " ..";
    all += (all.empty() ? "" : ", ") + name;
  }
  return all;
}

std::optional<std::string> choose_path(const PathSights& sights, const FeedChoices& choices) {
  std::optional<std::string> best;
  Rank best_rank;
  for (const auto& [path, sight] : sights) {
    const auto fields = product_fields(sight.names, choices);
    if (!fields) continue;
    const Rank rank{sight.count > 1, *fields, sight.depth};
    if (best && !rank.beats(best_rank)) continue;
    best = path;
    best_rank = rank;
  }
  return best;
}

}  // namespace rangebook

// Optimal string alignment distance over short words.
#include "schema/nearest_word.h"

#include <algorithm>

namespace rangebook {
namespace {

std::size_t distance(std::string_view a, std::string_view b) {
  std::vector<std::vector<std::size_t>> cost(a.size() + 1, std::vector<std::size_t>(b.size() + 1));
  for (std::size_t i = 0; i <= a.size(); ++i) cost[i][0] = i;
  for (std::size_t j = 0; j <= b.size(); ++j) cost[0][j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t other = a[i - 1] == b[j - 1] ? 0 : 1;
      cost[i][j] = std::min({cost[i - 1][j] + 1, cost[i][j - 1] + 1, cost[i - 1][j - 1] + other});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
        cost[i][j] = std::min(cost[i][j], cost[i - 2][j - 2] + 1);
      }
    }
  }
  return cost[a.size()][b.size()];
}

}  // namespace

std::optional<std::string> nearest_word(std::string_view word,
                                        const std::vector<std::string>& candidates) {
  constexpr std::size_t kLongest = 64;
  if (word.size() > kLongest) return std::nullopt;
  std::size_t best = std::max<std::size_t>(1, word.size() / 3) + 1;
  std::optional<std::string> nearest;
  for (const auto& candidate : candidates) {
    if (candidate.size() > kLongest) continue;
    const std::size_t edits = distance(word, candidate);
    if (edits < best) {
      best = edits;
      nearest = candidate;
    }
  }
  return nearest;
}

std::string did_you_mean(std::string_view word, const std::vector<std::string>& candidates) {
  const auto nearest = nearest_word(word, candidates);
  return nearest ? " Did you mean \"" + *nearest + "\"?" : std::string{};
}

}  // namespace rangebook

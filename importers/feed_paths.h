// Which elements of a feed are its products, told by the names inside them.
#pragma once

#include <cstddef>
#include <map>
#include <optional>
#include <set>
#include <string>

#include "importers/feed_choices.h"

namespace rangebook {

/// What stands at one path of a feed's front.
struct PathSight {
  std::size_t count = 0;
  std::set<std::string> names;  ///< of parts, at most kMaxNames
  std::size_t depth = 0;

  static constexpr std::size_t kMaxNames = 200;
  void see(const std::string& name) {
    if (names.size() < kMaxNames) names.insert(name);
  }
};
using PathSights = std::map<std::string, PathSight>;
/// More paths than this are not looked at.
inline constexpr std::size_t kMaxPaths = 2000;

/// The names of parts of the object that is met most often, joined; for a message where there is no
/// such path. Empty where none repeats.
std::string frequent_names(const PathSights& sights);

/// The path of the products: of those whose parts name a line and something about an article, the
/// outermost that repeats; when none repeats, the one that names most. Nothing when there is none.
std::optional<std::string> choose_path(const PathSights& sights, const FeedChoices& choices);

}  // namespace rangebook

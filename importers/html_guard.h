// Whether a page may be built into a tree: counted by our own scan of its tags, before any parser
// that could be made slow or run out of stack sees it.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

namespace rangebook {

/// Pages beyond these get no tree. The largest real shop pages stay below a tenth of each.
inline constexpr std::size_t kMaxTreeBytes = std::size_t{32} << 20U;
inline constexpr std::size_t kMaxTreeDepth = 2000;
inline constexpr std::size_t kMaxTreeTags = 500'000;
inline constexpr std::size_t kMaxTreeAttributes = 400;  ///< of one tag
/// How much may be written across elements (`<b><p></b>`), where a parser makes copies.
inline constexpr std::size_t kMaxMisnested = 20'000;

struct TreeLimit {
  enum class Kind : std::uint8_t { bytes, depth, tags, attributes, misnested, frames };
  Kind kind = Kind::bytes;
  std::uint64_t byte = 0;  ///< where the limit is passed
};

/// The limit that `page` (UTF-8) passes first; nothing when a tree may be built. The depth counted
/// is that of the tags as written: end tags close what a browser would let them close.
std::optional<TreeLimit> tree_limit(std::string_view page);

}  // namespace rangebook

// One product of a feed as a small tree: the same for JSON objects and XML elements.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace rangebook {

/// Longer products are refused, and those of more values.
inline constexpr std::size_t kMaxItemBytes = std::size_t{8} << 20U;
inline constexpr std::size_t kMaxItemNodes = 100'000;
/// Deeper products are refused.
inline constexpr std::size_t kMaxItemDepth = 48;

/// A value with a name. JSON: a member; each member of an array is a node with the array's name.
/// XML: an element or an attribute, without namespace prefix.
struct FeedNode {
  std::string name;
  std::string text;  ///< of a leaf; for XML also the text beside attributes
  std::vector<FeedNode> parts;

  bool is_leaf() const { return parts.empty(); }
  /// The first part of that name; null if there is none. Names are compared folded.
  const FeedNode* part(std::string_view folded_name) const;
};

/// Where a product stands in its document.
struct FeedItem {
  FeedNode node;
  std::uint64_t line = 1;
  std::uint64_t byte = 0;
};

}  // namespace rangebook

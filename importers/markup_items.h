// Things with types and properties as the elements of a page state them, in microdata or RDFa, and
// their way into the tree that JSON-LD is read from: the same rules then make the rows.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "importers/json_tree.h"

namespace rangebook {

/// The items of one page are counted up to here; what comes later is left out.
inline constexpr std::size_t kMaxItems = 50'000;

/// One statement: a text, an address, or another item of the list.
struct MarkupValue {
  std::vector<std::string> names = {};   ///< the properties it is the value of
  std::string text = {};                 ///< as `textContent`, or the address as written
  std::optional<std::size_t> item = {};  ///< index of the item that is the value instead
  bool reference = false;  ///< the text names an item, which may be described elsewhere
};

struct MarkupItem {
  std::vector<std::string> types = {};
  std::string id = {};
  std::uint32_t byte = 0;  ///< of its element in the page
  std::vector<MarkupValue> values = {};
};

/// In the order of the page. Items may refer to each other in circles.
using MarkupItems = std::vector<MarkupItem>;

/// The items that are no other item's value.
std::vector<std::size_t> top_items(const MarkupItems& items);

/// Adds all items to the tree; gives those that are no other item's value.
std::vector<JsonId> add_items(JsonTree& tree, const MarkupItems& items);

}  // namespace rangebook

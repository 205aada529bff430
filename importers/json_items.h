// The products of a JSON feed one by one, without reading the feed as a whole: a scan for the
// objects at one path, each handed out as text.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "importers/feed_choices.h"
#include "importers/feed_node.h"
#include "importers/json_scan.h"
#include "importers/row_reader.h"

namespace rangebook {

/// One object of the feed. Its text is valid until the next step.
struct JsonItem {
  std::string_view text;
  std::uint64_t line = 1;
  std::uint64_t byte = 0;
  bool cut = false;        ///< the document ends within it
  bool over_long = false;  ///< over kMaxItemBytes; only its front is in `text`
};

class JsonItems {
 public:
  explicit JsonItems(ByteSource& source) : source_(source) {}

  /// The front of the document, for find_json_items(); before the first next().
  std::string_view peek(std::size_t bytes);
  /// Which objects are handed out: those at this path. `products[]` is the list in the member
  /// `products` of the outermost object, `[]` the outermost list; the empty path means the
  /// outermost objects themselves, one after the other (JSON lines).
  void set_path(std::string path);

  /// The next object at the path; false at the end, or where the document nests too deep.
  bool next(JsonItem& item);
  bool too_deep() const { return too_deep_; }

 private:
  bool take(char sign, JsonItem& item);
  bool end_line(JsonItem& item);
  bool refill();
  void drop_item();

  ByteSource& source_;
  std::string path_;
  JsonScan scan_;
  std::string buffer_;
  std::size_t at_ = 0;         ///< next sign, in buffer_
  std::uint64_t dropped_ = 0;  ///< bytes before buffer_
  std::uint64_t line_ = 1;
  bool at_end_ = false;
  bool too_deep_ = false;
  bool one_a_line_ = false;
  bool in_item_ = false;
  bool over_long_ = false;
  std::size_t item_start_ = 0;  ///< in buffer_, while in an item
  std::size_t item_depth_ = 0;
  std::uint64_t item_line_ = 1;
  std::uint64_t item_byte_ = 0;
  std::string over_long_front_;
};

struct FoundItems {
  std::optional<std::string> path;  ///< of the products; nothing when there are none
  std::string names;                ///< frequent_names(), where there are none
};

/// The path of the products in the front of a feed.
FoundItems find_json_items(std::string_view front, const FeedChoices& choices);

/// The members of the text of one object as a tree; nothing when it is no JSON even with small
/// slips put right (importers/json_repair.h), or has too many values.
std::optional<FeedNode> read_json_item(std::string_view text);

}  // namespace rangebook

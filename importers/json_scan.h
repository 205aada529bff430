// JSON sign by sign: where objects and lists open and close, and under which path. Knows nothing of
// values, so that a feed of any size is scanned in constant memory.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

namespace rangebook {

/// Deeper feeds are refused.
inline constexpr std::size_t kMaxFeedDepth = 64;

class JsonScan {
 public:
  enum class Event : std::uint8_t { none, key, open_object, open_list, close, too_deep };

  /// What the next sign of the document does.
  Event step(char sign);
  std::size_t depth() const { return levels_.size(); }
  /// The member whose name step() has just told.
  const std::string& key() const { return levels_.back().key; }
  /// Path of the object that has just opened, or of what would open here: `data.products[]`.
  std::string path() const;
  bool in_string() const { return in_string_; }

 private:
  struct Level {
    bool list = false;
    bool wants_key = false;
    std::string key;
  };

  Event string_sign(char sign);
  Event open(bool list);

  std::vector<Level> levels_;
  std::string string_;
  bool in_string_ = false;
  bool escaped_ = false;
};

}  // namespace rangebook

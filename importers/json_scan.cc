// Strings matter only as names of members; everything between brackets is skipped.
#include "importers/json_scan.h"

namespace rangebook {
namespace {

/// Longer names of members are cut; no field has such a name.
constexpr std::size_t kLongestKey = 128;

}  // namespace

JsonScan::Event JsonScan::step(char sign) {
  if (in_string_) return string_sign(sign);
  switch (sign) {
    case '"':
      in_string_ = true;
      string_.clear();
      return Event::none;
    case '{':
      return open(false);
    case '[':
      return open(true);
    case '}':
    case ']':
      if (levels_.empty()) return Event::none;
      levels_.pop_back();
      return Event::close;
    case ':':
      if (levels_.empty() || !levels_.back().wants_key) return Event::none;
      levels_.back().key = string_;
      levels_.back().wants_key = false;
      return Event::key;
    case ',':
      if (!levels_.empty()) levels_.back().wants_key = !levels_.back().list;
      return Event::none;
  }
  return Event::none;
}

JsonScan::Event JsonScan::string_sign(char sign) {
  if (escaped_) {
    escaped_ = false;
  } else if (sign == '\\') {
    escaped_ = true;
  } else if (sign == '"') {
    in_string_ = false;
  } else if (string_.size() < kLongestKey) {
    string_.push_back(sign);
  }
  return Event::none;
}

JsonScan::Event JsonScan::open(bool list) {
  if (levels_.size() == kMaxFeedDepth) return Event::too_deep;
  levels_.push_back({list, !list, {}});
  return list ? Event::open_list : Event::open_object;
}

std::string JsonScan::path() const {
  std::string path;
  for (std::size_t i = 0; i + 1 < levels_.size(); ++i) {
    if (levels_[i].list) {
      path += "[]";
    } else {
      path.append(path.empty() ? "" : ".").append(levels_[i].key);
    }
  }
  return path;
}

}  // namespace rangebook

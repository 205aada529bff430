// The scan keeps the bytes of the object it is in, and nothing else.
#include "importers/json_items.h"

#include <algorithm>
#include <utility>
#include <variant>
#include <vector>

#include "importers/feed_paths.h"
#include "importers/json_tree.h"
#include "importers/xlsx_number.h"
#include "schema/rejection.h"

namespace rangebook {
namespace {

/// A member with the value it holds, lists already taken apart.
struct Member {
  std::string_view name;
  JsonId value = 0;
};

/// The members of an object; each value of a list under the name of the list.
std::vector<Member> members_of(const JsonTree& tree, JsonId object) {
  std::vector<Member> todo;
  for (JsonId id = tree[object].first_child; id != 0; id = tree[id].next) {
    todo.push_back({tree[id].key, id});
  }
  std::reverse(todo.begin(), todo.end());
  std::vector<Member> members;
  while (!todo.empty()) {
    const Member member = todo.back();
    todo.pop_back();
    if (tree[member.value].kind != JsonKind::array) {
      members.push_back(member);
      continue;
    }
    const std::size_t before = todo.size();
    for (JsonId id = tree[member.value].first_child; id != 0; id = tree[id].next) {
      todo.push_back({member.name, id});
    }
    std::reverse(todo.begin() + static_cast<std::ptrdiff_t>(before), todo.end());
  }
  return members;
}

/// The tree of an object, level by level.
FeedNode node_of(const JsonTree& tree, JsonId root) {
  FeedNode node;
  std::vector<std::pair<JsonId, FeedNode*>> todo{{root, &node}};
  while (!todo.empty()) {
    const auto [object, into] = todo.back();
    todo.pop_back();
    const auto members = members_of(tree, object);
    into->parts.reserve(members.size());  // so that pointers to the parts stay valid
    for (const auto& [name, value] : members) {
      FeedNode& part = into->parts.emplace_back();
      part.name = name;
      const bool number = tree[value].kind == JsonKind::number;
      part.text = number ? plain_decimal(tree[value].text) : std::string(tree[value].text);
      if (tree[value].kind == JsonKind::object) todo.emplace_back(value, &part);
    }
  }
  return node;
}

}  // namespace

std::string_view JsonItems::peek(std::size_t bytes) {
  while (buffer_.size() < bytes && refill()) continue;
  return buffer_;
}

bool JsonItems::refill() {
  if (at_end_) return false;
  const std::size_t keep_from = in_item_ ? item_start_ : at_;
  buffer_.erase(0, keep_from);
  dropped_ += keep_from;
  at_ -= keep_from;
  item_start_ = 0;
  const std::string_view chunk = source_.next_chunk();
  at_end_ = chunk.empty();
  buffer_.append(chunk);
  return !at_end_;
}

bool JsonItems::next(JsonItem& item) {
  while (!too_deep_) {
    if (at_ == buffer_.size()) {
      if (refill()) continue;
      if (!std::exchange(in_item_, false)) return false;
      item = {over_long_ ? std::string_view(over_long_front_)
                         : std::string_view(buffer_).substr(item_start_),
              item_line_, item_byte_, true, over_long_};
      return true;
    }
    if (in_item_ && !over_long_ && at_ - item_start_ > kMaxItemBytes) drop_item();
    if (take(buffer_[at_++], item)) return true;
    if (over_long_) item_start_ = at_;
  }
  return false;
}

/// Keeps the front of an item that is too long, and no more of it.
void JsonItems::drop_item() {
  over_long_ = true;
  over_long_front_ = buffer_.substr(item_start_, kExcerptBytes);
}

void JsonItems::set_path(std::string path) {
  path_ = std::move(path);
  if (!path_.empty()) return;
  JsonScan scan;
  const std::size_t line = std::min(buffer_.find('\n'), buffer_.size());
  for (const char sign : std::string_view(buffer_).substr(0, line)) {
    one_a_line_ = scan.step(sign) == JsonScan::Event::close && scan.depth() == 0;
    if (one_a_line_) return;
  }
}

/// A line that ends within its product costs that product alone.
bool JsonItems::end_line(JsonItem& item) {
  scan_ = JsonScan{};
  if (!std::exchange(in_item_, false)) return false;
  item = {std::string_view(buffer_).substr(item_start_, at_ - 1 - item_start_), item_line_,
          item_byte_, false, over_long_};
  if (over_long_) item.text = over_long_front_;
  return true;
}

/// True when the sign ends an item.
bool JsonItems::take(char sign, JsonItem& item) {
  if (sign == '\n') {
    ++line_;
    if (one_a_line_) return end_line(item);
  }
  const auto event = scan_.step(sign);
  too_deep_ = event == JsonScan::Event::too_deep;
  if (!in_item_ && event == JsonScan::Event::open_object && scan_.path() == path_) {
    in_item_ = true;
    over_long_ = false;
    item_start_ = at_ - 1;
    item_depth_ = scan_.depth();
    item_line_ = line_;
    item_byte_ = dropped_ + item_start_;
  }
  if (!in_item_ || event != JsonScan::Event::close || scan_.depth() >= item_depth_) return false;
  in_item_ = false;
  item = {over_long_ ? std::string_view(over_long_front_)
                     : std::string_view(buffer_).substr(item_start_, at_ - item_start_),
          item_line_, item_byte_, false, over_long_};
  return true;
}

FoundItems find_json_items(std::string_view front, const FeedChoices& choices) {
  JsonScan scan;
  PathSights sights;
  std::vector<PathSight*> open;  // of each level; null for lists
  for (const char sign : front) {
    const auto event = scan.step(sign);
    if (event == JsonScan::Event::too_deep) break;
    if (event == JsonScan::Event::open_object) {
      const std::string path = scan.path();
      const bool room = sights.size() < kMaxPaths || sights.contains(path);
      PathSight* const sight = room ? &sights[path] : nullptr;
      if (sight != nullptr) {
        ++sight->count;
        sight->depth = scan.depth();
      }
      open.push_back(sight);
    } else if (event == JsonScan::Event::open_list) {
      open.push_back(nullptr);
    } else if (event == JsonScan::Event::close) {
      open.pop_back();
    } else if (event == JsonScan::Event::key && open.back() != nullptr) {
      open.back()->see(scan.key());
    }
  }
  auto path = choose_path(sights, choices);
  return {path, path ? std::string{} : frequent_names(sights)};
}

std::optional<FeedNode> read_json_item(std::string_view text) {
  JsonTree tree;
  const auto result = tree.add(text, 0);
  const auto* block = std::get_if<JsonBlock>(&result);
  if (block == nullptr || tree.size() > kMaxItemNodes) return std::nullopt;
  if (tree[block->root].kind != JsonKind::object) return std::nullopt;
  return node_of(tree, block->root);
}

}  // namespace rangebook

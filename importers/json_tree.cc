// Building the tree from parse events.
#include "importers/json_tree.h"

#include <charconv>
#include <nlohmann/json.hpp>
#include <optional>

#include "importers/json_repair.h"

namespace rangebook {
namespace {

// Where objects begin and whether the nesting stays in bounds, found without recursion. On a text
// that is no JSON the offsets mean little, but the parser then stops anyway.
struct Outline {
  std::vector<std::uint32_t> objects;
  std::optional<std::size_t> too_deep;
};

// Behind the closing quote of the string that begins at `quote`.
std::size_t skip_string(std::string_view text, std::size_t quote) {
  std::size_t at = quote + 1;
  while (at < text.size() && text[at] != '"') at += text[at] == '\\' ? 2 : 1;
  return at;
}

Outline outline_of(std::string_view text) {
  Outline outline;
  std::size_t depth = 0;
  for (std::size_t at = 0; at < text.size(); ++at) {
    const char c = text[at];
    if (c == '"') at = skip_string(text, at);
    if (c == '{') outline.objects.push_back(static_cast<std::uint32_t>(at));
    if ((c == '}' || c == ']') && depth > 0) --depth;
    if ((c == '{' || c == '[') && ++depth > kMaxJsonDepth) {
      outline.too_deep = at;
      break;
    }
  }
  return outline;
}

}  // namespace

/// Receives the parser's events (nlohmann-json's SAX interface) and appends nodes.
class JsonTreeBuilder {
 public:
  JsonTreeBuilder(JsonTree& tree, std::string& pool, const std::vector<std::uint32_t>& objects)
      : tree_(tree), pool_(pool), objects_(objects) {}

  // NOLINTBEGIN(readability-identifier-naming): the parser gives these names
  bool null() { return append(JsonKind::null, {}); }
  bool boolean(bool value) { return append(JsonKind::boolean, value ? "true" : "false"); }
  bool number_integer(std::int64_t value) { return integer(value); }
  bool number_unsigned(std::uint64_t value) { return integer(value); }
  bool number_float(double, const std::string& written) {
    return append(JsonKind::number, keep(written));
  }
  bool string(const std::string& value) { return append(JsonKind::text, keep(value)); }
  bool binary(const std::vector<std::uint8_t>&) { return false; }
  bool key(const std::string& value) {
    key_ = keep(value);
    return true;
  }
  bool start_object(std::size_t) { return open(JsonKind::object); }
  bool start_array(std::size_t) { return open(JsonKind::array); }
  bool end_object() { return close(); }
  bool end_array() { return close(); }
  bool parse_error(std::size_t position, const std::string& token,
                   const nlohmann::json::exception&) {
    read_ = position;
    token_ = position - std::min(position, token.size());
    return false;
  }
  // NOLINTEND(readability-identifier-naming)

  JsonId root() const { return root_; }
  bool full() const { return full_; }
  /// Bytes read before the error, the wrong token included, and where that begins.
  std::size_t read() const { return read_; }
  std::size_t token() const { return token_; }

 private:
  struct Open {
    JsonId container = 0;
    JsonId last = 0;
  };

  template <typename Integer>
  bool integer(Integer value) {
    std::array<char, 24> digits{};
    const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), value).ptr;
    return append(JsonKind::number, keep({digits.data(), end}));
  }
  // The pool was reserved for the whole text, which is never shorter than its values: no move.
  std::string_view keep(std::string_view text) {
    if (pool_.capacity() - pool_.size() < text.size()) return {};
    const std::size_t at = pool_.size();
    pool_.append(text);
    return std::string_view(pool_).substr(at);
  }
  bool append(JsonKind kind, std::string_view text) {
    if (tree_.nodes_.size() >= kMaxJsonValues) return full_ = true, false;
    const auto id = static_cast<JsonId>(tree_.nodes_.size());
    tree_.nodes_.push_back({.kind = kind, .key = std::exchange(key_, {}), .text = text});
    if (open_.empty()) {
      root_ = id;
    } else {
      JsonId& last = open_.back().last;
      (last == 0 ? tree_.nodes_[open_.back().container].first_child : tree_.nodes_[last].next) = id;
      last = id;
    }
    return true;
  }
  bool open(JsonKind kind) {
    if (!append(kind, {})) return false;
    const auto id = static_cast<JsonId>(tree_.nodes_.size() - 1);
    if (kind == JsonKind::object && object_ < objects_.size()) {
      tree_.nodes_[id].byte = objects_[object_++];
    }
    open_.push_back({.container = id});
    return true;
  }
  bool close() {
    open_.pop_back();
    return true;
  }

  JsonTree& tree_;
  std::string& pool_;
  const std::vector<std::uint32_t>& objects_;
  std::size_t object_ = 0;
  std::string_view key_;
  std::vector<Open> open_;
  JsonId root_ = 0;
  std::size_t read_ = 0;
  std::size_t token_ = 0;
  bool full_ = false;
};

namespace {

// The parser counts the signs before a wrong token to it; those were right.
std::size_t fault_in(std::string_view text, std::size_t from, std::size_t read) {
  constexpr std::string_view kSigns = "{}[]:, \t\r\n";
  while (from + 1 < read && kSigns.find(text[from]) != kSigns.npos) ++from;
  return from;
}

std::variant<JsonBlock, JsonProblem> parse(std::string_view text, const Outline& outline,
                                           JsonTree& tree, std::string& pool) {
  if (outline.too_deep) return JsonProblem{JsonProblem::Kind::too_deep, *outline.too_deep, false};
  pool.reserve(text.size() + 32);
  JsonTreeBuilder builder(tree, pool, outline.objects);
  if (nlohmann::json::sax_parse(text.begin(), text.end(), &builder)) {
    return JsonBlock{.root = builder.root()};
  }
  if (builder.full()) return JsonProblem{JsonProblem::Kind::too_large, text.size(), false};
  const bool at_end = builder.read() > text.size();
  const std::size_t byte = at_end ? text.size() : fault_in(text, builder.token(), builder.read());
  return JsonProblem{JsonProblem::Kind::not_json, byte, at_end};
}

}  // namespace

JsonTree::JsonTree() : nodes_(1) {}

JsonId JsonTree::add_object(std::uint32_t page_byte) {
  if (nodes_.size() >= kMaxJsonValues) return 0;
  JsonNode& node = nodes_.emplace_back();
  node.kind = JsonKind::object;
  node.byte = page_byte;
  return static_cast<JsonId>(nodes_.size() - 1);
}

JsonId JsonTree::add_text(std::string_view text) {
  if (nodes_.size() >= kMaxJsonValues) return 0;
  JsonNode& node = nodes_.emplace_back();
  node.kind = JsonKind::text;
  node.text = pools_.emplace_back(text);
  return static_cast<JsonId>(nodes_.size() - 1);
}

void JsonTree::put(JsonId object, std::string_view key, JsonId value) {
  if (object == 0 || value == 0) return;
  nodes_[value].key = pools_.emplace_back(key);
  JsonId& last = last_[object];
  (last == 0 ? nodes_[object].first_child : nodes_[last].next) = value;
  last = value;
}

std::variant<JsonBlock, JsonProblem> JsonTree::add(std::string_view text, std::uint64_t page_byte) {
  if (text.size() > kMaxJsonBytes) return JsonProblem{JsonProblem::Kind::too_large, 0, false};
  const std::size_t before = nodes_.size();
  const auto settle = [&](auto&& result, auto&& source_offset) {
    if (auto* problem = std::get_if<JsonProblem>(&result)) {
      problem->byte = source_offset(problem->byte);
      nodes_.resize(before);
      pools_.pop_back();
    }
    for (std::size_t id = before; id < nodes_.size(); ++id) {
      const auto offset = page_byte + source_offset(nodes_[id].byte);
      if (nodes_[id].kind == JsonKind::object) nodes_[id].byte = static_cast<std::uint32_t>(offset);
    }
    return result;
  };
  const Outline outline = outline_of(text);
  auto result = settle(parse(text, outline, *this, pools_.emplace_back()),
                       [](std::size_t offset) { return offset; });
  const auto* problem = std::get_if<JsonProblem>(&result);
  if (problem == nullptr || problem->kind != JsonProblem::Kind::not_json) return result;
  const RepairedJson repaired(text);
  result = settle(parse(repaired.text(), outline_of(repaired.text()), *this, pools_.emplace_back()),
                  [&](std::size_t offset) { return repaired.source_offset(offset); });
  if (auto* block = std::get_if<JsonBlock>(&result)) {
    block->repaired = true;
    block->bad_bytes = repaired.bad_bytes();
  }
  return result;
}

}  // namespace rangebook

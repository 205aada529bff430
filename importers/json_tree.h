// JSON as a flat list of values. Parsed by nlohmann-json's event reader, which keeps the digits of
// a number as written, so that no price ever passes through floating point; its own value type
// would not.
#pragma once

#include <cstddef>
#include <cstdint>
#include <deque>
#include <string>
#include <string_view>
#include <unordered_map>
#include <variant>
#include <vector>

namespace rangebook {

/// Deepest nesting of arrays and objects. Real product markup stays below twenty.
inline constexpr std::size_t kMaxJsonDepth = 200;
/// Largest text, and most values, of the JSON of one page.
inline constexpr std::size_t kMaxJsonBytes = std::size_t{64} << 20U;
inline constexpr std::size_t kMaxJsonValues = std::size_t{1} << 20U;

enum class JsonKind : std::uint8_t { null, boolean, number, text, array, object };

/// Index of a value in its tree; 0 is no value.
using JsonId = std::uint32_t;

struct JsonNode {
  JsonKind kind = JsonKind::null;
  JsonId first_child = 0;
  JsonId next = 0;         ///< the next value in the same array or object
  std::uint32_t byte = 0;  ///< where an object begins, offset in the page
  std::string_view key;    ///< inside an object
  std::string_view text;   ///< of texts, numbers (as written) and booleans
};

/// Why a text was not taken.
struct JsonProblem {
  enum class Kind : std::uint8_t { not_json, too_deep, too_large };
  Kind kind = Kind::not_json;
  std::size_t byte = 0;  ///< offset in the text
  bool at_end = false;   ///< the text stops too early
};

/// What was added.
struct JsonBlock {
  JsonId root = 0;
  bool repaired = false;      ///< it was no JSON until some slips were put right (RepairedJson)
  std::size_t bad_bytes = 0;  ///< bytes that were not UTF-8, read as U+FFFD
};

/// The values of all blocks of a page. Values are only added; ids and views stay valid as long as
/// the tree.
class JsonTree {
 public:
  JsonTree();
  JsonTree(const JsonTree&) = delete;
  JsonTree& operator=(const JsonTree&) = delete;
  JsonTree(JsonTree&&) = default;
  JsonTree& operator=(JsonTree&&) = default;

  /// Reads one JSON text that begins at `page_byte` of its page; strictly first, then repaired.
  /// The depth is checked before any value is built. Leaves the tree as it was on a problem.
  std::variant<JsonBlock, JsonProblem> add(std::string_view text, std::uint64_t page_byte);

  /// Adds an empty object that begins at `page_byte`, or a text, without a place in another value;
  /// for markup that is written as elements instead of JSON. 0 when the tree is full.
  JsonId add_object(std::uint32_t page_byte);
  JsonId add_text(std::string_view text);
  /// Puts a value under a key of an object, behind those it has. A value has one place only.
  void put(JsonId object, std::string_view key, JsonId value);

  const JsonNode& operator[](JsonId id) const { return nodes_[id]; }
  /// One more than the largest id.
  std::size_t size() const { return nodes_.size(); }

 private:
  friend class JsonTreeBuilder;
  std::vector<JsonNode> nodes_;
  std::deque<std::string> pools_;            ///< the texts of one block each, never moved
  std::unordered_map<JsonId, JsonId> last_;  ///< the last value put into an object
};

}  // namespace rangebook

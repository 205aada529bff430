// Tags of HTML text, after the tokenizer of the WHATWG HTML standard: where a tag ends, and its
// attributes. Nothing is copied or allocated.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

#include "importers/byte_search.h"

namespace rangebook {

/// One attribute as written: the name in any case, the value with its character references.
struct HtmlAttribute {
  std::string_view name;
  std::string_view value;
};

/// Walks the attributes of one tag. `inside` is what stands between the tag's name and its ">".
class HtmlAttributes {
 public:
  explicit HtmlAttributes(std::string_view inside) : rest_(inside) {}
  /// The next attribute; nothing at the end. Repeated names come out again: the first one counts.
  std::optional<HtmlAttribute> next();

 private:
  std::string_view take_name();
  std::string_view take_value();
  void skip_space();

  std::string_view rest_;
};

/// The raw value of the first attribute called `name` (lower case); nothing when it is not there.
std::optional<std::string_view> find_attribute(std::string_view inside, std::string_view name);

/// True when both are equal apart from the case of ASCII letters.
bool equals_ignoring_case(std::string_view a, std::string_view b);

/// The ">" that ends the tag whose name ends at `at`, or `end` when the text stops before. Only an
/// "=" after an attribute's name opens a value, and only a value can hide a ">".
const char* find_tag_end(const char* at, const char* end);

/// A tag name of up to eight letters as a number, in lower case, for a quick switch.
constexpr std::uint64_t tag_key(std::string_view name) {
  std::uint64_t key = 0;
  for (const char c : name) key = key << 8U | (static_cast<unsigned char>(c) | 0x20U);
  return key;
}

}  // namespace rangebook

// An HTML page as a tree, built by gumbo and kept as one flat list in the order of the document.
// Built only where a page has to be read as a tree: it costs some fifty times the token scan.
#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "importers/html_guard.h"
#include "importers/html_tag.h"

namespace rangebook {

/// Index of a node; 0 is the document.
using HtmlId = std::uint32_t;

/// An element or a text. Everything from the node's index + 1 up to `end` is inside it.
struct HtmlNode {
  bool is_text = false;
  std::string_view name;  ///< of an element, lower case
  std::string_view text;  ///< of a text, references replaced
  HtmlId parent = 0;
  HtmlId end = 0;          ///< behind its last descendant
  std::uint32_t byte = 0;  ///< offset in the page
  std::uint32_t first_attribute = 0;
  std::uint32_t attributes = 0;
};

/// A tree. Comments, and the inert content of template elements, are left out.
class HtmlTree {
 public:
  /// Builds the tree of a page in UTF-8, or says which limit keeps it from that. `page` must
  /// outlive the tree.
  static std::variant<HtmlTree, TreeLimit> build(std::string_view page);

  HtmlTree(const HtmlTree&) = delete;
  HtmlTree& operator=(const HtmlTree&) = delete;
  HtmlTree(HtmlTree&&) noexcept;
  HtmlTree& operator=(HtmlTree&&) noexcept;
  ~HtmlTree();

  std::size_t size() const { return nodes_.size(); }
  const HtmlNode& operator[](HtmlId id) const { return nodes_[id]; }
  bool is(HtmlId id, std::string_view name) const { return nodes_[id].name == name; }
  /// The value of an attribute (name in lower case), references replaced.
  std::optional<std::string_view> attribute(HtmlId id, std::string_view name) const;
  /// All attributes of an element, names in lower case.
  std::span<const HtmlAttribute> attributes(HtmlId id) const;
  bool has(HtmlId id, std::string_view name) const { return attribute(id, name).has_value(); }
  /// All text inside, as `textContent`; without scripts and styles. At most kMaxElementText bytes.
  std::string text(HtmlId id) const;

 private:
  struct Memory;
  HtmlTree();
  void copy(const void* document);

  std::unique_ptr<Memory> memory_;  ///< of gumbo; the views point into it
  std::vector<HtmlNode> nodes_;
  std::vector<HtmlAttribute> attributes_;
};

/// Longest text of one element.
inline constexpr std::size_t kMaxElementText = std::size_t{1} << 16U;

}  // namespace rangebook

// Gumbo allocates from blocks that are dropped as a whole: its own way of freeing a tree calls
// itself once for each level.
#include "importers/html_tree.h"

#include <gumbo.h>

#include <algorithm>
#include <deque>
#include <utility>

namespace rangebook {

struct HtmlTree::Memory {
  static constexpr std::size_t kBlock = std::size_t{1} << 18U;

  void* take(std::size_t size) {
    size = (size + 15) / 16 * 16;
    if (size > kBlock / 4) return blocks.emplace_back(new std::byte[size]).get();
    if (left < size) {
      at = blocks.emplace_back(new std::byte[kBlock]).get();
      left = kBlock;
    }
    left -= size;
    return std::exchange(at, at + size);
  }

  std::vector<std::unique_ptr<std::byte[]>> blocks;
  std::byte* at = nullptr;
  std::size_t left = 0;
  std::deque<std::string> names;  ///< of elements that gumbo does not know
};

namespace {

void release(void*, void*) {}

const GumboVector* children_of(const GumboNode& node) {
  if (node.type == GUMBO_NODE_DOCUMENT) return &node.v.document.children;
  if (node.type == GUMBO_NODE_ELEMENT) return &node.v.element.children;
  return nullptr;  // a text, or a template: its content is inert
}

bool is_text(const GumboNode& node) {
  return node.type == GUMBO_NODE_TEXT || node.type == GUMBO_NODE_WHITESPACE ||
         node.type == GUMBO_NODE_CDATA;
}

bool is_element(const GumboNode& node) {
  return node.type == GUMBO_NODE_ELEMENT || node.type == GUMBO_NODE_TEMPLATE;
}

}  // namespace

HtmlTree::HtmlTree() : memory_(std::make_unique<Memory>()) {}
HtmlTree::HtmlTree(HtmlTree&&) noexcept = default;
HtmlTree& HtmlTree::operator=(HtmlTree&&) noexcept = default;
HtmlTree::~HtmlTree() = default;

std::variant<HtmlTree, TreeLimit> HtmlTree::build(std::string_view page) {
  if (const auto limit = tree_limit(page)) return *limit;
  HtmlTree tree;
  GumboOptions options = kGumboDefaultOptions;
  options.allocator = [](void* memory, std::size_t size) {
    return static_cast<Memory*>(memory)->take(size);
  };
  options.deallocator = release;
  options.userdata = tree.memory_.get();
  options.max_errors = 0;
  const GumboOutput* output = gumbo_parse_with_options(&options, page.data(), page.size());
  tree.copy(output->document);
  return tree;
}

void HtmlTree::copy(const void* document) {
  struct Step {
    const GumboNode* node;
    unsigned child;
    HtmlId id;
  };
  const auto name_of = [&](const GumboElement& element) -> std::string_view {
    if (element.tag != GUMBO_TAG_UNKNOWN) return gumbo_normalized_tagname(element.tag);
    GumboStringPiece piece = element.original_tag;
    gumbo_tag_from_original_text(&piece);
    std::string& name = memory_->names.emplace_back(piece.data, piece.length);
    std::transform(name.begin(), name.end(), name.begin(), ascii_lower);
    return name;
  };
  const auto append = [&](const GumboNode& node, HtmlId parent) {
    HtmlNode out;
    out.parent = parent;
    out.first_attribute = static_cast<std::uint32_t>(attributes_.size());
    if (is_text(node)) {
      out.is_text = true;
      out.text = node.v.text.text;
      out.byte = node.v.text.start_pos.offset;
    } else if (is_element(node)) {
      const GumboElement& element = node.v.element;
      out.name = name_of(element);
      out.byte = element.start_pos.offset;
      out.attributes = element.attributes.length;
      for (unsigned i = 0; i < element.attributes.length; ++i) {
        const auto& attribute = *static_cast<const GumboAttribute*>(element.attributes.data[i]);
        attributes_.push_back({.name = attribute.name, .value = attribute.value});
      }
    }
    nodes_.push_back(out);
    return static_cast<HtmlId>(nodes_.size() - 1);
  };
  const auto* root = static_cast<const GumboNode*>(document);
  std::vector<Step> open{{root, 0, append(*root, 0)}};
  while (!open.empty()) {
    Step& step = open.back();
    const GumboVector* children = children_of(*step.node);
    if (children == nullptr || step.child == children->length) {
      nodes_[step.id].end = static_cast<HtmlId>(nodes_.size());
      open.pop_back();
      continue;
    }
    const auto& child = *static_cast<const GumboNode*>(children->data[step.child++]);
    if (!is_text(child) && !is_element(child)) continue;
    const HtmlId parent = step.id;
    open.push_back({&child, 0, append(child, parent)});
  }
}

std::span<const HtmlAttribute> HtmlTree::attributes(HtmlId id) const {
  return std::span(attributes_).subspan(nodes_[id].first_attribute, nodes_[id].attributes);
}

std::optional<std::string_view> HtmlTree::attribute(HtmlId id, std::string_view name) const {
  const HtmlNode& node = nodes_[id];
  for (std::uint32_t i = 0; i < node.attributes; ++i) {
    const HtmlAttribute& attribute = attributes_[node.first_attribute + i];
    if (attribute.name == name) return attribute.value;
  }
  return std::nullopt;
}

std::string HtmlTree::text(HtmlId id) const {
  std::string out;
  for (HtmlId at = id; at < nodes_[id].end && out.size() < kMaxElementText;) {
    const HtmlNode& node = nodes_[at];
    if (node.is_text) out += node.text;
    const bool silent = node.name == "script" || node.name == "style";
    at = silent ? std::max(node.end, at + 1) : at + 1;
  }
  if (out.size() > kMaxElementText) out.resize(kMaxElementText);
  return out;
}

}  // namespace rangebook

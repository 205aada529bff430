// One search through the page for each fact.
#include "importers/visible_facts.h"

#include <algorithm>

#include "importers/schema_org_words.h"
#include "importers/utf8.h"
#include "importers/visible_sizes.h"

namespace rangebook {
namespace {

constexpr std::size_t kLongestPhrase = 80;
constexpr int kButtonLevels = 3;        // around its words
constexpr int kChoiceLevels = 6;        // around a text, where a choice is looked for
constexpr std::size_t kMostTries = 30;  // elements named alike that are looked into
constexpr std::size_t kLongestDescription = 2000;
constexpr std::size_t kShortestDescription = 30;

bool is_button(const HtmlTree& tree, HtmlId id) {
  const auto type = tree.attribute(id, "type").value_or("");
  return tree.is(id, "button") || tree.attribute(id, "role") == "button" ||
         (tree.is(id, "input") && (type == "submit" || type == "button" || type == "image")) ||
         tree.is(id, "a");
}

bool is_disabled(const HtmlTree& tree, HtmlId id) {
  return tree.has(id, "disabled") || tree.attribute(id, "aria-disabled") == "true";
}

bool is_disabled_near(const HtmlTree& tree, HtmlId text) {
  HtmlId at = tree[text].parent;
  for (int level = 0; level < kButtonLevels && at != 0; ++level, at = tree[at].parent) {
    if (is_disabled(tree, at)) return true;
  }
  return false;
}

std::string button_text(const PageView& view, HtmlId id) {
  std::string text = view.line(id);
  for (const std::string_view attribute : {"value", "alt", "aria-label", "title"}) {
    if (text.empty()) text = view.tree().attribute(id, attribute).value_or("");
  }
  return text.size() > kLongestPhrase ? std::string{} : folded_text(text);
}

// "40 sold out".
bool begins_with_a_size(std::string_view text) {
  const std::string clean = clean_text(text);
  return looks_like_size(clean.substr(0, clean.find(' ')));
}

// "M" and "sold out" in two elements of one.
bool stands_behind_a_size(const HtmlTree& tree, HtmlId text) {
  const HtmlId around = tree[tree[text].parent].parent;
  for (HtmlId at = text; at > around + 1;) {
    --at;
    if (!tree[at].is_text || clean_text(tree[at].text).empty()) continue;
    return tree[around].end - around < 8 && looks_like_size(clean_text(tree[at].text));
  }
  return false;
}

// Sizes that are sold out are no word on the product.
bool is_choice(const PageView& view, HtmlId text) {
  const HtmlTree& tree = view.tree();
  if (begins_with_a_size(tree[text].text) || stands_behind_a_size(tree, text)) return true;
  HtmlId at = tree[text].parent;
  for (int level = 0; level < kChoiceLevels && at != 0; ++level, at = tree[at].parent) {
    const std::string_view name = tree[at].name;
    if (name == "option" || name == "li" || name == "label") return true;
    if (view.named(at, PageWord::size_token)) return true;
    if (name == "div" || name == "p") break;
  }
  return false;
}

}  // namespace

std::string visible_stock(const PageView& view) {
  const HtmlTree& tree = view.tree();
  bool in = false;
  bool out = false;
  bool buy = false;
  for (HtmlId id = 1; id < tree.size(); ++id) {
    if (!view.displayed(id)) continue;
    if (!tree[id].is_text) {
      const bool button = is_button(tree, id) && has_phrase(button_text(view, id), PageWord::buy);
      buy = buy || (button && !is_disabled(tree, id));
      continue;
    }
    if (tree[id].text.size() > kLongestPhrase || is_choice(view, id)) continue;
    const std::string text = folded_text(tree[id].text);
    if (text.empty()) continue;
    // Buttons that are no button elements.
    buy = buy || (is_word(text, PageWord::buy) && !is_disabled_near(tree, id));
    const bool no = says_sold_out(text);
    out = out || no;
    in = in || (!no && has_phrase(text, PageWord::in_stock));
  }
  if (out) return in || buy ? "" : "OutOfStock";
  return in || buy ? "InStock" : "";
}

std::string visible_description(const PageView& view) {
  const HtmlTree& tree = view.tree();
  std::size_t tries = 0;
  for (HtmlId id = 1; id < tree.size() && tries < kMostTries; ++id) {
    if (tree[id].is_text || tree.is(id, "meta") || !view.shown(id)) continue;
    if (!view.named(id, PageWord::describe_token)) continue;
    ++tries;
    const std::string text = view.line(id);
    if (text.size() >= kShortestDescription) return excerpt_of(text, kLongestDescription);
  }
  return {};
}

}  // namespace rangebook

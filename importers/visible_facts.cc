// One search through the page for each fact.
#include "importers/visible_facts.h"

#include <algorithm>
#include <array>
#include <vector>

#include "importers/schema_org_words.h"
#include "importers/utf8.h"

namespace rangebook {
namespace {

constexpr std::size_t kLongestPhrase = 80;
constexpr int kChoiceLevels = 6;        // around a text, where a choice is looked for
constexpr std::size_t kMostTries = 30;  // elements named alike that are looked into
constexpr std::size_t kLongestColour = 40;
constexpr std::size_t kLongestComposition = 300;
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

std::string button_text(const PageView& view, HtmlId id) {
  std::string text = view.line(id);
  for (const std::string_view attribute : {"value", "alt", "aria-label", "title"}) {
    if (text.empty()) text = view.tree().attribute(id, attribute).value_or("");
  }
  return text.size() > kLongestPhrase ? std::string{} : folded_text(text);
}

// Sizes that are sold out are no word on the product.
bool is_choice(const PageView& view, HtmlId text) {
  const HtmlTree& tree = view.tree();
  HtmlId at = tree[text].parent;
  for (int level = 0; level < kChoiceLevels && at != 0; ++level, at = tree[at].parent) {
    const std::string_view name = tree[at].name;
    if (name == "option" || name == "li" || name == "label") return true;
    if (view.named(at, PageWord::size_token)) return true;
    if (name == "div" || name == "p") break;
  }
  return false;
}

// "65%" at `at`: where the digits begin, or npos.
std::size_t share_begin(std::string_view text, std::size_t percent) {
  std::size_t at = percent;
  while (at > 0 && text[at - 1] == ' ') --at;
  const std::size_t end = at;
  while (at > 0 && is_ascii_digit(text[at - 1])) --at;
  return end == at || end - at > 3 ? text.npos : at;
}

// Shares followed by words that are no saving, up to 100 in one part.
bool is_composition(std::string_view text) {
  const std::string folded = folded_text(text);
  std::size_t shares = 0;
  int sum = 0;
  for (auto at = folded.find('%'); at != folded.npos; at = folded.find('%', at + 1)) {
    const std::size_t from = share_begin(folded, at);
    if (from == folded.npos) continue;
    int share = 0;
    for (std::size_t i = from; i < at && is_ascii_digit(folded[i]); ++i) {
      share = share * 10 + (folded[i] - '0');
    }
    sum += share;
    ++shares;
  }
  if (shares == 0 || has_phrase(folded, PageWord::saving)) return false;
  return sum > 0 && sum % 100 == 0;
}

std::string without_label(std::string text, PageWord label) {
  const auto colon = text.find(':');
  if (colon > kLongestColour) return text;
  if (!starts_with_phrase(folded_text(text.substr(0, colon)), label)) return text;
  return clean_text(text.substr(colon + 1));
}

}  // namespace

std::string visible_stock(const PageView& view) {
  const HtmlTree& tree = view.tree();
  bool in = false;
  bool out = false;
  bool buy = false;
  for (HtmlId id = 1; id < tree.size(); ++id) {
    if (!view.shown(id)) continue;
    if (!tree[id].is_text) {
      const bool button = is_button(tree, id) && has_phrase(button_text(view, id), PageWord::buy);
      buy = buy || (button && !is_disabled(tree, id));
      continue;
    }
    if (tree[id].text.size() > kLongestPhrase || is_choice(view, id)) continue;
    const std::string text = folded_text(tree[id].text);
    if (text.empty()) continue;
    buy = buy || is_word(text, PageWord::buy);  // buttons that are no button elements
    const bool no = has_phrase(text, PageWord::sold_out);
    out = out || no;
    in = in || (!no && has_phrase(text, PageWord::in_stock));
  }
  if (out) return in || buy ? "" : "OutOfStock";
  return in || buy ? "InStock" : "";
}

std::string visible_colour(const PageView& view) {
  const HtmlTree& tree = view.tree();
  for (HtmlId id = 1; id < tree.size(); ++id) {
    if (tree[id].is_text || !view.shown(id) || tree[id].end - id > 12) continue;
    if (tree.is(id, "select") || tree.is(id, "option")) continue;
    const std::string text = view.line(id);
    const auto colon = text.find(':');
    if (colon > 20 || text.size() > 2 * kLongestColour) continue;
    if (!is_word(folded_text(text.substr(0, colon)), PageWord::colour_label)) continue;
    std::string colour = clean_text(text.substr(colon + 1));
    if (!colour.empty() && colour.size() <= kLongestColour) return colour;
  }
  return {};
}

std::string visible_composition(const PageView& view) {
  const HtmlTree& tree = view.tree();
  for (HtmlId id = static_cast<HtmlId>(tree.size()); id-- > 1;) {
    const HtmlNode& node = tree[id];
    if (node.is_text || !view.shown(id) || node.end - id > 40 || node.end - id < 2) continue;
    const std::string text = view.line(id);
    if (text.size() > kLongestComposition || text.find('%') == text.npos) continue;
    if (!is_composition(text)) continue;
    // The list around it may hold further parts.
    return without_label(text, PageWord::composition_label);
  }
  return {};
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

bool is_start_page(std::string_view name) {
  constexpr auto kNames = std::to_array<std::string_view>(
      {"home", "homepage", "home page", "start", "startseite", "accueil", "inicio", "hem", "hjem",
       "etusivu", "forside", "strona główna"});
  return std::find(kNames.begin(), kNames.end(), folded_text(name)) != kNames.end();
}

std::string visible_breadcrumbs(const PageView& view, const std::string& product) {
  const HtmlTree& tree = view.tree();
  std::size_t tries = 0;
  for (HtmlId id = 1; id < tree.size() && tries < kMostTries; ++id) {
    if (tree[id].is_text || view.hidden(id) || !view.named(id, PageWord::crumb_token)) continue;
    ++tries;
    std::vector<std::string> names;
    for (HtmlId at = id + 1; at < tree[id].end; ++at) {
      if (!tree[at].is_text) continue;
      std::string name = clean_text(tree[at].text);
      const bool sign = name.size() <= 3 && std::none_of(name.begin(), name.end(), is_ascii_letter);
      if (!name.empty() && !sign) names.push_back(std::move(name));
    }
    if (!names.empty() && is_start_page(names.front())) names.erase(names.begin());
    if (!names.empty() && folded_text(names.back()) == folded_text(product)) names.pop_back();
    std::string path;
    for (const auto& name : names) path += (path.empty() ? "" : " > ") + name;
    if (!path.empty()) return path;
  }
  return {};
}

}  // namespace rangebook

// Flags are set on the elements that cause them, then handed down.
#include "importers/page_view.h"

#include <algorithm>
#include <array>
#include <utility>

#include "importers/microdata.h"
#include "importers/page_styles.h"
#include "importers/schema_org_words.h"

namespace rangebook {
namespace {

constexpr std::size_t kLongestHeading = 300;
constexpr std::size_t kShortestTitle = 4;
constexpr int kMostLevels = 64;
constexpr int kMostHeadings = 20;
constexpr std::size_t kLongestRelated = 40;  // of a line that heads what else the shop offers
constexpr int kMostInline = 16;              // levels of inline elements around a text

constexpr auto kSilent = std::to_array<std::string_view>(
    {"head", "script", "style", "noscript", "template", "iframe", "svg", "textarea", "dialog"});
constexpr auto kNamingAttributes = std::to_array<std::string_view>(
    {"class", "id", "itemprop", "data-testid", "data-test", "data-qa", "data-hook", "name",
     "aria-label", "data-role", "data-price-type"});
constexpr auto kInline = std::to_array<std::string_view>(
    {"a",    "abbr", "b", "bdi",   "bdo",  "data",   "del",    "em",  "font", "i",    "ins",
     "mark", "meta", "s", "small", "span", "strike", "strong", "sub", "sup",  "time", "u"});
constexpr auto kHeadings = std::to_array<std::string_view>({"h2", "h3", "h4", "h5"});

template <typename Names>
bool is_one_of(const Names& names, std::string_view name) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

std::string without_spaces(std::string_view text) {
  std::string out = folded_text(text);
  std::erase(out, ' ');
  return out;
}

// The title and its parts, folded.
std::vector<std::string> title_parts(const std::string& title) {
  const std::string whole = folded_text(title);
  std::vector<std::string> parts{whole};
  for (const std::string_view sign : {" | ", " - ", " \u2013 ", " \u2014 ", " : ", " \u00b7 "}) {
    for (std::size_t from = 0, at = whole.find(sign); at != whole.npos || from > 0;) {
      parts.push_back(whole.substr(from, at == whole.npos ? at : at - from));
      if (at == whole.npos) break;
      from = at + sign.size();
      at = whole.find(sign, from);
    }
  }
  std::erase_if(parts, [](const std::string& part) { return part.size() < kShortestTitle; });
  return parts;
}

// "wool coat at shop" begins with "wool coat": several words, whole ones.
bool begins_with(const std::string& title, const std::string& text) {
  const bool several = text.find(' ') != text.npos && text.size() >= 2 * kShortestTitle;
  return several && title.starts_with(text) && title.size() > text.size() &&
         title[text.size()] == ' ';
}

bool is_of_product(const HtmlTree& tree, HtmlId id) {
  const auto tokens = name_tokens(tree.attribute(id, "class").value_or(""));
  return is_one_of(tokens, "product") || is_one_of(tokens, "pdp");
}

// "artikelpreis", "productprice": a word that ends in one for prices.
bool ends_in_price(std::string_view token) {
  constexpr auto kEnds = std::to_array<std::string_view>({"preis", "price", "prijs"});
  return std::any_of(kEnds.begin(), kEnds.end(),
                     [&](std::string_view end) { return token.ends_with(end); });
}

}  // namespace

PageView::PageView(const HtmlTree& tree) : tree_(tree), flags_(tree.size(), 0) {
  for (HtmlId id = 1; id < tree.size(); ++id) {
    if (!tree[id].is_text) mark_own(id);
  }
  mark_styled();
  find_heading();
  mark_asides();
  spread();
}

void PageView::mark_styled() {
  PageStyles styles;
  for (HtmlId id = 1; id < tree_.size(); ++id) {
    if (tree_[id].is_text && tree_.is(tree_[id].parent, "style")) {
      read_styles(tree_[id].text, styles);
    }
  }
  if (styles.struck.empty() && styles.undisplayed.empty()) return;
  for (HtmlId id = 1; id < tree_.size(); ++id) {
    const auto classes = tree_[id].attributes == 0 ? std::nullopt : tree_.attribute(id, "class");
    if (!classes) continue;
    for (const auto& name : attribute_words(*classes)) {
      if (styles.struck.contains(name)) flags_[id] |= kStruck;
      if (styles.undisplayed.contains(name)) flags_[id] |= kFolded;
    }
  }
}

void PageView::mark_own(HtmlId id) {
  const std::string_view name = tree_[id].name;
  const std::string style = without_spaces(tree_.attribute(id, "style").value_or(""));
  const bool hides = tree_.has(id, "hidden") || style.find("display:none") != style.npos ||
                     style.find("visibility:hidden") != style.npos;
  if (hides || is_one_of(kSilent, name)) flags_[id] |= kHidden;
  const bool strikes =
      name == "del" || name == "s" || name == "strike" || style.find("line-through") != style.npos;
  if (strikes) flags_[id] |= kStruck;
  if (name == "a" && tree_.has(id, "href")) flags_[id] |= kInLink;
}

// Of several h1 the one named as a title, else the first outside the page's header: shops put their
// own name into one there.
int PageView::heading_rank(HtmlId h1) const {
  if (clean_text(tree_.text(h1)).empty()) return 0;
  if (named(h1, PageWord::title_token)) return 3;
  for (HtmlId up = tree_[h1].parent; up != 0; up = tree_[up].parent) {
    const bool logo = named(up, PageWord::logo_token);
    if (logo || tree_.is(up, "header") || tree_.is(up, "nav")) return 1;
  }
  return named(h1, PageWord::logo_token) ? 1 : 2;
}

void PageView::find_heading() {
  int best = 0;
  int seen = 0;
  for (HtmlId id = 1; id < tree_.size() && seen < kMostHeadings;) {
    if ((flags_[id] & kHidden) != 0) {
      id = tree_[id].end;
      continue;
    }
    const bool h1 = tree_.is(id, "h1");
    const int rank = h1 ? heading_rank(id) : 0;
    if (rank > best) heading_ = id;
    best = std::max(best, rank);
    seen += h1 ? 1 : 0;
    ++id;
  }
  for (HtmlId id = 1; heading_ == 0 && id < tree_.size(); ++id) {
    const bool title = named(id, PageWord::title_token) &&
                       (is_one_of(kHeadings, tree_[id].name) || is_of_product(tree_, id));
    const bool short_enough = tree_[id].end - id < 12;
    if (title && short_enough && (flags_[id] & kHidden) == 0 &&
        !clean_text(tree_.text(id)).empty()) {
      heading_ = id;
    }
  }
  if (heading_ == 0) find_titled();
}

std::vector<std::string> PageView::titles() const {
  for (HtmlId id = 1; id < tree_.size(); ++id) {
    if (tree_.is(id, "title")) return title_parts(tree_.text(id));
  }
  return {};
}

// No heading is marked as one: the element that says what the page's title says, or the longest
// part of that ("Wool coat | Shop", "Wool coat at Shop").
void PageView::find_titled() {
  const std::vector<std::string> parts = titles();
  std::size_t longest = 0;
  for (HtmlId id = 1; id < tree_.size() && !parts.empty(); ++id) {
    const HtmlNode& node = tree_[id];
    const bool plain = !node.is_text && node.end - id < 12 && (flags_[id] & kHidden) == 0;
    if (!plain || node.name == "title" || node.name == "a" || tree_.is(node.parent, "a")) continue;
    const std::string text = folded_text(clean_text(tree_.text(id)));
    if (text.size() > longest && (is_one_of(parts, text) || begins_with(parts.front(), text))) {
      heading_ = id;
      longest = text.size();
    }
  }
}

std::string PageView::heading_text() const {
  if (heading_ == 0) return {};
  std::string text = line(heading_);
  return text.size() > kLongestHeading ? std::string{} : text;
}

// A heading element with such words, or a short line that begins with them.
bool PageView::is_related_heading(HtmlId id) const {
  const HtmlNode& node = tree_[id];
  if (node.end - id > 20 || node.end - id < 2) return false;
  const bool heading = is_one_of(kHeadings, node.name);
  if (!heading && (node.end - id > 3 || node.name == "a" || node.name == "button")) return false;
  const std::string text = folded_text(tree_.text(id));
  if (heading) return has_phrase(text, PageWord::related);
  return text.size() <= kLongestRelated && starts_with_phrase(text, PageWord::related);
}

// The one `main` of the page that the heading stands in; 0 if there is none.
HtmlId PageView::main_part() const {
  HtmlId main = 0;
  for (HtmlId id = 1; id < tree_.size(); ++id) {
    const bool is_main = tree_.is(id, "main") || tree_.attribute(id, "role") == "main";
    if (!is_main || (main != 0 && inside(id, main))) continue;
    if (main != 0) return 0;
    main = id;
  }
  return main != 0 && heading_ != 0 && inside(heading_, main) ? main : 0;
}

// What holds the heading is not aside, whatever its name.
void PageView::mark_asides() {
  if (const HtmlId main = main_part(); main != 0) {
    for (HtmlId id = 1; id < tree_.size(); id = std::max(tree_[id].end, id + 1)) {
      while (inside(main, id) && id != main) ++id;
      if (id != main) flags_[id] |= kAside;
    }
  }
  const auto around_heading = [&](HtmlId id) { return heading_ != 0 && inside(heading_, id); };
  for (HtmlId id = 1; id < tree_.size(); ++id) {
    const HtmlNode& node = tree_[id];
    if (node.is_text || around_heading(id) || aside(id)) continue;
    const bool page_part = node.name == "nav" || node.name == "footer" || node.name == "header" ||
                           node.name == "aside";
    const bool noise = node.attributes > 0 && named(id, PageWord::noise_token);
    if (page_part || noise) flags_[id] |= kAside;
    if (!is_related_heading(id)) continue;
    const HtmlId parent = node.parent;
    // The section below such a heading, or what follows it where the section holds more.
    if (!around_heading(parent)) {
      flags_[parent] |= kAside;
    } else {
      for (HtmlId next = id; next < tree_[parent].end; next = std::max(tree_[next].end, next + 1)) {
        flags_[next] |= kAside;
      }
    }
  }
}

void PageView::spread() {
  for (HtmlId id = 1; id < tree_.size(); ++id) flags_[id] |= flags_[tree_[id].parent];
}

bool PageView::named(HtmlId id, PageWord role) const {
  if (tree_[id].attributes == 0) return false;
  for (const auto attribute : kNamingAttributes) {
    const auto value = tree_.attribute(id, attribute);
    if (!value) continue;
    const auto tokens = name_tokens(*value);
    for (std::size_t i = 0; i < tokens.size(); ++i) {
      if (is_word(tokens[i], role)) return true;
      if (role == PageWord::price_token && ends_in_price(tokens[i])) return true;
      if (i > 0 && is_word(tokens[i - 1] + tokens[i], role)) return true;
    }
  }
  return false;
}

bool PageView::named_near(HtmlId id, PageWord role, int levels) const {
  for (int i = 0; i <= levels && id != 0; ++i, id = tree_[id].parent) {
    if (named(id, role)) return true;
  }
  return false;
}

bool PageView::is_cents(HtmlId text) const {
  const HtmlId parent = tree_[text].parent;
  return tree_.is(parent, "sup") || named(parent, PageWord::cents_token);
}

// The element around a text that begins a line of its own.
HtmlId PageView::block_of(HtmlId text) const {
  HtmlId at = tree_[text].parent;
  for (int i = 0; i < kMostInline && is_one_of(kInline, tree_[at].name); ++i) at = tree_[at].parent;
  return at;
}

std::string PageView::line(HtmlId id) const {
  std::string out;
  HtmlId last_block = 0;
  for (HtmlId at = id; at < tree_[id].end && out.size() < kMaxElementText;) {
    const HtmlNode& node = tree_[at];
    if (at != id && (flags_[at] & kHidden) != 0) {
      at = std::max(node.end, at + 1);
      continue;
    }
    if (node.name == "br" || (!node.is_text && !is_one_of(kInline, node.name))) out += ' ';
    if (node.is_text && !node.text.empty()) {
      const HtmlId block = block_of(at);
      if (std::exchange(last_block, block) != block) out += ' ';
      std::string_view text = node.text;
      if (is_cents(at)) {
        while (!text.empty() && is_html_space(text.front())) text.remove_prefix(1);
        while (!out.empty() && out.back() == ' ') out.pop_back();
      }
      const bool numbers = !out.empty() && !text.empty() && is_ascii_digit(out.back()) &&
                           is_ascii_digit(text.front());
      if (numbers) out += is_cents(at) ? '.' : '|';
      out += text;
    }
    ++at;
  }
  std::string clean = clean_text(out);
  return clean;
}

int PageView::levels_apart(HtmlId from, HtmlId other) const {
  int levels = 0;
  while (from != 0 && levels < kMostLevels && !inside(other, from)) {
    from = tree_[from].parent;
    ++levels;
  }
  return levels;
}

}  // namespace rangebook

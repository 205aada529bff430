// SVG and MathML inside HTML, after "the rules for parsing tokens in foreign content".
#include "importers/html_foreign.h"

#include <algorithm>
#include <array>

#include "importers/char_refs.h"
#include "importers/html_tag.h"

namespace rangebook {
namespace {

// Deeper SVG and MathML is not followed, so that a page of opened tags does not cost its square.
constexpr std::size_t kMaxDepth = 256;

// Start tags that cannot stand in SVG or MathML and so end it (font only with some attributes), as
// sorted keys; blockquote, too long for a key, is the other one.
constexpr auto kHtmlOnly = [] {
  auto keys = std::to_array<std::uint64_t>(
      {tag_key("b"),      tag_key("big"),   tag_key("body"),  tag_key("br"),      tag_key("center"),
       tag_key("code"),   tag_key("dd"),    tag_key("div"),   tag_key("dl"),      tag_key("dt"),
       tag_key("em"),     tag_key("embed"), tag_key("h1"),    tag_key("h2"),      tag_key("h3"),
       tag_key("h4"),     tag_key("h5"),    tag_key("h6"),    tag_key("head"),    tag_key("hr"),
       tag_key("i"),      tag_key("img"),   tag_key("li"),    tag_key("listing"), tag_key("menu"),
       tag_key("meta"),   tag_key("nobr"),  tag_key("ol"),    tag_key("p"),       tag_key("pre"),
       tag_key("ruby"),   tag_key("s"),     tag_key("small"), tag_key("span"),    tag_key("strong"),
       tag_key("strike"), tag_key("sub"),   tag_key("sup"),   tag_key("table"),   tag_key("tt"),
       tag_key("u"),      tag_key("ul"),    tag_key("var")});
  std::sort(keys.begin(), keys.end());
  return keys;
}();
constexpr auto kSvgHtmlPoints = std::to_array<std::string_view>({"foreignobject", "desc", "title"});
constexpr auto kMathTextPoints = std::to_array<std::string_view>({"mi", "mo", "mn", "ms", "mtext"});

template <typename Names>
bool is_one_of(std::string_view name, const Names& names) {
  return std::any_of(names.begin(), names.end(),
                     [&](std::string_view entry) { return equals_ignoring_case(name, entry); });
}

bool is_html_only(std::string_view name) {
  if (name.size() > 8) return equals_ignoring_case(name, "blockquote");
  return std::binary_search(kHtmlOnly.begin(), kHtmlOnly.end(), tag_key(name));
}

bool is_styled_font(std::string_view name, std::string_view inside) {
  return equals_ignoring_case(name, "font") &&
         (find_attribute(inside, "color") || find_attribute(inside, "face") ||
          find_attribute(inside, "size"));
}

bool holds_html(std::string_view inside) {
  const auto encoding = find_attribute(inside, "encoding");
  if (!encoding) return false;
  const std::string text = decode_attribute(*encoding);
  return equals_ignoring_case(text, "text/html") ||
         equals_ignoring_case(text, "application/xhtml+xml");
}

std::string lower(std::string_view name) {
  std::string text(name);
  std::transform(text.begin(), text.end(), text.begin(), ascii_lower);
  return text;
}

}  // namespace

void ForeignContent::leave() {
  while (active()) open_.pop_back();
}

bool ForeignContent::is_html_here(std::string_view name) const {
  if (open_.empty()) return true;
  const Open& top = open_.back();
  if (top.html) {
    return !(top.only_text &&
             (equals_ignoring_case(name, "mglyph") || equals_ignoring_case(name, "malignmark")));
  }
  return top.name == "annotation-xml" && equals_ignoring_case(name, "svg");
}

void ForeignContent::push(std::string_view name, std::string_view inside) {
  Open open{.name = lower(name)};
  const bool svg_root = open.name == "svg";
  const bool root = is_html_here(name) && (svg_root || open.name == "math");
  open.math = root ? !svg_root : open_.back().math;
  if (!root && !open.math) open.html = is_one_of(open.name, kSvgHtmlPoints);
  if (!root && open.math) {
    open.only_text = is_one_of(open.name, kMathTextPoints);
    open.html = open.only_text || (open.name == "annotation-xml" && holds_html(inside));
  }
  if (open_.size() == kMaxDepth) return;
  const bool watched = root || open.html || open.name == "svg" || open.name == "math" ||
                       open.name == "annotation-xml";
  if (watched) open_.push_back(std::move(open));
}

bool ForeignContent::start_tag(std::string_view name, std::string_view inside) {
  if (active() && (is_html_only(name) || is_styled_font(name, inside))) leave();
  const bool self_closing = !inside.empty() && inside.back() == '/';
  const bool root = equals_ignoring_case(name, "svg") || equals_ignoring_case(name, "math");
  if (is_html_here(name) && !root) return true;
  if (!self_closing) push(name, inside);
  return false;
}

void ForeignContent::end_tag(std::string_view name) {
  if (open_.empty()) return;
  for (auto at = open_.rbegin(); at != open_.rend(); ++at) {
    if (equals_ignoring_case(name, at->name)) {
      open_.erase(std::prev(at.base()), open_.end());
      return;
    }
    if (at->html) break;
  }
  if (active() && is_html_only(name)) leave();
}

}  // namespace rangebook

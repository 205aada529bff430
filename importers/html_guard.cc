// One pass over the tags of a page with a stack of the open ones.
#include "importers/html_guard.h"

#include <algorithm>
#include <array>
#include <vector>

#include "importers/html_foreign.h"
#include "importers/html_raw_text.h"
#include "importers/html_tag.h"

namespace rangebook {
namespace {

// Void elements, and elements that the next of their kind closes: neither deepens the page.
constexpr auto kNotCounted = std::to_array<std::string_view>(
    {"area",  "base",     "body",   "br",   "col",   "colgroup", "dd",    "dt",
     "embed", "head",     "hr",     "html", "img",   "input",    "li",    "link",
     "meta",  "optgroup", "option", "p",    "param", "rp",       "rt",    "source",
     "tbody", "td",       "tfoot",  "th",   "thead", "tr",       "track", "wbr"});

constexpr auto kRawText = std::to_array<std::string_view>(
    {"iframe", "noembed", "noframes", "style", "textarea", "title", "xmp"});

// An end tag closes nothing beyond these.
constexpr auto kBoundaries =
    std::to_array<std::string_view>({"applet", "marquee", "object", "table", "template"});

// End tags that close one element out of the middle of the others.
constexpr auto kFormatting =
    std::to_array<std::string_view>({"a", "b", "big", "code", "em", "font", "i", "nobr", "s",
                                     "small", "strike", "strong", "tt", "u"});

// End tags look so far back; deeper ones count as not closed.
constexpr std::size_t kLookBack = 64;

template <typename Names>
bool is_one_of(const Names& names, std::string_view name) {
  return std::any_of(names.begin(), names.end(),
                     [&](std::string_view entry) { return equals_ignoring_case(entry, name); });
}

class Guard {
 public:
  explicit Guard(std::string_view page) : begin_(page.data()), end_(begin_ + page.size()) {}

  std::optional<TreeLimit> run() {
    for (const char* at = begin_; !limit_ && (at = find_any<'<'>(at, end_)) != end_;) {
      at = markup(at);
    }
    return limit_;
  }

 private:
  const char* markup(const char* at);
  const char* tag(const char* at, bool closing);
  const char* open(const char* at, std::string_view name, std::string_view inside,
                   const char* after);
  void close(std::string_view name);
  void pass(TreeLimit::Kind kind, const char* at) {
    if (!limit_) limit_ = {kind, static_cast<std::uint64_t>(at - begin_)};
  }
  const char* behind(const char* gt) const { return gt == end_ ? end_ : gt + 1; }

  const char* begin_;
  const char* end_;
  std::size_t tags_ = 0;
  std::size_t misnested_ = 0;
  std::vector<std::string_view> open_;
  ForeignContent foreign_;
  std::optional<TreeLimit> limit_;
};

const char* Guard::markup(const char* at) {
  if (end_ - at < 2) return end_;
  if (is_ascii_letter(at[1])) return tag(at, false);
  const std::string_view rest(at, static_cast<std::size_t>(end_ - at));
  if (at[1] == '/' && rest.size() > 2 && is_ascii_letter(at[2])) return tag(at, true);
  if (rest.starts_with("<!--")) return skip_comment(at, end_);
  if (at[1] == '/' || at[1] == '!' || at[1] == '?') return behind(find_any<'>'>(at, end_));
  return at + 1;
}

const char* Guard::tag(const char* at, bool closing) {
  const char* const from = at + (closing ? 2 : 1);
  const char* const stop = find_any<' ', '\n', '\t', '\r', '\f', '/', '>'>(from, end_);
  const char* const gt = find_tag_end(stop, end_);
  const std::string_view name(from, static_cast<std::size_t>(stop - from));
  if (++tags_ > kMaxTreeTags) pass(TreeLimit::Kind::tags, at);
  if (gt == end_) return end_;
  if (!closing) return open(at, name, {stop, gt}, gt + 1);
  foreign_.end_tag(name);
  close(name);
  return gt + 1;
}

const char* Guard::open(const char* at, std::string_view name, std::string_view inside,
                        const char* after) {
  std::size_t count = 0;
  HtmlAttributes attributes(inside);
  while (count <= kMaxTreeAttributes && attributes.next()) ++count;
  if (count > kMaxTreeAttributes) pass(TreeLimit::Kind::attributes, at);
  if (equals_ignoring_case(name, "frameset")) pass(TreeLimit::Kind::frames, at);
  const bool html = foreign_.start_tag(name, inside);
  if (html && equals_ignoring_case(name, "script")) return script_text(after, end_).after;
  if (html && equals_ignoring_case(name, "plaintext")) return end_;
  for (const auto raw : kRawText) {
    if (html && equals_ignoring_case(name, raw)) return raw_text(after, end_, raw).after;
  }
  const bool closed = !html && inside.ends_with('/');
  if (closed || is_one_of(kNotCounted, name)) return after;
  open_.push_back(name);
  if (open_.size() > kMaxTreeDepth) pass(TreeLimit::Kind::depth, at);
  return after;
}

void Guard::close(std::string_view name) {
  const std::size_t floor = open_.size() - std::min(open_.size(), kLookBack);
  for (std::size_t at = open_.size(); at-- > floor;) {
    if (equals_ignoring_case(open_[at], name)) {
      const bool inner = at + 1 < open_.size();
      if (inner && ++misnested_ > kMaxMisnested) pass(TreeLimit::Kind::misnested, name.data());
      if (inner && is_one_of(kFormatting, name)) {
        open_.erase(open_.begin() + static_cast<std::ptrdiff_t>(at));
      } else {
        open_.resize(at);
      }
      return;
    }
    if (is_one_of(kBoundaries, open_[at])) return;
  }
}

}  // namespace

std::optional<TreeLimit> tree_limit(std::string_view page) {
  if (page.size() > kMaxTreeBytes) return TreeLimit{TreeLimit::Kind::bytes, kMaxTreeBytes};
  return Guard(page).run();
}

}  // namespace rangebook

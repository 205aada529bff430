// Items are found in one pass; each then collects its properties from its own elements and from
// those its itemref names.
#include "importers/microdata.h"

#include <algorithm>
#include <array>
#include <unordered_map>

namespace rangebook {
namespace {

/// An element with itemref may name so many others, and one page may go through so many elements
/// because of it: a page of ten thousand items that each refer to all of it stays cheap.
constexpr std::size_t kMaxReferences = 64;
constexpr std::size_t kMaxVisited = 4'000'000;

constexpr auto kSourced = std::to_array<std::string_view>(
    {"audio", "embed", "iframe", "img", "source", "track", "video"});

bool has_source(std::string_view name) {
  return std::find(kSourced.begin(), kSourced.end(), name) != kSourced.end();
}

class Reader {
 public:
  explicit Reader(const HtmlTree& tree) : tree_(tree) {}

  MarkupItems run() {
    for (HtmlId at = 1; at < tree_.size(); ++at) note(at);
    for (std::size_t i = 0; i < elements_.size(); ++i) collect(i);
    drop_circles();
    return std::move(items_);
  }

 private:
  void note(HtmlId at);
  void collect(std::size_t item);
  void crawl(std::size_t item, HtmlId from, HtmlId to);
  void add_property(std::size_t item, HtmlId at);
  void drop_circles();

  const HtmlTree& tree_;
  MarkupItems items_;
  std::vector<HtmlId> elements_;  ///< of each item
  std::unordered_map<HtmlId, std::size_t> by_element_;
  std::unordered_map<std::string_view, HtmlId> by_id_;  ///< the first element of each id
  std::size_t visited_ = 0;
};

void Reader::note(HtmlId at) {
  if (tree_[at].is_text || tree_[at].attributes == 0) return;
  if (const auto id = tree_.attribute(at, "id")) by_id_.emplace(*id, at);
  if (!tree_.has(at, "itemscope") || items_.size() == kMaxItems) return;
  MarkupItem item{.byte = tree_[at].byte};
  item.types = attribute_words(tree_.attribute(at, "itemtype").value_or(""));
  const auto ids = attribute_words(tree_.attribute(at, "itemid").value_or(""));
  if (!ids.empty()) item.id = ids.front();
  by_element_.emplace(at, items_.size());
  elements_.push_back(at);
  items_.push_back(std::move(item));
}

void Reader::collect(std::size_t item) {
  const HtmlId root = elements_[item];
  struct Part {
    HtmlId from;
    HtmlId to;
  };
  std::vector<Part> parts{{root + 1, tree_[root].end}};
  for (const auto& id : attribute_words(tree_.attribute(root, "itemref").value_or(""))) {
    const auto found = by_id_.find(id);
    if (found == by_id_.end() || parts.size() > kMaxReferences) continue;
    const HtmlId at = found->second;
    const bool known = std::any_of(parts.begin(), parts.end(), [&](const Part& part) {
      return part.from <= at && at < part.to;
    });
    if (!known && at != root) parts.push_back({at, tree_[at].end});
  }
  std::sort(parts.begin(), parts.end(), [](auto& a, auto& b) { return a.from < b.from; });
  for (const auto& part : parts) crawl(item, part.from, part.to);
}

// Elements of inner items belong to those; their itemprop still is a property of this one.
void Reader::crawl(std::size_t item, HtmlId from, HtmlId to) {
  for (HtmlId at = from; at < to && visited_ < kMaxVisited; ++visited_) {
    const HtmlNode& node = tree_[at];
    if (node.is_text || node.attributes == 0) {
      ++at;
      continue;
    }
    if (tree_.has(at, "itemprop")) add_property(item, at);
    at = by_element_.contains(at) ? node.end : at + 1;
  }
}

void Reader::add_property(std::size_t item, HtmlId at) {
  MarkupValue value;
  value.names = attribute_words(*tree_.attribute(at, "itemprop"));
  const auto inner = by_element_.find(at);
  if (inner != by_element_.end()) {
    value.item = inner->second;
  } else {
    value.text = element_value(tree_, at);
  }
  items_[item].values.push_back(std::move(value));
}

// The standard calls an item that contains itself an error; its statement is left out.
void Reader::drop_circles() {
  enum class Mark : std::uint8_t { fresh, open, done };
  std::vector<Mark> marks(items_.size(), Mark::fresh);
  struct Step {
    std::size_t item;
    std::size_t value;
  };
  for (std::size_t start = 0; start < items_.size(); ++start) {
    if (marks[start] != Mark::fresh) continue;
    std::vector<Step> way{{start, 0}};
    marks[start] = Mark::open;
    while (!way.empty()) {
      Step& step = way.back();
      if (step.value == items_[step.item].values.size()) {
        marks[step.item] = Mark::done;
        way.pop_back();
        continue;
      }
      MarkupValue& value = items_[step.item].values[step.value++];
      if (!value.item) continue;
      const std::size_t next = *value.item;
      if (marks[next] == Mark::open) value = {};
      if (marks[next] != Mark::fresh) continue;
      marks[next] = Mark::open;
      way.push_back({next, 0});
    }
  }
}

}  // namespace

MarkupItems read_microdata(const HtmlTree& tree) { return Reader(tree).run(); }

std::vector<std::string> attribute_words(std::string_view value) {
  std::vector<std::string> words;
  for (std::size_t at = 0; at < value.size();) {
    const std::size_t from = at;
    while (at < value.size() && !is_html_space(value[at])) ++at;
    if (at > from) words.emplace_back(value.substr(from, at - from));
    if (at == from) ++at;
  }
  return words;
}

std::string element_value(const HtmlTree& tree, HtmlId element) {
  const std::string_view name = tree[element].name;
  const auto of = [&](std::string_view attribute) {
    return std::string(tree.attribute(element, attribute).value_or(""));
  };
  if (name == "meta") return of("content");
  if (name == "a" || name == "area" || name == "link") {
    if (tree.has(element, "href")) return of("href");
    return tree.has(element, "content") ? of("content") : name == "a" ? tree.text(element) : "";
  }
  if (has_source(name)) return of("src");
  if (name == "object") return of("data");
  if (tree.has(element, "content")) return of("content");
  if (name == "data" || name == "meter") return of("value");
  if (name == "time" && tree.has(element, "datetime")) return of("datetime");
  return tree.text(element);
}

}  // namespace rangebook

// The innermost text with shares, then the lines around it that hold further parts.
#include "importers/visible_composition.h"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "importers/schema_org_words.h"

namespace rangebook {
namespace {

constexpr std::size_t kLongestLabel = 40;
constexpr std::size_t kLongestComposition = 300;
constexpr std::uint32_t kMostNodes = 40;
constexpr int kMostLevels = 4;  // from one part up to what holds all

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

// "Shell: 100% cotton" without "Shell:", where nothing else has a label.
std::string without_label(std::string text) {
  const auto wide = text.find("\uff1a");
  if (wide != text.npos) text.replace(wide, 3, ":");
  const auto colon = text.find(':');
  if (colon > kLongestLabel || text.find(':', colon + 1) != text.npos) return text;
  if (!starts_with_phrase(folded_text(text.substr(0, colon)), PageWord::composition_label)) {
    return text;
  }
  return clean_text(text.substr(colon + 1));
}

// Without the sentences around it that say nothing of shares ("100% silk. Dry clean.").
std::string sentences_with_shares(const std::string& text) {
  const auto first = text.find('%');
  const auto last = text.rfind('%');
  const auto before = text.rfind(". ", first);
  const auto after = text.find(". ", last);
  const std::size_t from = before == text.npos || before > first ? 0 : before + 2;
  const bool more = from > 0 || after != text.npos;
  if (!more) return text;
  std::string out = text.substr(from, after == text.npos ? after : after - from);
  // The full stop stays where it ends the last of several parts.
  if (out.find(". ") != out.npos && after != text.npos) out += '.';
  return out;
}

class Composer {
 public:
  explicit Composer(const PageView& view) : view_(view), tree_(view.tree()) {}

  std::string around(HtmlId id) const {
    std::string text = sentences_with_shares(text_in(id));
    HtmlId up = tree_[id].parent;
    for (int level = 0; level < kMostLevels && up != 0; ++level, up = tree_[up].parent) {
      if (tree_[up].end - up > kMostNodes) break;
      const auto parts = parts_of(up);
      if (parts.size() > 1) return joined(parts);
    }
    text = without_label(std::move(text));
    if (text.ends_with('.') && text.find(". ") == text.npos) text.pop_back();
    return text;
  }

 private:
  // One text inside that has all the shares ("Fabric: .." between line breaks), else the whole.
  std::string text_in(HtmlId id) const {
    std::string whole = view_.line(id);
    const auto shares = std::count(whole.begin(), whole.end(), '%');
    for (HtmlId at = id + 1; at < tree_[id].end; ++at) {
      if (!tree_[at].is_text || !view_.shown(at)) continue;
      std::string text = clean_text(tree_[at].text);
      const bool all = std::count(text.begin(), text.end(), '%') == shares;
      if (all && is_composition(text)) return text;
    }
    return whole;
  }
  // The children of an element that hold shares, each with its label and each once.
  std::vector<std::string> parts_of(HtmlId id) const {
    std::vector<std::string> out;
    std::string label;
    for (HtmlId at = id + 1; at < tree_[id].end; at = std::max(tree_[at].end, at + 1)) {
      if (tree_[at].is_text || !view_.shown(at)) continue;
      const std::string text = tree_.is(at, "tr") ? row_text(at) : view_.line(at);
      const bool heads = tree_.is(at, "dt") || tree_.is(at, "th");
      const bool shares = !heads && text.find('%') != text.npos && is_composition(text);
      std::string part = label.empty() ? text : fmt::format("{}: {}", label, text);
      const bool known = std::find(out.begin(), out.end(), part) != out.end();
      if (shares && !known) out.push_back(std::move(part));
      label = heads ? text : "";
    }
    return out;
  }
  // "Shell: 100% cotton" of a table row, whose first cell is its head.
  std::string row_text(HtmlId row) const {
    std::string head;
    std::string rest;
    for (HtmlId at = row + 1; at < tree_[row].end; at = std::max(tree_[at].end, at + 1)) {
      if (tree_[at].is_text || !view_.shown(at)) continue;
      std::string& to = head.empty() ? head : rest;
      if (!to.empty()) to += ' ';
      to += view_.line(at);
    }
    return head.empty() || rest.empty() ? view_.line(row) : fmt::format("{}: {}", head, rest);
  }
  static std::string joined(const std::vector<std::string>& parts) {
    std::string all;
    for (const auto& part : parts) {
      if (!all.empty()) all += all.ends_with('.') ? " " : ". ";
      all += part;
    }
    return all;
  }

  const PageView& view_;
  const HtmlTree& tree_;
};

}  // namespace

std::string visible_composition(const PageView& view) {
  const HtmlTree& tree = view.tree();
  for (HtmlId id = static_cast<HtmlId>(tree.size()); id-- > 1;) {
    const HtmlNode& node = tree[id];
    if (node.is_text || !view.shown(id) || node.end - id > kMostNodes || node.end - id < 2)
      continue;
    const std::string text = view.line(id);
    if (text.size() > kLongestComposition || text.find('%') == text.npos) continue;
    if (is_composition(text)) return Composer(view).around(id);
  }
  return {};
}

}  // namespace rangebook

// Groups of choices, their entries, and which of those can be chosen.
#include "importers/visible_sizes.h"

#include <algorithm>
#include <array>
#include <optional>

#include "importers/schema_org_words.h"

namespace rangebook {
namespace {

constexpr std::size_t kLongestLabel = 24;
constexpr std::size_t kMostSizes = 80;
constexpr std::size_t kLongestList = 160;
constexpr std::size_t kMostGroups = 100;  // that are looked into on one page
constexpr std::uint32_t kMostNodes = 2500;
constexpr std::uint32_t kMostUnnamed = 80;  // nodes of a group that nothing calls sizes
constexpr std::uint32_t kMostEntryNodes = 16;

constexpr auto kGroupElements = std::to_array<std::string_view>(
    {"ul", "ol", "div", "fieldset", "section", "form", "dl", "p", "tr"});
constexpr auto kEntryElements =
    std::to_array<std::string_view>({"li", "button", "label", "a", "span", "div", "input", "td"});
constexpr auto kWordSizes = std::to_array<std::string_view>(
    {"one size", "onesize", "os", "einheitsgröße", "taille unique", "talla única", "taglia unica"});

template <typename Names>
bool is_one_of(const Names& names, std::string_view name) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

// "XXS", "M", "3XL": an optional count, then letters of alpha sizes.
bool is_alpha_size(std::string_view word) {
  while (!word.empty() && is_ascii_digit(word.front())) word.remove_prefix(1);
  while (word.size() > 1 && word.front() == 'x') word.remove_prefix(1);
  return word == "s" || word == "m" || word == "l" || word == "x";
}

bool is_number_size(std::string_view word) {
  std::size_t digits = 0;
  while (digits < word.size() && is_ascii_digit(word[digits])) ++digits;
  if (digits == 0 || digits > 3) return false;
  const auto rest = word.substr(digits);
  return rest.empty() || rest == ".5" || rest == ",5" || rest == "½" || rest == "cm" ||
         (rest.size() <= 2 && std::all_of(rest.begin(), rest.end(), is_ascii_letter));
}

bool is_system(std::string_view word) {
  constexpr auto kSystems = std::to_array<std::string_view>(
      {"uk",   "us",    "eu",     "eur",    "it",     "fr",   "de",    "au",
       "jp",   "w",     "l",      "petite", "tall",   "long", "short", "regular",
       "plus", "years", "months", "jahre",  "monate", "ans",  "mois",  "cm"});
  return is_one_of(kSystems, word);
}

bool is_size_word(std::string_view word) {
  if (is_alpha_size(word) || is_number_size(word) || is_system(word)) return true;
  // "W30 L32", "T36"
  const bool led =
      word.size() > 1 && (word.front() == 'w' || word.front() == 'l' || word.front() == 't');
  return led && is_number_size(word.substr(1));
}

// The label without what shops write behind it: "M - sold out", "M (2 left)", "M / 29,90".
std::string bare_label(std::string_view text) {
  std::size_t end = text.size();
  for (const std::string_view cut : {" - ", " – ", " (", " / ", ": ", " | ", ", ", "（"}) {
    end = std::min(end, text.find(cut));
  }
  std::string label = clean_text(text.substr(0, end));
  // "40 sold out".
  const auto space = label.find(' ');
  const bool said = space != label.npos && says_sold_out(folded_text(label.substr(space)));
  return said ? label.substr(0, space) : label;
}

// data-stock="0", data-available="no".
bool data_says_gone(const HtmlTree& tree, HtmlId id) {
  const auto all = tree.attributes(id);
  return std::any_of(all.begin(), all.end(), [](const HtmlAttribute& attribute) {
    if (!attribute.name.starts_with("data-")) return false;
    const auto words = name_tokens(attribute.name);
    if (std::none_of(words.begin(), words.end(),
                     [](const auto& word) { return is_word(word, PageWord::stock_data); })) {
      return false;
    }
    const std::string value = folded_text(attribute.value);
    return value == "0" || value == "false" || is_word(value, PageWord::gone_cell) ||
           says_sold_out(value);
  });
}

bool chosen_out(const PageView& view, HtmlId id) {
  const HtmlTree& tree = view.tree();
  return data_says_gone(tree, id) || tree.has(id, "disabled") ||
         tree.attribute(id, "aria-disabled") == "true" || view.struck(id) ||
         view.named(id, PageWord::sold_token) ||
         says_sold_out(folded_text(tree.attribute(id, "title").value_or(""))) ||
         says_sold_out(folded_text(tree.attribute(id, "aria-label").value_or("")));
}

class Group {
 public:
  Group(const PageView& view, HtmlId id) : view_(view), tree_(view.tree()), id_(id) {}

  std::vector<VisibleSize> read() {
    if (tree_.is(id_, "select")) {
      read_options();
    } else {
      read_entries();
    }
    const auto sizes = std::count_if(sizes_.begin(), sizes_.end(), [](const VisibleSize& size) {
      return looks_like_size(size.label);
    });
    if (measures_something()) return {};
    if (sizes_.empty() || sizes * 5 < static_cast<std::ptrdiff_t>(sizes_.size()) * 4) return {};
    return std::move(sizes_);
  }

 private:
  void add(std::string label, bool sold_out) {
    if (label.empty() || label.size() > kLongestLabel || sizes_.size() == kMostSizes) return;
    for (auto& size : sizes_) {
      // Shown twice, such as a radio button and its label.
      if (size.label == label) return void(size.sold_out = size.sold_out || sold_out);
    }
    sizes_.push_back({std::move(label), sold_out});
  }

  /// "28 | 72 cm": a table of measurements.
  bool measures_something() const {
    const auto measures = std::count_if(sizes_.begin(), sizes_.end(), [](const VisibleSize& size) {
      return folded_text(size.label).ends_with("cm");
    });
    return measures > 0 && measures < static_cast<std::ptrdiff_t>(sizes_.size());
  }

  void read_options() {
    for (HtmlId at = id_ + 1; at < tree_[id_].end; ++at) {
      if (!tree_.is(at, "option")) continue;
      const std::string text = clean_text(tree_.text(at));
      const std::string folded = folded_text(text);
      const std::string label = bare_label(text);
      const bool prompt =
          tree_.attribute(at, "value") == "" ||
          (starts_with_phrase(folded, PageWord::choose) && !looks_like_size(label)) ||
          folded.starts_with("-");
      if (prompt) continue;
      add(label, chosen_out(view_, at) || says_sold_out(folded));
    }
    drop_prompt();
  }

  /// The first of several options that alone is no size asks to choose one, in whatever language.
  void drop_prompt() {
    const auto no_size = [](const VisibleSize& size) { return !looks_like_size(size.label); };
    const bool only_first = sizes_.size() > 2 && no_size(sizes_.front()) &&
                            std::none_of(sizes_.begin() + 1, sizes_.end(), no_size);
    if (only_first) sizes_.erase(sizes_.begin());
  }

  // The innermost element that can be clicked, or a list item, with a short text.
  void read_entries() {
    for (HtmlId at = id_ + 1; at < tree_[id_].end;) {
      const HtmlNode& node = tree_[at];
      if (node.is_text || view_.hidden(at)) {
        at = std::max(node.end, at + 1);
        continue;
      }
      const bool entry = is_one_of(kEntryElements, node.name) && is_entry(at);
      if (entry) read_entry(at);
      at = entry ? std::max(node.end, at + 1) : at + 1;
    }
  }

  bool is_entry(HtmlId at) const {
    if (tree_[at].end - at > kMostEntryNodes) return false;
    if (tree_.is(at, "input")) {
      const auto type = tree_.attribute(at, "type").value_or("");
      const bool labelled = tree_.attribute(at, "id").has_value();
      return type == "radio" && !labelled && !is_one_of(kEntryElements, next_name(at));
    }
    return looks_like_size(label_of(at));
  }
  std::string_view next_name(HtmlId at) const {
    const HtmlId next = std::max(tree_[at].end, at + 1);
    return next < tree_.size() ? tree_[next].name : std::string_view{};
  }

  std::string label_of(HtmlId at) const {
    std::string label = bare_label(view_.line(at));
    // "M" and "sold out" in two elements.
    for (HtmlId text = at; !looks_like_size(label) && text < tree_[at].end; ++text) {
      if (!tree_[text].is_text || clean_text(tree_[text].text).empty()) continue;
      label = bare_label(tree_[text].text);
      break;
    }
    if (label.empty() && tree_.is(at, "input")) {
      label = clean_text(tree_.attribute(at, "value").value_or(""));
    }
    return label;
  }

  void read_entry(HtmlId at) {
    bool out = false;
    for (HtmlId inner = at; inner < std::max(tree_[at].end, at + 1); ++inner) {
      const bool text = tree_[inner].is_text;
      out =
          out || (text ? says_sold_out(folded_text(tree_[inner].text)) : chosen_out(view_, inner));
    }
    const HtmlId before = at - 1;  // <input disabled><label>M</label>
    if (tree_.is(at, "label") && tree_.is(before, "input")) out = out || chosen_out(view_, before);
    add(label_of(at), out || names_a_disabled_input(at));
  }

  bool names_a_disabled_input(HtmlId at) const {
    const auto target = tree_.attribute(at, "for");
    for (HtmlId id = id_; target && id < tree_[id_].end; ++id) {
      if (tree_.is(id, "input") && tree_.attribute(id, "id") == target) {
        return chosen_out(view_, id);
      }
    }
    return false;
  }

  const PageView& view_;
  const HtmlTree& tree_;
  HtmlId id_;
  std::vector<VisibleSize> sizes_;
};

// "Size chart" heads no choice.
bool is_guide(const std::string& folded) {
  const auto words = name_tokens(folded);
  return std::any_of(words.begin(), words.end(),
                     [](const auto& word) { return is_word(word, PageWord::guide_token); });
}

// A short text right before the group that names it: "Size:", a label or legend.
bool labelled_as_size(const PageView& view, HtmlId group) {
  const HtmlTree& tree = view.tree();
  for (HtmlId at = group; at > 1 && group - at < 8;) {
    --at;
    const std::string_view text = tree[at].text;
    if (!tree[at].is_text || clean_text(text).empty()) continue;
    const std::string folded = folded_text(text.substr(0, 60));
    const bool asks = starts_with_phrase(folded, PageWord::choose) && folded.size() < 40 &&
                      has_phrase(folded, PageWord::size_label);
    return (asks || starts_with_phrase(folded, PageWord::size_label)) && !is_guide(folded);
  }
  return false;
}

// A legend or a first word inside that names it.
bool begins_with_size(const PageView& view, HtmlId group) {
  const HtmlTree& tree = view.tree();
  for (HtmlId at = group + 1; at < tree[group].end && at - group < 8; ++at) {
    const std::string_view text = tree[at].text;
    if (!tree[at].is_text || clean_text(text).empty()) continue;
    return text.size() <= 2 * kLongestLabel &&
           starts_with_phrase(folded_text(text), PageWord::size_label);
  }
  return false;
}

// Radio buttons inside that are called so (`<input type=radio name=size>`).
bool holds_size_inputs(const PageView& view, HtmlId group) {
  const HtmlTree& tree = view.tree();
  for (HtmlId at = group + 1; at < tree[group].end && at - group < 8; ++at) {
    if (tree.is(at, "input")) return view.named(at, PageWord::size_token);
  }
  return false;
}

bool may_hold_sizes(const PageView& view, HtmlId id) {
  const HtmlTree& tree = view.tree();
  if (tree[id].end - id > kMostNodes || !view.shown(id)) return false;
  if (view.named(id, PageWord::guide_token)) return false;
  if (tree.is(id, "select")) {
    return view.named_near(id, PageWord::size_token, 1) || labelled_as_size(view, id);
  }
  if (!is_one_of(kGroupElements, tree[id].name) || tree[id].end - id < 2) return false;
  return view.named(id, PageWord::size_token) || labelled_as_size(view, id) ||
         begins_with_size(view, id) || holds_size_inputs(view, id);
}

}  // namespace

bool looks_like_size(std::string_view label) {
  std::string folded = folded_text(label);
  if (is_one_of(kWordSizes, folded)) return true;
  if (folded.empty() || folded.size() > kLongestLabel) return false;
  std::replace_if(
      folded.begin(), folded.end(), [](char c) { return c == '/' || c == '-'; }, ' ');
  bool any = false;
  std::string_view rest = folded;
  while (!rest.empty()) {
    const auto end = std::min(rest.find(' '), rest.size());
    const auto word = rest.substr(0, end);
    rest.remove_prefix(std::min(end + 1, rest.size()));
    if (word.empty()) continue;
    if (!is_size_word(word)) return false;
    any = any || is_alpha_size(word) || is_ascii_digit(word.back()) || is_ascii_digit(word.front());
  }
  return any;
}

namespace {

// Sizes that nobody would take for a quantity or the number of a page: at least three, letters or
// even numbers two apart.
bool speak_for_themselves(const std::vector<VisibleSize>& sizes) {
  if (sizes.size() < 3) return false;
  int before = 0;
  for (const auto& size : sizes) {
    const std::string label = folded_text(size.label);
    if (is_alpha_size(label)) continue;
    const bool digits = label.size() <= 2 && !label.empty() &&
                        std::all_of(label.begin(), label.end(), is_ascii_digit);
    if (!digits) return false;
    const int number = std::stoi(label);
    if (number % 2 != 0 || number < 4 || (before != 0 && number != before + 2)) return false;
    before = number;
  }
  return true;
}

// A group that nothing calls sizes.
std::vector<VisibleSize> find_unnamed_sizes(const PageView& view) {
  const HtmlTree& tree = view.tree();
  std::size_t groups = 0;
  for (HtmlId id = view.heading() + 1; id < tree.size() && groups < kMostGroups; ++id) {
    const bool small = tree[id].end - id <= kMostUnnamed && tree[id].end - id > 3;
    if (tree[id].is_text || !small || !view.shown(id)) continue;
    if (!is_one_of(kGroupElements, tree[id].name) || view.named(id, PageWord::guide_token))
      continue;
    ++groups;
    auto sizes = Group(view, id).read();
    if (speak_for_themselves(sizes)) return sizes;
  }
  return {};
}

// "Size 14", "Size: 14": a text of its own, of a thing that exists once.
std::vector<VisibleSize> find_only_size(const PageView& view) {
  const HtmlTree& tree = view.tree();
  for (HtmlId id = view.heading() + 1; id < tree.size(); ++id) {
    const bool plain = tree[id].is_text && tree[id].text.size() <= kLongestLabel && view.shown(id);
    if (!plain || view.inside(id, view.heading())) continue;
    const std::string text = clean_text(tree[id].text);
    const auto end = text.find_first_of(": ");
    if (end == text.npos || !is_word(folded_text(text.substr(0, end)), PageWord::size_label))
      continue;
    std::string label = clean_text(text.substr(end + 1));
    if (looks_like_size(label)) return {{std::move(label), false}};
  }
  return {};
}

/// The sizes of "Sizes: 6, 8, 10"; nothing where one of them is none.
std::vector<VisibleSize> listed_sizes(const std::string& text) {
  const auto colon = text.find(':');
  if (colon == text.npos) return {};
  const std::string head = folded_text(text.substr(0, colon));
  if (!starts_with_phrase(head, PageWord::size_label) || is_guide(head)) return {};
  const bool out = says_sold_out(head);
  std::vector<VisibleSize> sizes;
  for (std::size_t at = colon + 1; at < text.size();) {
    const auto end = std::min(text.find(',', at), text.size());
    std::string label = clean_text(text.substr(at, end - at));
    if (label.ends_with('.')) label.pop_back();
    if (!looks_like_size(label)) return {};
    sizes.push_back({std::move(label), out});
    at = end + 1;
  }
  return sizes;
}

/// The text, behind the head of its row or definition where it stands in one ("Sizes", "6, 8, 10").
std::string with_label(const HtmlTree& tree, HtmlId text) {
  std::string own = clean_text(tree[text].text);
  const HtmlId cell = tree[text].parent;
  if ((!tree.is(cell, "dd") && !tree.is(cell, "td")) || own.find(',') == own.npos) return own;
  HtmlId before = cell - 1;
  while (before > 0 && (!tree[before].is_text || clean_text(tree[before].text).empty())) --before;
  std::string label = clean_text(tree[before].text);
  if (label.size() > kLongestLabel) return own;
  if (!label.ends_with(':')) label += ':';
  return label + " " + own;
}

// Sizes in one text, those that are sold out in another.
std::vector<VisibleSize> find_listed_sizes(const PageView& view) {
  const HtmlTree& tree = view.tree();
  std::vector<VisibleSize> all;
  for (HtmlId id = view.heading() + 1; id < tree.size(); ++id) {
    if (!tree[id].is_text || tree[id].text.size() > kLongestList || !view.shown(id)) continue;
    for (auto& size : listed_sizes(with_label(tree, id))) {
      const bool known = std::any_of(all.begin(), all.end(),
                                     [&](const auto& one) { return one.label == size.label; });
      if (!known && all.size() < kMostSizes) all.push_back(std::move(size));
    }
  }
  return all.size() > 1 ? all : std::vector<VisibleSize>{};
}

// One row of a table: the size in its first cell, what there is of it in another.
std::optional<VisibleSize> size_of_row(const PageView& view, HtmlId row) {
  const HtmlTree& tree = view.tree();
  std::optional<VisibleSize> size;
  bool said = false;
  for (HtmlId id = row + 1; id < tree[row].end; ++id) {
    if (!tree.is(id, "td") && !tree.is(id, "th")) continue;
    const std::string text = view.line(id);
    if (!size) {
      if (!looks_like_size(text)) return std::nullopt;
      size = VisibleSize{text, false};
      continue;
    }
    const std::string folded = folded_text(text);
    const bool out = says_sold_out(folded) || is_word(folded, PageWord::gone_cell);
    said = said || out || is_word(folded, PageWord::there_cell) ||
           has_phrase(folded, PageWord::in_stock) || has_phrase(folded, PageWord::nearly_out);
    size->sold_out = size->sold_out || out;
  }
  return said ? size : std::nullopt;
}

// A table of sizes and their stock.
std::vector<VisibleSize> find_tabled_sizes(const PageView& view) {
  const HtmlTree& tree = view.tree();
  std::vector<VisibleSize> sizes;
  for (HtmlId id = view.heading() + 1; id < tree.size(); ++id) {
    if (!tree.is(id, "tr") || !view.shown(id) || tree[id].end - id > kMostUnnamed) continue;
    auto size = size_of_row(view, id);
    if (size && sizes.size() < kMostSizes) sizes.push_back(*std::move(size));
  }
  return sizes.size() > 1 ? sizes : std::vector<VisibleSize>{};
}

std::vector<VisibleSize> find_named_sizes(const PageView& view) {
  std::vector<VisibleSize> single;
  std::size_t groups = 0;
  for (HtmlId id = 1; id < view.tree().size(); ++id) {
    if (view.tree()[id].is_text || !may_hold_sizes(view, id)) continue;
    if (++groups > kMostGroups) break;
    auto sizes = Group(view, id).read();
    if (sizes.size() > 1) return sizes;
    if (single.empty()) single = std::move(sizes);
  }
  return single;
}

}  // namespace

std::vector<VisibleSize> find_visible_sizes(const PageView& view) {
  auto sizes = find_tabled_sizes(view);
  if (sizes.empty()) sizes = find_named_sizes(view);
  if (sizes.empty()) sizes = find_listed_sizes(view);
  if (sizes.empty()) sizes = find_unnamed_sizes(view);
  return sizes.empty() ? find_only_size(view) : sizes;
}

}  // namespace rangebook

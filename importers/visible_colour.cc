// From each label to the text or the choices that follow it.
#include "importers/visible_colour.h"

#include <algorithm>
#include <array>
#include <vector>

#include "importers/page_money.h"
#include "importers/schema_org_words.h"
#include "importers/visible_sizes.h"

namespace rangebook {
namespace {

constexpr std::size_t kLongestColour = 40;
constexpr std::size_t kLongestLabel = 24;
constexpr std::size_t kMostLabels = 20;
constexpr std::size_t kMostChoices = 30;
constexpr HtmlId kNear = 16;               // nodes between a label and what it labels
constexpr std::uint32_t kMostNodes = 400;  // of the element that holds label and choices
constexpr std::string_view kWideColon = "\uff1a";
constexpr int kLevels = 3;  // from the label up to that element

bool is_sign(std::string_view text) {
  return std::all_of(text.begin(), text.end(), [](char c) {
    return !is_ascii_letter(c) && static_cast<unsigned char>(c) < 0x80;
  });
}

bool is_colour_text(const std::string& text) {
  if (text.empty() || text.size() > kLongestColour || is_sign(text)) return false;
  const std::string folded = folded_text(text);
  const bool label = is_word(folded, PageWord::colour_label) ||
                     starts_with_phrase(folded, PageWord::choose) ||
                     starts_with_phrase(folded, PageWord::size_label);
  return !label && folded.back() != ':' && find_money(text).empty() && !looks_like_size(text);
}

/// One thing to choose.
struct Choice {
  std::string name;
  bool chosen = false;
};

class ColourLabel {
 public:
  ColourLabel(const PageView& view, HtmlId text) : view_(view), tree_(view.tree()), text_(text) {}

  // The colour, or nothing where the text is no label of one.
  std::string read() const {
    const std::string own = clean_text(tree_[text_].text);
    const auto narrow = own.find(':');
    const auto wide = own.find(kWideColon);
    const auto colon = std::min(narrow, wide);
    const std::string label = folded_text(own.substr(0, colon));
    if (label.size() > kLongestLabel || !ends_with_phrase(label, PageWord::colour_label)) return {};
    std::string behind =
        colon == own.npos ? ""
                          : clean_text(own.substr(colon + (wide < narrow ? kWideColon.size() : 1)));
    if (is_colour_text(behind)) return behind;
    const HtmlId next = next_text();
    std::string following = next == 0 ? "" : clean_text(tree_[next].text);
    if (next != 0 && !is_choice(next) && is_colour_text(following)) return following;
    return from_choices();
  }

 private:
  // The next text with letters, near enough to belong to the label.
  HtmlId next_text() const {
    const HtmlId last = std::min<HtmlId>(static_cast<HtmlId>(tree_.size()), text_ + kNear);
    for (HtmlId at = text_ + 1; at < last; ++at) {
      if (tree_[at].is_text && view_.shown(at) && !is_sign(clean_text(tree_[at].text))) return at;
    }
    return 0;
  }

  bool is_choice_element(HtmlId at) const {
    const auto role = tree_.attribute(at, "role").value_or("");
    return tree_.is(at, "option") || tree_.is(at, "button") || role == "radio" ||
           role == "option" || role == "button" || tree_.is(at, "li") ||
           (tree_.is(at, "label") && holds_input(at)) ||
           (tree_.is(at, "a") && (tree_.has(at, "title") || tree_.has(at, "aria-label")));
  }
  bool holds_input(HtmlId label) const {
    if (tree_.has(label, "for")) return true;
    for (HtmlId at = label + 1; at < tree_[label].end; ++at) {
      if (tree_.is(at, "input")) return true;
    }
    return false;
  }
  bool is_choice(HtmlId text) const {
    HtmlId at = tree_[text].parent;
    for (int level = 0; level < kLevels && at != 0; ++level, at = tree_[at].parent) {
      if (view_.inside(text_, at)) return false;  // it holds the label too
      if (is_choice_element(at)) return true;
    }
    return false;
  }

  std::string from_choices() const {
    HtmlId around = tree_[text_].parent;
    for (int level = 0; level < kLevels && around != 0; ++level, around = tree_[around].parent) {
      if (tree_[around].end - around > kMostNodes) return {};
      const auto choices = choices_in(around);
      if (choices.size() > 1) return joined(choices);
    }
    return {};
  }

  // What can be chosen below the label, up to the label of something else.
  std::vector<Choice> choices_in(HtmlId around) const {
    std::vector<Choice> out;
    for (HtmlId at = text_ + 1; at < tree_[around].end && out.size() < kMostChoices;) {
      if (tree_[at].is_text && is_other_label(at)) break;
      if (tree_[at].is_text || view_.hidden(at) || !is_choice_element(at)) {
        ++at;
        continue;
      }
      Choice choice{.name = name_of(at), .chosen = is_chosen(at)};
      const bool known = std::any_of(
          out.begin(), out.end(), [&](const Choice& other) { return other.name == choice.name; });
      if (is_colour_text(choice.name) && !known) out.push_back(std::move(choice));
      at = std::max(tree_[at].end, at + 1);
    }
    return out;
  }
  bool is_other_label(HtmlId text) const {
    return starts_with_phrase(folded_text(tree_[text].text), PageWord::size_label) ||
           is_word(folded_text(tree_[text].text), PageWord::buy);
  }

  std::string name_of(HtmlId choice) const {
    std::string text = view_.line(choice);
    for (const std::string_view attribute : {"title", "aria-label", "data-colour", "data-color"}) {
      if (text.empty()) text = clean_text(tree_.attribute(choice, attribute).value_or(""));
    }
    for (HtmlId at = choice + 1; text.empty() && at < tree_[choice].end; ++at) {
      const std::string_view attribute = tree_.is(at, "img") ? "alt" : "value";
      text = clean_text(tree_.attribute(at, attribute).value_or(""));
    }
    return text;
  }

  // The input that a label names, which stands near it.
  HtmlId input_of(HtmlId label) const {
    const auto target = tree_.attribute(label, "for");
    const HtmlId last = std::min<HtmlId>(static_cast<HtmlId>(tree_.size()), label + kNear);
    for (HtmlId at = text_; target && at < last; ++at) {
      if (tree_.is(at, "input") && tree_.attribute(at, "id") == target) return at;
    }
    return 0;
  }

  bool is_chosen(HtmlId choice) const {
    const HtmlId input = input_of(choice);
    if (input != 0 && tree_.has(input, "checked")) return true;
    for (HtmlId at = choice; at < std::max(tree_[choice].end, choice + 1); ++at) {
      if (tree_[at].is_text) continue;
      if (tree_.has(at, "selected") || tree_.has(at, "checked")) return true;
      for (const std::string_view state : {"aria-checked", "aria-selected", "aria-pressed"}) {
        if (tree_.attribute(at, state) == "true") return true;
      }
    }
    return false;
  }

  static std::string joined(const std::vector<Choice>& choices) {
    std::string all;
    for (const auto& choice : choices) {
      if (choice.chosen) return choice.name;
      all += (all.empty() ? "" : "|") + choice.name;
    }
    return all;
  }

  const PageView& view_;
  const HtmlTree& tree_;
  HtmlId text_;
};

}  // namespace

std::string visible_colour(const PageView& view) {
  const HtmlTree& tree = view.tree();
  std::size_t labels = 0;
  for (HtmlId id = 1; id < tree.size() && labels < kMostLabels; ++id) {
    if (!tree[id].is_text || !view.shown(id) || tree[id].text.size() > 2 * kLongestColour) continue;
    if (!has_phrase(folded_text(tree[id].text), PageWord::colour_label)) continue;
    ++labels;
    std::string colour = ColourLabel(view, id).read();
    if (!colour.empty()) return colour;
  }
  return {};
}

}  // namespace rangebook

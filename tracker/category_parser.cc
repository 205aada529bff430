// Choosing the head noun among the category words of a text.
#include "tracker/category_parser.h"

#include "tracker/category_words.h"
#include "tracker/text_fold.h"

namespace rangebook {
namespace {

using Found = std::optional<std::size_t>;

const CategoryIndex& index() { return CategoryIndex::get(); }

/// The lowest category that both stand below; `a` when there is none.
std::size_t common_category(std::size_t a, std::size_t b) {
  for (auto up = a;; up = index().categories()[up].parent) {
    if (index().within(b, up)) return up;
    if (index().categories()[up].parent == up) return a;
  }
}

/// Whether `word`, met later, is the head rather than `head`.
bool takes_over(const CategoryWord& word, const CategoryWord& head) {
  if (word.strength != head.strength) return word.strength > head.strength;
  if (word.strength == CategoryWord::Strength::decides) return false;
  return !(head.head_first && word.head_first);
}

bool is_joint(std::string_view word) { return word == "&" || word == "," || word == "with"; }

/// The head noun of the words from `at` up to a joint, which `at` is left at.
std::optional<CategoryWord> head_of(const FoldedWords& words, std::size_t& at) {
  std::optional<CategoryWord> head;
  while (at < words.size()) {
    std::size_t length = 1;
    const auto word = index().match(words, at, length);
    if (!word && is_joint(words.word(at))) break;
    at += length;
    if (!word || word->category == index().unsorted()) continue;
    if (!head || takes_over(*word, *head)) head = word;
  }
  return head;
}

/// In a category "Jackets, coats" lists; in a name "Dress, belt included" describes.
enum class Comma { lists, describes };

Found category_of(const FoldedWords& words, Comma comma) {
  Found result;
  for (std::size_t at = 0; at < words.size(); ++at) {
    const auto head = head_of(words, at);
    if (head) result = result ? common_category(*result, head->category) : head->category;
    if (!result || at >= words.size()) continue;
    const auto joint = words.word(at);
    if (joint == "with" || (joint == "," && comma == Comma::describes)) break;
  }
  return result;
}

/// A step of a breadcrumb such as `Shirt` below `Dresses` is a description.
bool is_lone_singular(std::string_view step, const FoldedWords& words) {
  return words.size() == 1 && !step.ends_with('s') && words.word(0) == fold_text(step);
}

constexpr std::size_t kMaxSteps = 12;

/// Where the last step of a breadcrumb begins, behind its sign; 0 when there is no sign left.
std::size_t last_step(std::string_view text, std::size_t& sign_length) {
  const auto arrow = text.rfind("\xE2\x80\xBA");  // single angle quotation mark
  const auto quotes = text.rfind("\xC2\xBB");     // double angle quotation mark
  const auto ascii = text.find_last_of(">/|\\");
  std::size_t begin = 0;
  sign_length = 0;
  const auto take = [&](std::size_t at, std::size_t length) {
    if (at == std::string_view::npos || at + length <= begin) return;
    begin = at + length;
    sign_length = length;
  };
  take(arrow, 3);
  take(quotes, 2);
  take(ascii, 1);
  return begin;
}

/// A description that is a kind of the category it describes is the category ("Jackets > Coat").
Found finer(const Found& described, std::size_t found) {
  return described && index().within(*described, found) ? *described : found;
}

Found breadcrumb_category(std::string_view text) {
  Found described;
  for (std::size_t step = 0; step < kMaxSteps && !text.empty(); ++step) {
    std::size_t sign = 0;
    const auto begin = last_step(text, sign);
    const auto last = trim_text(text.substr(begin));
    const FoldedWords words(last);
    const auto found = category_of(words, Comma::lists);
    if (found) {
      if (!is_lone_singular(last, words)) return finer(described, *found);
      if (!described) described = found;
    }
    if (sign == 0) break;
    text = text.substr(0, begin - sign);
  }
  return described;
}

}  // namespace

std::string_view find_category(std::string_view category, std::string_view name) {
  auto found = index().find(trim_text(category));  // a table may use our own slugs
  if (!found) found = breadcrumb_category(category.substr(0, kMaxCategoryTextBytes));
  if (!found) found = category_of(FoldedWords(name), Comma::describes);
  return found ? index().categories()[*found].slug : kUnsorted;
}

bool is_category(std::string_view slug) {
  return slug != kUnsorted && index().find(slug).has_value();
}

std::string_view parent_category(std::string_view slug) {
  const auto found = index().find(slug);
  if (!found || index().categories()[*found].parent == *found) return {};
  return index().categories()[index().categories()[*found].parent].slug;
}

bool category_within(std::string_view slug, std::string_view ancestor) {
  if (slug == ancestor) return true;
  const auto below = index().find(slug);
  const auto above = index().find(ancestor);
  return below && above && index().within(*below, *above);
}

std::vector<std::string_view> all_categories() {
  std::vector<std::string_view> slugs;
  for (const auto& category : index().categories()) {
    if (category.slug != kUnsorted) slugs.push_back(category.slug);
  }
  return slugs;
}

}  // namespace rangebook

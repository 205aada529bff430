// Building the index of category words, and matching phrases against it.
#include "tracker/category_words.h"

#include <algorithm>
#include <array>

#include "schema/embedded.h"
#include "schema/error.h"
#include "tracker/category_parser.h"
#include "tracker/text_fold.h"

namespace rangebook {
namespace {

constexpr std::array<std::string_view, 10> kPluralOnly{"shorts", "flats",  "heels", "courts",
                                                       "tights", "briefs", "jeans", "belts",
                                                       "cargos", "glasses"};
constexpr std::array<std::string_view, 8> kAnd{"&", "+", "and", "und", "et", "y", "e", "en"};
constexpr std::array<std::string_view, 22> kBreaks{
    "with", "in",   "for", "from", "by",    "without", "made",   "mit", "aus",  "ohne", "fur",
    "avec", "sans", "con", "sin",  "senza", "met",     "zonder", "van", "pour", "para", "per"};

bool is_one_of(std::string_view word, const auto& list) {
  return std::find(list.begin(), list.end(), word) != list.end();
}

/// A plural and its singular give the same word. Only has to treat both sides alike; words that
/// mean a garment in the plural only ("shorts") keep their s.
std::string_view without_plural(std::string_view word) {
  if (word.size() < 4 || !word.ends_with('s') || word.ends_with("ss")) return word;
  if (is_one_of(word, kPluralOnly)) return word;
  const bool es = word.ends_with("sses") || word.ends_with("shes") || word.ends_with("ches") ||
                  word.ends_with("xes");
  word.remove_suffix(es ? 2 : 1);
  return word;
}

bool is_word_byte(char c) {
  return is_ascii_letter(c) || is_ascii_digit(c) || static_cast<unsigned char>(c) >= 0x80;
}

std::string_view canonical_word(std::string_view word) {
  if (is_one_of(word, kAnd)) return "&";
  if (is_one_of(word, kBreaks)) return "with";
  return without_plural(word);
}

/// What the sign at `i` stands for; empty for signs that only part words.
std::string_view canonical_sign(std::string_view text, std::size_t i) {
  const char c = text[i];
  if (c == '&' || c == '+') return "&";
  if (c == ',' || c == ';') return ",";
  const bool dash =
      c == '-' && i > 0 && i + 1 < text.size() && text[i - 1] == ' ' && text[i + 1] == ' ';
  return dash || c == '(' || c == ':' ? "with" : "";
}

constexpr std::size_t kFirstWordColumn = 2;
constexpr std::size_t kLeastCompoundFront = 3;
constexpr std::size_t kLeastCompoundEnd = 3;

CategoryWord::Strength strength_of(std::string_view word) {
  if (word.starts_with('!')) return CategoryWord::Strength::decides;
  return word.starts_with('?') ? CategoryWord::Strength::weak : CategoryWord::Strength::noun;
}

/// Columns of the table: en, de, fr, es, it, nl.
bool is_head_first(std::size_t column) { return column >= 4 && column <= 6; }

}  // namespace

FoldedWords::FoldedWords(std::string_view text) {
  const auto folded = fold_text(text.substr(0, kMaxCategoryTextBytes));
  text_.reserve(folded.size() + 8);
  for (std::size_t i = 0; i < folded.size();) {
    auto end = i;
    while (end < folded.size() && is_word_byte(folded[end])) ++end;
    const bool is_word = end > i;
    const auto word = is_word ? canonical_word(std::string_view(folded).substr(i, end - i))
                              : canonical_sign(folded, i);
    i = is_word ? end : i + 1;
    if (word.empty()) continue;
    if (!text_.empty()) text_ += ' ';
    text_ += word;
    ends_.push_back(text_.size());
  }
}

std::string_view FoldedWords::phrase(std::size_t first, std::size_t count) const {
  const auto begin = first == 0 ? 0 : ends_[first - 1] + 1;
  return std::string_view(text_).substr(begin, ends_[first + count - 1] - begin);
}

const CategoryIndex& CategoryIndex::get() {
  static const CategoryIndex index;
  return index;
}

CategoryIndex::CategoryIndex() {
  for (const auto& row : table_rows("tables/categories.tsv")) {
    const auto own = categories_.size();
    if (row.at(0) == kUnsorted) unsorted_ = own;
    categories_.push_back({row.at(0), own});
    if (row.size() > 1 && !row[1].empty()) {
      const auto parent = find(row[1]);
      if (!parent) throw Error("category " + std::string(row[0]) + " stands above its parent");
      categories_.back().parent = *parent;
    }
    for (std::size_t i = kFirstWordColumn; i < row.size(); ++i) {
      add_words(row[i], own, is_head_first(i));
    }
  }
}

void CategoryIndex::add_words(std::string_view cell, std::size_t category, bool head_first) {
  while (!cell.empty()) {
    const auto end = std::min(cell.find('|'), cell.size());
    auto word = cell.substr(0, end);
    cell.remove_prefix(std::min(end + 1, cell.size()));
    const bool suffix = word.starts_with('-');
    const CategoryWord meaning{category, strength_of(word), head_first};
    if (suffix || meaning.strength != CategoryWord::Strength::noun) word.remove_prefix(1);
    const FoldedWords words(word);
    if (words.size() == 0) continue;
    const std::string phrase(words.phrase(0, words.size()));
    words_.emplace(phrase, meaning);
    if (suffix) suffixes_.emplace(phrase, meaning);
    auto& longest = longest_[std::string(words.word(0))];
    longest = std::max(longest, words.size());
  }
}

std::optional<std::size_t> CategoryIndex::find(std::string_view slug) const {
  for (std::size_t i = 0; i < categories_.size(); ++i) {
    if (categories_[i].slug == slug) return i;
  }
  return std::nullopt;
}

bool CategoryIndex::within(std::size_t category, std::size_t ancestor) const {
  while (category != ancestor && categories_[category].parent != category) {
    category = categories_[category].parent;
  }
  return category == ancestor;
}

std::optional<CategoryWord> CategoryIndex::compound(std::string_view word) const {
  for (auto at = kLeastCompoundFront; at + kLeastCompoundEnd <= word.size(); ++at) {
    if (const auto found = suffixes_.find(word.substr(at)); found != suffixes_.end()) {
      return found->second;
    }
  }
  return std::nullopt;
}

std::optional<CategoryWord> CategoryIndex::match(const FoldedWords& words, std::size_t at,
                                                 std::size_t& length) const {
  length = 1;
  const auto longest = longest_.find(words.word(at));
  if (longest == longest_.end()) return compound(words.word(at));
  for (auto count = std::min(longest->second, words.size() - at); count > 0; --count) {
    if (const auto found = words_.find(words.phrase(at, count)); found != words_.end()) {
      length = count;
      return found->second;
    }
  }
  return compound(words.word(at));
}

}  // namespace rangebook

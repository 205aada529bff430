// Counting, and rates with a background.
#include "tracker/likeness/word_rates.h"

#include <algorithm>
#include <cmath>

namespace rangebook {
namespace {

/// Lines of the trade at large that stand behind the range at hand; judged from invented ranges.
constexpr double kBackgroundLines = 120;
/// A word no other line has counts as met this often.
constexpr double kSeenNowhere = 0.3;
/// Smaller for texts, where what every line says (how to wash it) has to weigh nothing.
constexpr double kTextBackground = 10;
/// What a word's follower usually is has to be seen in a few lines before it counts.
constexpr double kFollowerBackground = 10;
/// How many lines' worth the whole range counts when a category is asked.
constexpr double kCategoryBackground = 25;

}  // namespace

WordRates::WordRates(const std::vector<const std::vector<LineProfile>*>& sides) {
  for (const auto* side : sides) {
    for (const LineProfile& line : *side) count(line);
  }
}

void WordRates::count(const LineProfile& line) {
  ++lines_;
  const WordKey category = word_key(line.category);
  ++categories_[category];
  for (const NameWord& word : line.name) {
    ++name_words_[word.key];
    ++in_categories_[joined_key(word.key, category)];
  }
  if (line.fabric != nullptr) {
    ++fabrics_[line.fabric->key];
    ++in_categories_[joined_key(line.fabric->key, category)];
  }
  if (!line.description.empty()) ++wholes_[line.description_key];
  if (!line.picture.empty()) ++wholes_[line.picture_key];
  for (const WordKey piece : line.codes) ++pieces_[piece];
  if (!line.description.empty()) ++text_words_[0];
  for (const TextWord& word : line.description) {
    ++text_words_[word.key];
    ++followers_[joined_key(word.before, word.key)];
  }
  for (const WordKey word : line.picture) ++text_words_[word];
}

double WordRates::get(const Counts& counts, WordKey key) {
  const auto found = counts.find(key);
  return found == counts.end() ? 0 : found->second;
}

// Of the two lines that are compared one is not a chance meeting.
double WordRates::others(const Counts& counts, WordKey key) {
  return std::max(get(counts, key) - 1, kSeenNowhere);
}

double WordRates::in_category(WordKey value, std::string_view category, double background) const {
  const WordKey key = word_key(category);
  return (others(in_categories_, joined_key(value, key)) + kCategoryBackground * background) /
         (get(categories_, key) + kCategoryBackground);
}

double WordRates::name_word(WordKey word, std::string_view category) const {
  const double overall = others(name_words_, word) / (lines_ + kBackgroundLines);
  return in_category(word, category, overall);
}

// A composition is drawn from few: one in twenty lines of the background has it.
double WordRates::fabric(const LineProfile& line) const {
  const double overall =
      (others(fabrics_, line.fabric->key) + kBackgroundLines / 20) / (lines_ + kBackgroundLines);
  return in_category(line.fabric->key, line.category, overall);
}

double WordRates::whole(WordKey text) const {
  return others(wholes_, text) / (lines_ + kBackgroundLines);
}

double WordRates::code_piece(WordKey piece) const {
  return others(pieces_, piece) / (lines_ + kBackgroundLines);
}

double WordRates::text_word(WordKey word) const {
  return (get(text_words_, word) + kSeenNowhere) / (lines_ + kTextBackground);
}

double WordRates::picture_weight(WordKey word) const { return -std::log(text_word(word)); }

// The two lines that are compared are no evidence of what other lines say.
double WordRates::description_weight(const TextWord& word) const {
  const double overall = text_word(word.key);
  const double together = std::max(get(followers_, joined_key(word.before, word.key)) - 2, 0.0);
  const double before = std::max(get(text_words_, word.before) - 2, together);
  const double after = (together + kFollowerBackground * overall) / (before + kFollowerBackground);
  return -std::log(std::max(overall, after));
}

}  // namespace rangebook

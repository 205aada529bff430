// How common words and values are in the range at hand. Sharing what is rare says more than sharing
// what every second line has.
#pragma once

#include <string_view>
#include <unordered_map>
#include <vector>

#include "tracker/likeness/line_profile.h"

namespace rangebook {

/// Rates over all profiles of both captures. A background of lines that are not there is added, so
/// that in a range of three lines nothing counts as common just because two of them have it.
class WordRates {
 public:
  /// Profiles must outlive the rates.
  explicit WordRates(const std::vector<const std::vector<LineProfile>*>& sides);

  /// Share of the lines of `category` that have the word in their name.
  double name_word(WordKey word, std::string_view category) const;
  /// Share of the lines of the category with exactly this composition.
  double fabric(const LineProfile& line) const;
  /// Share of all lines with exactly this description or picture name.
  double description(const LineProfile& line) const { return whole(line.description_key); }
  double picture(const LineProfile& line) const { return whole(line.picture_key); }
  double code_piece(WordKey piece) const;
  /// Weight of a word within descriptions: the log of its rarity after the word before it. What
  /// a sentence of the house says in ten words is one thing said, not ten.
  double description_weight(const TextWord& word) const;
  double picture_weight(WordKey word) const;

 private:
  using Counts = std::unordered_map<WordKey, double>;

  void count(const LineProfile& line);
  double whole(WordKey text) const;
  double text_word(WordKey word) const;
  double in_category(WordKey value, std::string_view category, double background) const;
  static double get(const Counts& counts, WordKey key);
  static double others(const Counts& counts, WordKey key);

  double lines_ = 0;
  Counts name_words_;
  Counts in_categories_;  ///< by value and category
  Counts categories_;     ///< lines of each
  Counts fabrics_;
  Counts wholes_;
  Counts pieces_;
  Counts text_words_;  ///< of descriptions and picture names
  Counts followers_;   ///< of a word of a description by the one after it
};

}  // namespace rangebook

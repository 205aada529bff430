// The words of the category table, indexed for look-up, and texts cut into folded words.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace rangebook {

struct Category {
  std::string_view slug;
  std::size_t parent = 0;  ///< index; its own for a top category
};

/// What a word or phrase of the table means.
struct CategoryWord {
  enum class Strength : std::uint8_t {
    weak,  ///< counts only when nothing else tells
    noun,
    decides,  ///< wherever it stands
  };
  std::size_t category = 0;
  Strength strength = Strength::noun;
  bool head_first = false;  ///< of a language whose head noun stands first
};

/// Words of a text, folded, without plural s, parted by one space. `&` stands for every "and", `,`
/// for itself and `with` for every word or sign behind which the text only describes.
class FoldedWords {
 public:
  explicit FoldedWords(std::string_view text);
  std::size_t size() const { return ends_.size(); }
  std::string_view word(std::size_t i) const { return phrase(i, 1); }
  /// `count` words from `first` on.
  std::string_view phrase(std::size_t first, std::size_t count) const;

 private:
  std::string text_;
  std::vector<std::size_t> ends_;
};

/// The table as one index; built once.
class CategoryIndex {
 public:
  static const CategoryIndex& get();
  const std::vector<Category>& categories() const { return categories_; }
  std::size_t unsorted() const { return unsorted_; }
  std::optional<std::size_t> find(std::string_view slug) const;
  /// True when `category` is `ancestor` or below.
  bool within(std::size_t category, std::size_t ancestor) const;
  /// The longest phrase of the table that starts at word `at`, and its length in words; a single
  /// word also by the end of a compound.
  std::optional<CategoryWord> match(const FoldedWords& words, std::size_t at,
                                    std::size_t& length) const;

 private:
  CategoryIndex();
  void add_words(std::string_view cell, std::size_t category, bool head_first);
  std::optional<CategoryWord> compound(std::string_view word) const;

  struct Hash {
    using is_transparent = void;
    std::size_t operator()(std::string_view text) const {
      return std::hash<std::string_view>{}(text);
    }
  };
  using Map = std::unordered_map<std::string, CategoryWord, Hash, std::equal_to<>>;

  std::vector<Category> categories_;
  std::size_t unsorted_ = 0;
  Map words_;
  Map suffixes_;
  std::unordered_map<std::string, std::size_t, Hash, std::equal_to<>> longest_;  ///< by first word
};

}  // namespace rangebook

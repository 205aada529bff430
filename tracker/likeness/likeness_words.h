// Texts cut into words for comparing by likeness. Words are compared by a hash of 64 bits; at the
// sizes of a shop's range a collision is less likely than one in a million and costs one weight.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace rangebook {

using WordKey = std::uint64_t;

/// Texts longer than this are compared by their beginning.
inline constexpr std::size_t kMaxLikenessBytes = 4096;
/// Further words of one text are left out.
inline constexpr std::size_t kMaxLikenessWords = 400;

WordKey word_key(std::string_view text);
/// The key of two things that stand together; the order counts.
WordKey joined_key(WordKey first, WordKey second);

/// Runs of letters and digits in the order of the text, folded by fold_text; a plural s is taken
/// off words of four letters and more.
std::vector<std::string> likeness_words(std::string_view text);

/// What of a code may survive a change of codes: runs of three digits and more without leading
/// zeros, and pieces between separators that hold a digit and are longer than their digits.
/// `W26-TM0512/A` gives `512`, `w26`, `tm0512`.
std::vector<std::string> code_pieces(std::string_view code);

/// The name of the file an address ends with, without query, folder and ending.
std::string_view file_stem(std::string_view url);

/// True for a word and its mistyped form: two neighbouring letters exchanged (from four letters
/// on), or one letter too many or too few (from six on). Another letter in its place is no slip:
/// short and shirt are two words. Words with digits are not read: every number is another number.
bool is_slip(std::string_view a, std::string_view b);

/// True when `brief` is `word` without vowels, and perhaps without further letters: `blk`, `shrt`.
bool is_abbreviation(std::string_view brief, std::string_view word);

/// 0 .. 1: how much two words share of their trigrams, the ends of a word counting as letters
/// (Dice coefficient).
double trigram_likeness(std::string_view a, std::string_view b);

}  // namespace rangebook

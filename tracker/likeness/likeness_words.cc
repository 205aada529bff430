// Words, pieces of codes, and trigrams.
#include "tracker/likeness/likeness_words.h"

#include <xxhash.h>

#include <algorithm>

#include "tracker/text_fold.h"

namespace rangebook {
namespace {

bool is_word_byte(char c) {
  return is_ascii_letter(c) || is_ascii_digit(c) || static_cast<unsigned char>(c) >= 0x80;
}

/// The runs of `text` whose bytes all satisfy `inside`.
template <typename Inside>
std::vector<std::string_view> runs_of(std::string_view text, Inside inside) {
  std::vector<std::string_view> runs;
  for (std::size_t at = 0; at < text.size() && runs.size() < kMaxLikenessWords;) {
    std::size_t end = at;
    while (end < text.size() && inside(text[end])) ++end;
    if (end > at) runs.push_back(text.substr(at, end - at));
    at = end + 1;
  }
  return runs;
}

std::string_view singular(std::string_view word) {
  const bool plural = word.size() >= 4 && word.ends_with('s') && !word.ends_with("ss");
  return plural ? word.substr(0, word.size() - 1) : word;
}

void add_once(std::vector<std::string>& pieces, std::string_view piece) {
  if (std::find(pieces.begin(), pieces.end(), piece) == pieces.end()) pieces.emplace_back(piece);
}

std::string_view without_zeros(std::string_view digits) {
  return digits.substr(std::min(digits.find_first_not_of('0'), digits.size()));
}

bool has_digit(std::string_view word) {
  return std::any_of(word.begin(), word.end(), is_ascii_digit);
}

std::vector<std::uint32_t> trigrams(std::string_view word) {
  const std::string padded = ' ' + std::string(word) + ' ';
  std::vector<std::uint32_t> grams;
  for (std::size_t at = 0; at + 3 <= padded.size(); ++at) {
    std::uint32_t gram = 0;
    for (std::size_t i = at; i < at + 3; ++i) {
      gram = (gram << 8U) | static_cast<unsigned char>(padded[i]);
    }
    grams.push_back(gram);
  }
  std::sort(grams.begin(), grams.end());
  return grams;
}

}  // namespace

WordKey word_key(std::string_view text) { return XXH3_64bits(text.data(), text.size()); }

WordKey joined_key(WordKey first, WordKey second) {
  const WordKey both[] = {first, second};
  return XXH3_64bits(both, sizeof both);
}

std::vector<std::string> likeness_words(std::string_view text) {
  const std::string folded = fold_text(text.substr(0, kMaxLikenessBytes));
  std::vector<std::string> words;
  for (const std::string_view run : runs_of(folded, is_word_byte))
    words.emplace_back(singular(run));
  return words;
}

std::vector<std::string> code_pieces(std::string_view code) {
  const std::string folded = fold_text(code.substr(0, kMaxLikenessBytes));
  std::vector<std::string> pieces;
  for (const std::string_view digits : runs_of(folded, is_ascii_digit)) {
    if (without_zeros(digits).size() >= 3) add_once(pieces, without_zeros(digits));
  }
  for (const std::string_view run : runs_of(folded, is_word_byte)) {
    const auto digits = std::count_if(run.begin(), run.end(), is_ascii_digit);
    if (digits > 0 && static_cast<std::size_t>(digits) < run.size()) add_once(pieces, run);
  }
  return pieces;
}

std::string_view file_stem(std::string_view url) {
  url = trim_text(url);
  url = url.substr(0, std::min(url.find_first_of("?#"), url.size()));
  while (url.ends_with('/')) url.remove_suffix(1);
  const std::size_t slash = url.rfind('/');
  if (slash != std::string_view::npos) url.remove_prefix(slash + 1);
  const std::size_t dot = url.rfind('.');
  return dot == std::string_view::npos || dot == 0 ? url : url.substr(0, dot);
}

bool is_slip(std::string_view a, std::string_view b) {
  if (a.size() > b.size()) std::swap(a, b);
  if (a.size() < 4 || b.size() - a.size() > 1 || has_digit(a) || has_digit(b)) return false;
  const auto [at_a, at_b] = std::mismatch(a.begin(), a.end(), b.begin());
  const std::string_view rest_a = a.substr(static_cast<std::size_t>(at_a - a.begin()));
  const std::string_view rest_b = b.substr(static_cast<std::size_t>(at_b - b.begin()));
  if (a.size() < b.size()) return a.size() >= 5 && rest_a == rest_b.substr(1);
  return rest_a.size() >= 2 && rest_a[0] == rest_b[1] && rest_a[1] == rest_b[0] &&
         rest_a.substr(2) == rest_b.substr(2);
}

bool is_abbreviation(std::string_view brief, std::string_view word) {
  constexpr std::string_view kVowels = "aeiou";
  if (brief.size() < 2 || word.size() < 4 || word.size() <= brief.size() || brief[0] != word[0] ||
      has_digit(brief) || brief.find_first_of(kVowels, 1) != std::string_view::npos) {
    return false;
  }
  std::size_t at = 0;
  for (const char c : word) at += at < brief.size() && brief[at] == c ? 1 : 0;
  return at == brief.size();
}

double trigram_likeness(std::string_view a, std::string_view b) {
  const auto of_a = trigrams(a);
  const auto of_b = trigrams(b);
  if (of_a.empty() || of_b.empty()) return 0;
  std::vector<std::uint32_t> shared;
  std::set_intersection(of_a.begin(), of_a.end(), of_b.begin(), of_b.end(),
                        std::back_inserter(shared));
  return 2.0 * static_cast<double>(shared.size()) / static_cast<double>(of_a.size() + of_b.size());
}

}  // namespace rangebook

// The longest common subsequence of words; texts of a shop are short, so the table of all pairs is.
#include "tracker/desk/word_marks.h"

#include <algorithm>

#include "tracker/text_fold.h"

namespace rangebook {
namespace {

struct Word {
  std::string text;
  std::string key;  ///< what it is compared by
};

bool is_space(char sign) { return sign == ' ' || (sign >= '\t' && sign <= '\r'); }
bool is_edge(char sign) {
  return std::string_view(",;:.()[]\"'").find(sign) != std::string_view::npos;
}

std::string key_of(std::string_view word) {
  std::string_view bare = word;
  while (!bare.empty() && is_edge(bare.front())) bare.remove_prefix(1);
  while (!bare.empty() && is_edge(bare.back())) bare.remove_suffix(1);
  return fold_text(bare.empty() ? word : bare);
}

std::vector<Word> words_of(std::string_view text) {
  std::vector<Word> words;
  for (std::size_t at = 0; at < text.size();) {
    if (is_space(text[at])) {
      ++at;
      continue;
    }
    const std::size_t begin = at;
    while (at < text.size() && !is_space(text[at])) ++at;
    const auto word = text.substr(begin, at - begin);
    words.push_back({std::string(word), key_of(word)});
  }
  return words;
}

/// For each word whether it has a partner on the other side.
struct Partners {
  std::vector<char> a;
  std::vector<char> b;
};

Partners partners_of(const std::vector<Word>& a, const std::vector<Word>& b) {
  Partners found{std::vector<char>(a.size()), std::vector<char>(b.size())};
  if (a.size() > kMostMarkedWords || b.size() > kMostMarkedWords) return found;
  // best[i][j]: the most words that the ends from i and from j on have in common.
  std::vector<std::vector<std::size_t>> best(a.size() + 1, std::vector<std::size_t>(b.size() + 1));
  for (std::size_t i = a.size(); i-- > 0;) {
    for (std::size_t j = b.size(); j-- > 0;) {
      best[i][j] =
          a[i].key == b[j].key ? best[i + 1][j + 1] + 1 : std::max(best[i + 1][j], best[i][j + 1]);
    }
  }
  std::size_t i = 0;
  std::size_t j = 0;
  while (i < a.size() && j < b.size()) {
    if (a[i].key == b[j].key) {
      found.a[i++] = found.b[j++] = 1;
    } else {
      best[i + 1][j] >= best[i][j + 1] ? ++i : ++j;
    }
  }
  return found;
}

std::vector<MarkedWords> runs_of(const std::vector<Word>& words, const std::vector<char>& paired) {
  std::vector<MarkedWords> runs;
  for (std::size_t i = 0; i < words.size(); ++i) {
    const bool differs = paired[i] == 0;
    if (!runs.empty() && runs.back().differs == differs) {
      runs.back().text += ' ' + words[i].text;
    } else {
      runs.push_back({words[i].text, differs});
    }
  }
  return runs;
}

}  // namespace

std::pair<std::vector<MarkedWords>, std::vector<MarkedWords>> marked_words(std::string_view a,
                                                                           std::string_view b) {
  const auto words_a = words_of(a);
  const auto words_b = words_of(b);
  auto paired = partners_of(words_a, words_b);
  if (a == b) {
    std::fill(paired.a.begin(), paired.a.end(), char{1});
    std::fill(paired.b.begin(), paired.b.end(), char{1});
  }
  return {runs_of(words_a, paired.a), runs_of(words_b, paired.b)};
}

}  // namespace rangebook

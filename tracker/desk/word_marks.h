// Two texts word by word: which words stand on one side only.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace rangebook {

/// Longer texts are marked as a whole where they differ.
inline constexpr std::size_t kMostMarkedWords = 200;

/// Words that stand beside each other and are alike in this. All of them joined by a space give the
/// text again, each run of white space as one.
struct MarkedWords {
  std::string text;
  bool differs = false;

  bool operator==(const MarkedWords&) const = default;
};

/// What both have in common in the same order stays plain; case, accents and punctuation at the
/// ends of a word do not count.
std::pair<std::vector<MarkedWords>, std::vector<MarkedWords>> marked_words(std::string_view a,
                                                                           std::string_view b);

}  // namespace rangebook

// Which words of two texts are marked. Invented names.
#include "tracker/desk/word_marks.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

namespace rangebook {
namespace {

using Runs = std::vector<MarkedWords>;

TEST(WordMarks, CommonWordsStayPlain) {
  const auto [then, now] = marked_words("Maya wrap dress", "Maya midi wrap gown");
  EXPECT_EQ(then, (Runs{{"Maya wrap", false}, {"dress", true}}));
  EXPECT_EQ(now, (Runs{{"Maya", false}, {"midi", true}, {"wrap", false}, {"gown", true}}));
}

TEST(WordMarks, CaseAccentsAndPunctuationDoNotCount) {
  const auto [then, now] = marked_words("navy, Café", "NAVY cafe (");
  EXPECT_EQ(then, (Runs{{"navy, Café", false}}));
  EXPECT_EQ(now, (Runs{{"NAVY cafe", false}, {"(", true}}));
}

TEST(WordMarks, EmptyAndVeryLongTexts) {
  EXPECT_TRUE(marked_words("", "").first.empty());
  EXPECT_EQ(marked_words("", "x").second, (Runs{{"x", true}}));
  std::string words;
  for (std::size_t i = 0; i <= kMostMarkedWords; ++i) words += "w ";
  EXPECT_EQ(marked_words(words, words).first.size(), 1U);
  EXPECT_FALSE(marked_words(words, words).first.front().differs);
  EXPECT_TRUE(marked_words(words, "w").first.front().differs);
}

std::string joined(const Runs& runs, bool only_plain) {
  std::string text;
  for (const MarkedWords& run : runs) {
    if (!only_plain || !run.differs) text += (text.empty() ? "" : " ") + run.text;
  }
  return text;
}

/// The longest common subsequence by trying every choice.
std::size_t longest_common(const std::string& a, const std::string& b) {
  if (a.empty() || b.empty()) return 0;
  const std::size_t without =
      std::max(longest_common(a.substr(1), b), longest_common(a, b.substr(1)));
  return a[0] == b[0] ? std::max(without, longest_common(a.substr(1), b.substr(1)) + 1) : without;
}

TEST(WordMarks, WhatIsPlainIsTheMostBothHaveInCommon) {
  std::mt19937 random(7);
  for (int round = 0; round < 200; ++round) {
    std::string texts[2];
    std::string signs[2];
    for (int side = 0; side < 2; ++side) {
      for (auto length = random() % 6; length > 0; --length) {
        signs[side] += static_cast<char>('a' + random() % 3);
        texts[side] +=
            (texts[side].empty() ? "" : " ") + signs[side].substr(signs[side].size() - 1);
      }
    }
    const auto [a, b] = marked_words(texts[0], texts[1]);
    EXPECT_EQ(joined(a, false), texts[0]);
    EXPECT_EQ(joined(b, false), texts[1]);
    EXPECT_EQ(joined(a, true), joined(b, true));
    EXPECT_EQ((joined(a, true).size() + 1) / 2, longest_common(signs[0], signs[1]));
  }
}

}  // namespace
}  // namespace rangebook

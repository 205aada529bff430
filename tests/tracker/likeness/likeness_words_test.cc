// Words, pieces of codes and trigrams.
#include "tracker/likeness/likeness_words.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace rangebook {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

TEST(LikenessWords, AreFoldedAndSingular) {
  EXPECT_THAT(likeness_words("Wide-Leg Trousers, Größe 38"),
              ElementsAre("wide", "leg", "trouser", "grosse", "38"));
  EXPECT_THAT(likeness_words("dress & bus"), ElementsAre("dress", "bus"));
  EXPECT_THAT(likeness_words(" -- "), IsEmpty());
}

TEST(LikenessWords, CodesGiveWhatMaySurviveThem) {
  EXPECT_THAT(code_pieces("W26-TM0512/A"), ElementsAre("512", "w26", "tm0512"));
  EXPECT_THAT(code_pieces("000123"), ElementsAre("123"));
  EXPECT_THAT(code_pieces("AB-1"), IsEmpty());
}

TEST(LikenessWords, FileNamesLoseFolderQueryAndEnding) {
  EXPECT_EQ(file_stem("https://shop.example/img/maya-dress_1.jpg?w=80"), "maya-dress_1");
  EXPECT_EQ(file_stem("maya"), "maya");
  EXPECT_EQ(file_stem("https://shop.example/p/maya/"), "maya");
  EXPECT_EQ(file_stem(""), "");
}

TEST(LikenessWords, TrigramsTellSpellingsFromWords) {
  EXPECT_EQ(trigram_likeness("maya", "maya"), 1);
  EXPECT_GT(trigram_likeness("pullover", "pulover"), 0.6);
  EXPECT_LT(trigram_likeness("dress", "skirt"), 0.1);
  // " ab", "ab " against " ab", "abc", "bc ": one of two and three.
  EXPECT_DOUBLE_EQ(trigram_likeness("ab", "abc"), 2.0 / 5);
}

TEST(LikenessWords, ASlipOfTheKeyboardIsTheSameWord) {
  EXPECT_TRUE(is_slip("shirt", "shrit"));
  EXPECT_TRUE(is_slip("cardigan", "cardgan"));
  EXPECT_TRUE(is_slip("cardigann", "cardigan"));
  EXPECT_FALSE(is_slip("shirt", "short"));
  EXPECT_FALSE(is_slip("tier", "tie"));
  EXPECT_FALSE(is_slip("coat", "coat"));
  EXPECT_FALSE(is_slip("12034", "12304"));
}

TEST(LikenessWords, AnAbbreviationLeavesTheVowelsOut) {
  EXPECT_TRUE(is_abbreviation("blk", "black"));
  EXPECT_TRUE(is_abbreviation("shrt", "shirt"));
  EXPECT_FALSE(is_abbreviation("coat", "cocoat"));
  EXPECT_FALSE(is_abbreviation("x2", "x120"));
}

}  // namespace
}  // namespace rangebook

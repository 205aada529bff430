// Changes of size ranges.
#include "tracker/size_diff.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/tracker/change_text.h"

namespace rangebook {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;

std::string sizes(std::string_view labels) {
  return fmt::format("AB1 | Maya | Dresses | navy | {}", labels);
}

std::vector<std::string> changes(std::string_view then, std::string_view now) {
  return testing::line_changes(sizes(then), sizes(now));
}

std::vector<std::string> notes(std::string_view then, std::string_view now) {
  return testing::compare(testing::range("AW25", sizes(then)), testing::range("AW26", sizes(now)))
      .coverage.notes;
}

TEST(SizeDiff, WidenedBeyondEitherEnd) {
  EXPECT_THAT(changes("8, 10, 12", "8, 10, 12, 14, 16"),
              ElementsAre("sizes-widened AB1 uk regular 8..12 [8 10 12] -> "
                          "uk regular 8..16 [8 10 12 14 16]"));
  EXPECT_THAT(changes("8, 10", "6, 8, 10, 12"),
              ElementsAre("sizes-widened AB1 uk regular 8..10 [8 10] -> "
                          "uk regular 6..12 [6 8 10 12]"));
}

TEST(SizeDiff, WidenedAtOneEndAndNarrowedAtTheOther) {
  EXPECT_THAT(
      changes("8, 10, 12", "10, 12, 14"),
      ElementsAre("sizes-widened AB1 uk regular 8..12 [8 10 12] -> uk regular 10..14 [10 12 14]",
                  "sizes-narrowed AB1 uk regular 8..12 [8 10 12] -> uk regular 10..14 [10 12 14]"));
}

TEST(SizeDiff, GapsInsideTheRange) {
  EXPECT_THAT(
      changes("8, 12", "8, 10, 12"),
      ElementsAre("size-gap-filled AB1 uk regular 8..12 [8 12] -> uk regular 8..12 [8 10 12]"));
  EXPECT_THAT(
      changes("8, 10, 12", "8, 12"),
      ElementsAre("size-gap-opened AB1 uk regular 8..12 [8 10 12] -> uk regular 8..12 [8 12]"));
}

TEST(SizeDiff, ASizeLostAtTheEndIsNoGap) {
  EXPECT_THAT(
      changes("8, 10, 12", "8, 10"),
      ElementsAre("sizes-narrowed AB1 uk regular 8..12 [8 10 12] -> uk regular 8..10 [8 10]"));
}

TEST(SizeDiff, OneSizeMayBeWrittenInTwoWays) {
  EXPECT_THAT(changes("8, 10, 12", "UK_8, UK_10, UK_12"), IsEmpty());
}

TEST(SizeDiff, ADualSizeCoversBoth) {
  EXPECT_THAT(changes("XS, S/M, L/XL", "XS, S, M, L, XL"), IsEmpty());
}

TEST(SizeDiff, FitRanges) {
  EXPECT_THAT(changes("8, 10", "8, 10, 8_Petite, 10_Petite"),
              ElementsAre("fit-range-added AB1 nothing -> "
                          "uk petite 8 Petite..10 Petite [8 Petite 10 Petite]"));
  EXPECT_THAT(
      changes("8, 10, 8_Petite", "8, 10"),
      ElementsAre("fit-range-dropped AB1 uk petite 8 Petite..8 Petite [8 Petite] -> nothing"));
}

TEST(SizeDiff, SystemsAreNeverConverted) {
  EXPECT_THAT(changes("S, M, L", "8, 10, 12, 14"), IsEmpty());
  EXPECT_THAT(notes("S, M, L", "8, 10, 12, 14"), ElementsAre(HasSubstr("different systems")));
}

TEST(SizeDiff, UnknownLabelsAreNotRanked) {
  EXPECT_THAT(changes("8, 10, blorp", "8, 10, 12, flurb"), IsEmpty());
  EXPECT_THAT(notes("8, 10, blorp", "8, 10, 12, flurb"),
              ElementsAre(HasSubstr("labels of no known system")));
  EXPECT_THAT(changes("8, 10, blorp", "8, 10, 12, blorp").size(), 1U);
}

TEST(SizeDiff, SizesNotStatedAreNotLost) {
  EXPECT_THAT(changes("8, 10", "-"), IsEmpty());
  EXPECT_THAT(notes("8, 10", "-"), ElementsAre(HasSubstr("does not state every size")));
  EXPECT_THAT(notes("-", "-"), IsEmpty());
}

TEST(SizeDiff, ALabelMeansTheSameOnBothSides) {
  // 32 to 40 alone could be EU; beside 16 to 40 of the same line they are UK plus sizes.
  EXPECT_THAT(changes("16, 18, 20, 28, 32, 36, 40", "32, 36, 40"),
              ElementsAre("sizes-narrowed AB1 uk regular 16..40 [16 18 20 28 32 36 40] -> "
                          "uk regular 32..40 [32 36 40]"));
  EXPECT_THAT(changes("32, 36, 40", "16, 18, 20, 28, 32, 36, 40").size(), 1U);
}

TEST(SizeDiff, SidesThatShareNoLabelAreReadAlone) {
  // Read as one set these would all pass for UK.
  EXPECT_THAT(changes("8, 10, 12, 14", "36, 38, 40, 42"), IsEmpty());
  EXPECT_THAT(changes("36, 38, 40, 42", "8, 10, 12, 14"), IsEmpty());
}

}  // namespace
}  // namespace rangebook

// Policies as people write them, against their truth: what is taken without asking has to be right.
// The texts are our own work (tests/checks/policies/README.md).
#include "importers/policy_text.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cstdio>
#include <cstdlib>

#include "tests/importers/policy_cases.h"

namespace rangebook {
namespace {

void print_table(const std::string& title, const PolicyScores& scores) {
  std::printf("%s\n%-34s %6s %6s %6s %6s %10s %7s\n", title.c_str(), "field", "truth", "taken",
              "right", "asked", "precision", "recall");
  for (const auto& [field, score] : scores) {
    std::printf("%-34s %6d %6d %6d %6d %10.3f %7.3f\n", field.c_str(), score.truth, score.taken,
                score.right, score.asked, score.precision(), score.recall());
  }
}

/// The floors are what was measured when the rules were last changed.
void expect_floors(const std::string& file, double precision, double recall) {
  std::string misses;
  const auto scores = score_cases(policy_cases(file), misses);
  print_table(file, scores);
  const bool quiet = std::getenv("RANGEBOOK_MISSES") == nullptr;
  if (!quiet) std::printf("%s", misses.c_str());
  EXPECT_GE(scores.at("all").precision(), precision) << misses;
  EXPECT_GE(scores.at("all").recall(), recall) << misses;
}

TEST(PolicyText, HeldOutTexts) { expect_floors("held_out.txt", 1, 1); }
TEST(PolicyText, TuningTexts) { expect_floors("tuning.txt", 1, 0.97); }
TEST(PolicyText, FreshTexts) { expect_floors("fresh.txt", 1, 0.94); }
TEST(PolicyText, LaterFreshTexts) { expect_floors("fresh_2.txt", 1, 0.97); }
TEST(PolicyText, OtherVoices) { expect_floors("voices.txt", 1, 0.96); }
TEST(PolicyText, LaterOtherVoices) { expect_floors("voices_2.txt", 1, 0.9); }
TEST(PolicyText, PlainTexts) { expect_floors("plain.txt", 1, 0.98); }
TEST(PolicyText, LaterPlainTexts) { expect_floors("plain_2.txt", 1, 0.99); }
TEST(PolicyText, NoisyPlainTexts) { expect_floors("plain_3.txt", 1, 0.98); }
TEST(PolicyText, LaterNoisyTexts) { expect_floors("plain_4.txt", 1, 0.96); }
TEST(PolicyText, CheckersTexts) { expect_floors("plain_5.txt", 1, 0.99); }
TEST(PolicyText, LaterCheckersTexts) { expect_floors("plain_6.txt", 1, 0.96); }
TEST(PolicyText, LastPlainTexts) { expect_floors("plain_7.txt", 1, 0.98); }
TEST(PolicyText, OrdinaryTexts) { expect_floors("plain_8.txt", 1, 0.97); }
TEST(PolicyText, OtherRegisters) { expect_floors("plain_9.txt", 1, 0.88); }
TEST(PolicyText, OrdinaryPages) { expect_floors("plain_10.txt", 1, 0.97); }
TEST(PolicyText, ShopsOfManySizes) { expect_floors("plain_11.txt", 1, 0.9); }
TEST(PolicyText, OtherPlaces) { expect_floors("plain_12.txt", 1, 0.87); }
TEST(PolicyText, LastOrdinaryTexts) { expect_floors("plain_14.txt", 1, 0.91); }
TEST(PolicyText, SingleSentences) { expect_floors("sentences.txt", 1, 0.99); }
TEST(PolicyText, CarefulTestersTexts) { expect_floors("plain_15.txt", 1, 0.96); }
TEST(PolicyText, DutchTexts) { expect_floors("plain_16.txt", 1, 0.93); }
TEST(PolicyText, BritishTexts) { expect_floors("plain_17.txt", 0.99, 0.94); }
TEST(PolicyText, GermanTexts) { expect_floors("plain_18.txt", 0.99, 0.95); }
TEST(PolicyText, FrenchTexts) { expect_floors("plain_19.txt", 0.99, 0.95); }
TEST(PolicyText, EnglishAndGermanSentences) { expect_floors("sentences_2.txt", 1, 0.94); }
TEST(PolicyText, FrenchAndDutchSentences) { expect_floors("sentences_3.txt", 1, 0.9); }
TEST(PolicyText, LaterCarefulTestersTexts) { expect_floors("plain_20.txt", 0.99, 0.93); }
TEST(PolicyText, EnglishTexts) { expect_floors("plain_21.txt", 0.98, 0.92); }
TEST(PolicyText, GermanAndDutchTexts) { expect_floors("plain_22.txt", 0.99, 0.92); }
TEST(PolicyText, LaterFrenchTexts) { expect_floors("plain_23.txt", 0.98, 0.9); }
TEST(PolicyText, LastMixedTexts) { expect_floors("plain_24.txt", 1, 0.95); }
TEST(PolicyText, ShopsOfOneKind) { expect_floors("plain_25.txt", 0.98, 0.92); }
TEST(PolicyText, SixteenWriters) { expect_floors("plain_13.txt", 1, 0.92); }

}  // namespace
}  // namespace rangebook

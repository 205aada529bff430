// Chains of decisions that contradict a new one, against trying every grouping of the lines.
#include "tracker/decision_rules.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <random>

namespace rangebook {
namespace {

using ::testing::ElementsAre;

LinkDecision yes(LineId a, LineId b) { return {a, b, true, {}, {}}; }
LinkDecision no(LineId a, LineId b) { return {a, b, false, {}, {}}; }

TEST(DecisionRules, YesAndYesAndNoContradict) {
  const std::vector<LinkDecision> said{yes(1, 2), yes(2, 3)};
  const auto chain = contradiction_to(no(1, 3), said);
  ASSERT_TRUE(chain);
  EXPECT_THAT(*chain, ElementsAre(yes(1, 2), yes(2, 3)));
}

TEST(DecisionRules, ANoOnTheWayContradictsAYes) {
  const std::vector<LinkDecision> said{yes(1, 2), no(2, 3), yes(3, 4)};
  EXPECT_TRUE(contradiction_to(yes(1, 4), said));
  EXPECT_TRUE(contradiction_to(yes(4, 1), said));
  EXPECT_FALSE(contradiction_to(no(1, 4), said));
}

TEST(DecisionRules, ASecondNoSaysNothing) {
  EXPECT_FALSE(contradiction_to(yes(1, 3), {no(1, 2), no(2, 3)}));
  EXPECT_FALSE(contradiction_to(no(1, 3), {no(1, 2), no(2, 3)}));
}

TEST(DecisionRules, TheSamePairIsChangedNotContradicted) {
  EXPECT_FALSE(contradiction_to(no(1, 2), {yes(1, 2)}));
  EXPECT_FALSE(contradiction_to(yes(2, 1), {no(1, 2)}));
}

/// True when the lines 0 .. 4 can be put into groups as all decisions say.
bool can_stand(const std::vector<LinkDecision>& decisions) {
  for (int code = 0; code < 5 * 5 * 5 * 5 * 5; ++code) {
    int group[5] = {code % 5, code / 5 % 5, code / 25 % 5, code / 125 % 5, code / 625};
    bool holds = true;
    for (const LinkDecision& each : decisions) {
      holds = holds && (group[each.a] == group[each.b]) == each.same;
    }
    if (holds) return true;
  }
  return false;
}

TEST(DecisionRules, AgreeWithTryingEveryGrouping) {
  std::mt19937 random(20261125);
  for (int round = 0; round < 200; ++round) {
    std::vector<LinkDecision> said;
    for (int i = 0; i < 8; ++i) {
      LinkDecision next{static_cast<LineId>(random() % 5),
                        static_cast<LineId>(random() % 5),
                        random() % 3 != 0,
                        {},
                        {}};
      if (next.a == next.b) continue;
      std::vector<LinkDecision> with = said;
      std::erase_if(with, [&](const LinkDecision& other) { return same_pair(other, next); });
      with.push_back(next);
      EXPECT_EQ(contradiction_to(next, said).has_value(), !can_stand(with));
      if (can_stand(with)) said = with;
    }
  }
}

}  // namespace
}  // namespace rangebook

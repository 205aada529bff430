// Lines through many captures: what joins them, what keeps them apart, and that the order of taking
// captures in means nothing.
#include "tracker/identity/assembly.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/tracker/identity/captures_text.h"

namespace rangebook {
namespace {

using testing::Captures;
using ::testing::Contains;
using ::testing::ElementsAre;

constexpr char kMaya[] =
    "A1 | Maya Wrap Dress | Dresses | navy, ecru | 8, 10, 12 | 79 | in | 100% viscose";
constexpr char kMayaCoded[] =
    "B7 | Maya Wrap Dress | Dresses | navy, ecru | 8, 10, 12 | 79 | in | 100% viscose";
constexpr char kMayaMidi[] =
    "C4 | Maya Midi Wrap Dress | Dresses | navy, ecru | 8, 10, 12 | 85 | in | 100% viscose";
constexpr char kTunic[] = "T9 | Orla Tunic | Tops | moss | S, M, L | 35 | in | 100% linen";
constexpr char kCoat[] =
    "K2 | Hedda Duffle Coat | Coats | camel | 10, 12, 14 | 210 | in | 80% wool, 20% polyamide";

std::string both(const char* a, const char* b) { return std::string(a) + "\n" + b; }

TEST(Assembly, ALineKeepsItsIdentityThroughTwoNewCodes) {
  Captures shop;
  shop.take("AW24", 0, both(kMaya, kCoat))
      .take("AW25", 1, both(kMayaCoded, kCoat))
      .take("AW26", 2, both(kMayaMidi, kCoat));
  EXPECT_THAT(shop.told(), ElementsAre("A1@AW24 B7@AW25 C4@AW26", "K2@AW24 K2@AW25 K2@AW26"));
}

TEST(Assembly, ALineAwayForASeasonIsKnownAgainUnderANewCode) {
  Captures shop;
  shop.take("AW24", 0, both(kMaya, kCoat))
      .take("AW25", 1, kCoat)
      .take("AW26", 2, both(kMayaCoded, kCoat));
  EXPECT_THAT(shop.told(), Contains("A1@AW24 B7@AW26"));
}

TEST(Assembly, TheOrderOfTakingCapturesInMeansNothing) {
  Captures by_date;
  by_date.take("AW24", 0, both(kMaya, kCoat))
      .take("AW25", 1, both(kMayaCoded, kTunic))
      .take("AW26", 2, both(kMayaMidi, kCoat));
  Captures backwards;
  backwards.take("AW26", 2, both(kMayaMidi, kCoat))
      .take("AW25", 1, both(kMayaCoded, kTunic))
      .take("AW24", 0, both(kMaya, kCoat));
  EXPECT_EQ(by_date.told(), backwards.told());
}

TEST(Assembly, TwoCodesThatStandSideBySideLaterAreTwoLines) {
  Captures shop;
  shop.take("AW24", 0, kMaya).take("AW25", 1, kMayaCoded);
  EXPECT_THAT(shop.told(), ElementsAre("A1@AW24 B7@AW25"));
  shop.take("AW26", 2, both(kMaya, kMayaCoded));
  EXPECT_THAT(shop.told(), ElementsAre("A1@AW24 A1@AW26", "B7@AW25 B7@AW26"));
}

TEST(Assembly, AnOldCodeComesBack) {
  Captures shop;
  shop.take("AW24", 0, kMaya).take("AW25", 1, kMayaCoded).take("AW26", 2, kMaya);
  EXPECT_THAT(shop.told(), ElementsAre("A1@AW24 B7@AW25 A1@AW26"));
}

TEST(Assembly, ANoHoldsThroughAChainOfLinks) {
  Captures shop;
  shop.take("AW24", 0, both(kMaya, kCoat))
      .take("AW25", 1, both(kMayaCoded, kCoat))
      .take("AW26", 2, both(kMayaMidi, kCoat));
  shop.decide("A1", "C4", false);
  EXPECT_THAT(shop.told(), Contains("A1@AW24 B7@AW25"));
  EXPECT_THAT(shop.told(), Contains("C4@AW26"));
}

TEST(Assembly, AYesBeatsARule) {
  Captures shop;
  shop.take("AW24", 0, kMaya).take("AW25", 1, both(kMayaCoded, kTunic));
  EXPECT_THAT(shop.told(), ElementsAre("A1@AW24 B7@AW25", "T9@AW25"));
  shop.decide("A1", "T9", true);
  EXPECT_THAT(shop.told(), ElementsAre("A1@AW24 T9@AW25", "B7@AW25"));
}

TEST(Assembly, ACodeGivenToAnotherStyleIsTwoLinesOnceTheStylistSaysSo) {
  Captures shop;
  shop.take("AW24", 0, kMaya).take("AW25", 1, kMaya).take("AW26", 2, kMaya);
  const auto day = [&](std::uint32_t capture) { return shop.roll().captures[capture].info.on; };
  shop.decide(LinkDecision{shop.id("A1"), shop.id("A1"), false, day(1), day(2)});
  EXPECT_THAT(shop.told(), ElementsAre("A1@AW24 A1@AW25", "A1@AW26"));
  const Identities lines = shop.identities();
  EXPECT_NE(lines.lines[0].id, lines.lines[1].id);
}

TEST(Assembly, ANameWithoutCodeIsFollowedByLikeness) {
  Captures shop;
  const std::string knit =
      " | Greta Cable Jumper | Knitwear | rust | S, M, L | 60 | in | 100% wool";
  const std::string other =
      " | Greta Cable Jumper | Trousers | black | 8, 10 | 145 | in | 100% silk";
  shop.take("AW24", 0, knit).take("AW25", 1, knit);
  EXPECT_THAT(shop.told(), ElementsAre("Greta Cable Jumper@AW24 Greta Cable Jumper@AW25"));
  shop.take("AW26", 2, other);
  EXPECT_THAT(shop.told(), Contains("Greta Cable Jumper@AW26"));
}

TEST(Finder, ReadsNothingWhenEveryCodeIsKnown) {
  Captures shop;
  shop.take("AW24", 0, both(kMaya, kCoat))
      .take("AW25", 1, kCoat)
      .take("AW26", 2, both(kMaya, kCoat));
  EXPECT_EQ(shop.told().size(), 2U);
  EXPECT_EQ(shop.read(), 0U);
}

}  // namespace
}  // namespace rangebook

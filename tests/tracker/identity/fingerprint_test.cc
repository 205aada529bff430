// Fingerprints change with what the answer depends on, and with nothing else.
#include "tracker/identity/fingerprint.h"

#include <gtest/gtest.h>

#include "tests/tracker/identity/captures_text.h"

namespace rangebook {
namespace {

using testing::Captures;

Captures three() {
  Captures shop;
  shop.take("AW24", 0, "A1 | Maya Dress\nA2 | Orla Tunic\n | Greta Jumper");
  shop.take("AW25", 1, "B1 | Maya Dress\nA2 | Orla Tunic\n | Greta Jumper");
  shop.take("AW26", 2, "C1 | Maya Dress\nA2 | Orla Tunic\n | Greta Jumper");
  return shop;
}

std::string of(Captures& shop, std::uint32_t place, const LikenessOptions& options = {}) {
  return finds_fingerprint(shop.roll(), place, options, "program");
}

TEST(Fingerprint, ALaterCaptureLeavesItAsItWas) {
  Captures shop = three();
  const std::string before = of(shop, 1);
  shop.take("AW27", 3, "C1 | Maya Dress");
  EXPECT_EQ(of(shop, 1), before);
  shop.take("SS25", 1, "S1 | Maya Dress");
  EXPECT_NE(of(shop, 2), before);
}

TEST(Fingerprint, ADecisionCountsOnceBothLinesWereSeen) {
  Captures shop = three();
  const std::string first = of(shop, 1);
  const std::string second = of(shop, 2);
  shop.decide("A2", "C1", false);
  EXPECT_EQ(of(shop, 1), first);
  EXPECT_NE(of(shop, 2), second);
}

TEST(Fingerprint, ADecisionCountsThroughALineThatComesLater) {
  Captures shop = three();
  shop.decide("A1", "C1", true);
  const std::string before = of(shop, 1);
  shop.decide("C1", "B1", false);
  EXPECT_NE(of(shop, 1), before);
}

TEST(Fingerprint, OptionsAndProgramCount) {
  Captures shop = three();
  LikenessOptions bold;
  bold.link_from = 0.7;
  EXPECT_NE(of(shop, 1), of(shop, 1, bold));
  EXPECT_NE(of(shop, 1), finds_fingerprint(shop.roll(), 1, {}, "another"));
}

}  // namespace
}  // namespace rangebook

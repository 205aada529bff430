// Colourways that become lines and lines that become colourways, and look-alikes that are neither.
#include "tracker/colour_moves.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/tracker/range_text.h"
#include "tracker/differ.h"
#include "tracker/linker.h"

namespace rangebook {
namespace {

using ::testing::HasSubstr;
using ::testing::IsEmpty;
using testing::range;
using ::testing::SizeIs;

ColourMoves moves(const Snapshot& from, const Snapshot& to) {
  Interpreter interpreter(SizeSystem::uk);
  return find_colour_moves(from, to, link_lines(from, to, {}, nullptr), interpreter);
}

const char kWhole[] =
    "M1 | Maya Dress | Dresses | navy, red, ecru | 8, 10 | 79 | in | 100% viscose";

TEST(ColourMoves, AColourwaySplitOffKeepsItsNameAndCloth) {
  const Snapshot from = range("AW25", kWhole);
  const Snapshot to =
      range("AW26",
            "M1 | Maya Dress | Dresses | ecru, red | 8, 10 | 79 | in | 100% viscose\n"
            "N2 | Maya Dress Navy | Dresses | navy | 8, 10 | 85 | in | viscose 100%");
  const ColourMoves found = moves(from, to);
  ASSERT_THAT(found.split, SizeIs(1));
  EXPECT_EQ(found.split[0],
            (ColourMove{0, 1, "navy", "the same name without the colour, the same composition"}));
  EXPECT_THAT(found.merged, IsEmpty());
  const ColourMoves back = moves(to, from);
  EXPECT_THAT(back.merged, SizeIs(1));
  EXPECT_THAT(back.split, IsEmpty());
}

TEST(ColourMoves, AWholeLineTakenApart) {
  const Snapshot from = range("AW25", kWhole);
  const Snapshot to =
      range("AW26",
            "N1 | Maya Dress in Red | Dresses | red | 8, 10 | 79 | in | 100% viscose\n"
            "N2 | Maya Dress | Dresses | navy | 8, 10 | 79 | in | 100% viscose");
  const auto found = moves(from, to).split;
  ASSERT_THAT(found, SizeIs(1));  // `in` is a word of the other's name
  EXPECT_EQ(found[0].part, 1U);
}

TEST(ColourMoves, BarcodesSayItUnderAnotherName) {
  Snapshot from = range("AW25", kWhole);
  Snapshot to = range("AW26",
                      "M1 | Maya Dress | Dresses | ecru, red | 8, 10 | 79 | in | 100% viscose\n"
                      "N2 | Orla Dress | Dresses | navy | 8, 10 | 85 | in | 100% linen");
  LineOffers& then = from.lines[0].listing.offers;
  LineOffers& now = to.lines[1].listing.offers;
  const std::uint64_t base = 2910000000000;
  for (std::size_t i = 0; i < then.offers.size(); ++i) {
    then.gtins.emplace_back(Gtin::from_value(base + i));
  }
  for (std::size_t i = 0; i < now.offers.size(); ++i) {  // ecru comes first, then navy
    now.gtins.emplace_back(Gtin::from_value(base + 2 + i));
  }
  Interpreter interpreter(SizeSystem::uk);
  LinkSet links;
  links.links.push_back({0, 0, {LinkEvidence::line_code}, LinkAuthority::code, 1, ""});
  links.only_to = {1};
  const auto found = find_colour_moves(from, to, links, interpreter).split;
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_THAT(found[0].evidence, HasSubstr("2 GTINs in common"));
}

TEST(ColourMoves, OtherClothOtherColourOrTwoThatFitAreNone) {
  const char left[] = "M1 | Maya Dress | Dresses | ecru, red | 8, 10 | 79 | in | 100% viscose\n";
  const auto none = [&](const std::string& row) {
    return moves(range("AW25", kWhole), range("AW26", left + row)).split;
  };
  EXPECT_THAT(none("N2 | Maya Dress Navy | Dresses | navy | 8 | 79 | in | 100% cotton"), IsEmpty());
  EXPECT_THAT(none("N2 | Maya Dress Moss | Dresses | moss | 8 | 79 | in | 100% viscose"),
              IsEmpty());
  EXPECT_THAT(none("N2 | Maya Dress | Dresses | navy, moss | 8 | 79 | in | 100% viscose"),
              IsEmpty());
  EXPECT_THAT(none("N2 | Maya Dress Navy | Tops | navy | 8 | 79 | in | 100% viscose"), IsEmpty());
}

}  // namespace
}  // namespace rangebook

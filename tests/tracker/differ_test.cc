// What the differ reports for small ranges, kind by kind.
#include "tracker/differ.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/tracker/change_text.h"

namespace rangebook {
namespace {

using testing::compare;
using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using testing::line_changes;
using testing::picks;
using testing::range;
using testing::texts;
using testing::within;

TEST(Differ, SaysNothingAboutAnUnchangedRange) {
  const Snapshot range_then = range("AW25", "AB1 | Maya Dress | Dresses | navy | 8, 10 | 50 | in");
  const ChangeSet set = compare(range_then, range_then);
  EXPECT_THAT(set.changes, IsEmpty());
  EXPECT_EQ(set.reconciliation.carried, 1U);
  EXPECT_THAT(set.coverage.notes, IsEmpty());
}

TEST(Differ, TellsNewFromDropped) {
  EXPECT_THAT(line_changes("AB1 | Maya Dress | Dresses", "AB2 | Ines Dress | Dresses"),
              ElementsAre("line-new AB2 nothing -> AB2 Ines Dress",
                          "line-dropped AB1 AB1 Maya Dress -> nothing"));
}

TEST(Differ, ALineOfAnEarlierCaptureHasReturned) {
  const Snapshot from = range("AW25", "");
  const Snapshot to = range("AW26", "AB1 | Maya Dress | Dresses");
  EarlierLine earlier;
  earlier.id = 1;
  earlier.season = "AW23";
  earlier.capture = 7;
  EarlierLine later = earlier;
  later.season = "AW24";
  later.on += date::days(365);
  later.capture = 8;
  later.line_code = "OLD";
  later.name = "Maya";
  const ChangeSet set = compare(from, to, {earlier, later, earlier});
  ASSERT_THAT(texts(set, true), ElementsAre("line-returned AB1 OLD Maya -> AB1 Maya Dress"));
  EXPECT_EQ(set.changes[0].evidence.before->season, "AW24");
  EXPECT_EQ(set.changes[0].evidence.before->capture, 8);
  EXPECT_EQ(set.reconciliation.returned, 1U);
  EXPECT_TRUE(set.reconciliation.adds_up());
}

TEST(Differ, NamesAndCodes) {
  Snapshot from = range("AW25", "AB1 | Maya Dress | Dresses\nAB2 | Ines  Top | Tops");
  Snapshot to = range("AW26", "XY1 | Maya Gown | Dresses\nAB2 | Ines Top | Tops");
  from.lines[0].listing.card.group_id = to.lines[0].listing.card.group_id = "G1";
  to.lines[0].id = 77;
  const ChangeSet set = compare(from, to);
  ASSERT_THAT(texts(set, true), ElementsAre("line-renamed XY1 AB1 Maya Dress -> XY1 Maya Gown",
                                            "line-recoded XY1 AB1 Maya Dress -> XY1 Maya Gown"));
  EXPECT_EQ(set.changes[0].line->id, 1);  // the earlier side's identity lasts
  EXPECT_EQ(set.changes[0].evidence.link, "same group id G1 in both captures");
}

TEST(Differ, EvidenceNamesDocumentAndLine) {
  const ChangeSet set =
      compare(range("AW25", "AB1 | Maya | Dresses"), range("AW26", "\n\nAB1 | Mia | Dresses"));
  ASSERT_EQ(set.changes.size(), 1U);
  const ChangeEvidence& evidence = set.changes[0].evidence;
  EXPECT_EQ(evidence.before->document, "AW25.csv");
  EXPECT_EQ(evidence.before->line, 1U);
  EXPECT_EQ(evidence.after->document, "AW26.csv");
  EXPECT_EQ(evidence.after->line, 3U);
  EXPECT_EQ(evidence.after->capture, 2);
}

TEST(Differ, ColoursByKey) {
  EXPECT_THAT(line_changes("AB1 | Maya | Dresses | Navy-Blue, ecru, rust",
                           "AB1 | Maya | Dresses | navy blue, rust, moss, sky"),
              ElementsAre("colour-added AB1 nothing -> moss", "colour-added AB1 nothing -> sky",
                          "colour-dropped AB1 ecru -> nothing"));
}

TEST(Differ, ColoursNotStatedAreNotDropped) {
  const Snapshot from = range("AW25", "AB1 | Maya | Dresses | navy, ecru");
  const Snapshot to = range("AW26", "AB1 | Maya | Dresses | -");
  const ChangeSet set = compare(from, to);
  EXPECT_THAT(texts(set, true), IsEmpty());
  EXPECT_THAT(set.coverage.notes, ElementsAre(HasSubstr("does not state every colour")));
}

TEST(Differ, CompositionByMeaning) {
  EXPECT_THAT(line_changes("AB1 | Maya | Dresses | - | - | - | - | 65% Cotton, 35% Polyester",
                           "AB1 | Maya | Dresses | - | - | - | - | 35% polyester, 65% cotton"),
              IsEmpty());
  EXPECT_THAT(line_changes("AB1 | Maya | Dresses | - | - | - | - | 100% Cotton",
                           "AB1 | Maya | Dresses | - | - | - | - | 100% Viscose"),
              ElementsAre("composition-changed AB1 100% Cotton -> 100% Viscose"));
  EXPECT_THAT(line_changes("AB1 | Maya | Dresses | - | - | - | - | soft and warm",
                           "AB1 | Maya | Dresses | - | - | - | - | Soft  and warm"),
              IsEmpty());
  EXPECT_THAT(
      line_changes("AB1 | Maya | Dresses | - | - | - | - | 100% Cotton", "AB1 | Maya | Dresses"),
      IsEmpty());
}

TEST(Differ, CategoryMovesOnlyWhereTheShopSaysSo) {
  EXPECT_THAT(line_changes("AB1 | Maya | Dresses", "AB1 | Maya | Knitwear"),
              ElementsAre("category-moved AB1 dresses -> knitwear"));
  EXPECT_THAT(line_changes("AB1 | Maya | Dresses", "AB1 | Maya | New in"), IsEmpty());
  EXPECT_THAT(line_changes("AB1 | Maya Dress | New in", "AB1 | Maya Dress | Knitwear"), IsEmpty());
}

TEST(Differ, StockOutAndBack) {
  const char* const in = "AB1 | Maya | Dresses | navy | 8, 10 | 50 | in";
  const char* const one_in = "AB1 | Maya | Dresses | navy | 8, 10 | 50 | out\n: navy 8 50 in";
  const char* const out = "AB1 | Maya | Dresses | navy | 8, 10 | 50 | out";
  EXPECT_THAT(line_changes(in, out), ElementsAre("stock-out AB1 2 of 2 -> 0 of 2"));
  EXPECT_THAT(line_changes(out, one_in), ElementsAre("stock-back AB1 0 of 2 -> 1 of 2"));
  EXPECT_THAT(line_changes(in, one_in), IsEmpty());
}

TEST(Differ, StockThatIsNotStatedIsNotSoldOut) {
  const char* const in = "AB1 | Maya | Dresses | navy | 8, 10 | 50 | in";
  EXPECT_THAT(line_changes(in, "AB1 | Maya | Dresses | navy | 8, 10 | 50"), IsEmpty());
  EXPECT_THAT(line_changes(in, "AB1 | Maya | Dresses | navy | 8, 10 | 50\n: navy 8 50 out"),
              IsEmpty());
}

TEST(Differ, SoldOutSizesAreStillOffered) {
  EXPECT_THAT(line_changes("AB1 | Maya | Dresses | navy | 8, 10, 12 | 50 | in",
                           "AB1 | Maya | Dresses | navy | 8, 10, 12 | 50 | in\n: navy 12 50 out"),
              IsEmpty());
}

TEST(Differ, ALineIsGoneOnlyWhereTheCaptureLooked) {
  const Snapshot from = range("AW25", "AB1 | Maya | Dresses\nAB2 | Ines | Knitwear");
  const ChangeSet set = compare(from, within(range("AW26", ""), {"dresses"}));
  EXPECT_THAT(texts(set, true), ElementsAre("line-dropped AB1 AB1 Maya -> nothing",
                                            "line-not-covered AB2 AB2 Ines -> nothing"));
  EXPECT_EQ(set.reconciliation.not_covered, 1U);
  EXPECT_TRUE(set.reconciliation.adds_up());
  EXPECT_THAT(set.coverage.notes, Contains(HasSubstr("looked at dresses only")));
}

TEST(Differ, NewOnlyWhereTheEarlierCaptureLooked) {
  const Snapshot to = range("AW26", "AB1 | Maya | Dresses\nAB2 | Ines | Knitwear");
  const ChangeSet set = compare(within(range("AW25", ""), {"dresses"}), to);
  EXPECT_THAT(texts(set, true), ElementsAre("line-new AB1 nothing -> AB1 Maya",
                                            "line-not-covered AB2 nothing -> AB2 Ines"));
  EXPECT_EQ(set.reconciliation.unseen_then, 1U);
  EXPECT_TRUE(set.reconciliation.adds_up());
}

TEST(Differ, PicksNeverProveAbsence) {
  const Snapshot from = range("AW25", "AB1 | Maya | Dresses");
  const ChangeSet set = compare(from, picks(range("AW26", "AB2 | Ines | Dresses")));
  EXPECT_THAT(texts(set, true), ElementsAre("line-new AB2 nothing -> AB2 Ines",
                                            "line-not-covered AB1 AB1 Maya -> nothing"));
  EXPECT_THAT(texts(set, false), IsEmpty());
}

TEST(Differ, ARefusedRowIsNotAGoneLine) {
  const Snapshot from = range("AW25", "AB1 | Maya | Dresses\nAB2 | Ines | Dresses\n- | Ada | Tops");
  Snapshot to = range("AW26", "");
  to.refused = {{"AB1", "whatever"}, {"", "INES "}, {"AB9", "Ada"}};
  const ChangeSet set = compare(from, to);
  EXPECT_EQ(set.counts[static_cast<std::size_t>(ChangeKind::line_not_covered)], 3U);
  EXPECT_EQ(set.counts[static_cast<std::size_t>(ChangeKind::line_dropped)], 0U);
  EXPECT_EQ(set.coverage.rows_refused_now, 3U);
}

TEST(Differ, ARefusedRowUnderTheCodeOfAnotherLineDoesNotExcuse) {
  Snapshot to = range("AW26", "");
  to.refused = {{"AB2", "Maya"}};
  EXPECT_THAT(texts(compare(range("AW25", "AB1 | Maya | Dresses\nAB2 | Maya | Tops"), to), true),
              ElementsAre("line-dropped AB1 AB1 Maya -> nothing",
                          "line-not-covered AB2 AB2 Maya -> nothing"));
}

TEST(Differ, ARefusedRowUnderANewCodeMayBeTheLineOfItsName) {
  Snapshot to = range("AW26", "");
  to.refused = {{"XY7", "maya"}};
  const Snapshot from = range("AW25", "AB1 | Maya | Dresses\nAB2 | Ines | Dresses");
  EXPECT_THAT(texts(compare(from, to), true),
              ElementsAre("line-dropped AB2 AB2 Ines -> nothing",
                          "line-not-covered AB1 AB1 Maya -> nothing"));
}

TEST(Differ, ARefusedRowMayHoldWhatIsMissing) {
  const Snapshot from = range("AW25", "AB1 | Maya | Dresses | navy, ecru | 8, 10, 12 | 50 | in");
  Snapshot to = range("AW26", "AB1 | Maya | Dresses | navy, moss | 10, 14 | 50 | out");
  to.refused = {{"AB1", ""}};
  const ChangeSet set = compare(from, to);
  EXPECT_THAT(
      texts(set, true),
      ElementsAre("colour-added AB1 nothing -> moss",
                  "sizes-widened AB1 uk regular 8..12 [8 10 12] -> uk regular 10..14 [10 14]"));
  EXPECT_THAT(set.coverage.notes, Contains(HasSubstr("1 line (AB1): rows of the later capture")));
}

TEST(Differ, ShuffledInputGivesEqualOutput) {
  Snapshot from =
      range("AW25", "AB1 | Maya | Dresses | navy | 8 | 50\nAB2 | Ines | Tops | moss | 8 | 9");
  Snapshot to = range("AW26", "AB1 | Mia | Tops | navy | 10 | 60\nAB3 | Ada | Tops | moss | 8 | 9");
  const ChangeSet straight = compare(from, to);
  std::reverse(from.lines.begin(), from.lines.end());
  std::reverse(to.lines.begin(), to.lines.end());
  EXPECT_EQ(compare(from, to), straight);
}

TEST(Differ, EqualHashesSkipTheLine) {
  Snapshot from = range("AW25", "AB1 | Maya | Dresses | navy | 8 | 50");
  Snapshot to = range("AW26", "AB1 | Mia | Dresses | navy | 8 | 60");
  from.lines[0].hashes = to.lines[0].hashes = PartHashes{1, 2, 3};
  EXPECT_THAT(texts(compare(from, to), true), IsEmpty());
  to.lines[0].hashes->offers = 4;
  EXPECT_THAT(texts(compare(from, to), true), ElementsAre("price-up AB1 50 -> 60"));
}

std::string lined(std::string_view composition, std::string_view more = "") {
  return "AB1 | Maya | Dresses | - | - | - | - | " + std::string(composition) + "\n" +
         std::string(more);
}

TEST(Differ, ALiningIsGoneOnlyWhereTheCaptureNamesLinings) {
  const std::string other = "AB2 | Ines | Dresses | - | - | - | - | 100% silk; lining: 100% silk";
  EXPECT_THAT(line_changes(lined("100% wool; lining: 100% viscose"), lined("100% wool")),
              IsEmpty());
  EXPECT_THAT(
      line_changes(lined("100% wool; lining: 100% viscose", other), lined("100% wool", other)),
      ElementsAre("composition-changed AB1 100% wool; lining: 100% viscose -> 100% wool"));
  EXPECT_THAT(line_changes(lined("100% wool; lining: 100% viscose"), lined("100% silk")),
              ElementsAre("composition-changed AB1 100% wool; lining: 100% viscose -> 100% silk"));
}

TEST(Differ, ACloserCategoryIsNoMoveFromACoarserSource) {
  EXPECT_THAT(line_changes("AB1 | Maya | Tops", "AB1 | Maya | Blouses"), IsEmpty());
  EXPECT_THAT(line_changes("AB1 | Maya | Blouses", "AB1 | Maya | Tops"), IsEmpty());
  EXPECT_THAT(line_changes("AB1 | Maya | Tops\nAB2 | Ines | Blouses",
                           "AB1 | Maya | Blouses\nAB2 | Ines | Blouses"),
              ElementsAre("category-moved AB1 tops -> blouses-shirts"));
}

TEST(Differ, ANameCutShortIsTheSameName) {
  EXPECT_THAT(line_changes("AB1 | Maya wrap dress in moss", "AB1 | Maya wrap dress..."), IsEmpty());
  EXPECT_THAT(line_changes("AB1 | Maya wrap dress in moss", "AB1 | Maya wrap gown..."),
              ElementsAre("line-renamed AB1 AB1 Maya wrap dress in moss -> "
                          "AB1 Maya wrap gown..."));
}

TEST(Differ, ARowAboutTheWholeLineDoesNotMakeItsVariantsIncomplete) {
  Snapshot from = range("AW25", "AB1 | Maya | Dresses | navy | 8, 10 | 50 | in");
  Snapshot to = range("AW26", "AB1 | Maya | Dresses | -, navy | -, 8, 10, 12 | 50 | in");
  std::erase_if(to.lines[0].listing.offers.offers, [](const Offer& offer) {
    return (offer.colour == 0) != (offer.size == 0);  // only the row that names neither stays
  });
  EXPECT_THAT(
      texts(compare(from, to), true),
      ElementsAre("sizes-widened AB1 uk regular 8..10 [8 10] -> uk regular 8..12 [8 10 12]"));
}

TEST(Differ, ARefusedRowWithoutANameIsSaidBesideWhatIsGone) {
  Snapshot to = range("AW26", "AB1 | Maya | Dresses");
  to.refused = {{"", " "}};
  const ChangeSet set =
      compare(range("AW25", "AB1 | Maya | Dresses\nAB2 | Ines | Dresses\nAB3 | Ada | Tops"), to);
  EXPECT_THAT(set.coverage.notes,
              Contains("1 refused row of the later capture names no line: up to 1 line called gone "
                       "may be in it."));
}

}  // namespace
}  // namespace rangebook

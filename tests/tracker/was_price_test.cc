// "Was" prices against captures of the days before. The 30 days are those of Directive 98/6/EC,
// article 6a, inserted by Directive (EU) 2019/2161 (from memory).
#include "tracker/was_price.h"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/tracker/range_text.h"
#include "tracker/linker.h"

namespace rangebook {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

const Day kNow = date::sys_days(date::year(2026) / 9 / 1);

/// A capture so many days before kNow.
Snapshot seen(int days_before, std::string_view text) {
  Snapshot snapshot = testing::range("AW26", text);
  snapshot.capture.on = kNow - date::days(days_before);
  snapshot.capture.id = 1000 - days_before;
  return snapshot;
}

/// `earlier`: newest first.
WasPriceCheck check(const Snapshot& now, const std::vector<Snapshot>& earlier) {
  WasPriceChecker checker(now);
  for (const Snapshot& each : earlier) {
    if (!checker.needs_from() || each.capture.on < *checker.needs_from()) break;
    checker.add(each, link_lines(each, now, {}, nullptr));
  }
  return checker.result();
}

/// `lower 1, not lower 0, not checked 2 of 3`.
std::string counts(const WasPriceCheck& check) {
  EXPECT_EQ(check.marked_down, check.lower + check.not_lower + check.not_checked);
  return fmt::format("lower {}, not lower {}, not checked {} of {}", check.lower, check.not_lower,
                     check.not_checked, check.marked_down);
}

constexpr const char* kFull = "AB1 | Maya | Dresses | navy | 8 | 100";
constexpr const char* kMarked = "AB1 | Maya | Dresses | navy | 8 | 70/100";
constexpr const char* kCheap = "AB1 | Maya | Dresses | navy | 8 | 80";

TEST(WasPrice, ALowerPriceInTheDaysBefore) {
  const WasPriceCheck found = check(seen(0, kMarked), {seen(10, kFull), seen(20, kCheap)});
  EXPECT_EQ(counts(found), "lower 1, not lower 0, not checked 0 of 1");
  ASSERT_EQ(found.findings.size(), 1U);
  const WasPriceFinding& finding = found.findings[0];
  EXPECT_EQ(finding.line.code, "AB1");
  EXPECT_EQ(finding.lowest.minor, 8000);
  EXPECT_EQ(finding.lowest_at.on, kNow - date::days(20));
  EXPECT_EQ(finding.lowest_at.line, 1U);
  EXPECT_EQ(finding.marked.full->minor, 10000);
  EXPECT_EQ(finding.marked_since, kNow);
  EXPECT_FALSE(finding.lowest_was_marked_down);
}

TEST(WasPrice, NoLowerPriceProvesNothing) {
  EXPECT_EQ(counts(check(seen(0, kMarked), {seen(10, kFull)})),
            "lower 0, not lower 1, not checked 0 of 1");
}

TEST(WasPrice, WithoutACaptureInTheDaysNothingIsChecked) {
  EXPECT_EQ(counts(check(seen(0, kMarked), {})), "lower 0, not lower 0, not checked 1 of 1");
  EXPECT_EQ(counts(check(seen(0, kMarked), {seen(31, kCheap)})),
            "lower 0, not lower 0, not checked 1 of 1");
  EXPECT_EQ(counts(check(seen(0, kMarked), {seen(30, kCheap)})),
            "lower 1, not lower 0, not checked 0 of 1");
}

TEST(WasPrice, TheDaysCountFromTheFirstSightOfTheMarkdown) {
  // Marked down for at least 25 days: what counts are the 30 days before that.
  const WasPriceCheck found = check(
      seen(0, kMarked), {seen(10, kMarked), seen(25, kMarked), seen(40, kFull), seen(50, kCheap)});
  EXPECT_EQ(counts(found), "lower 1, not lower 0, not checked 0 of 1");
  EXPECT_EQ(found.findings.at(0).marked_since, kNow - date::days(25));
  EXPECT_EQ(found.findings.at(0).lowest_at.on, kNow - date::days(50));
}

TEST(WasPrice, SightsFarApartAreNotOneMarkdown) {
  EXPECT_EQ(counts(check(seen(0, kMarked), {seen(31, kMarked), seen(40, kCheap)})),
            "lower 0, not lower 0, not checked 1 of 1");
}

TEST(WasPrice, AnEarlierSaleWithinTheDaysCounts) {
  const WasPriceCheck found = check(
      seen(0, kMarked), {seen(5, kFull), seen(15, "AB1 | Maya | Dresses | navy | 8 | 60/100")});
  ASSERT_EQ(found.findings.size(), 1U);
  EXPECT_EQ(found.findings[0].lowest.minor, 6000);
  EXPECT_TRUE(found.findings[0].lowest_was_marked_down);
}

TEST(WasPrice, AMarkdownThatGoesDeeperIsOneMarkdown) {
  EXPECT_EQ(counts(check(seen(0, "AB1 | Maya | Dresses | navy | 8 | 50/100"),
                         {seen(10, kMarked), seen(20, kFull)})),
            "lower 0, not lower 1, not checked 0 of 1");
}

TEST(WasPrice, VariantByVariant) {
  const WasPriceCheck found = check(
      seen(0, "AB1 | Maya | Dresses | ecru, navy | 8, 10 | 70/100"),
      {seen(10, "AB1 | Maya | Dresses | ecru, navy | 8, 10 | 100\n: navy 8 80\n: navy 10 80")});
  ASSERT_EQ(found.findings.size(), 1U);
  EXPECT_THAT(found.findings[0].marked.colours, ElementsAre("navy"));
  EXPECT_THAT(found.findings[0].marked.sizes, IsEmpty());
}

TEST(WasPrice, ALineIsCheckedOnlyIfEveryMarkedVariantIs) {
  EXPECT_EQ(
      counts(check(seen(0, "AB1 | Maya | Dresses | ecru, navy | 8 | 70/100"), {seen(10, kFull)})),
      "lower 0, not lower 0, not checked 1 of 1");
}

TEST(WasPrice, AnotherCurrencyOrAPriceNotStatedIsNoEvidence) {
  Snapshot pounds = seen(10, kCheap);
  pounds.lines[0].listing.offers.currency = Currency::from_code("GBP");
  EXPECT_EQ(counts(check(seen(0, kMarked), {pounds})), "lower 0, not lower 0, not checked 1 of 1");
  EXPECT_EQ(counts(check(seen(0, kMarked), {seen(10, "AB1 | Maya | Dresses | navy | 8 | -")})),
            "lower 0, not lower 0, not checked 1 of 1");
}

TEST(WasPrice, NoMarkdownNeedsNoCapture) {
  const Snapshot now = seen(0, kFull);
  EXPECT_EQ(WasPriceChecker(now).needs_from(), std::nullopt);
  EXPECT_EQ(counts(check(now, {seen(3, kCheap)})), "lower 0, not lower 0, not checked 0 of 0");
}

TEST(WasPrice, LinesLinkedByLikenessAreNoEvidence) {
  const Snapshot now = seen(0, kMarked);
  const Snapshot then = seen(10, kCheap);
  LinkSet links = link_lines(then, now, {}, nullptr);
  ASSERT_EQ(links.links.size(), 1U);
  links.links[0].evidence = {LinkEvidence::likeness};
  WasPriceChecker checker(now);
  checker.add(then, links);
  EXPECT_EQ(checker.result().not_checked, 1U);
}

}  // namespace
}  // namespace rangebook

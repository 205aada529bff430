// Size reach of one capture and across shops, and since when it holds.
#include "tracker/size_report.h"

#include <fmt/format.h>
#include <fmt/ranges.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/tracker/range_text.h"

namespace rangebook {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;
using testing::range;
using ::testing::SizeIs;
using testing::within;

/// Capture number `id`, a year after the one before it.
Snapshot seen(std::int64_t id, std::string_view text) {
  Snapshot snapshot = range("S" + std::to_string(id), text);
  snapshot.capture.id = id;
  snapshot.capture.on = date::sys_days(date::year(2020) / 9 / 1) + date::days(365 * id);
  return snapshot;
}

/// `earlier`: newest first.
SizeReport report(const Snapshot& now, const std::vector<Snapshot>& earlier,
                  const std::vector<StatedSizes>& stated = {}, std::string_view category = "") {
  SizeReporter reporter(now, stated, category);
  for (const Snapshot& each : earlier) {
    if (reporter.wants_more()) reporter.add(each);
  }
  return reporter.take();
}

/// `8: 2, in 1, ? 1, since 1`.
std::vector<std::string> texts(const SizeTable& table) {
  std::vector<std::string> result;
  for (const SizeLine& line : table.sizes) {
    std::string text = fmt::format("{}: {}, in {}, ? {}", line.step.size.label, line.step.offering,
                                   line.step.in_stock, line.step.stock_unknown);
    if (line.since) text += fmt::format(", since {}", line.since->first.capture);
    if (line.stated) text += ", stated";
    result.push_back(text);
  }
  return result;
}

constexpr const char* kRange = R"(
  AB1 | Maya | Dresses  | navy | 8, 10, 12 | 50 | in
  AB2 | Ines | Dresses  | navy | 8, 10     | 80 | out
  AB3 | Ada  | Dresses  | navy | 8         | 80
  AB4 | Eva  | Dresses  | navy | -         | 80 | in
  AB5 | Lia  | Knitwear | navy | blorp     | 60 | in
)";

TEST(SizeReport, CountsAndAddsUp) {
  const SizeReport result = report(seen(3, kRange), {});
  ASSERT_THAT(result.categories, SizeIs(3));
  for (const CategorySizes& each : result.categories) {
    EXPECT_EQ(each.lines, each.ranked + each.unranked + each.unsized) << each.category;
  }
  const CategorySizes& dresses = result.categories[1];
  EXPECT_EQ(dresses.category, "dresses");
  EXPECT_EQ(dresses.unsized, 1U);
  ASSERT_THAT(dresses.tables, SizeIs(1));
  EXPECT_EQ(dresses.tables[0].lines, 3U);  // the line without sizes is in no denominator
  EXPECT_THAT(texts(dresses.tables[0]),
              ElementsAre("8: 3, in 1, ? 1, since 3", "10: 2, in 1, ? 0, since 3",
                          "12: 1, in 1, ? 0, since 3"));
  EXPECT_EQ(result.categories[2].unranked, 1U);
}

TEST(SizeReport, IntervalsOnlyWhereTheCaptureIsPartial) {
  const SizeReport partial = report(seen(3, kRange), {});
  EXPECT_TRUE(partial.categories[1].tables[0].sizes[0].step.offering_interval.has_value());
  const char* const whole = "AB1 | Maya | Dresses | navy | 8 | 50 | in";
  EXPECT_FALSE(report(seen(3, whole), {}).categories[1].partial);
  Snapshot refused = seen(3, whole);
  refused.refused = {{"AB9", ""}};
  EXPECT_TRUE(report(refused, {}).categories[1].partial);
  // A capture of dresses looked at all dresses, but not at the whole range.
  const SizeReport dresses = report(within(seen(3, whole), {"dresses"}), {});
  EXPECT_TRUE(dresses.categories[0].partial);
  EXPECT_FALSE(dresses.categories[1].partial);
}

TEST(SizeReport, StatedSizesStandAgainstFound) {
  const Day on = date::sys_days(date::year(2021) / 1 / 1);
  const SizeReport result = report(
      seen(3, "AB1 | Maya | Dresses | navy | 8, 10, 14 | 50 | in"), {},
      {{"6-10", on - date::days(9)}, {"8-14", on}, {"8-99", on + date::days(9999)}}, "dresses");
  EXPECT_EQ(result.stated->words, "8-14");
  ASSERT_THAT(result.categories, SizeIs(1));
  EXPECT_THAT(texts(result.categories[0].tables[0]),
              ElementsAre("8: 1, in 1, ? 0, since 3, stated", "10: 1, in 1, ? 0, since 3, stated",
                          "12: 0, in 0, ? 0, stated", "14: 1, in 1, ? 0, since 3, stated"));
}

std::string line(std::string_view sizes) {
  return "AB1 | Maya | Dresses | navy | " + std::string(sizes) + " | 50 | in";
}

TEST(SizeReport, SinceTheEarliestCaptureWithoutAGap) {
  const auto since = [](const std::vector<Snapshot>& earlier) {
    return report(seen(9, line("8, 10")), earlier, {}, "dresses")
        .categories[0]
        .tables[0]
        .sizes[1]
        .since.value();
  };
  EXPECT_EQ(since({}).first.capture, 9);
  EXPECT_EQ(since({seen(8, line("8, 10")), seen(7, line("10"))}).first.capture, 7);
  EXPECT_EQ(since({seen(8, line("8")), seen(7, line("10"))}).first.capture, 9);
  // What a capture could not see is no gap, and no proof either.
  const auto knitwear = within(seen(8, "AB2 | Ines | Knitwear | navy | 8 | 9"), {"knitwear"});
  const OfferedSince across = since({knitwear, seen(7, line("10"))});
  EXPECT_EQ(across.first.capture, 7);
  EXPECT_EQ(across.captures, 2U);
  EXPECT_EQ(across.cannot_tell, 1U);
  EXPECT_EQ(since({seen(8, line("-"))}).first.capture, 9);
  Snapshot refused = seen(8, line("8"));
  refused.refused = {{"AB9", ""}};
  EXPECT_EQ(since({refused, seen(7, line("10"))}).first.capture, 7);
}

// --- One size across shops

std::vector<ReachingShop> reaching(const Snapshot& now, std::string_view label,
                                   const std::vector<Snapshot>& earlier = {},
                                   std::string_view category = "all") {
  ReachingSearch search(now, size_in(label, SizeSystem::uk).value(), category);
  for (const Snapshot& each : earlier) {
    if (search.wants_more()) search.add(each);
  }
  return search.take();
}

std::string text(const ReachingShop& row) {
  return fmt::format("{} {} {} of {}, in {}{}", to_string(row.reaching), to_string(row.fit),
                     row.step.offering, row.lines, row.step.in_stock,
                     row.since ? fmt::format(", since {}", row.since->first.capture) : "");
}

TEST(Reaching, LinesOfferingASize) {
  const auto rows = reaching(seen(3, kRange), "10", {seen(2, line("10")), seen(1, line("8"))});
  ASSERT_THAT(rows, SizeIs(1));
  EXPECT_EQ(text(rows[0]), "reaches regular 2 of 3, in 1, since 2");
  EXPECT_EQ(rows[0].unsized, 1U);
  EXPECT_TRUE(rows[0].partial);
}

TEST(Reaching, NotFoundIsNotOtherSystemIsNotUnseen) {
  EXPECT_EQ(text(reaching(seen(3, line("8, 10")), "24")[0]), "not-found regular 0 of 1, in 0");
  const auto other = reaching(seen(3, line("S, M, L")), "24");
  EXPECT_EQ(text(other[0]), "other-system regular 0 of 0, in 0");
  EXPECT_THAT(other[0].systems, ElementsAre(SizeSystem::alpha));
  EXPECT_EQ(text(reaching(seen(3, line("-")), "24")[0]), "not-seen regular 0 of 0, in 0");
  EXPECT_EQ(text(reaching(seen(3, line("10")), "10", {}, "tops")[0]),
            "not-seen regular 0 of 0, in 0");
}

TEST(Reaching, DualSizesCountAsBothAndFitsApart) {
  const auto rows = reaching(seen(3, line("8, 22/24, 24_Petite")), "24");
  ASSERT_THAT(rows, SizeIs(2));
  EXPECT_EQ(text(rows[0]), "reaches regular 1 of 1, in 1, since 3");
  EXPECT_EQ(text(rows[1]), "reaches petite 1 of 1, in 1, since 3");
}

TEST(Reaching, SizesOfASystem) {
  EXPECT_TRUE(size_in("24", SizeSystem::uk).has_value());
  EXPECT_EQ(size_in("XL", SizeSystem::uk)->system, SizeSystem::alpha);
  EXPECT_EQ(size_in("EU 44", SizeSystem::uk)->system, SizeSystem::eu);
  EXPECT_EQ(size_in("24", SizeSystem::unknown), std::nullopt);
  EXPECT_EQ(size_in("blorp", SizeSystem::uk), std::nullopt);
}

TEST(Reaching, LargestShareFirst) {
  std::vector<ReachingShop> shops(4);
  shops[0].shop.slug = "b";
  shops[1].shop.slug = "a";
  shops[2].shop.slug = "c";
  shops[3].shop.slug = "d";
  for (ReachingShop& each : shops) {
    each.reaching = Reaching::reaches;
    each.lines = 3;
    each.step.offering = 1;
  }
  shops[2].step.offering = 2;
  shops[3].reaching = Reaching::not_seen;
  sort_reaching(shops);
  std::string order;
  for (const ReachingShop& each : shops) order += each.shop.slug;
  EXPECT_EQ(order, "cabd");
}

}  // namespace
}  // namespace rangebook

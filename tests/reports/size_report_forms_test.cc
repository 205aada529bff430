// The size reports: stated against found, intervals, and what cannot be said.
#include "reports/size_report_forms.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <sstream>

#include "reports/share_words.h"
#include "tests/reports/fixture/change_set.h"
#include "tests/reports/fixture/read_json.h"

namespace rangebook {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

SizeLine size(const char* label, std::uint32_t offering, bool stated) {
  SizeLine line;
  line.step.size = {label, SizeSystem::uk, FitRange::regular, std::stoi(label) * 10,
                    std::stoi(label) * 10};
  line.step.offering = offering;
  line.step.in_stock = offering / 2;
  line.stated = stated;
  if (offering > 0) {
    line.since = OfferedSince{{41, fixture::day("2025-09-03"), "AW25", "", std::nullopt}, 2, 1};
  }
  return line;
}

SizeReport invented() {
  SizeReport report;
  report.shop = fixture::rich().shop;
  report.capture = fixture::rich().to;
  report.rows_refused = 1;
  report.stated = StatedSizes{"8-26", fixture::day("2026-09-01")};
  CategorySizes all{"all", 30, 24, 2, 4, true, {}};
  all.tables.push_back({SizeSystem::uk,
                        FitRange::regular,
                        24,
                        {size("8", 24, true), size("24", 4, true), size("26", 0, true)}});
  for (SizeLine& line : all.tables[0].sizes) {
    line.step.offering_interval = ShareInterval{66'780, 358'537};
  }
  report.categories = {all};
  return report;
}

TEST(SizesPage, StatedAgainstFound) {
  const std::string text = page_text(sizes_page(invented()));
  EXPECT_THAT(text, HasSubstr("Quillmere & Daughters states UK 8-26 (read 1 September 2026). Its "
                              "largest, 26, was found in 0 of 24 lines of all that was looked at"));
  EXPECT_THAT(text, HasSubstr("the largest found is 24, in 4 of 24."));
}

TEST(SizesPage, IntervalsAreRoundedOutwards) {
  EXPECT_THAT(page_text(sizes_page(invented())), HasSubstr("16.7% (95%: 6–36%)"));
  EXPECT_EQ(interval_words({60'000, 350'000}), "6–35%");
  EXPECT_EQ(interval_words({0, 1'000'000}), "0–100%");
  EXPECT_EQ(share_words(0, 0), "-");
  EXPECT_EQ(share_words(1, 3), "33.3%");
}

TEST(SizesPage, LinesWithoutSizesAreCountedBeside) {
  const std::string text = page_text(sizes_page(invented()));
  EXPECT_THAT(text, HasSubstr("lines that do not state their sizes are in no share"));
  EXPECT_THAT(text, HasSubstr("1 row was refused"));
  EXPECT_THAT(text, HasSubstr("(1 in between cannot tell)"));
}

TEST(SizesPage, WithoutSizesNothingIsSaid) {
  SizeReport empty = invented();
  empty.categories = {CategorySizes{"all", 4, 0, 0, 4, true, {}}};
  EXPECT_THAT(page_text(sizes_page(empty)),
              HasSubstr("No line that states its sizes was captured"));
  EXPECT_THAT(page_html(sizes_page(empty)), HasSubstr("<h1>"));
}

TEST(SizesJson, HoldsTheFigures) {
  const auto json = fixture::read_json(sizes_json(invented()));
  EXPECT_EQ(json["format"], "rangebook.sizes/1");
  EXPECT_EQ(json["stated"]["sizes"], "8-26");
  const auto& sizes = json["categories"][0]["tables"][0]["sizes"];
  EXPECT_EQ(sizes[1]["offering"], 4);
  EXPECT_EQ(sizes[1]["offering_interval"][0], "0.066780");
  EXPECT_EQ(sizes[1]["since"]["date"], "2025-09-03");
  EXPECT_TRUE(sizes[2]["since"].is_null());
}

ReachingReport across() {
  ReachingReport report{{"24", SizeSystem::uk, FitRange::regular, 240, 240}, "dresses", {}};
  ReachingShop reaches;
  reaches.shop = fixture::rich().shop;
  reaches.capture = fixture::rich().to;
  reaches.reaching = Reaching::reaches;
  reaches.lines = 24;
  reaches.step = size("24", 4, false).step;
  reaches.since = size("24", 4, false).since;
  ReachingShop other = reaches;
  other.shop.name = "Farrowgate";
  other.reaching = Reaching::other_system;
  other.systems = {SizeSystem::eu};
  ReachingShop unseen;
  unseen.shop.slug = "pellorie";
  report.shops = {reaches, other, unseen};
  return report;
}

TEST(ReachingPage, SaysWhoAndWhatCannotBeCompared) {
  const std::string text = page_text(reaching_page(across()));
  EXPECT_THAT(text, HasSubstr("UK 24 in dresses: found at 1 of"));
  EXPECT_THAT(text, HasSubstr("4 of 24"));
  EXPECT_THAT(text, HasSubstr("Other size system, not compared"));
  EXPECT_THAT(text, HasSubstr("no capture"));
  EXPECT_THAT(text, HasSubstr("2 September 2026"));
}

TEST(ReachingData, JsonAndCsv) {
  const auto json = fixture::read_json(reaching_json(across()));
  EXPECT_EQ(json["shops"][0]["verdict"], "reaches");
  EXPECT_EQ(json["shops"][1]["systems"][0], "eu");
  EXPECT_TRUE(json["shops"][2]["capture"].is_null());
  for (const std::string& csv : {reaching_csv(across()), sizes_csv(invented())}) {
    std::istringstream rows(csv);
    std::string header;
    std::getline(rows, header);
    for (std::string row; std::getline(rows, row);) {
      EXPECT_EQ(std::count(row.begin(), row.end(), ','),
                std::count(header.begin(), header.end(), ','))
          << row;
    }
  }
}

}  // namespace
}  // namespace rangebook

// The price report: every form says the same figures, and they add up.
#include "reports/price_report.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <sstream>

#include "tests/reports/fixture/change_set.h"
#include "tests/reports/fixture/read_json.h"

namespace rangebook {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

ChangeSet invented() {
  ChangeSet set = fixture::rich();
  WasPriceCheck check;
  check.marked_down = 4;
  check.lower = 1;
  check.not_lower = 1;
  check.not_checked = 2;
  check.findings = {{fixture::line(5, "TR-2002", "Wide-leg <b>trouser</b>", "trousers"),
                     {fixture::pounds(4500), {"ink"}, {}, fixture::pounds(7900)},
                     fixture::seen_now(52),
                     fixture::day("2026-08-28"),
                     fixture::pounds(6900),
                     {55, fixture::day("2026-08-10"), "AW26", "august.csv", 12},
                     false}};
  set.was_prices = check;
  return set;
}

TEST(PriceReport, SaysTheIndexAndItsBase) {
  const std::string text = page_text(price_page(invented()));
  EXPECT_THAT(text, HasSubstr("full prices of all that was looked at are up 3.1% on 58 lines"));
  EXPECT_THAT(text, HasSubstr("Jevons 1.0312, Dutot 1.0300, Carli 1.0400"));
}

TEST(PriceReport, WasPricesStandBesideTheClaim) {
  const std::string text = page_text(price_page(invented()));
  EXPECT_THAT(text, HasSubstr("4 lines marked down"));
  EXPECT_THAT(text, HasSubstr("1 line with a lower price captured"));
  EXPECT_THAT(text, HasSubstr("2 lines not checked"));
  EXPECT_THAT(text, HasSubstr("£69.00"));
  EXPECT_THAT(text, HasSubstr("10 August 2026"));
  EXPECT_THAT(text, HasSubstr("august.csv, line 12"));
  EXPECT_THAT(page_text(price_page(fixture::rich())), Not(HasSubstr("30 days")));
}

TEST(PriceReport, OneCategoryAlone) {
  const std::string text = page_text(price_page(invented(), {"dresses", false}));
  EXPECT_THAT(text, HasSubstr("prices of dresses"));
  EXPECT_THAT(text, Not(HasSubstr("knitwear, now")));
  EXPECT_THAT(text, Not(HasSubstr("august.csv")));  // a finding about trousers
}

TEST(PriceReport, NothingOfTheShopIsMarkup) {
  const std::string html = page_html(price_page(invented(), {"", true}));
  EXPECT_THAT(html, HasSubstr("Wide-leg &lt;b&gt;trouser"));
  EXPECT_THAT(html, HasSubstr("This data is invented"));
  EXPECT_THAT(page_markdown(price_page(invented())), HasSubstr("Wide-leg \\<b\\>trouser"));
}

TEST(PriceReport, JsonHoldsTheFigures) {
  const auto json = fixture::read_json(price_json(invented()));
  EXPECT_EQ(json["format"], "rangebook.prices/1");
  EXPECT_EQ(json["quartiles"], "hyndman-fan-7");
  EXPECT_EQ(json["categories"][0]["index"]["jevons"], "1.031200");
  EXPECT_EQ(json["categories"][1]["prices"][0]["now"]["entry_minor"], 5900);
  EXPECT_EQ(json["was_prices"]["findings"][0]["lowest_minor"], 6900);
  EXPECT_EQ(json["was_prices"]["findings"][0]["lowest_at"]["date"], "2026-08-10");
  EXPECT_TRUE(fixture::read_json(price_json(fixture::rich()))["was_prices"].is_null());
}

TEST(PriceReport, CsvRowsHaveAllColumns) {
  std::istringstream csv(price_csv(invented()));
  std::size_t rows = 0;
  for (std::string row; std::getline(csv, row); ++rows) {
    EXPECT_EQ(std::count(row.begin(), row.end(), ','), 28) << row;
  }
  EXPECT_EQ(rows, 9U);  // a header, and then and now of four categories
}

TEST(PriceReport, SameInputSameBytes) {
  EXPECT_EQ(page_html(price_page(invented())), page_html(price_page(invented())));
  EXPECT_EQ(price_csv(invented()), price_csv(invented()));
}

}  // namespace
}  // namespace rangebook

// Terms from schema.org markup: the standard's own examples, and what its definitions say.
#include "importers/terms_markup.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>
#include <nlohmann/json.hpp>

#include "importers/policy_text.h"
#include "schema/terms_text.h"

namespace rangebook {
namespace {

using ::testing::Contains;
using ::testing::IsEmpty;

TermsReading read_markup(const std::string& json, std::string_view country = "GB",
                         std::string_view currency = "GBP") {
  TermsContext context;
  context.document = "page.html";
  context.country = country;
  context.currency = Currency::from_code(currency);
  context.observed = parse_day("2026-09-07");
  return read_policy_page("<!DOCTYPE html><html><head><script type=\"application/ld+json\">" +
                              json + "</script></head><body></body></html>",
                          context);
}

std::vector<std::string> lines(const TermsReading& reading) {
  std::vector<std::string> all;
  for (const auto& [field, text] : stated_values(reading.terms))
    all.push_back(field + " = " + text);
  return all;
}

std::vector<std::string> doubt_lines(const TermsReading& reading) {
  std::vector<std::string> all;
  for (const auto& doubt : reading.doubts) all.push_back(doubt.field + " = " + doubt.text);
  return all;
}

TEST(TermsMarkup, ReadsTheExamplesOfSchemaOrg) {
  std::ifstream file(std::string(RANGEBOOK_CHECKS) + "/schemaorg_terms.json");
  const auto checks = nlohmann::json::parse(file);
  ASSERT_EQ(checks["cases"].size(), 5U);
  for (const auto& one : checks["cases"]) {
    const auto reading = read_markup(one["markup"], one["country"].get<std::string>(),
                                     one["currency"].get<std::string>());
    const auto expected = one["terms"].get<std::vector<std::string>>();
    EXPECT_THAT(lines(reading), ::testing::UnorderedElementsAreArray(expected)) << one["id"];
    for (const std::string doubt : one["doubts"]) {
      EXPECT_THAT(doubt_lines(reading), Contains(doubt)) << one["id"];
    }
  }
}

// Property definitions of schema.org, from memory: merchantReturnDays counts from delivery, or is a
// date; a seasonal override holds for purchases between its two dates.
TEST(TermsMarkup, ReadsReturnsWithASeason) {
  const auto reading = read_markup(R"({"@context":"https://schema.org","@type":"OnlineStore",
    "hasMerchantReturnPolicy":{"@type":"MerchantReturnPolicy","applicableCountry":["GB","IE"],
    "returnPolicyCategory":"https://schema.org/MerchantReturnFiniteReturnWindow",
    "merchantReturnDays":30,"returnMethod":["https://schema.org/ReturnByMail","ReturnInStore"],
    "returnFees":"https://schema.org/ReturnShippingFees",
    "returnShippingFeesAmount":{"@type":"MonetaryAmount","value":"2.95","currency":"GBP"},
    "refundType":["https://schema.org/FullRefund","https://schema.org/StoreCreditRefund"],
    "restockingFee":10,
    "returnPolicySeasonalOverride":{"@type":"MerchantReturnPolicySeasonalOverride",
      "startDate":"2026-11-01","endDate":"2026-12-24","merchantReturnDays":"2027-01-31"}}})");
  EXPECT_THAT(lines(reading),
              ::testing::UnorderedElementsAre(
                  "return.window = 30 days from delivery",
                  "return.seasons = bought 1 Nov 2026 to 24 Dec 2026, return by 31 Jan 2027",
                  "return.paid_by = customer", "return.fee = 2.95 GBP", "return.post = yes",
                  "return.store = yes", "return.refund = original payment, credit",
                  "return.restocking_share = 10%"));
  EXPECT_THAT(reading.doubts, IsEmpty());
  EXPECT_EQ(reading.terms.evidence.at("return.window").sentence, "merchantReturnDays: 30");
}

TEST(TermsMarkup, ReadsRateAndTimeSettings) {
  const auto reading = read_markup(R"([{"@context":"https://schema.org",
    "@type":"ShippingRateSettings","shippingLabel":"Express",
    "shippingDestination":{"@type":"DefinedRegion","addressCountry":"GB"},
    "shippingRate":{"@type":"MonetaryAmount","value":5.5,"currency":"GBP"},
    "freeShippingThreshold":{"@type":"MonetaryAmount","value":"80","currency":"GBP"}},
    {"@context":"https://schema.org","@type":"OfferShippingDetails",
    "shippingDestination":{"@type":"DefinedRegion","addressCountry":"DE"},
    "shippingRate":{"@type":"MonetaryAmount","value":"9.90","currency":"EUR"},
    "deliveryTime":{"@type":"ShippingDeliveryTime","transitTime":"P1W"}}])");
  EXPECT_THAT(lines(reading),
              ::testing::UnorderedElementsAre(
                  "delivery.express.name = Express", "delivery.express.regions = GB",
                  "delivery.express.fee = 5.50 GBP", "delivery.express.free_over = 80.00 GBP",
                  "delivery.express.express = yes", "delivery.standard-de.regions = DE",
                  "delivery.standard-de.fee = 9.90 EUR", "delivery.standard-de.transit = 7 days",
                  "delivery.standard-de.international = yes"));
}

TEST(TermsMarkup, AsksWhereMarkupAndTextDisagree) {
  TermsContext context;
  context.currency = Currency::from_code("GBP");
  const auto reading = read_policy_page(
      R"(<html><head><script type="application/ld+json">{"@context":"https://schema.org",
      "@type":"MerchantReturnPolicy","merchantReturnDays":14}</script></head>
      <body><p>You can return your order within 28 days of delivery.</p></body></html>)",
      context);
  EXPECT_EQ(field_text(reading.terms, "return.window"), std::nullopt);
  EXPECT_THAT(doubt_lines(reading),
              ::testing::UnorderedElementsAre("return.window = 14 days from delivery",
                                              "return.window = 28 days from delivery"));
}

TEST(TermsMarkup, MicrodataIsReadByTheSameRules) {
  TermsContext context;
  const auto reading = read_policy_page(
      R"(<html><body><div itemscope itemtype="https://schema.org/MerchantReturnPolicy">
      <meta itemprop="merchantReturnDays" content="21">
      <link itemprop="returnMethod" href="https://schema.org/ReturnInStore"></div></body></html>)",
      context);
  EXPECT_THAT(lines(reading), ::testing::UnorderedElementsAre(
                                  "return.window = 21 days from delivery", "return.store = yes"));
}

// ISO 8601-1:2019, 5.5.2: durations by designators.
TEST(TermsMarkup, ReadsIsoDurations) {
  EXPECT_EQ(read_iso_duration("P3D"), (DaySpan{3, 3, DayUnit::days}));
  EXPECT_EQ(read_iso_duration("P2W"), (DaySpan{14, 14, DayUnit::days}));
  EXPECT_EQ(read_iso_duration("P1M"), (DaySpan{1, 1, DayUnit::months}));
  EXPECT_EQ(read_iso_duration("P1Y"), (DaySpan{12, 12, DayUnit::months}));
  EXPECT_EQ(read_iso_duration("PT36H"), (DaySpan{2, 2, DayUnit::days}));
  EXPECT_EQ(read_iso_duration("PT30M"), std::nullopt);
  EXPECT_EQ(read_iso_duration("3 days"), std::nullopt);
  EXPECT_EQ(read_iso_duration("P"), std::nullopt);
}

}  // namespace
}  // namespace rangebook

// The shops side by side: what is compared, what is left unsaid, the same figures in every form.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "reports/shop_index_report.h"
#include "reports/terms_words.h"
#include "tests/reports/fixture/change_set.h"
#include "tests/reports/fixture/read_json.h"

namespace rangebook {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

const Currency kPounds = *Currency::from_code("GBP");

ShopEntry entry(const std::string& slug, MinorUnits price, const std::string& largest) {
  ShopEntry shop;
  shop.shop = {slug, "", "GB", kPounds, SizeSystem::uk};
  shop.captures = 2;
  shop.capture = CaptureInfo{1, slug, "AW26", fixture::day("2026-09-01"), {}, {}};
  shop.looked = true;
  SizeLine line;
  line.step.size = {largest, SizeSystem::uk, FitRange::regular, std::stoi(largest) * 10,
                    std::stoi(largest) * 10};
  line.step.offering = 3;
  shop.sizes = {"all", 3, 3, 0, 0, false, {{SizeSystem::uk, FitRange::regular, 3, {line}}}};
  shop.prices = {{kPounds, 3, price, price, price, price, price, 0}};
  return shop;
}

ShopIndex invented() {
  ShopIndex index{"all", {entry("ash", 1950, "24"), entry("birch", 2450, "18")}};
  ShopEntry empty;
  empty.shop = {"cedar", "=cmd|'/C calc'!A0", "GB", kPounds, SizeSystem::uk};
  index.shops.push_back(empty);
  return index;
}

TEST(ShopIndex, SaysWhoGoesFurthestAndBeginsLowest) {
  const std::string text = page_text(shop_index_page(invented()));
  EXPECT_THAT(text, HasSubstr("The largest size found is UK 24, at ash[1]."));
  EXPECT_THAT(text, HasSubstr("Entry prices in GBP are lowest at ash: £19.50[1]."));
  EXPECT_THAT(text, HasSubstr("no capture"));
}

TEST(ShopIndex, ATieOfAllIsNoFinding) {
  const ShopIndex index{"all", {entry("ash", 1950, "18"), entry("birch", 2450, "18")}};
  EXPECT_THAT(page_text(shop_index_page(index)), Not(HasSubstr("largest size")));
}

TEST(ShopIndex, WhatWasNotLookedAtIsSaid) {
  ShopIndex index = invented();
  index.category = "coats";
  index.shops[1].looked = false;
  index.shops[1].sizes = {"coats", 0, 0, 0, 0, true, {}};
  index.shops[1].prices.clear();
  EXPECT_THAT(page_text(shop_index_page(index)), HasSubstr("not looked at"));
}

TEST(ShopIndex, EveryFormHasTheSameFigures) {
  const auto json = fixture::read_json(shop_index_json(invented()));
  EXPECT_EQ(json["shops"][0]["prices"][0]["entry_minor"], 1950);
  EXPECT_EQ(json["shops"][0]["sizes"][0]["max"], "24");
  EXPECT_TRUE(json["shops"][2]["capture"].is_null());
  const std::string csv = shop_index_csv(invented());
  EXPECT_THAT(csv, HasSubstr("ash,,2,AW26,2026-09-01,3,no,GBP,3,19.50"));
  EXPECT_THAT(csv, Not(HasSubstr(",=cmd"))) << "harmless in a spreadsheet";
}

TEST(TermsWords, FeesThresholdsAndTheWayBack) {
  Terms terms;
  DeliveryOption standard;
  standard.key = "standard";
  standard.fee = Money{395, kPounds};
  standard.free_over = Threshold{{5000, kPounds}, false};
  DeliveryOption express;
  express.key = "express";
  terms.delivery = {standard, express};
  ReturnPolicy policy;
  policy.window = ReturnWindow{28, DayUnit::days, CountedFrom::delivery};
  policy.cost.paid_by = Payer::customer;
  policy.methods[ReturnMethod::post].offered = true;
  policy.methods[ReturnMethod::store] = {true, {Payer::shop, {}}};
  policy.methods[ReturnMethod::courier].offered = false;
  terms.returns = {policy};
  EXPECT_EQ(plain_text(delivery_words(terms), false),
            "standard £3.95, free above £50.00; express fee not stated");
  EXPECT_EQ(plain_text(returns_words(terms), false),
            "28 days from delivery; in store free; by post at own postage");
  EXPECT_TRUE(returns_words(Terms{}).empty()) << "nothing is said where nothing is stated";
}

}  // namespace
}  // namespace rangebook

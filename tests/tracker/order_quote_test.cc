// Orders at a shop. That a fee falls away from a threshold on, that windows of two to five weeks
// are usual, and that returns go to a shop or by post: common practice, no source.
#include "tracker/order_quote.h"

#include <gtest/gtest.h>

#include "schema/terms_text.h"

namespace rangebook {
namespace {

Currency gbp() { return Currency::from_code("GBP").value(); }
Day day(std::string_view text) { return parse_day(text).value(); }

TermsInForce shop_with(std::string_view text) {
  auto read = read_terms_text(text, gbp());
  EXPECT_TRUE(read.faults.empty()) << read.faults.front().what;
  TermsInForce shop;
  shop.shop = {.slug = "quillmere", .name = "Quillmere", .country = "GB", .currency = gbp()};
  shop.terms = std::move(read.terms);
  shop.delivery_on = shop.returns_on = day("2026-09-07");
  return shop;
}

Order order_of(std::vector<OrderItem> items) {
  Order order{gbp(), std::move(items), 0, 1, {}, {}, {}, {}, day("2026-11-20"), {}};
  return order;
}

OrderQuote quote(std::string_view terms, const Order& order, const Holidays& holidays = {}) {
  return quote_order(shop_with(terms), order, holidays);
}

constexpr std::string_view kUsual = R"(
delivery.standard.fee = 3.95 GBP
delivery.standard.free_over = 50.00 GBP
delivery.express.fee = 6.95 GBP
delivery.express.express = yes
return.window = 28 days from delivery
return.post = yes
return.post.paid_by = customer
return.post.fee = 2.50 GBP
return.store = yes
return.store.fee = free
return.items.swimwear = not returnable
)";

TEST(OrderQuote, AThresholdHitExactlyIsFree) {
  const auto exact = quote(kUsual, order_of({{5000, false, {}}}));
  EXPECT_EQ(exact.delivery->fee, 0);
  EXPECT_TRUE(exact.delivery->free_by_value);
  EXPECT_EQ(exact.cost_to_try, 0);
  const auto below = quote(kUsual, order_of({{4999, false, {}}}));
  EXPECT_EQ(below.delivery->fee, 395);
  EXPECT_EQ(below.delivery->gap_to_free, 1);
  const auto over = quote(
      "delivery.standard.fee = 3.95 GBP\n"
      "delivery.standard.free_over = over 50.00 GBP\n",
      order_of({{5000, false, {}}}));
  EXPECT_EQ(over.delivery->fee, 395);
  EXPECT_EQ(over.delivery->gap_to_free, 1);
}

TEST(OrderQuote, TheCheapestWayBackCountsUnlessOneIsAsked) {
  auto order = order_of({{3000, false, {}}, {1500, true, {}}});
  const auto any = quote(kUsual, order);
  EXPECT_EQ(any.returns->method, ReturnMethod::store);
  EXPECT_EQ(any.cost_to_try, 395);
  order.method = ReturnMethod::post;
  const auto post = quote(kUsual, order);
  EXPECT_EQ(post.returns->fee, 250);
  EXPECT_EQ(post.cost_to_try, 645);
  EXPECT_EQ(post.returns->refunded, 1500);
  order.delivery = DeliveryWish::express;
  EXPECT_EQ(quote(kUsual, order).cost_to_try, 945);
}

TEST(OrderQuote, WhatCannotGoBackStaysPaid) {
  const auto all = quote(kUsual, order_of({{3000, true, ReturnItem::swimwear}}));
  EXPECT_EQ(all.returns->stays, 3000);
  EXPECT_EQ(all.returns->refunded, 0);
  EXPECT_EQ(all.returns->fee, 0);
  EXPECT_EQ(all.cost_to_try, 395);
}

TEST(OrderQuote, WhatIsNotStatedIsNotCountedAsFree) {
  const auto silent =
      quote("return.window = 14 days from delivery\n", order_of({{3000, true, {}}}));
  EXPECT_FALSE(silent.cost_to_try.has_value());
  EXPECT_EQ(silent.unknown.size(), 2U);  // the delivery fee, and who pays the way back
  const auto own = quote(
      "delivery.a.fee = free\nreturn.paid_by = customer\n"
      "return.window = 14 days from purchase\n",
      order_of({{3000, true, {}}}));
  EXPECT_TRUE(own.returns->own_postage);
  EXPECT_FALSE(own.cost_to_try.has_value());
}

TEST(OrderQuote, TheDiscountIsSharedToTheCent) {
  const std::vector<OrderItem> items{{1000, false, {}}, {1000, true, {}}, {1000, true, {}}};
  EXPECT_EQ(apportion(100, items), (std::vector<MinorUnits>{34, 33, 33}));
  auto order = order_of(items);
  order.discount = 100;
  const auto result = quote(kUsual, order);
  EXPECT_EQ(result.paid_for_goods, 2900);
  EXPECT_EQ(result.returns->refunded, 1934);
}

TEST(OrderQuote, AThresholdThatOnlyCountsWhatIsKeptBringsTheFeeBack) {
  const auto result = quote(
      "delivery.a.fee = 4.00 GBP\ndelivery.a.free_over = 50.00 GBP\n"
      "delivery.a.threshold_kept = yes\nreturn.paid_by = shop\n"
      "return.window = 14 days from purchase\n",
      order_of({{3000, false, {}}, {3000, true, {}}}));
  EXPECT_EQ(result.delivery->fee, 0);
  EXPECT_EQ(result.returns->delivery_charged, 400);
  EXPECT_EQ(result.cost_to_try, 400);
}

TEST(OrderQuote, DeliveryComesBackOnlyWhenAllDoesAndTheShopSaysSo) {
  constexpr std::string_view kTerms =
      "delivery.a.fee = 4.00 GBP\nreturn.paid_by = shop\nreturn.delivery_refunded = yes\n"
      "return.window = 14 days from purchase\n";
  EXPECT_EQ(quote(kTerms, order_of({{3000, true, {}}})).cost_to_try, 0);
  EXPECT_EQ(quote(kTerms, order_of({{3000, true, {}}, {100, false, {}}})).cost_to_try, 400);
}

TEST(OrderQuote, TheClosestPlaceDecides) {
  constexpr std::string_view kPlaces =
      "delivery.home.fee = 3.00 GBP\ndelivery.home.regions = GB\n"
      "delivery.eu.fee = 9.00 GBP\ndelivery.eu.regions = EU\n"
      "delivery.ie.fee = 12.00 GBP\ndelivery.ie.regions = IE\n"
      "delivery.all.fee = 1.00 GBP\ndelivery.all.regions = world\n"
      "delivery.all.not_regions = NO\n";
  auto order = order_of({{3000, false, {}}});
  const auto fee_to = [&](std::string region) {
    order.region = std::move(region);
    const auto result = quote(kPlaces, order);
    return result.delivery ? result.delivery->fee : std::nullopt;
  };
  EXPECT_EQ(fee_to(""), 300);
  EXPECT_EQ(fee_to("DE"), 900);
  EXPECT_EQ(fee_to("IE"), 1200);
  EXPECT_EQ(fee_to("JP"), 100);
  EXPECT_EQ(fee_to("NO"), std::nullopt);
  EXPECT_FALSE(quote(kPlaces, order).comparable);
}

TEST(OrderQuote, AnotherCurrencyIsNeverConverted) {
  auto order = order_of({{3000, false, {}}});
  order.currency = Currency::from_code("EUR").value();
  const auto result = quote(kUsual, order);
  EXPECT_FALSE(result.comparable);
  EXPECT_NE(result.obstacle.find("Nothing is converted"), std::string::npos);
}

TEST(ReturnDeadline, CountsFromTheKnownDayOrTheSafeSide) {
  auto order = order_of({{3000, true, {}}});
  order.delivered = day("2026-11-24");
  EXPECT_EQ(quote(kUsual, order).returns->deadline.day, day("2026-12-22"));
  order.delivered.reset();
  const auto safe = quote(kUsual, order).returns->deadline;
  EXPECT_EQ(safe.day, day("2026-12-18"));
  EXPECT_NE(safe.reckoned.find("safe side"), std::string::npos);
}

TEST(ReturnDeadline, ASeasonOnlyEverMakesItLater) {
  const auto last_day = [](std::string_view bought) {
    auto order = order_of({{3000, true, {}}});
    order.bought = day(bought);
    return quote(
               "return.window = 28 days from purchase\n"
               "return.seasons = bought 1 Nov to 24 Dec, return by 10 Jan\n",
               order)
        .returns->deadline;
  };
  EXPECT_EQ(last_day("2026-11-20").day, day("2027-01-10"));
  EXPECT_TRUE(last_day("2026-11-20").seasonal);
  EXPECT_EQ(last_day("2026-12-20").day, day("2027-01-17"));  // the usual window is later
  EXPECT_FALSE(last_day("2026-12-20").seasonal);
  EXPECT_EQ(last_day("2026-10-31").day, day("2026-11-28"));
}

// Directive 2011/83/EU, art. 9: 14 days from receipt. A hint with its source, never a verdict.
TEST(StatutoryCheck, AShortWindowIsToBeChecked) {
  auto order = order_of({{3000, true, {}}});
  order.region = "DE";
  const auto check = [&](std::string_view window) {
    return quote("return.window = " + std::string(window) + "\n", order).checks;
  };
  ASSERT_EQ(check("10 days from delivery").size(), 1U);
  EXPECT_NE(check("10 days from delivery").front().source.find("2011/83/EU"), std::string::npos);
  EXPECT_TRUE(check("14 days from delivery").empty());
  EXPECT_TRUE(check("28 days from purchase").empty());
  EXPECT_EQ(check("9 working days from delivery").size(), 1U);
  EXPECT_TRUE(check("1 month from purchase").empty());
  order.region = "US";
  EXPECT_TRUE(check("10 days from delivery").empty());
}

TEST(OrderComparison, KnownCostsFirstThenOpenOnesThenThoseThatDoNotCompare) {
  auto cheap = shop_with(kUsual);
  auto open = shop_with("return.window = 14 days from delivery\n");
  open.shop.slug = "anstey";
  auto foreign = shop_with(kUsual);
  foreign.shop.slug = "aarn";
  foreign.shop.currency = Currency::from_code("EUR");
  const auto compared =
      compare_order(std::vector{foreign, open, cheap}, order_of({{3000, true, {}}}), {});
  ASSERT_EQ(compared.quotes.size(), 3U);
  EXPECT_EQ(compared.quotes[0].shop, "quillmere");
  EXPECT_EQ(compared.quotes[1].shop, "anstey");
  EXPECT_EQ(compared.quotes[2].shop, "aarn");
}

}  // namespace
}  // namespace rangebook

// Rows to listings: what belongs to one line, what a cell stands for, what is refused and why.
#include "tracker/normaliser.h"

#include <gtest/gtest.h>

#include <initializer_list>
#include <map>

namespace rangebook {
namespace {

using Cells = std::map<Field, std::string>;

struct Result {
  std::vector<KeyedListing> lines;
  std::vector<Rejection> rejections;
};

Shop uk_shop() {
  Shop shop;
  shop.slug = "mill";
  shop.currency = Currency::from_code("GBP");
  shop.sizes = SizeSystem::uk;
  return shop;
}

Result normalise(const std::vector<Cells>& rows, const Shop& shop = uk_shop()) {
  Normaliser normaliser(shop);
  Result result;
  std::uint64_t line = 2;
  for (const auto& cells : rows) {
    RawRow row;
    for (const auto& [field, text] : cells) row[field] = text;
    row.origin.line = line++;
    if (auto done = normaliser.add(row)) result.lines.push_back(std::move(*done));
  }
  for (auto& done : normaliser.finish()) result.lines.push_back(std::move(done));
  result.rejections = normaliser.take_rejections();
  return result;
}

Cells variant(std::string code, std::string colour, std::string size, std::string price) {
  return {{Field::line_code, std::move(code)},
          {Field::name, "Maya dress"},
          {Field::colour, std::move(colour)},
          {Field::size, std::move(size)},
          {Field::price, std::move(price)}};
}

TEST(Normaliser, RowsOfOneCodeAreOneLine) {
  const Result result =
      normalise({variant("M1", "navy", "12", "79.90"), variant("M1", "navy", "10", "79.90"),
                 variant("M2", "ecru", "8", "45")});
  ASSERT_EQ(result.lines.size(), 2U);
  EXPECT_EQ(result.lines[0].key, "code:M1");
  const LineOffers& line = result.lines[0].listing.offers;
  EXPECT_EQ(line.sizes, (std::vector<std::string>{"10", "12"}));
  EXPECT_EQ(line.offers.at(0).price, 7990);
  EXPECT_EQ(line.currency->code(), "GBP");
  EXPECT_TRUE(result.rejections.empty());
}

TEST(Normaliser, RangesAndListsExpand) {
  const Result result = normalise({variant("M1", "navy|ecru", "8-14", "79.90")});
  const LineOffers& line = result.lines.at(0).listing.offers;
  EXPECT_EQ(line.colours, (std::vector<std::string>{"ecru", "navy"}));
  EXPECT_EQ(line.sizes, (std::vector<std::string>{"10", "12", "14", "8"}));
  EXPECT_EQ(line.offers.size(), 8U);
}

TEST(Normaliser, RowOrderDoesNotMatter) {
  const auto a = variant("M1", "navy", "12", "79.90");
  const auto b = variant("M1", "ecru", "8", "69.90");
  EXPECT_TRUE(
      normalise({a, b}).lines.at(0).listing.same_facts(normalise({b, a}).lines.at(0).listing));
}

TEST(Normaliser, WithoutCodesEachRowWithoutColourAndSizeIsALine) {
  const Cells row{{Field::name, "Maya dress"}, {Field::price, "79.90"}};
  const Result result = normalise({row, row});
  ASSERT_EQ(result.lines.size(), 2U);
  EXPECT_EQ(result.lines[0].key, "name:maya dress");
  EXPECT_EQ(result.lines[1].key, "name:maya dress#2");
}

TEST(Normaliser, TheAddressIsAKeyWithoutItsQuery) {
  EXPECT_EQ(line_key({"", "", "Maya", "", "", "https://www.Mill.example/Maya/?colour=navy#top"}),
            "url:mill.example/Maya");
}

TEST(Normaliser, AnUnreadablePriceRefusesTheRowAndNamesTheLine) {
  const Result result = normalise({variant("M1", "navy", "12", "ask us")});
  EXPECT_TRUE(result.lines.empty());
  ASSERT_EQ(result.rejections.size(), 1U);
  const Rejection& rejection = result.rejections[0];
  EXPECT_EQ(rejection.kind, RejectionKind::bad_price);
  EXPECT_EQ(rejection.field, "price");
  EXPECT_EQ(rejection.line, 2U);
  EXPECT_EQ(rejection.line_code, "M1");
  EXPECT_NE(rejection.what.find("ask us"), std::string::npos);
  EXPECT_FALSE(rejection.how_to_fix.empty());
}

// A dinar has three decimals (ISO 4217: KWD 3), so "1.299" may be one or a thousand.
TEST(Normaliser, AnAmbiguousPriceIsSettledByLaterRows) {
  Shop shop = uk_shop();
  shop.currency = Currency::from_code("KWD");
  const Result alone = normalise({variant("M1", "navy", "12", "1.299")}, shop);
  ASSERT_EQ(alone.rejections.size(), 1U);
  EXPECT_EQ(alone.rejections[0].kind, RejectionKind::ambiguous_price);
  const Result settled =
      normalise({variant("M1", "navy", "12", "1.299"), variant("M2", "navy", "12", "12.50")}, shop);
  EXPECT_TRUE(settled.rejections.empty());
  ASSERT_EQ(settled.lines.size(), 2U);
  EXPECT_EQ(settled.lines[1].key, "code:M1");
  EXPECT_EQ(settled.lines[1].listing.offers.offers[0].price, 1299);
}

TEST(Normaliser, TheSameVariantTwiceWithOtherFactsIsAConflict) {
  const Result result =
      normalise({variant("M1", "navy", "12", "79.90"), variant("M1", "navy", "12", "69.90"),
                 variant("M1", "navy", "12", "79.90")});
  ASSERT_EQ(result.rejections.size(), 1U);
  EXPECT_EQ(result.rejections[0].kind, RejectionKind::conflicting_rows);
  EXPECT_EQ(result.rejections[0].line, 3U);
  EXPECT_EQ(result.lines.at(0).listing.offers.offers.size(), 1U);
}

TEST(Normaliser, CurrencyOfTheRowAgainstTheSignOfThePrice) {
  Cells row = variant("M1", "navy", "12", "€79.90");
  EXPECT_EQ(normalise({row}).lines.at(0).listing.offers.currency->code(), "EUR");
  row[Field::currency] = "GBP";
  EXPECT_EQ(normalise({row}).rejections.at(0).kind, RejectionKind::bad_currency);
  row[Field::currency] = "quid";
  EXPECT_EQ(normalise({row}).rejections.at(0).field, "currency");
}

TEST(Normaliser, ABadGtinCostsTheCellOnly) {
  Cells row = variant("M1", "navy", "12", "79.90");
  row[Field::gtin] = "4.0E+12";
  const Result result = normalise({row});
  EXPECT_EQ(result.rejections.at(0).refused, Refused::cell);
  EXPECT_EQ(result.lines.at(0).listing.offers.offers.size(), 1U);
}

TEST(Normaliser, SharesThatDoNotSumAreDoubtedAndKept) {
  Cells row = variant("M1", "navy", "12", "79.90");
  row[Field::composition] = "60% cotton, 30% polyester";
  const Result result = normalise({row});
  EXPECT_EQ(result.rejections.at(0).refused, Refused::nothing);
  EXPECT_EQ(result.lines.at(0).listing.card.composition, "60% cotton, 30% polyester");
}

TEST(Normaliser, ARowWithoutANameIsRefused) {
  EXPECT_EQ(normalise({{{Field::line_code, "M1"}}}).rejections.at(0).kind,
            RejectionKind::missing_name);
}

// The members of https://schema.org/ItemAvailability; the other words are common practice.
TEST(ParseStock, SchemaOrgAndSpreadsheets) {
  for (const char* text : {"https://schema.org/InStock", "http://schema.org/LimitedAvailability",
                           "InStoreOnly", "OnlineOnly", "in stock", "yes", "TRUE", "1", "12"}) {
    EXPECT_EQ(parse_stock(text), Stock::in_stock) << text;
  }
  for (const char* text :
       {"https://schema.org/OutOfStock", "SoldOut", "Discontinued", "sold-out", "no", "0", "-2"}) {
    EXPECT_EQ(parse_stock(text), Stock::sold_out) << text;
  }
  for (const char* text : {"PreOrder", "BackOrder", "PreSale", "MadeToOrder", "Reserved"}) {
    EXPECT_EQ(parse_stock(text), Stock::unknown) << text;
  }
  EXPECT_EQ(parse_stock("ask"), std::nullopt);
}

}  // namespace
}  // namespace rangebook

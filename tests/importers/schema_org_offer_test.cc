// Prices and availability of offers.
#include "importers/schema_org_offer.h"

#include <gtest/gtest.h>

#include <string>

#include "tests/importers/page_rows.h"

namespace rangebook {
namespace {

struct Read {
  Cells cells;
  std::string doubt;
};

// The one row of a product with these offers.
Read offer(std::string_view offers) {
  const ReadPage page = read_page(
      page_with(R"({"@type":"Product","name":"x","offers":)" + std::string(offers) + "}"));
  Read read;
  EXPECT_EQ(page.rows.size(), 1U) << offers;
  if (page.rows.size() == 1) read.cells = page.rows.front();
  read.cells.erase("name");
  if (page.rejections.size() == 1) read.doubt = page.rejections.front().what;
  EXPECT_LE(page.rejections.size(), 1U) << offers;
  return read;
}

// schema.org ItemAvailability, all members (https://schema.org/ItemAvailability).
TEST(SchemaOrgOffer, KnowsEveryAvailability) {
  for (const std::string member :
       {"BackOrder", "Discontinued", "InStock", "InStoreOnly", "LimitedAvailability", "MadeToOrder",
        "OnlineOnly", "OutOfStock", "PreOrder", "PreSale", "Reserved", "SoldOut"}) {
    for (const std::string prefix : {"https://schema.org/", "http://schema.org/", "schema:", "",
                                     "http://www.schema.org/", "https://schema.org/#"}) {
      EXPECT_EQ(availability_word(prefix + member), member) << prefix;
    }
  }
}

TEST(SchemaOrgOffer, ReadsAvailabilityAsPagesSpellIt) {
  EXPECT_EQ(availability_word("in stock"), "InStock");
  EXPECT_EQ(availability_word(" OUT_OF_STOCK "), "OutOfStock");
  EXPECT_EQ(availability_word("https://schema.org/instock"), "InStock");
  EXPECT_EQ(availability_word("pre-order"), "PreOrder");
  EXPECT_EQ(availability_word("nur noch 2"), "nur noch 2");
  EXPECT_EQ(availability_word(""), "");
}

TEST(SchemaOrgOffer, WritesNumbersPlainly) {
  EXPECT_EQ(plain_number("49.90"), "49.90");
  EXPECT_EQ(plain_number("49.9"), "49.9");
  EXPECT_EQ(plain_number("1299"), "1299");
  EXPECT_EQ(plain_number("49.900"), "49.90");  // never to be read as 49 900
  EXPECT_EQ(plain_number("1.299"), "1.2990");  // likewise
  EXPECT_EQ(plain_number("4.99e1"), "49.9");
  EXPECT_EQ(plain_number("1.5E+3"), "1500");
  EXPECT_EQ(plain_number("25e-3"), "0.0250");
  EXPECT_EQ(plain_number("-2.5e1"), "-25");
  EXPECT_EQ(plain_number("1e400"), "1e400");
}

TEST(SchemaOrgOffer, TakesThePriceAsWritten) {
  EXPECT_EQ(offer(R"({"price":49.90})").cells, (Cells{{"price", "49.90"}}));
  EXPECT_EQ(offer(R"({"price":"1.299,00 \u20ac","priceCurrency":"EUR"})").cells,
            (Cells{{"price", "1.299,00 \u20ac"}, {"currency", "EUR"}}));
  EXPECT_EQ(offer(R"({"price":{"@type":"xsd:decimal","@value":"12.50"}})").cells,
            (Cells{{"price", "12.50"}}));
  EXPECT_EQ(offer(R"({"price":"20","availability":{"@id":"http://schema.org/SoldOut"}})").cells,
            (Cells{{"price", "20"}, {"in_stock", "SoldOut"}}));
}

TEST(SchemaOrgOffer, CountsWhatIsInStock) {
  EXPECT_EQ(offer(R"({"inventoryLevel":{"@type":"QuantitativeValue","value":0}})").cells,
            (Cells{{"in_stock", "0"}}));
  EXPECT_EQ(offer(R"({"availability":"InStock","inventoryLevel":3})").cells,
            (Cells{{"in_stock", "InStock"}}));
}

// schema.org PriceTypeEnumeration.
TEST(SchemaOrgOffer, TellsSellingPriceFromFullPrice) {
  const std::string head =
      R"({"price":"59.90","priceSpecification":[{"@type":"UnitPriceSpecification",)";
  for (const std::string type : {"ListPrice", "https://schema.org/StrikethroughPrice", "SRP",
                                 "http://schema.org/MSRP", "RegularPrice"}) {
    EXPECT_EQ(offer(head + R"("price":79.9,"priceType":")" + type + "\"}]}").cells,
              (Cells{{"price", "59.90"}, {"full_price", "79.9"}}))
        << type;
  }
  for (const std::string type : {"InvoicePrice", "MinimumAdvertisedPrice"}) {
    EXPECT_EQ(offer(head + R"("price":"79.90","priceType":")" + type + "\"}]}").cells,
              (Cells{{"price", "59.90"}}))
        << type;
  }
}

TEST(SchemaOrgOffer, ReadsPricesFromSpecificationsAlone) {
  EXPECT_EQ(offer(R"({"priceSpecification":[{"price":"30","priceCurrency":"GBP"},
                      {"price":"40","priceType":"ListPrice"},
                      {"price":"45","priceType":"StrikethroughPrice"},
                      {"price":"50","priceType":"SRP"}]})")
                .cells,
            (Cells{{"price", "30"}, {"full_price", "45"}, {"currency", "GBP"}}));
  EXPECT_EQ(offer(R"({"priceSpecification":{"price":"30","priceType":"RegularPrice"}})").cells,
            (Cells{{"price", "30"}}));
}

TEST(SchemaOrgOffer, LeavesOutPricesThatNotEveryonePays) {
  EXPECT_EQ(offer(R"({"price":"20","priceSpecification":[
      {"price":"15","validForMemberTier":{"@type":"MemberProgramTier"}},
      {"price":"12","eligibleQuantity":{"minValue":10}},
      {"price":"4","referenceQuantity":{"value":"1","unitCode":"KGM"}},
      {"price":"5","@type":"DeliveryChargeSpecification"},
      {"price":"20.00","referenceQuantity":{"value":"1","unitCode":"C62"}}]})")
                .cells,
            (Cells{{"price", "20"}}));
}

TEST(SchemaOrgOffer, ARangeIsNoPrice) {
  const Read range = offer(
      R"({"@type":"AggregateOffer","lowPrice":30.00,"highPrice":"45","priceCurrency":"EUR"})");
  EXPECT_EQ(range.cells, (Cells{{"currency", "EUR"}}));
  EXPECT_EQ(range.doubt,
            "The page states a price range (from 30.00 to 45), not the price of a variant.");
  EXPECT_NE(offer(R"({"@type":"AggregateOffer","lowPrice":30,"offerCount":4})").doubt, "");
  EXPECT_NE(offer(R"({"@type":"AggregateOffer","highPrice":30})").doubt, "");
}

TEST(SchemaOrgOffer, ARangeOfOneIsAPrice) {
  EXPECT_EQ(offer(R"({"@type":"AggregateOffer","lowPrice":"30.00","highPrice":30})").cells,
            (Cells{{"price", "30.00"}}));
  EXPECT_EQ(offer(R"({"lowPrice":"30","offerCount":1})").cells, (Cells{{"price", "30"}}));
  EXPECT_EQ(
      offer(R"({"@type":"AggregateOffer","price":"30","lowPrice":"1","highPrice":"2"})").cells,
      (Cells{{"price", "30"}}));
}

TEST(SchemaOrgOffer, OffersInsideAnAggregateCount) {
  const Read read = offer(R"({"@type":"AggregateOffer","lowPrice":"30","highPrice":"40",
      "priceCurrency":"SEK","availability":"InStock","offers":[{"@type":"Offer","price":"35"}]})");
  EXPECT_EQ(read.cells, (Cells{{"price", "35"}, {"currency", "SEK"}, {"in_stock", "InStock"}}));
  EXPECT_EQ(read.doubt, "");
}

TEST(SchemaOrgOffer, DoubtLeavesThePriceOut) {
  const Read two = offer(R"({"price":["20","25.00"]})");
  EXPECT_EQ(two.cells, Cells{});
  EXPECT_EQ(two.doubt, "The page states several prices for one offer: 20 and 25.00.");
  const Read list = offer(R"({"priceSpecification":{"price":"99","priceType":"ListPrice"}})");
  EXPECT_EQ(list.cells, (Cells{{"full_price", "99"}}));
  EXPECT_EQ(list.doubt, "The page states a list price, but not what it sells for.");
  const Read lease =
      offer(R"({"price":"9","businessFunction":"http://purl.org/goodrelations/v1#LeaseOut"})");
  EXPECT_EQ(lease.cells, Cells{});
  EXPECT_EQ(lease.doubt, "The price is for \"LeaseOut\", not for a sale.");
  EXPECT_EQ(offer(R"({"price":["20","20.00"],"businessFunction":"Sell"})").cells,
            (Cells{{"price", "20"}}));
}

}  // namespace
}  // namespace rangebook

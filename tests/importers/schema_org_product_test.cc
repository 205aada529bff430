// Which products of a page become rows, and what is in them: the examples of schema.org, and
// invented pages by the definitions of schema.org's types.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>
#include <nlohmann/json.hpp>

#include "tests/importers/page_rows.h"

namespace rangebook {
namespace {

using Json = nlohmann::json;
using testing::ElementsAre;
using testing::IsEmpty;
using testing::SizeIs;

std::vector<std::string> kinds(const ReadPage& page) {
  std::vector<std::string> names;
  for (const auto& rejection : page.rejections) names.emplace_back(to_string(rejection.kind));
  return names;
}

// Source: schema.org 30.0 examples; see the file. Expected rows were written by hand.
TEST(SchemaOrgProduct, ReadsTheExamplesOfSchemaOrg) {
  std::ifstream in(RANGEBOOK_CHECKS "/schemaorg_products.json");
  const Json checks = Json::parse(in);
  ASSERT_GE(checks["cases"].size(), 25U);
  for (const auto& example : checks["cases"]) {
    const ReadPage page = read_page(page_with(example["markup"].get<std::string>()));
    EXPECT_EQ(page.rows, example["rows"].get<std::vector<Cells>>()) << example["id"];
    EXPECT_EQ(kinds(page), example["rejections"].get<std::vector<std::string>>()) << example["id"];
  }
}

constexpr std::string_view kGroup = R"({
  "@context": "https://schema.org/", "@type": "ProductGroup", "@id": "#group",
  "name": "Harbour wrap dress", "productGroupID": "HW-100", "sku": "ignored",
  "description": "Wrap dress &amp; belt", "material": ["100% Viscose", "Lining: 100% Polyester"],
  "category": "Dresses", "url": "/p/harbour", "image": "/i/group.jpg",
  "variesBy": ["https://schema.org/size", "https://schema.org/color"],
  "color": "navy", "hasVariant": [
    {"@type": "Product", "sku": "HW-100-N12", "gtin13": "4006381333931",
     "name": "Harbour wrap dress - Navy / 12", "color": "Navy", "size": "12",
     "image": ["/i/navy.jpg", "/i/navy2.jpg"],
     "offers": {"@type": "Offer", "price": 79.90, "priceCurrency": "EUR",
                "availability": "http://schema.org/InStock"}},
    {"@type": "Product", "sku": "HW-100-E14", "size": {"@type": "SizeSpecification", "name": "14",
       "sizeSystem": "https://schema.org/WearableSizeSystemUK",
       "sizeGroup": "https://schema.org/WearableSizeGroupPetite"},
     "offers": [{"@type": "Offer", "price": "59.90", "priceCurrency": "EUR",
       "priceSpecification": {"@type": "UnitPriceSpecification", "price": 79.90,
         "priceCurrency": "EUR", "priceType": "https://schema.org/StrikethroughPrice"},
       "availability": "out of stock"}]}]})";

TEST(SchemaOrgProduct, VariantsInheritFromTheirGroup) {
  const ReadPage page =
      read_page(page_with(kGroup, "<link rel=canonical href='https://shop.example/p/harbour?x'>"));
  const Cells line{{"line_code", "HW-100"},
                   {"name", "Harbour wrap dress"},
                   {"category", "Dresses"},
                   {"composition", "100% Viscose, Lining: 100% Polyester"},
                   {"description", "Wrap dress & belt"},
                   {"url", "https://shop.example/p/harbour"},
                   {"currency", "EUR"}};
  Cells navy{{"variant_code", "HW-100-N12"},
             {"gtin", "4006381333931"},
             {"colour", "Navy"},
             {"size", "12"},
             {"price", "79.90"},
             {"in_stock", "InStock"},
             {"image", "https://shop.example/i/navy.jpg"}};
  // The group varies by colour, so its own colour says nothing about the second variant.
  Cells second{{"variant_code", "HW-100-E14"},
               {"size", "UK 14 Petite"},
               {"price", "59.90"},
               {"full_price", "79.90"},
               {"in_stock", "OutOfStock"},
               {"image", "https://shop.example/i/group.jpg"}};
  navy.insert(line.begin(), line.end());
  second.insert(line.begin(), line.end());
  EXPECT_THAT(page.rows, ElementsAre(navy, second));
  EXPECT_THAT(page.rejections, IsEmpty());
}

TEST(SchemaOrgProduct, VariantsMayNameTheirGroup) {
  const Cells expected{
      {"line_code", "G1"}, {"name", "Coat"}, {"variant_code", "S1"}, {"size", "S"}};
  for (const char* json :
       {R"([{"@type":"ProductGroup","@id":"#g","name":"Coat","productGroupID":"G1"},
            {"@type":"Product","isVariantOf":{"@id":"#g"},"name":"Coat S","sku":"S1","size":"S"}])",
        R"([{"@type":"Product","isVariantOf":"#g","name":"Coat S","sku":"S1","size":"S"},
            {"@type":"ProductGroup","@id":"#g","name":"Coat","productGroupID":"G1"}])",
        R"({"@graph":[{"@type":"schema:Product","schema:name":"Coat S","sku":"S1","size":"S",
            "inProductGroupWithID":"G1"},
            {"@type":["ProductGroup"],"name":"Coat","productGroupID":"G1"}]})",
        R"({"@type":"Product","name":"Coat S","sku":"S1","size":"S",
            "isVariantOf":{"@type":"ProductGroup","name":"Coat","productGroupID":"G1"}})"}) {
    EXPECT_THAT(read_page(page_with(json)).rows, ElementsAre(expected)) << json;
  }
}

TEST(SchemaOrgProduct, OffersMayNameVariants) {
  const ReadPage page = read_page(page_with(R"({"@type":"Product","name":"Scarf","sku":"SC",
    "material":{"@type":"Product","name":"Wool"},
    "offers":[{"@type":"Offer","price":"20","itemOffered":{"@type":"Product","color":"Red","sku":"SC-R"}},
              {"@type":"Offer","price":"25","itemOffered":{"color":{"@type":"DefinedTerm","name":"Blue"}},
               "sku":"SC-B"}]})"));
  EXPECT_THAT(page.rows, ElementsAre(Cells{{"line_code", "SC"},
                                           {"name", "Scarf"},
                                           {"composition", "Wool"},
                                           {"colour", "Red"},
                                           {"price", "20"},
                                           {"variant_code", "SC-R"}},
                                     Cells{{"line_code", "SC"},
                                           {"name", "Scarf"},
                                           {"composition", "Wool"},
                                           {"colour", "Blue"},
                                           {"price", "25"},
                                           {"variant_code", "SC-B"}}));
}

TEST(SchemaOrgProduct, SeveralOffersAreSeveralRows) {
  const ReadPage page = read_page(page_with(R"({"@type":"Product","name":"Belt","mpn":"B1",
    "offers":[{"price":"20","sku":"a","size":"S"},{"price":"20","sku":"b","size":"M"}]})"));
  EXPECT_THAT(page.rows, ElementsAre(Cells{{"line_code", "B1"},
                                           {"name", "Belt"},
                                           {"size", "S"},
                                           {"price", "20"},
                                           {"variant_code", "a"}},
                                     Cells{{"line_code", "B1"},
                                           {"name", "Belt"},
                                           {"size", "M"},
                                           {"price", "20"},
                                           {"variant_code", "b"}}));
}

TEST(SchemaOrgProduct, AnOfferElsewhereCanNameItsProduct) {
  const ReadPage page = read_page(page_with(R"({"@graph":[
    {"@type":"Product","@id":"#p","name":"Hat"},
    {"@type":"Offer","itemOffered":{"@id":"#p"},"price":"9.50","priceCurrency":"GBP"}]})"));
  EXPECT_THAT(page.rows,
              ElementsAre(Cells{{"name", "Hat"}, {"price", "9.50"}, {"currency", "GBP"}}));
}

TEST(SchemaOrgProduct, OneOfferOfTheGroupHoldsForAllVariants) {
  const std::string head = R"({"@type":"ProductGroup","name":"Hat","productGroupID":"H",
    "hasVariant":[{"@type":"Product","size":"S"},{"@type":"Product","size":"M"}],"offers":)";
  const ReadPage one = read_page(page_with(head + R"([{"price":"9"}]})"));
  ASSERT_THAT(one.rows, SizeIs(2));
  EXPECT_EQ(one.rows[0].at("price"), "9");
  EXPECT_EQ(one.rows[1].at("price"), "9");
  const ReadPage two = read_page(page_with(head + R"([{"price":"9"},{"price":"8"}]})"));
  ASSERT_THAT(two.rows, SizeIs(2));
  EXPECT_EQ(two.rows[0].count("price") + two.rows[1].count("price"), 0U);
  EXPECT_THAT(kinds(two), ElementsAre("ambiguous-price"));
}

TEST(SchemaOrgProduct, AWholeLineListsItsSizesAndColours) {
  const ReadPage page = read_page(page_with(R"({"@type":"Product","name":"Top",
    "size":["S","M",{"@type":"SizeSpecification","name":"L"}],"color":["navy","ecru","navy"]})"));
  EXPECT_THAT(page.rows,
              ElementsAre(Cells{{"name", "Top"}, {"size", "S|M|L"}, {"colour", "navy|ecru"}}));
}

TEST(SchemaOrgProduct, OneVariantInTwoColoursIsOneColourway) {
  const ReadPage page = read_page(page_with(R"({"@type":"ProductGroup","name":"Top",
    "productGroupID":"T","hasVariant":{"@type":"Product","color":["white","blue"],
    "size":[{"@type":"SizeSpecification","name":"12","sizeSystem":"WearableSizeSystemUK"},
            {"@type":"SizeSpecification","name":"40","sizeSystem":"WearableSizeSystemEurope"}]}})"));
  EXPECT_THAT(
      page.rows,
      ElementsAre(Cells{
          {"name", "Top"}, {"line_code", "T"}, {"size", "UK 12"}, {"colour", "white / blue"}}));
}

TEST(SchemaOrgProduct, RelatedAndReferredProductsAreNoRows) {
  const ReadPage page = read_page(page_with(R"([{"@type":"Product","name":"Skirt",
    "isRelatedTo":{"@type":"Product","name":"Other","offers":{"price":"1"}},
    "isSimilarTo":[{"@type":"Product","name":"Third"}]},
    {"@type":"ProductGroup","name":"Coat","productGroupID":"G","hasVariant":[
      {"@type":"Product","size":"S"},{"url":"https://shop.example/coat-m"}]}])"));
  EXPECT_THAT(page.rows, ElementsAre(Cells{{"name", "Skirt"}},
                                     Cells{{"name", "Coat"}, {"line_code", "G"}, {"size", "S"}}));
}

TEST(SchemaOrgProduct, ListsAndPagesAreWalked) {
  const ReadPage page = read_page(page_with(R"({"@type":"CollectionPage","mainEntity":
    {"@type":"ItemList","itemListElement":[
      {"@type":"ListItem","position":1,"item":{"@type":"https://schema.org/Product","name":"A"}},
      {"@type":"ListItem","position":2,"item":{"@type":"http://schema.org/Product","name":"B"}}]}})"));
  EXPECT_THAT(page.rows, ElementsAre(Cells{{"name", "A"}}, Cells{{"name", "B"}}));
}

TEST(SchemaOrgProduct, TheSameRowInTwoBlocksIsOneRow) {
  const std::string block = R"(<script type="application/ld+json">{"@type":"Product",
    "name":"Skirt","offers":{"@type":"Offer","price":"10"}}</script>)";
  EXPECT_THAT(read_page(block + block).rows, SizeIs(1));
}

TEST(SchemaOrgProduct, CarelessIdsDoNotMergeVariants) {
  const ReadPage page = read_page(page_with(R"({"@type":"ProductGroup","@id":"x","name":"Coat",
    "hasVariant":[{"@type":"Product","@id":"x","size":"S"},{"@type":"Product","@id":"x","size":"M"}]})"));
  ASSERT_THAT(page.rows, SizeIs(2));
  EXPECT_EQ(page.rows[0].at("size"), "S");
  EXPECT_EQ(page.rows[1].at("size"), "M");
}

TEST(SchemaOrgProduct, ProductsThatContainEachOtherEnd) {
  const ReadPage page = read_page(page_with(R"([
    {"@type":"ProductGroup","@id":"a","name":"A","hasVariant":{"@id":"b"},"isVariantOf":{"@id":"b"}},
    {"@type":"ProductGroup","@id":"b","name":"B","hasVariant":{"@id":"a"},"isVariantOf":{"@id":"a"}},
    {"@type":"ProductGroup","@id":"c","name":"C","hasVariant":{"@id":"c"}}])"));
  EXPECT_THAT(page.rows, SizeIs(2));
}

TEST(SchemaOrgProduct, TheBreadcrumbIsTheCategoryOfLastResort) {
  constexpr std::string_view crumbs = R"({"@type":"BreadcrumbList","itemListElement":[
    {"@type":"ListItem","position":3,"name":"Midi"},
    {"@type":"ListItem","position":1,"item":{"@id":"https://shop.example/","name":"Home"}},
    {"@type":"ListItem","position":2,"name":"Dresses","item":"https://shop.example/d"},
    {"@type":"ListItem","position":10,"name":"harbour DRESS"}]})";
  const auto with = [&](std::string_view more) {
    return read_page(page_with("[" + std::string(crumbs) +
                               R"(,{"@type":"Product","name":)"
                               R"("Harbour dress")" +
                               std::string(more) + "}]"))
        .rows.at(0);
  };
  EXPECT_EQ(with("").at("category"), "Dresses > Midi");
  EXPECT_EQ(with(R"(,"category":"Frocks")").at("category"), "Frocks");
  EXPECT_EQ(with(R"(,"category":{"@type":"CategoryCode","codeValue":"D-1"})").at("category"),
            "D-1");
}

TEST(SchemaOrgProduct, TheLanguageOfThePageChoosesTheText) {
  const std::string json = R"({"@type":"Product","name":[{"@value":"Robe","@language":"fr"},
    {"@value":"Dress","@language":"en"}]})";
  EXPECT_EQ(read_page("<html lang=en-GB>" + page_with(json)).rows.at(0).at("name"), "Dress");
  EXPECT_EQ(read_page(page_with(json)).rows.at(0).at("name"), "Robe");
}

TEST(SchemaOrgProduct, AnAdditionalPropertyCanHoldTheComposition) {
  const ReadPage page = read_page(page_with(R"({"@type":"Product","name":"Top",
    "additionalProperty":[{"@type":"PropertyValue","name":"Fit","value":"slim"},
    {"@type":"PropertyValue","name":"Material","value":"95% cotton, 5% elastane"},
    {"@type":"PropertyValue","name":"Colour","value":"ecru"}]})"));
  EXPECT_THAT(page.rows, ElementsAre(Cells{{"name", "Top"},
                                           {"colour", "ecru"},
                                           {"composition", "95% cotton, 5% elastane"}}));
}

}  // namespace
}  // namespace rangebook

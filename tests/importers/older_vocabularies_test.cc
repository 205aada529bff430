// GoodRelations and data-vocabulary.org, as pages wrote them before schema.org: their terms from
// the GoodRelations Language Reference V 1.0 (2011-10-01) and the pages of data-vocabulary.org.
#include "importers/older_vocabularies.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/importers/page_rows.h"

namespace rangebook {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;
using testing::SizeIs;

Cells coat(std::string stock = "InStock") {
  return {{"name", "Coat"}, {"price", "49.90"}, {"currency", "EUR"}, {"in_stock", stock}};
}

std::string gr(const std::string& inside) {
  return "<html xmlns=\"http://www.w3.org/1999/xhtml\" "
         "xmlns:gr=\"http://purl.org/goodrelations/v1#\" "
         "xmlns:foaf=\"http://xmlns.com/foaf/0.1/\"><body>" +
         inside + "</body></html>";
}

const std::string kGrPrice =
    "<div rel='gr:hasPriceSpecification'><div typeof='gr:UnitPriceSpecification'>"
    "<span property='gr:hasCurrency' content='EUR' datatype='xsd:string'></span>"
    "<span property='gr:hasCurrencyValue' content='49.90' datatype='xsd:float'></span>"
    "<span property='gr:hasUnitOfMeasurement' content='C62'></span></div></div>";
const std::string kGrStock =
    "<div rel='gr:hasInventoryLevel'><div typeof='gr:QuantitativeValue'>"
    "<div property='gr:hasMinValue' content='1' datatype='xsd:float'></div></div></div>";

// Source: GoodRelations Language Reference, Offering: name, hasPriceSpecification,
// hasInventoryLevel; hasMinValue of QuantitativeValue is the least number there is.
TEST(GoodRelations, AnOfferingThatNamesItsGoods) {
  const auto page =
      read_page(gr("<div typeof='gr:Offering' about='#offer'>"
                   "<h1 property='gr:name'>Coat</h1>" +
                   kGrPrice + kGrStock + "</div>"));
  EXPECT_THAT(page.rows, ElementsAre(coat("1")));
  EXPECT_THAT(page.rejections, IsEmpty());
}

// Source: the same; includes, SomeItems, hasEAN_UCC-13, hasStockKeepingUnit; foaf:depiction as its
// section on pictures recommends.
TEST(GoodRelations, AnOfferingOfItems) {
  const auto page = read_page(
      gr("<div typeof='gr:Offering' about='#offer'>"
         "<div rel='gr:hasBusinessFunction' resource='http://purl.org/goodrelations/v1#Sell'></div>"
         "<div rel='foaf:depiction' resource='https://a.example/coat.jpg'></div>"
         "<div rel='gr:includes'><div typeof='gr:SomeItems' about='#coat'>"
         "<h1 property='gr:name'>Coat</h1><i property='gr:color'>navy</i>"
         "<i property='gr:hasStockKeepingUnit'>C-7</i>"
         "<i property='gr:hasEAN_UCC-13'>4006381333931</i></div></div>" +
         kGrPrice + "</div>"));
  EXPECT_THAT(page.rows, ElementsAre(Cells{{"name", "Coat"},
                                           {"price", "49.90"},
                                           {"currency", "EUR"},
                                           {"colour", "navy"},
                                           {"line_code", "C-7"},
                                           {"gtin", "4006381333931"},
                                           {"image", "https://a.example/coat.jpg"}}));
}

// Source: the same; prefixes by `prefix` (RDFa Lite 1.1, section 2.4), by `vocab`, and without a
// declaration, since `gr` is in the RDFa initial context.
TEST(GoodRelations, PrefixesDeclaredInEachWay) {
  const std::string price =
      "<p property='@hasPriceSpecification' typeof='@UnitPriceSpecification'>"
      "<b property='@hasCurrencyValue' content='49.90'>49,90</b>"
      "<b property='@hasCurrency' content=EUR></b></p>";
  const auto named = [&](std::string prefix) {
    std::string page =
        "<div @@ typeof='@Offering'><h1 property='@name'>Coat</h1>" + price + "</div>";
    page.erase(page.find("@@ "), 3);
    for (auto at = page.find('@'); at != page.npos; at = page.find('@')) {
      page.replace(at, 1, prefix);
    }
    return page;
  };
  const Cells row{{"name", "Coat"}, {"price", "49.90"}, {"currency", "EUR"}};
  EXPECT_THAT(read_page(named("gr:")).rows, ElementsAre(row));
  EXPECT_THAT(read_page("<div prefix='g: http://purl.org/goodrelations/v1#'>" + named("g:")).rows,
              ElementsAre(row));
  EXPECT_THAT(read_page("<div vocab='http://purl.org/goodrelations/v1#'>" + named("")).rows,
              ElementsAre(row));
}

// Source: the same; includesObject, TypeAndQuantityNode, typeOfGood, and the names before 2011.
TEST(GoodRelations, GoodsBehindAQuantity) {
  const auto page = read_page(
      gr("<div typeof='gr:BusinessEntity' about='#shop'><span property='gr:legalName'>Lowick</span>"
         "<div rel='gr:offers'><div typeof='gr:Offering' about='#o'>" +
         kGrPrice +
         "<div rel='gr:includesObject'><div typeof='gr:TypeAndQuantityNode'>"
         "<i property='gr:amountOfThisGood' content='1.0'></i><div rel='gr:typeOfGood'>"
         "<div typeof='gr:ProductOrServicesSomeInstancesPlaceholder' about='#p'>"
         "<h1 property='gr:name'>Coat</h1></div></div></div></div></div></div></div>"));
  EXPECT_THAT(page.rows,
              ElementsAre(Cells{{"name", "Coat"}, {"price", "49.90"}, {"currency", "EUR"}}));
}

// Source: the same; priceType SRP is a recommended price, a delivery charge is no price of goods,
// hasMinCurrencyValue and hasMaxCurrencyValue are the ends of a range.
TEST(GoodRelations, WhichPriceIsPaid) {
  const std::string others =
      "<div rel='gr:hasPriceSpecification'><div typeof='gr:UnitPriceSpecification'>"
      "<i property='gr:priceType' content='SRP'></i><i property='gr:hasCurrency' content='EUR'></i>"
      "<i property='gr:hasCurrencyValue' content='60.00'></i></div></div>"
      "<div rel='gr:hasPriceSpecification'><div typeof='gr:DeliveryChargeSpecification'>"
      "<i property='gr:hasCurrency' content='EUR'></i>"
      "<i property='gr:hasCurrencyValue' content='4.90'></i></div></div>";
  const auto page = read_page(
      gr("<div typeof='gr:Offering'><h1 property='gr:name'>Coat</h1>" + others + kGrPrice));
  ASSERT_THAT(page.rows, SizeIs(1));
  EXPECT_EQ(page.rows[0].at("price"), "49.90");
  EXPECT_EQ(page.rows[0].at("full_price"), "60.00");

  const auto range =
      read_page(gr("<div typeof='gr:Offering'><h1 property='gr:name'>Coat</h1>"
                   "<p property='gr:hasPriceSpecification' typeof='gr:UnitPriceSpecification'>"
                   "<i property='gr:hasMinCurrencyValue' content='40'></i>"
                   "<i property='gr:hasMaxCurrencyValue' content='60'></i></p></div>"));
  ASSERT_THAT(range.rejections, SizeIs(1));
  EXPECT_EQ(range.rejections[0].excerpt, "from 40 to 60");
}

std::string dv_product(const std::string& inside) {
  return "<div itemscope itemtype='http://data-vocabulary.org/Product'>"
         "<h1 itemprop='name'>Coat</h1>" +
         inside + "</div>";
}

// Source: data-vocabulary.org, Product (identifier, offerDetails) and Offer (price, currency,
// availability with its four words).
TEST(DataVocabulary, AProductWithItsOffer) {
  for (const auto& [word, stock] :
       {std::pair("in_stock", "InStock"), std::pair("out_of_stock", "OutOfStock"),
        std::pair("instore_only", "InStoreOnly"), std::pair("preorder", "PreOrder")}) {
    const auto page =
        read_page(dv_product("<i itemprop='identifier' content='sku:C-7'>C-7</i>"
                             "<p itemprop='offerDetails' itemscope "
                             "itemtype='http://data-vocabulary.org/Offer'>"
                             "<b itemprop='price' content='49.90'>49,90</b>"
                             "<meta itemprop='currency' content='EUR'>"
                             "<i itemprop='availability' content='" +
                             std::string(word) + "'>x</i></p>"));
    Cells row = coat(stock);
    row["line_code"] = "C-7";
    EXPECT_THAT(page.rows, ElementsAre(row)) << word;
  }
}

// Seen on pages: currency and availability on the product, the offer beside it without a property.
TEST(DataVocabulary, FactsOfTheOfferOnTheProduct) {
  const std::string facts =
      "<meta itemprop='currency' content='EUR'>"
      "<i itemprop='availability' content='in_stock'>x</i>";
  const std::string offer =
      " itemscope itemtype='http://data-vocabulary.org/Offer'>"
      "<b itemprop='price'>49.90</b></p>";
  EXPECT_THAT(read_page(dv_product(facts + "<p itemprop='offerDetails'" + offer)).rows,
              ElementsAre(coat()));
  EXPECT_THAT(read_page(dv_product(facts + "<p" + offer)).rows, ElementsAre(coat()));
  EXPECT_THAT(read_page(dv_product(facts + "<b itemprop='price'>49.90</b>")).rows,
              ElementsAre(coat()));
}

// Source: data-vocabulary.org, Offer-aggregate: the lowest and highest price of all offers.
TEST(DataVocabulary, SeveralOffersAreARange) {
  const auto page =
      read_page(dv_product("<p itemprop='offerDetails' itemscope "
                           "itemtype='http://data-vocabulary.org/Offer-aggregate'>"
                           "<b itemprop='lowPrice'>40</b><b itemprop='highPrice'>60</b>"
                           "<meta itemprop='currency' content='EUR'></p>"));
  ASSERT_THAT(page.rejections, SizeIs(1));
  EXPECT_EQ(page.rejections[0].excerpt, "from 40 to 60");
}

// Source: data-vocabulary.org, Breadcrumb (title, url, child); in RDFa `rel` and `property` on one
// element: RDFa Core 1.1, section 7.5 step 11.
TEST(DataVocabulary, Breadcrumbs) {
  const std::string offer = dv_product(
      "<p itemprop='offerDetails' itemscope itemtype='http://data-vocabulary.org/Offer'>"
      "<b itemprop='price'>49.90</b><meta itemprop='currency' content='EUR'></p>");
  const auto crumb = [](const std::string& title, const std::string& inside) {
    return "<div itemscope itemtype='http://data-vocabulary.org/Breadcrumb'" +
           std::string(inside == "child" ? " itemprop='child'" : "") +
           "><a href='/x' itemprop='url'><span itemprop='title'>" + title + "</span></a>";
  };
  const auto category = [&](const std::string& crumbs) {
    const auto page = read_page("<html>" + crumbs + offer);
    return page.rows.empty() ? "" : page.rows.front().at("category");
  };
  EXPECT_EQ(category(crumb("Women", "") + "</div>" + crumb("Coats", "") + "</div>"),
            "Women > Coats");
  EXPECT_EQ(category(crumb("Women", "") + crumb("Coats", "child") + "</div></div>" +
                     crumb("Sale", "") + "</div>"),
            "Women > Coats");
  EXPECT_EQ(category("<div xmlns:v='http://rdf.data-vocabulary.org/#'><span typeof='v:Breadcrumb'>"
                     "<a href='/w' rel='v:url' property='v:title'>Women</a></span>"
                     "<span typeof='v:Breadcrumb'>"
                     "<a href='/c' rel='v:url' property='v:title'>Coats</a></span></div>"),
            "Women > Coats");
}

// Source: RDFa of data-vocabulary.org, its prefix declared as XML does.
TEST(DataVocabulary, InRdfa) {
  const auto page = read_page(
      "<div xmlns:v='http://rdf.data-vocabulary.org/#' typeof='v:Product'>"
      "<h1 property='v:name'>Coat</h1><p rel='v:offerDetails'><span typeof='v:Offer'>"
      "<b property='v:price' content='49.90'>49,90</b><b property='v:currency' content='EUR'></b>"
      "<i property='v:availability' content='in_stock'>in stock</i></span></p></div>");
  EXPECT_THAT(page.rows, ElementsAre(coat()));
}

TEST(OlderVocabularies, ItemsOfOthersStayAsTheyAre) {
  MarkupItems items{{.types = {"https://schema.org/Offer"}, .id = "", .byte = 0, .values = {}}};
  items[0].values.push_back({.names = {"currency"}, .text = "EUR", .item = {}});
  const auto same = in_schema_org_terms(items);
  ASSERT_THAT(same, SizeIs(1));
  EXPECT_THAT(same[0].types, ElementsAre("https://schema.org/Offer"));
  EXPECT_THAT(same[0].values[0].names, ElementsAre("currency"));
}

// Things that name each other in a circle, as any page may write them.
TEST(OlderVocabularies, CirclesEnd) {
  const auto page = read_page(
      gr("<div typeof='gr:Offering' about='#a'><b property='gr:name'>Coat</b>"
         "<b rel='gr:includesObject' resource='#a'></b>"
         "<b rel='gr:typeOfGood' resource='#a'></b></div>"
         "<div typeof='v:Breadcrumb' about='#b' xmlns:v='http://rdf.data-vocabulary.org/#'>"
         "<b property='v:title'>x</b><b rel='v:child' resource='#c'></b></div>"
         "<div typeof='v:Breadcrumb' about='#c' xmlns:v='http://rdf.data-vocabulary.org/#'>"
         "<b rel='v:child' resource='#b'></b></div>"));
  EXPECT_THAT(page.rows, SizeIs(1));
}

}  // namespace
}  // namespace rangebook

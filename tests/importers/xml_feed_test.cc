// XML feeds: RSS 2.0 and Atom with a namespace for products, lists of elements of any name, and
// hostile documents. The feeds are invented.
#include "importers/xml_feed.h"

#include <gtest/gtest.h>

#include "importers/feed_node.h"
#include "tests/importers/read_rows.h"
#include "tests/importers/recoded.h"

namespace rangebook {
namespace {

ReadRows read_xml(const std::string& text, std::size_t chunk = 1 << 16) {
  TextSource source(text, chunk);
  return read_all(*open_xml(source, 0));
}

const std::string kRss = R"(<?xml version="1.0"?>
<rss version="2.0" xmlns:g="http://base.example/ns/1.0"><channel>
<title>Invented shop</title><link>https://a.example</link><description>All</description>
<item><g:id>M1-8</g:id><title>Maya &amp; co</title><link>https://a.example/1</link>
<g:price>99.90 EUR</g:price><g:sale_price>79.90 EUR</g:sale_price><g:size>8</g:size>
<g:availability>in stock</g:availability><g:item_group_id>M1</g:item_group_id></item>
<item><g:id>N2</g:id><title><![CDATA[Nora <knit>]]></title><g:price>80 EUR</g:price></item>
</channel></rss>)";

TEST(XmlFeed, RssWithANamespaceForProducts) {
  for (const std::size_t chunk : {1U, 13U, 65536U}) {
    const auto out = read_xml(kRss, chunk);
    ASSERT_EQ(out.rows.size(), 2U);
    EXPECT_EQ(out.rows[0], (RowCells{{"line_code", "M1-8"},
                                     {"name", "Maya & co"},
                                     {"price", "79.90 EUR"},
                                     {"full_price", "99.90 EUR"},
                                     {"size", "8"},
                                     {"in_stock", "in stock"},
                                     {"group_id", "M1"},
                                     {"url", "https://a.example/1"}}));
    EXPECT_EQ(out.rows[1].at("name"), "Nora <knit>");
    EXPECT_EQ(out.origins[0].line, 4U);
    EXPECT_TRUE(out.mapping.starts_with("products=rss/channel/item ")) << out.mapping;
  }
}

TEST(XmlFeed, OneItemOfAChannelIsStillTheItem) {
  const std::string one = kRss.substr(0, kRss.rfind("<item>")) + "</channel></rss>";
  EXPECT_EQ(read_xml(one).rows.size(), 1U);
}

TEST(XmlFeed, AnyListOfElementsWithVariantsInside) {
  const auto out = read_xml(
      "<katalog><artikel nr='1'><bezeichnung>Kleid</bezeichnung><artikelnummer>K1</artikelnummer>"
      "<varianten><variante><groesse>38</groesse><preis waehrung='EUR'>79,90</preis></variante>"
      "<variante><groesse>40</groesse><preis waehrung='EUR'>79,90</preis></variante></varianten>"
      "</artikel><artikel><bezeichnung>Rock</bezeichnung><artikelnummer>R1</artikelnummer></"
      "artikel>"
      "</katalog>");
  ASSERT_EQ(out.rows.size(), 3U);
  EXPECT_EQ(
      out.rows[1],
      (RowCells{{"line_code", "K1"}, {"name", "Kleid"}, {"size", "40"}, {"price", "79,90 EUR"}}));
}

TEST(XmlFeed, AttributesCountAsElements) {
  const auto out = read_xml("<r><p name='Maya' price='79.90'/><p name='Nora' price='80'/></r>");
  ASSERT_EQ(out.rows.size(), 2U);
  EXPECT_EQ(out.rows[1], (RowCells{{"name", "Nora"}, {"price", "80"}}));
}

TEST(XmlFeed, DeclaredAndDetectedEncodings) {
  const std::string body = "<r><p><name>Robe d’été</name><price>79 €</price></p></r>";
  EXPECT_EQ(
      read_xml(recoded("<?xml version='1.0' encoding='windows-1252'?>" + body, "windows-1252"))
          .rows.at(0)
          .at("price"),
      "79 €");
  EXPECT_EQ(read_xml(recoded("\uFEFF<?xml version='1.0' encoding='UTF-16'?>" + body, "UTF-16LE"))
                .rows.at(0)
                .at("name"),
            "Robe d’été");
}

TEST(XmlFeed, DocumentTypesAreRefused) {
  const std::string laughs =
      "<!DOCTYPE r [<!ENTITY a 'ha'><!ENTITY b '&a;&a;&a;&a;&a;&a;&a;&a;'>]><r><p><name>&b;</name>"
      "<price>1</price></p></r>";
  const auto out = read_xml(laughs);
  EXPECT_TRUE(out.rows.empty());
  ASSERT_EQ(out.rejections.size(), 1U);
  EXPECT_NE(out.rejections[0].what.find("DOCTYPE"), std::string::npos);
}

TEST(XmlFeed, WhatHoldsNoProductsIsRefused) {
  for (const char* text : {"", "<r/>", "<r><p><a>1</a></p></r>", "no xml"}) {
    const auto out = read_xml(text);
    EXPECT_TRUE(out.rows.empty()) << text;
    ASSERT_EQ(out.rejections.size(), 1U) << text;
    EXPECT_FALSE(out.rejections[0].how_to_fix.empty());
  }
}

TEST(XmlFeed, AFeedThatBreaksOffKeepsWhatWasWhole) {
  const auto out = read_xml(kRss.substr(0, kRss.size() - 40));
  EXPECT_EQ(out.rows.size(), 1U);
  ASSERT_EQ(out.rejections.size(), 1U);
  EXPECT_NE(out.rejections[0].what.find("what stands before was taken"), std::string::npos);
}

TEST(XmlFeed, NestingWithoutEndIsRefused) {
  std::string text = "<r><p><name>a</name><price>1</price></p><p><name>b</name><price>1</price>";
  for (int i = 0; i < 100'000; ++i) text += "<x>";
  const auto out = read_xml(text);
  EXPECT_EQ(out.rows.size(), 1U);
  ASSERT_EQ(out.rejections.size(), 1U);
  EXPECT_NE(out.rejections[0].what.find("deep"), std::string::npos);
}

TEST(XmlFeed, AProductWithoutEndIsRefusedAndReadingGoesOn) {
  const auto out = read_xml("<r><p><name>a</name><price>1</price></p><p><name>" +
                            std::string(kMaxItemBytes + 10, 'x') +
                            "</name></p><p><name>b</name><price>2</price></p></r>");
  EXPECT_EQ(out.rows.size(), 2U);
  ASSERT_EQ(out.rejections.size(), 1U);
  EXPECT_EQ(out.rejections[0].kind, RejectionKind::over_limit);
}

}  // namespace
}  // namespace rangebook

// RDFa Lite: names, subjects and values, by the examples' rules of the W3C recommendations.
#include "importers/rdfa.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/importers/page_rows.h"

namespace rangebook {
namespace {

using testing::ElementsAre;
using testing::SizeIs;

const Cells kCoat{{"name", "Coat"}, {"price", "49.90"}, {"currency", "EUR"}};

// Source: RDFa Lite 1.1 (W3C), sections 2.1 to 2.5: vocab, typeof, property, resource, prefix.
TEST(Rdfa, NamesComeFromVocabularyOrPrefix) {
  for (const char* page :
       {"<div vocab='https://schema.org/' typeof=Product><h1 property=name>Coat</h1>"
        "<p property=offers typeof=Offer><b property=price>49.90</b>"
        "<meta property=priceCurrency content=EUR></p></div>",
        "<div prefix='s: http://schema.org/' typeof=s:Product><h1 property=s:name>Coat</h1>"
        "<p property=s:offers typeof=s:Offer><b property=s:price content=49.90>49,90</b>"
        "<meta property=s:priceCurrency content=EUR></p></div>",
        "<div typeof=schema:Product><h1 property=schema:name>Coat</h1>"
        "<p rel=schema:offers><span typeof=schema:Offer><b property=schema:price>49.90</b>"
        "<meta property=schema:priceCurrency content=EUR></span></p></div>",
        "<div vocab='http://schema.org/'><div resource='#c' typeof=Product>"
        "<h1 property=name>Coat</h1></div><div resource='#c'><p property=offers typeof=Offer>"
        "<b property=price>49.90</b><meta property=priceCurrency content=EUR></p></div></div>",
        // The slash that schema.org's example eg-0395 forgets.
        "<div vocab='https://schema.org' typeof=Product><h1 property=name>Coat</h1>"
        "<p property=offers typeof=Offer><b property=price>49.90</b>"
        "<meta property=priceCurrency content=EUR></p></div>"}) {
    EXPECT_THAT(read_page(page).rows, ElementsAre(kCoat)) << page;
  }
}

TEST(Rdfa, APrefixEndsWithItsElement) {
  const std::string page =
      "<div prefix='s: http://schema.org/'></div>"
      "<div typeof=s:Product><h1 property=s:name>Coat</h1></div>";
  const auto tree = HtmlTree::build(page);
  const auto items = read_rdfa(std::get<HtmlTree>(tree));
  ASSERT_THAT(items, SizeIs(1));
  EXPECT_THAT(items[0].types, ElementsAre("s:Product"));
}

TEST(Rdfa, RelWithoutAVocabularyIsAboutLinks) {
  const std::string page =
      "<div typeof=schema:Product><a rel=nofollow href=/x>x</a>"
      "<a property=schema:url href=/p/1><b property=schema:name>Coat</b></a></div>";
  EXPECT_THAT(read_page(page).rows, ElementsAre(Cells{{"name", "Coat"}, {"url", "/p/1"}}));
}

// Source: RDFa Core 1.1 (W3C), section 7.5 step 11: @href and @src of any element are its value.
TEST(Rdfa, AnAddressIsTheValueOfAnyElement) {
  const ReadPage page = read_page(
      "<div vocab='https://schema.org/' typeof=Product><h1 property=name>Coat</h1>"
      "<img property=image href='https://a.example/c.png'></div>");
  EXPECT_THAT(page.rows,
              ElementsAre(Cells{{"name", "Coat"}, {"image", "https://a.example/c.png"}}));
}

}  // namespace
}  // namespace rangebook

// Microdata against two test suites of others, and the three syntaxes of schema.org against each
// other.
#include "importers/microdata.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <nlohmann/json.hpp>

#include "importers/page_address.h"
#include "importers/schema_org_words.h"
#include "tests/importers/page_rows.h"

namespace rangebook {
namespace {

using Json = nlohmann::json;
using testing::ElementsAre;
using testing::IsEmpty;
using testing::SizeIs;

Json checks(const char* name) {
  std::ifstream in(std::string(RANGEBOOK_CHECKS "/") + name);
  return Json::parse(in);
}

MarkupItems items_of(const std::string& html) {
  const auto tree = HtmlTree::build(html);
  return read_microdata(std::get<HtmlTree>(tree));
}

std::vector<std::string> facts_of(const MarkupItems& items) {
  std::vector<std::string> facts;
  for (const auto& item : items) {
    for (const auto& value : item.values) {
      if (value.item) continue;
      for (const auto& name : value.names) {
        facts.push_back(name.substr(name.find_last_of("/#:") + 1) + "=" + clean_text(value.text));
      }
    }
  }
  std::sort(facts.begin(), facts.end());
  return facts;
}

// Source: W3C microdata-to-RDF test suite; see the file.
TEST(Microdata, ReadsThePagesOfTheW3c) {
  const Json suite = checks("microdata_w3c.json");
  ASSERT_GE(suite["cases"].size(), 43U);
  for (const auto& page : suite["cases"]) {
    EXPECT_EQ(facts_of(items_of(page["html"])), page["facts"].get<std::vector<std::string>>())
        << page["id"];
  }
}

// The items as the suite writes them: properties with their values in order, inner items inside.
Json as_json(const MarkupItems& items, std::size_t index, const std::string& base, int depth) {
  Json out = Json::object();
  const MarkupItem& item = items[index];
  if (!item.types.empty()) out["type"] = item.types.front();
  if (!item.id.empty()) out["id"] = item.id;
  Json properties = Json::object();
  for (const auto& value : item.values) {
    const bool address = value.text.starts_with("foo.") || value.text == "foo";
    for (const auto& name : value.names) {
      if (value.item && depth > 0) {
        properties[name].push_back(as_json(items, *value.item, base, depth - 1));
      } else {
        const std::string text = clean_text(value.text);
        properties[name].push_back(address && !base.empty() ? resolve_address(text, base) : text);
      }
    }
  }
  out["properties"] = properties;
  return out;
}

// Source: an open test suite of microdata items; see the file. One exception: of two items that
// refer to each other the suite names one and drops the other, but both are on the page.
TEST(Microdata, ReadsTheItemsOfAnOpenSuite) {
  const Json suite = checks("microdata_items.json");
  ASSERT_EQ(suite["cases"].size(), 9U);
  for (const auto& page : suite["cases"]) {
    if (page["name"] == "infinate loop") continue;
    const MarkupItems items = items_of(page["html"]);
    Json found = Json::array();
    for (const std::size_t top : top_items(items)) {
      found.push_back(as_json(items, top, page["base"], 5));
    }
    EXPECT_EQ(found, page["expected"]["items"]) << page["html"];
  }
}

TEST(Microdata, ItemsThatContainEachOtherEnd) {
  const std::string page =
      "<div id=a itemscope itemref=b itemtype=https://schema.org/Product>"
      "<b itemprop=name>Coat</b></div>"
      "<div id=b itemprop=isVariantOf itemscope itemref=a><b itemprop=sku>1</b></div>";
  const MarkupItems items = items_of(page);
  EXPECT_THAT(items, SizeIs(2));
  EXPECT_THAT(read_page(page).rows, testing::Not(IsEmpty()));
}

TEST(Microdata, AContentAttributeIsTheMachinesValue) {
  const ReadPage page = read_page(
      "<div itemscope itemtype='http://schema.org/Product'><h1 itemprop=name>Coat</h1>"
      "<div itemprop=offers itemscope itemtype='http://schema.org/Offer'>"
      "<span itemprop=price content='1299.00'>1.299 Euro</span>"
      "<meta itemprop=priceCurrency content=EUR>"
      "<link itemprop=availability href='https://schema.org/OutOfStock'></div></div>");
  EXPECT_THAT(page.rows, ElementsAre(Cells{{"name", "Coat"},
                                           {"price", "1299.00"},
                                           {"currency", "EUR"},
                                           {"in_stock", "OutOfStock"}}));
  EXPECT_THAT(page.mapping, testing::HasSubstr("microdata=1"));
}

// Source: schema.org's definition of additionalType; its examples eg-0393 and eg-0395 use it.
TEST(Microdata, AnAdditionalTypeMakesAProduct) {
  const std::string before = "<div itemscope itemtype='https://schema.org/Book'>";
  const std::string after = "<h1 itemprop=name>Coats</h1></div>";
  const auto with = [&](const std::string& type) {
    return before + "<link itemprop=additionalType href='" + type + "'>" + after;
  };
  EXPECT_THAT(read_page(with("http://schema.org/Product")).rows, SizeIs(1));
  EXPECT_THAT(read_page(with("http://schema.org/Periodical")).rows, IsEmpty());
  EXPECT_THAT(read_page(with("http://a.example/Product")).rows, IsEmpty());
}

TEST(Microdata, OneItemMayBeTheValueOfTwoProperties) {
  const ReadPage page = read_page(
      "<div itemscope itemtype='http://schema.org/ProductGroup'><h1 itemprop=name>Coat</h1>"
      "<meta itemprop=productGroupID content=G1>"
      "<div itemprop='hasVariant isRelatedTo' itemscope itemtype='http://schema.org/Product'>"
      "<i itemprop=size>S</i><i itemprop=sku>G1-S</i></div></div>");
  EXPECT_THAT(page.rows,
              ElementsAre(Cells{
                  {"line_code", "G1"}, {"name", "Coat"}, {"size", "S"}, {"variant_code", "G1-S"}}));
}

// Source: schema.org 30.0 examples; see the file. The exceptions carry their reason there.
TEST(Microdata, TheThreeSyntaxesOfSchemaOrgGiveTheSameRows) {
  const Json suite = checks("schemaorg_syntaxes.json");
  std::size_t with_rows = 0;
  for (const auto& example : suite["cases"]) {
    const auto rows = [&](const char* syntax) {
      return read_page("<!doctype html><body>" + example[syntax].get<std::string>()).rows;
    };
    const auto json = rows("json");
    const bool same = json == rows("microdata") && json == rows("rdfa");
    EXPECT_EQ(same, !example.contains("differs")) << example["id"];
    if (example.contains("alike")) {
      const auto pair = example["alike"].get<std::vector<std::string>>();
      EXPECT_EQ(rows(pair[0].c_str()), rows(pair[1].c_str())) << example["id"];
    }
    with_rows += same && !json.empty() ? 1 : 0;
  }
  EXPECT_EQ(suite["cases"].size(), 14U);
  EXPECT_EQ(with_rows, 5U);
}

}  // namespace
}  // namespace rangebook

// Breadcrumbs with a name, without one, and what only looks like them.
#include "importers/visible_crumbs.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <variant>

#include "tests/importers/page_rows.h"

namespace rangebook {
namespace {

using testing::Contains;
using testing::Pair;

std::string crumbs_of(const std::string& before) {
  const std::string page = before + "<h1>Wool coat</h1>";
  const auto built = HtmlTree::build(page);
  return visible_breadcrumbs(PageView(std::get<HtmlTree>(built)), "Wool coat");
}

TEST(VisibleCrumbs, AreNamedOrLookTheirPart) {
  EXPECT_EQ(crumbs_of("<ol class=breadcrumb><li>Home<li>Women<li>Coats</ol>"), "Women > Coats");
  EXPECT_EQ(crumbs_of("<div>Accueil › Femme › Manteaux</div>"), "Femme > Manteaux");
  EXPECT_EQ(crumbs_of("<div><a>Mujer</a> / <a>Abrigos</a> / <b>Wool coat</b></div>"),
            "Mujer > Abrigos");
  EXPECT_EQ(crumbs_of("<nav><a>Scarpe</a> &rsaquo; <a>Sandali</a></nav>"), "Scarpe > Sandali");
}

TEST(VisibleCrumbs, AMenuIsNone) {
  EXPECT_EQ(crumbs_of("<nav><a>Home</a> <a>Women</a> <a>Men</a></nav>"), "");
  EXPECT_EQ(crumbs_of("<p>Women | Men | Children</p>"), "");
  EXPECT_EQ(crumbs_of("<p>Free delivery - 30 days to return</p>"), "");
}

// The product itself is not marked up, so its category is the page's.
TEST(VisibleCrumbs, AreTakenFromMarkup) {
  const std::string product =
      "<h1>Wool coat</h1><p class=price>£90.00</p><button>Add to bag</button>";
  const ReadPage json = read_page(
      "<script type='application/ld+json'>{\"@type\":\"BreadcrumbList\",\"itemListElement\":["
      "{\"@type\":\"ListItem\",\"position\":1,\"name\":\"Coats\"},"
      "{\"@type\":\"ListItem\",\"position\":2,\"name\":\"Wool coat\"}]}</script>" +
      product);
  ASSERT_EQ(json.rows.size(), 1U);
  EXPECT_THAT(json.rows[0], Contains(Pair("category", "Coats")));
  const ReadPage items = read_page(
      "<ol itemscope itemtype='https://schema.org/BreadcrumbList'><li itemprop=itemListElement "
      "itemscope itemtype='https://schema.org/ListItem'><b itemprop=name>Jackets</b></ol>" +
      product);
  ASSERT_EQ(items.rows.size(), 1U);
  EXPECT_THAT(items.rows[0], Contains(Pair("category", "Jackets")));
}

}  // namespace
}  // namespace rangebook

// Compositions as pages set them: sentences, lines of a list, rows of a table.
#include "importers/visible_composition.h"

#include <gtest/gtest.h>

#include <variant>

#include "importers/html_tree.h"

namespace rangebook {
namespace {

std::string composition_of(const std::string& html) {
  const auto built = HtmlTree::build("<h1>Coat</h1>" + html);
  return visible_composition(PageView(std::get<HtmlTree>(built)));
}

TEST(VisibleComposition, LeavesOutSentencesAboutOtherThings) {
  EXPECT_EQ(composition_of("<p>100% silk. Dry clean.</p>"), "100% silk");
  EXPECT_EQ(composition_of("<p>Fabric: 85% wool, 15% nylon</p>"), "85% wool, 15% nylon");
  EXPECT_EQ(composition_of("<td>Price inc VAT<br>Fabric: 85% wool, 15% nylon<br>Size</td>"),
            "85% wool, 15% nylon");
  EXPECT_EQ(composition_of("<p>20% off everything</p>"), "");
}

TEST(VisibleComposition, JoinsParts) {
  const std::string both = "Shell: 100% wool. Lining: 60% viscose, 40% polyester";
  EXPECT_EQ(composition_of("<p>" + both + "</p>"), both);
  EXPECT_EQ(composition_of("<ul><li>Shell: 100% wool<li>Lining: 60% viscose, 40% polyester</ul>"),
            both);
  EXPECT_EQ(composition_of("<table><tr><th>Shell<td>100% wool<tr><th>Lining"
                           "<td>60% viscose, 40% polyester</table>"),
            both);
  EXPECT_EQ(composition_of("<dl><dt>Shell<dd>100% wool<dt>Lining"
                           "<dd>60% viscose, 40% polyester</dl>"),
            both);
}

}  // namespace
}  // namespace rangebook

// Colours behind labels and among choices.
#include "importers/visible_colour.h"

#include <gtest/gtest.h>

#include <variant>

#include "importers/html_tree.h"

namespace rangebook {
namespace {

std::string colour_of(const std::string& html) {
  const auto built = HtmlTree::build(html);
  return visible_colour(PageView(std::get<HtmlTree>(built)));
}

TEST(VisibleColour, StandsBehindItsLabel) {
  EXPECT_EQ(colour_of("<h1>Coat</h1><p>Colour: Navy</p>"), "Navy");
  EXPECT_EQ(colour_of("<h1>Coat</h1><p>Color / Colour: Moss</p>"), "Moss");
  EXPECT_EQ(colour_of("<h1>Mantel</h1><dl><dt>Farbe</dt><dd>Tanne</dd></dl>"), "Tanne");
  EXPECT_EQ(colour_of("<h1>Mantel</h1><table><tr><th>Farbe:<td>Tanne</table>"), "Tanne");
  EXPECT_EQ(colour_of("<h1>Robe</h1><p><span>Couleur</span> : <b>Prune</b></p>"), "Prune");
}

TEST(VisibleColour, WhatFollowsMayBeSomethingElse) {
  EXPECT_EQ(colour_of("<h1>Coat</h1><p>Colour</p><p>Size</p>"), "");
  EXPECT_EQ(colour_of("<h1>Coat</h1><p>Colour</p><p>£49.00</p>"), "");
  EXPECT_EQ(colour_of("<h1>Coat</h1><p>Colour</p><p>S</p>"), "");
  EXPECT_EQ(colour_of("<h1>Coat</h1><p>Colours may differ from the picture: beware</p>"), "");
}

TEST(VisibleColour, OfSeveralChoicesTheChosenOneElseAll) {
  const std::string begin = "<h1>Coat</h1><div><label>Colour</label><select>";
  EXPECT_EQ(colour_of(begin + "<option value=''>Please choose<option>Olive<option>Stone</select>"),
            "Olive|Stone");
  EXPECT_EQ(colour_of(begin + "<option>Olive<option selected>Stone</select>"), "Stone");
  EXPECT_EQ(colour_of("<h1>Coat</h1><fieldset><legend>Colour</legend>"
                      "<label><input type=radio>Olive</label>"
                      "<label><input type=radio checked>Stone</label></fieldset>"),
            "Stone");
  EXPECT_EQ(colour_of("<h1>Coat</h1><div><p>Colour</p><button>Olive</button>"
                      "<button>Stone</button><p>Size</p><button>S</button></div>"),
            "Olive|Stone");
  EXPECT_EQ(
      colour_of("<h1>Coat</h1><div><p>Colour</p><a title=Olive></a><a title=Stone></a></div>"),
      "Olive|Stone");
}

}  // namespace
}  // namespace rangebook

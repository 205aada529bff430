// Style sheets as pages carry them: which rules speak of a class alone. Grammar: CSS Syntax Module
// Level 3 and Selectors (W3C).
#include "importers/page_styles.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/importers/page_rows.h"

namespace rangebook {
namespace {

using testing::IsEmpty;
using testing::UnorderedElementsAre;

PageStyles styles_of(std::string_view sheet) {
  PageStyles styles;
  read_styles(sheet, styles);
  return styles;
}

TEST(PageStyles, ReadsRulesThatNameAClassAlone) {
  const auto styles = styles_of(
      "@import 'x.css'; .was, span.old { color: grey; TEXT-DECORATION : line-through }\n"
      "/* .a { display:none } */ .note{display:none;color:red}.ghost{visibility:hidden}");
  EXPECT_THAT(styles.struck, UnorderedElementsAre("was", "old"));
  EXPECT_THAT(styles.undisplayed, UnorderedElementsAre("note", "ghost"));
}

TEST(PageStyles, LeavesOutWhatHangsOnMore) {
  const auto styles = styles_of(
      ".card .note{display:none} .note:hover{display:none} .a.b{display:none} #id{display:none}"
      "@media print{.note{display:none}} .x{display:block} .y{--z:;text-decoration:underline}");
  EXPECT_THAT(styles.struck, IsEmpty());
  EXPECT_THAT(styles.undisplayed, IsEmpty());
}

TEST(PageStyles, BrokenSheetsEnd) {
  for (const char* sheet : {"", "{", "}", ".a{", ".a{display:none", "/*", ".a{}}}.b{display:none}",
                            ".a{{display:none}}", ",,,{display:none}", ".{display:none}"}) {
    EXPECT_FALSE(styles_of(sheet).undisplayed.contains("a")) << sheet;
  }
}

TEST(PageStyles, AStruckPriceIsTheFormerOne) {
  const ReadPage page = read_page(
      "<html lang=en><style>.p1{text-decoration:line-through}.n{display:none}</style>"
      "<h1>Tweed skirt</h1><p><b class=p1>£90.00</b> <b class=p2>£60.00</b></p>"
      "<p class=n>Sold out</p><button>Add to basket</button></html>");
  ASSERT_EQ(page.rows.size(), 1U);
  EXPECT_EQ(page.rows[0].at("price"), "£60.00");
  EXPECT_EQ(page.rows[0].at("full_price"), "£90.00");
  EXPECT_EQ(page.rows[0].at("in_stock"), "InStock");
}

}  // namespace
}  // namespace rangebook

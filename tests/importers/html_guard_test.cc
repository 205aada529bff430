// Hostile pages: what no tree is built of, and that what passes is built quickly.
#include "importers/html_guard.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "importers/html_tree.h"
#include "tests/importers/page_rows.h"

namespace rangebook {
namespace {

using testing::HasSubstr;
using testing::SizeIs;

std::string repeat(std::string_view text, std::size_t times) {
  std::string out;
  for (std::size_t i = 0; i < times; ++i) out += text;
  return out;
}

std::optional<TreeLimit::Kind> limit_of(const std::string& page) {
  const auto limit = tree_limit(page);
  return limit ? std::optional(limit->kind) : std::nullopt;
}

TEST(HtmlGuard, StopsDeepPages) {
  EXPECT_EQ(limit_of(repeat("<div>", 1'000'000)), TreeLimit::Kind::depth);
  EXPECT_EQ(limit_of(repeat("<svg><g>", 100'000)), TreeLimit::Kind::depth);
  EXPECT_EQ(limit_of(repeat("<ul><li>", 10'000)), TreeLimit::Kind::depth);
  EXPECT_EQ(limit_of(repeat("<table><td></div>", 10'000)), TreeLimit::Kind::depth);
  EXPECT_EQ(limit_of(repeat("<svg><style><g>", 10'000)), TreeLimit::Kind::depth);
  EXPECT_EQ(limit_of(repeat("<b></i>", 10'000)), TreeLimit::Kind::depth);
}

TEST(HtmlGuard, LetsLongFlatPagesPass) {
  EXPECT_EQ(limit_of(repeat("<p>x", 100'000)), std::nullopt);
  EXPECT_EQ(limit_of(repeat("<li><a href=x>x</a>", 100'000)), std::nullopt);
  EXPECT_EQ(limit_of("<table>" + repeat("<tr><td>x<td>y", 100'000)), std::nullopt);
  EXPECT_EQ(limit_of(repeat("<img src=x><br><input>", 100'000)), std::nullopt);
  EXPECT_EQ(limit_of(repeat("<script>a<b;x</script>", 10'000)), std::nullopt);
  EXPECT_EQ(limit_of(repeat("<a><div></a></div>", 5'000)), std::nullopt);
}

TEST(HtmlGuard, CountsTagsAttributesAndBytes) {
  EXPECT_EQ(limit_of(repeat("<br>", kMaxTreeTags + 1)), TreeLimit::Kind::tags);
  std::string wide = "<p";
  for (int i = 0; i < 10'000; ++i) wide += " a" + std::to_string(i) + "=1";
  EXPECT_EQ(limit_of(wide + ">x"), TreeLimit::Kind::attributes);
  EXPECT_EQ(limit_of(std::string(kMaxTreeBytes + 1, ' ')), TreeLimit::Kind::bytes);
  EXPECT_EQ(limit_of("<div><frameset>"), TreeLimit::Kind::frames);
}

TEST(HtmlGuard, TheReaderSaysWhichLimit) {
  const ReadPage page = read_page("<!doctype html>" + repeat("<div>", 1'000'000));
  ASSERT_THAT(page.rejections, SizeIs(1));
  EXPECT_EQ(page.rejections[0].kind, RejectionKind::over_limit);
  EXPECT_THAT(page.rejections[0].what, HasSubstr("nested more than 2000 deep"));
}

// The names of all elements around the text "here", outermost first.
std::string way_to_here(const std::string& page) {
  const auto built = HtmlTree::build(page);
  const auto& tree = std::get<HtmlTree>(built);
  std::string way;
  for (HtmlId at = 1; at < tree.size(); ++at) {
    if (tree[at].text != "here") continue;
    for (HtmlId up = tree[at].parent; up != 0; up = tree[up].parent) {
      way.insert(0, "/" + std::string(tree[up].name));
    }
  }
  return way;
}

TEST(HtmlTree, IsWhatABrowserBuilds) {
  EXPECT_EQ(way_to_here("<p>a<div>here"), "/html/body/div");
  EXPECT_EQ(way_to_here("<table><tr><td>here"), "/html/body/table/tbody/tr/td");
  EXPECT_EQ(way_to_here("<x-Price>here</x-Price>"), "/html/body/x-price");
  EXPECT_EQ(way_to_here("<template><p>here</template>"), "");
}

TEST(HtmlTree, TextIsWithoutScripts) {
  const auto built =
      HtmlTree::build("<div>a<script>b</script><style>c</style><b>d &amp; e</b></div>");
  const auto& tree = std::get<HtmlTree>(built);
  EXPECT_EQ(tree.text(0), "ad & e");
}

}  // namespace
}  // namespace rangebook

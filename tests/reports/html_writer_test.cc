// Escaping and balance of the one HTML writer. Which characters have to be escaped where: HTML
// Standard, section "Serializing HTML fragments"; hostile addresses: common practice, no source.
#include "reports/html_writer.h"

#include <gtest/gtest.h>

#include "schema/error.h"

namespace rangebook {
namespace {

TEST(HtmlWriter, TextCannotBecomeMarkup) {
  HtmlWriter html;
  html.element("p", {}, "<script>alert(1)</script> & \"more\"");
  EXPECT_EQ(html.take(), "<p>&lt;script&gt;alert(1)&lt;/script&gt; &amp; \"more\"</p>\n");
}

TEST(HtmlWriter, AttributesCannotBeLeft) {
  HtmlWriter html;
  html.element("b", {{"title", "\" onclick=\"alert(1)' <>&"}}, "x");
  EXPECT_EQ(html.take(), "<b title=\"&quot; onclick=&quot;alert(1)&#39; &lt;&gt;&amp;\">x</b>\n");
}

TEST(HtmlWriter, BrokenBytesAndControlCharactersAreReplaced) {
  HtmlWriter html;
  html.element("b", {},
               std::string("a\xFF"
                           "b\0c\x1B"
                           "d\xC2\x85"
                           "e",
                           10));
  EXPECT_EQ(html.take(),
            "<b>a\xEF\xBF\xBD"
            "b\xEF\xBF\xBD"
            "c\xEF\xBF\xBD"
            "d\xEF\xBF\xBD"
            "e</b>\n");
}

TEST(HtmlWriter, ScopesCloseInOrderAndTakeClosesTheRest) {
  HtmlWriter html;
  html.open("i");
  {
    const auto bold = html.in("b", {{"class", "x"}});
    html.text("y");
  }
  html.open("u");
  EXPECT_EQ(html.take(), "<i><b class=\"x\">y</b><u></u></i>\n");
}

TEST(HtmlWriter, EmptyElementsAreClosedOnlyInPictures) {
  HtmlWriter html;
  html.single("br", {});
  html.open("svg");
  html.single("rect", {{"x", "1"}});
  EXPECT_EQ(html.take(), "<br>\n<svg><rect x=\"1\"/></svg>\n");
}

TEST(HtmlWriter, UnsafeAddressesAreLeftOut) {
  HtmlWriter html;
  html.element("a", {{"href", "javascript:alert(1)"}}, "x");
  html.element("a", {{"HREF", "java\tscript:alert(1)"}}, "y");
  html.element("a", {{"href", "#source-1"}}, "z");
  EXPECT_EQ(html.take(), "<a>x</a><a>y</a><a href=\"#source-1\">z</a>\n");
}

TEST(HtmlWriter, ScriptsHandlersAndInlineStylesCannotBeWritten) {
  HtmlWriter html;
  EXPECT_THROW(html.open("script"), Error);
  EXPECT_THROW(html.open("b onclick"), Error);
  EXPECT_THROW(html.open("b", {{"onclick", "x"}}), Error);
  EXPECT_THROW(html.open("b", {{"STYLE", "x"}}), Error);
  EXPECT_THROW(html.stylesheet("</style><b>"), Error);
  EXPECT_THROW(html.script_at("https://shop.example/x.js"), Error);
  EXPECT_THROW(html.script_at("//shop.example/x.js"), Error);
}

TEST(SafeUrl, AllowsWhatAPageMayLinkTo) {
  for (const auto* url :
       {"https://example.org/a?b=c:d", "HTTP://example.org", "mailto:a@example.org", "#note-1",
        "page.html", "folder/a:b", "?q=1", "/desk"}) {
    EXPECT_TRUE(is_safe_url(url)) << url;
  }
}

TEST(SafeUrl, RefusesEverythingElse) {
  for (const auto* url : {"", "javascript:alert(1)", "JaVaScRiPt:alert(1)", " javascript:x",
                          "java\nscript:x", "\x01javascript:x", "data:text/html,x", "vbscript:x",
                          "file:///etc/passwd", "//elsewhere.example", "\\\\elsewhere", "x y"}) {
    EXPECT_FALSE(is_safe_url(url)) << url;
  }
}

}  // namespace
}  // namespace rangebook

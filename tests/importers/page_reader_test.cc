// Whole documents: encodings, places, refusals.
#include "importers/page_reader.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

#include "tests/importers/page_rows.h"

namespace rangebook {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

// `text` is ASCII and code points below 256; in UTF-16, or in ISO 8859-1.
std::string utf16(std::u16string_view text, bool little) {
  std::string out;
  for (const char16_t unit : text) {
    const char low = static_cast<char>(unit & 0xFFU);
    const char high = static_cast<char>(unit >> 8U);
    out += little ? low : high;
    out += little ? high : low;
  }
  return out;
}

constexpr std::string_view kCafe = R"({"@type":"Product","name":"Caf)";

void expect_cafe(const std::string& document, std::string_view encoding) {
  const ReadPage page = read_page(document);
  EXPECT_THAT(page.rows, ElementsAre(Cells{{"name", "Caf\u00e9"}})) << encoding;
  EXPECT_THAT(page.rejections, IsEmpty());
  EXPECT_THAT(page.mapping, HasSubstr("encoding=" + std::string(encoding)));
}

TEST(PageReader, ReadsUtf8) {
  const std::string json = std::string(kCafe) + "\u00e9\"}";
  expect_cafe(page_with(json), "UTF-8");
  expect_cafe("\xEF\xBB\xBF" + page_with(json), "UTF-8");
  expect_cafe("<script type=application/ld+json>" + json + "</script>", "UTF-8");
}

TEST(PageReader, ReadsWesternPages) {
  const std::string script =
      "<script type=application/ld+json>" + std::string(kCafe) + "\xE9\"}</script>";
  expect_cafe("<meta charset=windows-1252>" + script, "windows-1252");
  expect_cafe("<meta charset='ISO-8859-1'>" + script, "windows-1252");
  expect_cafe("<meta http-equiv=content-type content='text/html;charset=latin1'>" + script,
              "windows-1252");
  expect_cafe(script, "windows-1252");  // nothing declared and no UTF-8
  expect_cafe("<meta charset=iso-8859-15>" + script, "iso-8859-15");
}

TEST(PageReader, ReadsUtf16) {
  const std::u16string text =
      u"<script type=application/ld+json>{\"@type\":\"Product\",\"name\":\"Caf\u00e9\"}</script>";
  expect_cafe("\xFF\xFE" + utf16(text, true), "UTF-16LE");
  expect_cafe("\xFE\xFF" + utf16(text, false), "UTF-16BE");
  expect_cafe(utf16(text, true), "UTF-16LE");
  expect_cafe(utf16(text, false), "UTF-16BE");
}

TEST(PageReader, PlacesAreThoseOfTheDocument) {
  const std::string page = "<!doctype html>\n<title>\u20ac</title>\n" +
                           page_with(
                               "\n[{\"@type\":\"Product\",\"name\":\"A\"},\n"
                               "{\"@type\":\"Product\",\"name\":\"B\"}]");
  const ReadPage read = read_page(page);
  ASSERT_THAT(read.origins, SizeIs(2));
  EXPECT_EQ(read.origins[0].document, 7U);
  EXPECT_EQ(read.origins[0].line, 4U);
  EXPECT_EQ(read.origins[0].byte, page.find("{\"@type\""));
  EXPECT_EQ(read.origins[1].line, 5U);
  EXPECT_EQ(read.origins[1].byte, page.rfind("{\"@type\""));
}

TEST(PageReader, PlacesInOtherEncodingsAreThoseOfTheDocument) {
  const std::u16string text =
      u"<!doctype html>\u20ac\U0001F457\n<script type=application/ld+json>{\"@type\":\"Product\","
      u"\"name\":\"\u00e9\"}</script>";
  const auto wide = read_page("\xFF\xFE" + utf16(text, true)).origins;
  ASSERT_THAT(wide, SizeIs(1));
  EXPECT_EQ(wide[0].byte, 2 + 2 * text.find(u"{\"@type\""));
  EXPECT_EQ(wide[0].line, 2U);
  const std::string western =
      "<meta charset=latin1>\xE9\xE9\n<script type=application/ld+json>"
      "{\"@type\":\"Product\",\"name\":\"x\"}</script>";
  const auto narrow = read_page(western).origins;
  ASSERT_THAT(narrow, SizeIs(1));
  EXPECT_EQ(narrow[0].byte, western.find("{\"@type\""));
}

TEST(PageReader, ABadBlockDoesNotHideAGoodOne) {
  const std::string page =
      "<title>x</title>\n<script type=application/ld+json>\n{\"a\" 1}</script>" +
      page_with(R"({"@type":"Product","name":"A"})");
  const ReadPage read = read_page(page);
  EXPECT_THAT(read.rows, SizeIs(1));
  ASSERT_THAT(read.rejections, SizeIs(1));
  const Rejection& rejection = read.rejections.front();
  EXPECT_EQ(rejection.kind, RejectionKind::bad_markup);
  EXPECT_EQ(rejection.refused, Refused::row);
  EXPECT_EQ(rejection.document, 7U);
  EXPECT_EQ(rejection.line, 3U);
  EXPECT_EQ(rejection.byte, page.find(" 1}") + 1);
  EXPECT_EQ(rejection.excerpt, "1}");
  EXPECT_THAT(rejection.what, HasSubstr("not valid JSON"));
  EXPECT_NE(rejection.how_to_fix, "");
}

Rejection only_rejection(const std::string& document) {
  const ReadPage page = read_page(document);
  EXPECT_THAT(page.rows, IsEmpty());
  EXPECT_THAT(page.rejections, SizeIs(1));
  return page.rejections.empty() ? Rejection{} : page.rejections.front();
}

TEST(PageReader, SaysThatABlockBreaksOff) {
  const auto rejection =
      only_rejection("<script type=application/ld+json>{\"@type\":\"Product\",\"name\":\"A");
  EXPECT_EQ(rejection.kind, RejectionKind::bad_markup);
  EXPECT_THAT(rejection.what, HasSubstr("breaks off"));
}

TEST(PageReader, RefusesDeepNesting) {
  const std::string deep(100'000, '[');
  const auto rejection = only_rejection(page_with(deep));
  EXPECT_EQ(rejection.kind, RejectionKind::bad_markup);
  EXPECT_THAT(rejection.what, HasSubstr("nested more than 200 levels"));
}

TEST(PageReader, SaysWhatAPageWithoutProductsHas) {
  const auto none = only_rejection("<!doctype html><p>Dress 49.90</p>");
  EXPECT_EQ(none.kind, RejectionKind::unreadable_document);
  EXPECT_THAT(none.what, HasSubstr("it has no JSON-LD"));
  const auto other = only_rejection(
      page_with(R"([{"@type":"WebPage","mainEntity":{"@type":"Article"}},{"@type":"WebPage"}])"));
  EXPECT_THAT(other.what, HasSubstr("its 1 JSON-LD blocks hold WebPage, Article."));
}

TEST(PageReader, RefusesWhatIsNoPage) {
  using namespace std::string_literals;
  EXPECT_THAT(only_rejection("").what, HasSubstr("empty"));
  EXPECT_THAT(only_rejection("%PDF-1.7 ...").what, HasSubstr("PDF"));
  EXPECT_THAT(only_rejection("PK\x03\x04...").what, HasSubstr("zip"));
  EXPECT_THAT(only_rejection("\0\1\2\3\4\5\6\7binary"s).what, HasSubstr("binary"));
  EXPECT_THAT(only_rejection("From: <Saved by a browser>\r\n").what, HasSubstr("MHTML"));
  EXPECT_EQ(only_rejection("<meta charset=klingon><p>").kind, RejectionKind::bad_encoding);
}

TEST(PageReader, ReadsPastStrayNulBytes) {
  std::string page = page_with(R"({"@type":"Product","name":"A B"})");
  page[page.find(' ')] = '\0';        // in the doctype
  page[page.find("A B") + 1] = '\0';  // in the name
  EXPECT_THAT(read_page(page).rows, ElementsAre(Cells{{"name", "A B"}}));
}

TEST(PageReader, SaysThatBytesAreNotUtf8) {
  const ReadPage page = read_page(page_with(std::string(kCafe) + "\xE9\"}"));
  EXPECT_THAT(page.rows, ElementsAre(Cells{{"name", "Caf\uFFFD"}}));
  ASSERT_THAT(page.rejections, SizeIs(1));
  EXPECT_EQ(page.rejections[0].kind, RejectionKind::bad_encoding);
  EXPECT_EQ(page.rejections[0].refused, Refused::cell);
  EXPECT_THAT(page.rejections[0].what, HasSubstr("1 bytes"));
}

TEST(PageReader, AddressesOfThePageAreUtf8Too) {
  const ReadPage page =
      read_page(page_with(R"({"@type":"Product","name":"A"})",
                          "<link rel=canonical href='https://shop.example/\xAC'>"));
  EXPECT_EQ(page.rows.at(0).at("url"), "https://shop.example/\uFFFD");
}

TEST(PageReader, NamesTheLineOfADoubt) {
  const ReadPage page = read_page(page_with(R"({"@type":"Product","name":"Skirt","sku":"S1",
    "offers":{"@type":"AggregateOffer","lowPrice":"1","highPrice":"2"}})"));
  ASSERT_THAT(page.rejections, SizeIs(1));
  EXPECT_EQ(page.rejections[0].field, "price");
  EXPECT_EQ(page.rejections[0].line_code, "S1");
  EXPECT_EQ(page.rejections[0].name, "Skirt");
}

TEST(PageReader, RelativeAddressesFollowBaseAndCanonical) {
  const auto image = [](std::string_view head) {
    return read_page(page_with(R"({"@type":"Product","name":"A","image":"i/a.jpg"})", head))
        .rows.at(0)
        .at("image");
  };
  EXPECT_EQ(image(""), "i/a.jpg");
  EXPECT_EQ(image("<link rel=canonical href=https://shop.example/p/a?x=1>"),
            "https://shop.example/p/i/a.jpg");
  EXPECT_EQ(image("<meta property=og:url content=https://shop.example>"),
            "https://shop.example/i/a.jpg");
  EXPECT_EQ(
      image("<base href=https://cdn.example/z/><meta property=og:url content=https://a.example>"),
      "https://cdn.example/z/i/a.jpg");
}

TEST(PageReader, StaysAtTheEnd) {
  const std::string document = page_with(R"({"@type":"Product","name":"A"})");
  const auto reader = open_page(document, 0);
  EXPECT_EQ(reader->next(), RowReader::Step::row);
  EXPECT_EQ(reader->next(), RowReader::Step::end);
  EXPECT_EQ(reader->next(), RowReader::Step::end);
  EXPECT_EQ(reader->mapping(), "json-ld blocks=1 repaired=0 products=1 encoding=UTF-8");
}

// Source: WHATWG MIME Sniffing standard, section 7.1, the table of tags, from memory.
TEST(LooksLikePage, ByItsFirstTag) {
  for (const char* page : {"<!DOCTYPE HTML>",
                           "<html>",
                           "\n\t <HTML lang=en>",
                           "<head>",
                           "<script src=x>",
                           "<iframe >",
                           "<h1>",
                           "<div >",
                           "<font >",
                           "<table>",
                           "<a >",
                           "<style>",
                           "<title>",
                           "<b>",
                           "<body>",
                           "<br>",
                           "<p>",
                           "\xEF\xBB\xBF<!doctype html>",
                           "<!-- saved --><html>",
                           "<?xml version=\"1.0\"?><!DOCTYPE html><html xmlns=x>"}) {
    EXPECT_TRUE(looks_like_page(page)) << page;
  }
  EXPECT_TRUE(looks_like_page("\xFF\xFE" + utf16(u"<!doctype html>", true)));
  for (const char* other :
       {"", "name,price\nDress,1", "<rss version=2.0>", "<?xml version='1.0'?><rss>", "{\"a\":1}",
        "<htmlx>", "<", "%PDF-1.7", "PK\x03\x04"}) {
    EXPECT_FALSE(looks_like_page(other)) << other;
  }
}

}  // namespace
}  // namespace rangebook

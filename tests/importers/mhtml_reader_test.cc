// Web archives: a file that a browser wrote, and files written by hand by RFC 2557.
#include "importers/mhtml_reader.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

#include "tests/importers/mhtml_samples.h"
#include "tests/importers/page_rows.h"

namespace rangebook {
namespace {

using testing::AllOf;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Pair;
using testing::SizeIs;

ReadPage read_mhtml(std::string_view file) { return page_of(*open_mhtml(file, 7)); }

const std::string kHtml = "Content-Type: text/html; charset=utf-8";

TEST(MhtmlReader, AFileOfABrowserIsReadByWhatAShopperSees) {
  const ReadPage page = read_mhtml(mhtml_check("wrap-coat.mhtml"));
  ASSERT_THAT(page.rows, SizeIs(2));  // sizes in stock, and the one struck out
  EXPECT_THAT(page.rows[0],
              AllOf(Contains(Pair("name", "Thea wrap coat")),
                    Contains(Pair("price",
                                  "\xC2\xA3"
                                  "149.90")),
                    Contains(Pair("full_price",
                                  "\xC2\xA3"
                                  "189.90")),
                    Contains(Pair("colour", "Caf\u00e9 au lait")),
                    Contains(Pair("size", "8|10|14")), Contains(Pair("in_stock", "InStock")),
                    Contains(Pair("url", "https://lowick-strand.example/women/coats/ls-2041"))));
  EXPECT_THAT(page.rows[1],
              AllOf(Contains(Pair("size", "12")), Contains(Pair("in_stock", "OutOfStock"))));
  EXPECT_THAT(
      page.mapping,
      AllOf(HasSubstr("mhtml parts=4 frames left aside=1"),
            HasSubstr("address=https://lowick-strand.example/women/coats/ls-2041?colour=cafe")));
}

TEST(MhtmlReader, MissingScriptsAreSaidOnce) {
  const ReadPage page = read_mhtml(mhtml_check("wrap-coat.mhtml"));
  ASSERT_THAT(page.rejections, SizeIs(2));  // the other: visible text is less sure
  const Rejection& remark = page.rejections[0];
  EXPECT_EQ(remark.refused, Refused::nothing);
  EXPECT_EQ(remark.kind, RejectionKind::bad_markup);
  EXPECT_THAT(remark.what, AllOf(HasSubstr("Scripts are missing"),
                                 HasSubstr("Prices were read from the page's visible text")));
}

TEST(MhtmlReader, ScriptsThatAreThereAreRead) {
  const std::string html = page_with(R"({"@type":"Product","name":"Thea","sku":"T1"})");
  const ReadPage page = read_mhtml(mime_document(mime_part(kHtml, html)));
  EXPECT_THAT(page.rows, ElementsAre(Cells{{"name", "Thea"}, {"line_code", "T1"}}));
  EXPECT_THAT(page.rejections, IsEmpty());
}

TEST(MhtmlReader, RowsStandInTheFile) {
  const std::string file = mhtml_check("wrap-coat.mhtml");
  const ReadPage page = read_mhtml(file);
  const auto heading = file.find("<h1>Thea");
  EXPECT_EQ(page.origins[0].byte, heading);
  EXPECT_EQ(page.origins[0].line,
            1 + static_cast<std::uint64_t>(
                    std::count(file.begin(), file.begin() + static_cast<long>(heading), '\n')));
}

std::string url_of(const std::string& file) {
  const ReadPage page = read_mhtml(file);
  return page.rows.empty() ? "none" : page.rows[0].contains("url") ? page.rows[0].at("url") : "";
}

TEST(MhtmlReader, AnAddressComesFromThePartOrTheWhole) {
  const std::string page(kShownPage);
  const std::string at = "\r\nContent-Location: ";
  EXPECT_EQ(url_of(mime_document(mime_part(kHtml + at + "https://a.example/coat", page))),
            "https://a.example/coat");
  const std::string whole = "Snapshot-Content-Location: https://a.example/women/\r\n";
  EXPECT_EQ(url_of(whole + mime_document(mime_part(kHtml, page))), "https://a.example/women/");
  EXPECT_EQ(url_of(whole + mime_document(mime_part(kHtml + at + "coat", page))),
            "https://a.example/women/coat");
  EXPECT_EQ(url_of(mime_document(mime_part(kHtml + at + "file:///C:/coat.html", page))), "");
}

std::string name_of(const std::string& file) {
  const ReadPage page = read_mhtml(file);
  return page.rows.empty() ? page.rejections.at(0).what : page.rows[0].at("name");
}

// RFC 2557, section 8.4 (RFC 2387, section 3.2): start names the root, else it is the first.
TEST(MhtmlReader, TheRootIsNamedOrFirst) {
  const auto part = [](const std::string& name, const std::string& more) {
    return mime_part(kHtml + more, "<h1>" + name +
                                       "</h1><p class=price>\xC2\xA3"
                                       "5.00</p>");
  };
  const std::string parts =
      mime_part("Content-Type: text/css", "h1{}") + part("First", "") +
      part("Second", "\r\nContent-ID: <2@x>\r\nContent-Location: https://a.example/2");
  EXPECT_EQ(name_of(mime_document(parts)), "First");
  EXPECT_EQ(name_of(mime_document(parts, "; start=\"<2@x>\"")), "Second");
  EXPECT_EQ(name_of("Snapshot-Content-Location: https://a.example/2\r\n" + mime_document(parts)),
            "Second");
  EXPECT_EQ(name_of(mime_document(parts, "; start=\"<9@x>\"")), "First");
}

TEST(MhtmlReader, CharsetsAndEncodingsAreDecoded) {
  const std::string price = "<p class=price>5.00 EUR</p>";
  EXPECT_EQ(name_of(mime_document(mime_part("Content-Type: text/html; charset=iso-8859-1",
                                            "<h1>Caf\xE9</h1>" + price))),
            "Caf\u00e9");
  EXPECT_EQ(name_of(mime_document(mime_part("Content-Type: text/html; charset=iso-8859-1\r\n"
                                            "Content-Transfer-Encoding: quoted-printable",
                                            "<meta charset=3Dutf-8><h1>Caf=E9</h1>" + price))),
            "Caf\u00e9");
  EXPECT_EQ(
      name_of(mime_document(mime_part("Content-Type: text/html\r\n"
                                      "Content-Transfer-Encoding: base64",
                                      "PGgxPkNhZsOpPC9oMT48cCBjbGFzcz1wcmljZT41LjAwIEVVUjwvcD4="))),
      "Caf\u00e9");
}

TEST(MhtmlReader, DamageIsSaid) {
  const std::string cut =
      "MIME-Version: 1.0\r\nContent-Type: multipart/related; boundary=b\r\n\r\n" +
      mime_part(kHtml, kShownPage);
  const ReadPage page = read_mhtml(cut);
  ASSERT_FALSE(page.rejections.empty());
  EXPECT_EQ(page.rejections[0].what,
            "The file breaks off within the page; what stood behind is missing.");
  EXPECT_EQ(page.rejections[0].refused, Refused::nothing);
  EXPECT_THAT(page.rows, SizeIs(1));
  const ReadPage base64 = read_mhtml(
      mime_document(mime_part(kHtml + "\r\nContent-Transfer-Encoding: base64",
                              "PGgxPkE8L2gxPj!xw!IGNsYXNzPXByaWNlPjUuMDAgRVVSPC9wPg==")));
  EXPECT_THAT(base64.rejections.at(0).what, HasSubstr("2 signs that do not belong there"));
}

TEST(MhtmlReader, FilesWithoutAPageAreRefused) {
  const auto refusal = [](const std::string& file) {
    const ReadPage page = read_mhtml(file);
    EXPECT_THAT(page.rows, IsEmpty());
    return page.rejections.at(0).what;
  };
  EXPECT_THAT(refusal(""), HasSubstr("none of its 1 parts is an HTML page"));
  EXPECT_THAT(refusal(mime_document(mime_part("Content-Type: image/png", "x"))),
              HasSubstr("none of its 1 parts"));
  EXPECT_THAT(refusal(mime_document(mime_part(kHtml, ""))), HasSubstr("is empty"));
  EXPECT_THAT(refusal(mime_document(mime_part(kHtml + "\r\nContent-Transfer-Encoding: zip", "x"))),
              HasSubstr("transfer encoding \"zip\""));
  EXPECT_THAT(refusal(mime_document(mime_part(kHtml, "<p>Nothing to buy</p>"))),
              HasSubstr("were left out when it was saved"));
  EXPECT_THAT(refusal("Content-Type: multipart/related\r\n\r\n"), HasSubstr("no usable boundary"));
}

TEST(MhtmlReader, ABodyOfTwoHundredMegabytesIsBounded) {
  std::string file = "Content-Type: multipart/related; boundary=b\n\n--b\n" + kHtml + "\n\n";
  file.reserve(kMaxMhtmlBytes + 1);
  file.append(std::size_t{200} << 20U, 'x').append("\n--b--\n");
  const ReadPage page = read_mhtml(file);
  ASSERT_THAT(page.rejections, SizeIs(1));
  EXPECT_EQ(page.rejections[0].kind, RejectionKind::over_limit);
  file.resize(kMaxMhtmlBytes + 1, 'x');
  const ReadPage whole = read_mhtml(file);
  EXPECT_EQ(whole.rejections.at(0).what, "The file has more than 256 MiB.");
}

}  // namespace
}  // namespace rangebook

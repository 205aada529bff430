// The scan against expat: where expat takes a document, both tell the same events, whatever the
// pieces.
#include "importers/xml_scan.h"

#include <gtest/gtest.h>

#include <random>

#include "tests/importers/xml_trace.h"

namespace rangebook {
namespace {

TEST(XmlScan, TellsWhatExpatTells) {
  for (const char* text :
       {"<a/>", "<a b='1' c=\"2\">x</a>",
        "<?xml version='1.0'?><!-- c --><a><b>&lt;&#65;&#xe9;</b></a>",
        "<a><![CDATA[<b>&amp;]]></a>", "<x:a xmlns:x='u'><x:b x:c='>'/></x:a >", "<a>1\r\n2\r3</a>",
        "<a b='x\n\ty'>é</a>", "\xEF\xBB\xBF<a> </a>\n<!-- end -->\n"}) {
    const std::string wanted = trace<XmlParser>(text, 1 << 16);
    EXPECT_EQ(wanted.find("problem"), std::string::npos) << text;
    for (const std::size_t piece : {1U, 3U, 65536U}) {
      EXPECT_EQ(trace<XmlScan>(text, piece), wanted) << text;
    }
  }
}

TEST(XmlScan, RefusesWhatIsNotWellFormed) {
  for (const char* text : {"", "x", "<a>", "<a></b>", "<a/><b/>", "<a", "<a b></a>", "<a b=1/>",
                           "<a b='1/>", "<a>&x;</a>", "<a>&#0;</a>", "<!DOCTYPE a><a/>", "</a>",
                           "<a/>x", "<a>\xFF</a>", "<a><![CDATA[x</a>", "< a/>"}) {
    EXPECT_NE(trace<XmlScan>(text, 1 << 16).find("problem"), std::string::npos) << text;
  }
}

TEST(XmlScan, NestingWithoutEndIsRefused) {
  std::string text;
  for (int i = 0; i < 100'000; ++i) text += "<a>";
  EXPECT_NE(trace<XmlScan>(text, 4096).find("nested"), std::string::npos);
}

TEST(XmlScan, ATagWithoutEndIsRefused) {
  const std::string text = "<a b='" + std::string(kMaxXmlToken + 100, 'x');
  EXPECT_NE(trace<XmlScan>(text, 1 << 16).find("no end"), std::string::npos);
}

TEST(XmlScan, RandomDocumentsThatExpatTakes) {
  std::mt19937 random(20260901);
  const std::vector<std::string> bits{"<a>",      "</a>",          "<b c='1'>", "</b>", "<d/>",
                                      "x",        "&amp;",         "&#233;",    " ",    "\r\n",
                                      "<!--k-->", "<![CDATA[<]]>", "é"};
  std::size_t taken = 0;
  for (int round = 0; round < 20'000; ++round) {
    std::string text = "<r>";
    for (auto i = random() % 8; i > 0; --i) text += bits[random() % bits.size()];
    text += "</r>";
    const std::string wanted = trace<XmlParser>(text, 1 << 16);
    const bool good = wanted.find("problem") == std::string::npos;
    taken += good ? 1U : 0U;
    const std::string found = trace<XmlScan>(text, 1 + random() % 9);
    if (good) {
      ASSERT_EQ(found, wanted) << text;
    } else {
      ASSERT_NE(found.find("problem"), std::string::npos) << text;
    }
  }
  EXPECT_GT(taken, 2000U);
}

}  // namespace
}  // namespace rangebook

// Documents of parts, against RFC 2046 and RFC 2557, against gmime's own parser, and against
// documents made to do harm.
#include "importers/mime_parts.h"

#include <gmime/gmime.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "importers/mime_body.h"
#include "tests/importers/mhtml_samples.h"

namespace rangebook {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::SizeIs;
using Texts = std::vector<std::string>;

/// The parts are views of the document, which has to outlive them.
MimeDocument parts_of(std::string_view document) {
  auto read = read_mime(document);
  if (auto* fault = std::get_if<DocumentFault>(&read)) throw std::runtime_error(fault->what);
  return std::get<MimeDocument>(std::move(read));
}

std::string fault_of(std::string_view document) {
  const auto read = read_mime(document);
  const auto* fault = std::get_if<DocumentFault>(&read);
  return fault == nullptr ? "none" : fault->what;
}

Texts bodies(const MimeDocument& document) {
  Texts all;
  for (const auto& part : document.parts) all.emplace_back(part.body);
  return all;
}

// RFC 2046, section 5.1.1: the example of a "simple" multipart message, in our own words. The line
// end before a delimiter belongs to it; text before the first and behind the last is ignored.
TEST(MimeParts, PreambleAndEpilogueAreNoParts) {
  const auto document = parts_of(
      "From: A\r\nMIME-Version: 1.0\r\nContent-type: multipart/mixed; boundary=\"simple "
      "boundary\"\r\n\r\nThis is ignored.\r\n\r\n--simple boundary\r\n\r\nNo line end here.\r\n"
      "--simple boundary\r\nContent-type: text/plain; charset=us-ascii\r\n\r\nOne here.\r\n\r\n"
      "--simple boundary--\r\n\r\nIgnored as well.\r\n");
  EXPECT_THAT(bodies(document), ElementsAre("No line end here.", "One here.\r\n"));
  EXPECT_EQ(document.parts[0].type, "text/plain");
  EXPECT_EQ(document.parts[1].charset, "us-ascii");
}

// Section 5.1.1 again: a boundary may begin with another one; blanks may follow it.
TEST(MimeParts, ADelimiterIsAWholeLine) {
  const auto document =
      parts_of("Content-Type: multipart/mixed; boundary=b\n\n--b \t\n\nx--b\n--bb\n--b-\n--b--\n");
  EXPECT_THAT(bodies(document), ElementsAre("x--b\n--bb\n--b-"));
}

// RFC 2557, section 9: the parts of a web page name their place; section 8.4: start.
TEST(MimeParts, HeadersSayWhatAPartIs) {
  const auto document = parts_of(mime_document(
      mime_part("Content-Type: Text/HTML; charset=\"iso-8859-1\"\r\nContent-ID: <a@b>\r\n"
                "Content-Location: https://shop.example/a/\r\n very/long\r\n"
                "Content-Transfer-Encoding: QUOTED-PRINTABLE",
                "x"),
      "; start=\"<a@b>\""));
  ASSERT_THAT(document.parts, SizeIs(1));
  const MimePart& part = document.parts[0];
  EXPECT_EQ(part.type, "text/html");
  EXPECT_EQ(part.charset, "iso-8859-1");
  EXPECT_EQ(part.id, "a@b");
  EXPECT_EQ(part.location, "https://shop.example/a/very/long");
  EXPECT_EQ(part.encoding, "quoted-printable");
  EXPECT_FALSE(part.cut_short);
  EXPECT_EQ(document.start, "<a@b>");
}

TEST(MimeParts, PartsWithinPartsInTheirOrder) {
  const std::string inner = "--i\r\n\r\none\r\n--i\r\n\r\ntwo\r\n--i--";
  const std::string whole =
      mime_document(mime_part("Content-Type: multipart/alternative; boundary=i", inner) +
                    mime_part("Content-Type: text/html", "three"));
  const auto document = parts_of(whole);
  EXPECT_THAT(bodies(document), ElementsAre("one", "two", "three"));
}

TEST(MimeParts, ADocumentMayBeOnePart) {
  const auto document =
      parts_of("Content-Type: text/html\nContent-Location: https://a.example/\n\nx");
  EXPECT_THAT(bodies(document), ElementsAre("x"));
  EXPECT_EQ(document.location, "https://a.example/");
  EXPECT_FALSE(document.parts[0].cut_short);
}

TEST(MimeParts, ADocumentThatBreaksOffKeepsWhatItHas) {
  const std::string whole = mime_document(mime_part("Content-Type: text/html", "one") +
                                          mime_part("Content-Type: image/png", "two"));
  const auto document = parts_of(std::string_view(whole).substr(0, whole.find("two") + 2));
  EXPECT_THAT(bodies(document), ElementsAre("one", "tw"));
  EXPECT_FALSE(document.parts[0].cut_short);
  EXPECT_TRUE(document.parts[1].cut_short);
}

// The second reader of the same library, on a file that a browser wrote.
Texts gmime_bodies(const std::string& document) {
  g_mime_init();
  GMimeStream* stream = g_mime_stream_mem_new_with_buffer(document.data(), document.size());
  GMimeParser* parser = g_mime_parser_new_with_stream(stream);
  GMimeObject* whole = g_mime_parser_construct_part(parser, nullptr);
  auto* multipart = reinterpret_cast<GMimeMultipart*>(whole);
  Texts all;
  for (int i = 0; i < g_mime_multipart_get_count(multipart); ++i) {
    auto* part = reinterpret_cast<GMimePart*>(g_mime_multipart_get_part(multipart, i));
    GMimeStream* out = g_mime_stream_mem_new();
    g_mime_data_wrapper_write_to_stream(g_mime_part_get_content(part), out);
    const auto* bytes = g_mime_stream_mem_get_byte_array(reinterpret_cast<GMimeStreamMem*>(out));
    all.emplace_back(reinterpret_cast<const char*>(bytes->data), bytes->len);
    g_object_unref(out);
  }
  for (void* object :
       {static_cast<void*>(whole), static_cast<void*>(parser), static_cast<void*>(stream)}) {
    g_object_unref(object);
  }
  return all;
}

TEST(MimeParts, AgreeWithGmimeOnAFileOfABrowser) {
  const std::string file = mhtml_check("wrap-coat.mhtml");
  Texts ours;
  for (const auto& part : parts_of(file).parts) {
    ours.emplace_back(MimeBody::decode(part.body, part.encoding).value().text());
  }
  ASSERT_THAT(ours, SizeIs(4));
  EXPECT_EQ(ours, gmime_bodies(file));
}

TEST(MimeParts, HarmfulDocumentsAreRefused) {
  EXPECT_THAT(fault_of("Content-Type: multipart/related\n\n--b\n"),
              HasSubstr("no usable boundary"));
  EXPECT_THAT(
      fault_of("Content-Type: multipart/related; boundary=" + std::string(71, 'b') + "\n\n"),
      HasSubstr("no usable boundary"));
  EXPECT_THAT(fault_of("Content-Type: multipart/related; boundary=b\n\nx"),
              HasSubstr("no line \"--b\" begins one"));
  EXPECT_THAT(fault_of("X: " + std::string(kMaxMimeHeaderBytes, 'x') + "\n\nx"),
              HasSubstr("longer than 64 KiB"));
  std::string many;
  for (std::size_t i = 0; i < kMaxMimeHeaderBytes; ++i) many += "X: y\n";
  EXPECT_THAT(fault_of(many), HasSubstr("longer than 64 KiB"));
  std::string parts;
  for (std::size_t i = 0; i <= kMaxMimeParts; ++i) parts += "--b\r\n\r\n";
  EXPECT_THAT(fault_of(mime_document(parts)), HasSubstr("more than 10000 parts"));
  std::string deep;
  for (int i = 0; i < 1000; ++i) {
    deep += "Content-Type: multipart/mixed; boundary=b" + std::to_string(i) + "\n\n--b" +
            std::to_string(i) + "\n";
  }
  EXPECT_THAT(fault_of(deep), HasSubstr("nested more than 16 deep"));
}

TEST(MimeParts, EmptyDocumentsAreOnePartOfNothing) {
  EXPECT_THAT(parts_of("").parts, SizeIs(1));
  EXPECT_THAT(parts_of("\n\n").parts, SizeIs(1));
  EXPECT_EQ(parts_of("no header at all").parts[0].body, "");
}

}  // namespace
}  // namespace rangebook

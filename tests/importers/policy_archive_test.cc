// Policies saved as one file: a web archive written by hand by RFC 2557, its page in the
// quoted-printable encoding of RFC 2045, section 6.7.
#include "importers/policy_archive.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

#include "schema/terms_fields.h"

namespace rangebook {
namespace {

const TermsContext kContext{"returns.mhtml", "GB", Currency::from_code("GBP"), {}};

std::string archive(const std::string& type, const std::string& body) {
  return "From: <saved>\r\nMIME-Version: 1.0\r\n"
         "Content-Type: multipart/related; type=\"text/html\"; boundary=\"cut\"\r\n\r\n"
         "--cut\r\nContent-Type: " +
         type + "\r\nContent-Transfer-Encoding: quoted-printable\r\n\r\n" + body +
         "\r\n--cut\r\nContent-Type: image/png\r\nContent-Transfer-Encoding: base64\r\n\r\n"
         "iVBORw0KGgo=\r\n--cut--\r\n";
}

TEST(PolicyArchive, IsReadLikeItsPage) {
  const std::string file =
      archive("text/html; charset=utf-8",
              "<html><body><p>Delivery costs =C2=A33.95, free over =C2=A350.</p>\r\n"
              "<p>Return within 28 days of deli=\r\nvery.</p></body></html>");
  ASSERT_TRUE(is_policy_archive(file));
  const auto read = read_policy_archive(file, kContext);
  const auto& reading = std::get<TermsReading>(read);
  EXPECT_EQ(field_text(reading.terms, "delivery.standard.fee"), "3.95 GBP");
  EXPECT_EQ(field_text(reading.terms, "delivery.standard.free_over"), "over 50.00 GBP");
  EXPECT_EQ(field_text(reading.terms, "return.window"), "28 days from delivery");
  // The place is that of the line in the file.
  const auto byte = reading.terms.evidence.at("return.window").byte;
  EXPECT_EQ(file.substr(byte, 9), "<p>Return");
}

TEST(PolicyArchive, WithoutAPageSaysSo) {
  const auto read = read_policy_archive(archive("text/css", "p { margin: 0 }"), kContext);
  const auto& fault = std::get<DocumentFault>(read);
  EXPECT_THAT(fault.what, testing::HasSubstr("HTML page"));
  EXPECT_THAT(fault.how_to_fix, testing::HasSubstr("HTML only"));
}

TEST(PolicyArchive, OtherDocumentsAreNone) {
  EXPECT_FALSE(is_policy_archive("Returns within 28 days of delivery."));
  EXPECT_FALSE(is_policy_archive("<html><body></body></html>"));
}

}  // namespace
}  // namespace rangebook

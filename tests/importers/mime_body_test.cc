// Transfer encodings, against the examples of RFC 2045 and RFC 4648.
#include "importers/mime_body.h"

#include <gtest/gtest.h>

#include <string>

namespace rangebook {
namespace {

std::string decoded(std::string_view body, std::string_view encoding) {
  const auto done = MimeBody::decode(body, encoding);
  return done ? std::string(done->text()) : "unknown";
}

// RFC 4648, section 10.
TEST(MimeBody, Base64) {
  EXPECT_EQ(decoded("Zg==", "base64"), "f");
  EXPECT_EQ(decoded("Zm9v\r\nYmFy\r\n", "base64"), "foobar");
  EXPECT_EQ(decoded("", "base64"), "");
}

// RFC 2045, section 6.7: soft line breaks, and the example of rule 5.
TEST(MimeBody, QuotedPrintable) {
  EXPECT_EQ(
      decoded("Now's the time =\r\nfor all folk to come=\r\n to the aid.", "quoted-printable"),
      "Now's the time for all folk to come to the aid.");
  EXPECT_EQ(decoded("=C2=A3149", "quoted-printable"),
            "\xC2\xA3"
            "149");
}

TEST(MimeBody, PlainTextStaysAsItIs) {
  for (const auto* encoding : {"", "7bit", "8bit", "binary"})
    EXPECT_EQ(decoded("=C2", encoding), "=C2");
  EXPECT_EQ(decoded("x", "zip"), "unknown");
}

TEST(MimeBody, DamagedTextGivesWhatCanBeRead) {
  const auto done = MimeBody::decode("Zm9v*\xFFYmFy", "base64");
  ASSERT_TRUE(done);
  EXPECT_EQ(done->text(), "foobar");
  EXPECT_EQ(done->bad_signs(), 2U);
  EXPECT_EQ(decoded("100=ZZ=", "quoted-printable").substr(0, 3), "100");
}

TEST(MimeBody, LeadsBackToTheEncodedLine) {
  const std::string line(60, 'x');
  const std::string body = line + "=\r\n" + line + "=\r\n=C3=A9 end\r\n";
  const auto done = MimeBody::decode(body, "quoted-printable");
  ASSERT_TRUE(done);
  EXPECT_EQ(done->encoded_place(0), 0U);
  EXPECT_EQ(done->encoded_place(59), 0U);
  EXPECT_EQ(done->encoded_place(60), body.find("=\r\n") + 3);
  EXPECT_EQ(done->encoded_place(done->text().find("end")), body.find("=C3"));
  EXPECT_EQ(MimeBody::decode("abc", "8bit")->encoded_place(2), 2U);
}

}  // namespace
}  // namespace rangebook

// The JSON writer against RFC 8259, the Unicode Standard and an independent JSON library.
#include "reports/json_writer.h"

#include <gtest/gtest.h>

#include <limits>
#include <nlohmann/json.hpp>
#include <random>

#include "tests/reports/fixture/read_json.h"

namespace rangebook {
namespace {

std::string as_json(std::string_view text) {
  JsonWriter writer;
  writer.value(text);
  return writer.take();
}

std::string oracle(const std::string& text) {
  return nlohmann::json(text).dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
}

TEST(JsonWriter, PunctuatesNestedValues) {
  JsonWriter writer;
  writer.begin_object();
  writer.member("a", 1);
  writer.key("b");
  writer.begin_array();
  writer.value(true);
  writer.null();
  writer.begin_object();
  writer.end_object();
  writer.value("x");
  writer.end_array();
  writer.member("c", std::string("y"));
  writer.end_object();
  EXPECT_EQ(writer.take(), R"({"a":1,"b":[true,null,{},"x"],"c":"y"})");
}

TEST(JsonWriter, LineBreaksStandBetweenElements) {
  JsonWriter writer;
  writer.begin_array();
  writer.line_break();
  writer.value(1);
  writer.line_break();
  writer.value(2);
  writer.line_break();
  writer.end_array();
  EXPECT_EQ(writer.take(), "[\n1,\n2\n]");
}

TEST(JsonWriter, WholeNumbersKeepAllDigits) {
  JsonWriter writer;
  writer.begin_array();
  writer.value(std::numeric_limits<std::int64_t>::min());
  writer.value(std::numeric_limits<std::uint64_t>::max());
  writer.value(std::uint8_t{7});
  writer.end_array();
  EXPECT_EQ(writer.take(), "[-9223372036854775808,18446744073709551615,7]");
}

// RFC 8259 section 7: quotation mark, reverse solidus and U+0000 to U+001F must be escaped.
TEST(JsonWriter, EveryByteBelow128AgreesWithTheOracle) {
  for (int byte = 0; byte < 128; ++byte) {
    const std::string text = "plain text " + std::string(1, static_cast<char>(byte)) + " goes on";
    EXPECT_EQ(as_json(text), oracle(text)) << byte;
  }
}

// The example of Unicode Standard section 3.9, table "U+FFFD Substitution of Maximal Subparts"
// (from memory, and equal to what the oracle does).
TEST(JsonWriter, BrokenUtf8BecomesReplacementCharactersAsInTheUnicodeStandard) {
  const std::string broken = "\x61\xF1\x80\x80\xE1\x80\xC2\x62\x80\x63\x80\xBF\x64";
  const std::string r = "\xEF\xBF\xBD";
  EXPECT_EQ(as_json(broken), '"' + ("a" + r + r + r + "b" + r + "c" + r + r + "d") + '"');
  EXPECT_EQ(as_json(broken), oracle(broken));
}

TEST(JsonWriter, SurrogatesOverlongFormsAndTooLargeCodePointsAreReplaced) {
  for (const std::string text : {"\xED\xA0\x80", "\xC0\xAF", "\xE0\x80\x80", "\xF4\x90\x80\x80",
                                 "\xF8\x88\x80\x80\x80", "\xFF", "tail\xE2\x82"}) {
    EXPECT_EQ(as_json(text).find(text), std::string::npos);
    EXPECT_EQ(fixture::read_json(as_json(text)).dump(), as_json(text));
  }
}

std::string random_text(std::mt19937& random) {
  static const std::string pieces[] = {
      "wool ", "\"",           "\\",       "\n", "\x01", "é",       "裙", "😀",        "\xC3",
      "\x80",  "\xF0\x9F\x98", "\xED\xA0", "A",  "\x7F", "£79.90 ", "\t", "</script>"};
  std::string text;
  for (auto left = random() % 12; left > 0; --left) text += pieces[random() % std::size(pieces)];
  return text;
}

TEST(JsonWriter, RandomTextsAgreeWithTheOracle) {
  std::mt19937 random(20260902);
  for (int round = 0; round < 20000; ++round) {
    const std::string text = random_text(random);
    const auto back = fixture::read_json(as_json(text));
    ASSERT_EQ(back, fixture::read_json(oracle(text))) << oracle(text);
    ASSERT_EQ(as_json(text), oracle(text));
  }
}

}  // namespace
}  // namespace rangebook

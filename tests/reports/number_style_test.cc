// Figures by locale. Expected forms are those of the Unicode CLDR as ICU carries them: decimal
// sign, place of the currency and order of a date in German, Irish English and Japanese (CLDR
// charts, "Numbers" and "Date & Time" of de, en-IE, ja).
#include "reports/number_style.h"

#include <gtest/gtest.h>

#include <cstdlib>
#include <ctime>

#include "reports/brief_formats.h"
#include "tests/reports/fixture/change_set.h"

namespace rangebook {
namespace {

constexpr const char* kNoBreak = "\xC2\xA0";

Money money(MinorUnits minor, const char* code) { return {minor, fixture::currency(code)}; }

TEST(NumberStyle, PlainIsThatOfWording) {
  const NumberStyle plain;
  EXPECT_EQ(plain.money(money(123456, "EUR")), "€1234.56");
  EXPECT_EQ(plain.day(fixture::day("2026-09-02")), "2 September 2026");
  EXPECT_EQ(plain.percent(-4, true), "-0.4%");
}

TEST(NumberStyle, German) {
  const auto german = NumberStyle::of("de-DE").value();
  EXPECT_EQ(german.money(money(123456, "EUR")), std::string("1.234,56") + kNoBreak + "€");
  EXPECT_EQ(german.money_step(money(500, "GBP")), std::string("+5,00") + kNoBreak + "£");
  EXPECT_EQ(german.percent(125, false), std::string("12,5") + kNoBreak + "%");
  EXPECT_EQ(german.day(fixture::day("2026-09-02")), "2. September 2026");
}

TEST(NumberStyle, IrishEnglishAndJapanese) {
  const auto irish = NumberStyle::of("en-IE").value();
  EXPECT_EQ(irish.money(money(7990, "EUR")), "€79.90");
  EXPECT_EQ(irish.day(fixture::day("2026-09-02")), "2 September 2026");
  EXPECT_EQ(NumberStyle::of("ja").value().money(money(1200, "JPY")), "￥1,200");
  EXPECT_EQ(NumberStyle::of("ja").value().day(fixture::day("2026-09-02")), "2026年9月2日");
}

TEST(NumberStyle, TagsThatSayNothingAreRefused) {
  for (const char* tag : {"", "xx", "de-ZZ", "german", "de_DE.UTF-8", "-", "en-IE-x-mine"}) {
    EXPECT_FALSE(NumberStyle::of(tag)) << tag;
  }
}

TEST(NumberStyle, ADayIsTheSameInEveryTimeZone) {
  const auto irish = NumberStyle::of("en-IE").value();
  for (const char* zone : {"Pacific/Kiritimati", "America/Adak", "UTC"}) {
    ::setenv("TZ", zone, 1);
    ::tzset();
    EXPECT_EQ(irish.day(fixture::day("2026-09-02")), "2 September 2026") << zone;
  }
  ::unsetenv("TZ");
  ::tzset();
}

TEST(NumberStyle, RestylingChangesFiguresAndNothingElse) {
  const Brief brief = make_brief(fixture::rich(), {true});
  const ReportPage page = page_of(brief);
  EXPECT_EQ(page_text(restyled(page, {})), page_text(page));
  const std::string text = page_text(restyled(page, NumberStyle::of("de-DE").value()));
  EXPECT_NE(text.find("2. September 2026"), std::string::npos);
  EXPECT_NE(text.find(std::string("59,00") + kNoBreak + "£"), std::string::npos);
  EXPECT_NE(text.find("Like for like"), std::string::npos);
  for (auto at = text.find("£"); at != std::string::npos; at = text.find("£", at + 1)) {
    const char next = text[at + std::string_view("£").size()];
    EXPECT_FALSE(next >= '0' && next <= '9') << text.substr(at > 60 ? at - 60 : 0, 90);
  }
}

}  // namespace
}  // namespace rangebook

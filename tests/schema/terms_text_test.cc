// The editable text of terms: every field round-trips, faults name their line and the fix.
#include "schema/terms_text.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "schema/terms_values.h"

namespace rangebook {
namespace {

using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::SizeIs;

std::string field_named(const TermsField& field) {
  std::string name = field.name;
  if (const auto star = name.find('*'); star != name.npos) name.replace(star, 1, "standard");
  return name;
}

Terms read(std::string_view text) {
  auto result = read_terms_text(text);
  EXPECT_THAT(result.faults, IsEmpty()) << text;
  return std::move(result.terms);
}

std::string canonical(std::string_view field, std::string_view value) {
  Terms terms;
  const auto fault = set_field(terms, field, value, Currency::from_code("GBP"));
  return fault ? "! " + fault->what : field_text(terms, field).value_or("-");
}

TEST(TermsText, EveryFieldTakesItsOwnExampleAndGivesItBack) {
  Terms terms;
  for (const auto& field : terms_fields()) {
    ASSERT_EQ(set_field(terms, field_named(field), field.example), std::nullopt) << field.name;
    EXPECT_EQ(field_text(terms, field_named(field)), field.example) << field.name;
    EXPECT_NE(field.title, "");
    EXPECT_NE(field.expects, "");
  }
  EXPECT_THAT(stated_values(terms), SizeIs(terms_fields().size()));
  EXPECT_EQ(read(terms_text(terms)), terms);
}

TEST(TermsText, ReadsWhatAPersonTypes) {
  const auto terms = read(
      "# seen on the help page\n"
      "shop = skerrowby\n"
      "observed = 2026-09-07\n"
      "\n"
      "delivery.standard.fee = £3.95\r\n"
      "delivery.standard.free_over = over 50 GBP\n"
      "return.window = 4 weeks from delivery\n"
      "return.EU.window = 14 days\n"
      "return.post.fee = 2,95 EUR\n"
      "return.items.sale = exchange or credit\n");
  ASSERT_THAT(terms.delivery, SizeIs(1));
  EXPECT_EQ(to_string(terms.delivery[0].fee.value()), "3.95 GBP");
  EXPECT_FALSE(terms.delivery[0].free_over->inclusive);
  ASSERT_NE(find_policy(terms, ""), nullptr);
  EXPECT_EQ(find_policy(terms, "")->window,
            (ReturnWindow{28, DayUnit::days, CountedFrom::delivery}));
  EXPECT_EQ(find_policy(terms, "EU")->window, (ReturnWindow{14, DayUnit::days, std::nullopt}));
  EXPECT_EQ(terms.observed, parse_day("2026-09-07"));
}

TEST(TermsText, WritesOneFormOfEachValue) {
  EXPECT_EQ(canonical("delivery.x.fee", "free"), "0.00 GBP");
  EXPECT_EQ(canonical("delivery.x.fee", "1,200.50 EUR"), "1200.50 EUR");
  EXPECT_EQ(canonical("delivery.x.free_over", "50 or more"), "50.00 GBP");
  EXPECT_EQ(canonical("delivery.x.free_over", "more than 50"), "over 50.00 GBP");
  EXPECT_EQ(canonical("delivery.x.transit", "3 to 5 business days"), "3-5 working days");
  EXPECT_EQ(canonical("delivery.x.transit", "Up to 1 day"), "up to 1 day");
  EXPECT_EQ(canonical("delivery.x.fee_by_weight", "3 up to 2.5 kg; 5 above"),
            "3.00 GBP up to 2500 g; 5.00 GBP above");
  EXPECT_EQ(canonical("return.window", "1 year"), "12 months");
  EXPECT_EQ(canonical("return.seasons", "bought from 2026-11-01, return by 31 january 2027"),
            "bought from 1 Nov 2026, return by 31 Jan 2027");
  EXPECT_EQ(canonical("return.refund", "credit, original payment, credit"),
            "original payment, credit");
  EXPECT_EQ(canonical("return.items.sale", "Not-Returnable"), "not returnable");
  EXPECT_EQ(canonical("return.restocking_share", "12.50 %"), "12.5%");
}

TEST(TermsText, RefusesWhatCanBeReadTwoWays) {
  EXPECT_THAT(canonical("delivery.x.fee", "1.299 GBP"), HasSubstr("cannot be read"));
  EXPECT_THAT(canonical("delivery.x.fee", "3.9 GBP"), HasSubstr("cannot be read"));
  EXPECT_THAT(canonical("delivery.x.fee", "-3.95 GBP"), HasSubstr("cannot be read"));
  EXPECT_THAT(canonical("delivery.x.fee", "3.95 GPB"), HasSubstr("cannot be read"));
  EXPECT_THAT(canonical("delivery.x.transit", "5-3 days"), HasSubstr("cannot be read"));
  EXPECT_THAT(canonical("return.window", "28"), HasSubstr("cannot be read"));
  EXPECT_THAT(canonical("return.seasons", "return by 31 Nov"), HasSubstr("cannot be read"));
  EXPECT_THAT(canonical("return.restocking_share", "101%"), HasSubstr("cannot be read"));
}

TEST(TermsText, FaultsNameLineAndFixAndTheRestGoesIn) {
  const auto [terms, faults] = read_terms_text(
      "return.windw = 28 days\n"
      "return.window = soon\n"
      "delivery.standard.fee = 3.95\n"
      "nonsense\n"
      "return.exchange = yes\n"
      "return.exchange = no\n");
  ASSERT_THAT(faults, SizeIs(5));
  EXPECT_EQ(faults[0].line, 1U);
  EXPECT_THAT(faults[0].how_to_fix, HasSubstr("Did you mean \"return.window\"?"));
  EXPECT_THAT(faults[1].how_to_fix, HasSubstr("28 days from delivery"));
  EXPECT_THAT(faults[2].how_to_fix, HasSubstr("with its currency"));
  EXPECT_EQ(faults[3].line, 4U);
  EXPECT_THAT(faults[4].what, HasSubstr("line 5"));
  EXPECT_THAT(stated_values(terms), SizeIs(1));
}

TEST(TermsText, ClearingTheLastFieldRemovesTheOption) {
  Terms terms;
  set_field(terms, "delivery.express.fee", "9.95 GBP");
  terms.evidence["delivery.express.fee"].sentence = "Express 9.95";
  EXPECT_EQ(set_field(terms, "delivery.express.fee", " "), std::nullopt);
  EXPECT_THAT(terms.delivery, IsEmpty());
  EXPECT_THAT(terms.evidence, IsEmpty());
}

TEST(TermsText, EqualInMeaningWhateverTheOrderAndTheEvidence) {
  Terms a = read("delivery.a.fee = 1.00 GBP\ndelivery.b.fee = 2.00 GBP\n");
  const Terms b = read("delivery.b.fee = GBP 2\ndelivery.a.fee = 1.00 GBP\n");
  a.evidence["delivery.a.fee"].sentence = "One pound";
  EXPECT_EQ(a, b);
  EXPECT_EQ(stated_values(a), stated_values(b));
  EXPECT_EQ(terms_text(a), terms_text(b));
}

}  // namespace
}  // namespace rangebook

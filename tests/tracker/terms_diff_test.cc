// Directions of changed terms, and what may be compared.
#include "tracker/terms_diff.h"

#include <gtest/gtest.h>

#include "schema/terms_text.h"
#include "tests/tracker/change_text.h"

namespace rangebook {
namespace {

using testing::text_of;

TermsInForce terms_of(std::string_view text, bool delivery = true, bool returns = true) {
  TermsInForce result;
  result.terms = read_terms_text(text, Currency::from_code("GBP")).terms;
  if (delivery) result.delivery_on = parse_day("2026-09-07");
  if (returns) result.returns_on = parse_day("2026-09-07");
  return result;
}

TEST(TermsDirection, IsTheCustomersSide) {
  using enum TermsDirection;
  const auto direction = terms_direction;
  EXPECT_EQ(direction("delivery.a.fee", "3.95 GBP", "4.95 GBP"), worse);
  EXPECT_EQ(direction("delivery.a.fee", "3.95 GBP", "0.00 GBP"), better);
  EXPECT_EQ(direction("delivery.a.fee", "3.95 GBP", "3.95 EUR"), neutral);
  EXPECT_EQ(direction("delivery.a.free_over", "50.00 GBP", "60.00 GBP"), worse);
  EXPECT_EQ(direction("delivery.a.free_over", "50.00 GBP", "over 50.00 GBP"), worse);
  EXPECT_EQ(direction("delivery.a.transit", "3-5 working days", "2-3 working days"), better);
  EXPECT_EQ(direction("return.window", "28 days from delivery", "14 days from delivery"), worse);
  EXPECT_EQ(direction("return.window", "14 days from purchase", "14 days from delivery"), better);
  EXPECT_EQ(direction("return.window", "28 days from purchase", "1 month from purchase"), neutral);
  EXPECT_EQ(direction("return.window", "14 days from purchase", "1 month from purchase"), better);
  EXPECT_EQ(direction("return.window", "28 days from purchase", "21 days from delivery"), neutral);
  EXPECT_EQ(direction("return.paid_by", "shop", "customer"), worse);
  EXPECT_EQ(direction("return.post", "no", "yes"), better);
  EXPECT_EQ(direction("return.items.sale", "returnable", "credit only"), worse);
  EXPECT_EQ(direction("return.items.sale", "exchange only", "credit only"), neutral);
  EXPECT_EQ(direction("return.needs.tags-on", "yes", "no"), better);
  EXPECT_EQ(direction("return.refund", "original payment, credit", "credit"), worse);
  EXPECT_EQ(direction("return.refund", "exchange", "credit"), neutral);
  EXPECT_EQ(direction("return.restocking_share", "5%", "10%"), worse);
  EXPECT_EQ(direction("delivery.a.name", "Standard", "Usual"), neutral);
}

// Better one way is worse the other way round.
TEST(TermsDirection, TurnsWithItsSides) {
  const std::vector<std::array<std::string_view, 3>> pairs{
      {"return.window", "28 days from delivery", "14 working days from dispatch"},
      {"delivery.a.handling", "1-2 working days", "up to 5 days"},
      {"return.items.hats", "unopened only", "not returnable"},
      {"delivery.a.regions", "GB", "GB, IE"},
      {"delivery.a.not_regions", "GB", "GB, IE"}};
  for (const auto& [field, a, b] : pairs) {
    const auto there = terms_direction(field, a, b);
    const auto back = terms_direction(field, b, a);
    EXPECT_EQ(there == TermsDirection::neutral, back == TermsDirection::neutral) << field;
    if (there != TermsDirection::neutral) {
      EXPECT_NE(there, back) << field;
    }
  }
}

TEST(DiffTerms, NamesEachFieldThatDiffers) {
  const auto changes = diff_terms(terms_of("delivery.a.fee = 3.95 GBP\n"
                                           "return.window = 28 days from delivery\n"),
                                  terms_of("delivery.a.fee = 4.50 GBP\nreturn.exchange = yes\n"
                                           "return.window = 28 days from delivery\n"),
                                  {}, {});
  ASSERT_EQ(changes.size(), 2U);
  EXPECT_EQ(text_of(changes[0]),
            "terms-changed terms delivery.a.fee = 3.95 GBP (worse) -> delivery.a.fee = 4.50 GBP "
            "(worse)");
  EXPECT_EQ(text_of(changes[1]), "terms-changed terms nothing -> return.exchange = yes (neutral)");
}

TEST(DiffTerms, NobodyLookedIsNoChange) {
  const auto then = terms_of("delivery.a.fee = 3.95 GBP\nreturn.window = 28 days\n");
  EXPECT_TRUE(
      diff_terms(then, terms_of("delivery.a.fee = 3.95 GBP\n", true, false), {}, {}).empty());
  EXPECT_TRUE(diff_terms(then, terms_of("", false, false), {}, {}).empty());
  EXPECT_EQ(diff_terms(then, terms_of("delivery.a.fee = 3.95 GBP\n"), {}, {}).size(), 1U);
}

}  // namespace
}  // namespace rangebook

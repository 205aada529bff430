// Terms in the book: versions, what holds on a day, doubts and their answers.
#include "tracker/store/terms_store.h"

#include <gtest/gtest.h>

#include <filesystem>

#include "schema/terms_text.h"

namespace rangebook {
namespace {

Day day(std::string_view text) { return parse_day(text).value(); }

class TermsStore : public testing::Test {
 protected:
  TermsStore() {
    book_.put_shop({.slug = "quillmere",
                    .name = "Quillmere",
                    .country = "GB",
                    .currency = Currency::from_code("GBP")});
    shop_ = book_.find_shop("quillmere").value();
  }

  static TermsReading reading(std::string_view text) {
    TermsReading result;
    result.terms = read_terms_text(text, Currency::from_code("GBP")).terms;
    for (const TermsValue& value : stated_values(result.terms)) {
      result.terms.evidence[value.field] = {
          "Sentence of " + value.field, "policy.html", 12, TermsConfidence::stated, "", ""};
    }
    return result;
  }
  std::string text(std::string_view on) const {
    auto terms = terms_in_force(book_, shop_, day(on)).terms;
    terms.shop.clear();
    terms.observed.reset();
    return terms_text(terms);
  }

  std::string path_ = (std::filesystem::temp_directory_path() /
                       ("terms-" + std::to_string(::getpid()) + ".rangebook"))
                          .string();
  struct Removal {
    std::string path;
    ~Removal() {
      for (const char* suffix : {"", "-wal", "-shm"}) std::filesystem::remove(path + suffix);
    }
  } removal_{path_};
  Book book_ = Book::open(path_, true);
  ShopRecord shop_;
};

TEST_F(TermsStore, HoldUntilAnotherVersionOfTheSamePart) {
  keep_terms(book_, shop_, day("2025-09-08"),
             reading("delivery.a.fee = 3.95 GBP\nreturn.window = 28 days from delivery\n"), {});
  keep_terms(book_, shop_, day("2026-09-07"), reading("return.window = 14 days from delivery\n"),
             {{"returns.txt", "14 days"}});
  EXPECT_EQ(text("2025-09-07"), "");
  EXPECT_EQ(text("2026-01-01"),
            "delivery.a.fee = 3.95 GBP\nreturn.window = 28 days from delivery\n");
  EXPECT_EQ(text("2026-09-07"),
            "delivery.a.fee = 3.95 GBP\nreturn.window = 14 days from delivery\n");
  const auto now = terms_in_force(book_, shop_, day("2026-12-01"));
  EXPECT_EQ(now.delivery_on, day("2025-09-08"));
  EXPECT_EQ(now.returns_on, day("2026-09-07"));
  EXPECT_EQ(now.terms.evidence.at("return.window").sentence, "Sentence of return.window");
}

TEST_F(TermsStore, TwoValuesOfOneDayWaitForAnAnswer) {
  keep_terms(book_, shop_, day("2026-09-07"), reading("delivery.a.fee = 3.95 GBP\n"), {});
  const auto again =
      keep_terms(book_, shop_, day("2026-09-07"), reading("delivery.a.fee = 4.95 GBP\n"), {});
  EXPECT_EQ(again.doubts, 1U);
  EXPECT_EQ(text("2026-09-07"), "delivery.a.fee = 3.95 GBP\n");
  const auto open = open_doubts(book_, shop_);
  ASSERT_EQ(open.size(), 1U);
  EXPECT_EQ(open.front().reading.evidence.contradicts, "Sentence of delivery.a.fee");
  EXPECT_TRUE(answer_doubt(book_, shop_, open.front().id, true));
  EXPECT_EQ(text("2026-09-07"), "delivery.a.fee = 4.95 GBP\n");
  EXPECT_TRUE(open_doubts(book_, shop_).empty());
  EXPECT_FALSE(answer_doubt(book_, shop_, open.front().id, true));
}

TEST_F(TermsStore, AnAnsweredDoubtIsNotAskedAgain) {
  TermsReading doubtful;
  doubtful.doubts.push_back(
      {"return.window",
       "30 days",
       {"About a month.", "p.txt", 3, TermsConfidence::doubtful, "about", ""}});
  EXPECT_EQ(keep_terms(book_, shop_, day("2026-09-07"), doubtful, {}).doubts, 1U);
  EXPECT_TRUE(answer_doubt(book_, shop_, open_doubts(book_, shop_).front().id, false));
  EXPECT_EQ(keep_terms(book_, shop_, day("2026-09-07"), doubtful, {}).doubts, 0U);
  EXPECT_TRUE(open_doubts(book_, shop_).empty());
  EXPECT_EQ(text("2026-09-07"), "");
}

TEST_F(TermsStore, TypedFieldsStartFromWhatHeldBefore) {
  keep_terms(book_, shop_, day("2025-09-08"),
             reading("delivery.a.fee = 3.95 GBP\ndelivery.a.express = no\n"), {});
  const auto outcome = type_terms(book_, shop_, day("2026-09-07"),
                                  {{"delivery.a.fee", "4.50 GBP"}, {"delivery.a.express", ""}});
  EXPECT_EQ(outcome.changed, 2U);
  EXPECT_EQ(text("2026-09-07"), "delivery.a.fee = 4.50 GBP\n");
  EXPECT_EQ(text("2026-09-06"), "delivery.a.fee = 3.95 GBP\ndelivery.a.express = no\n");
}

}  // namespace
}  // namespace rangebook

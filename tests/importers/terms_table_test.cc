// Terms from a CSV of fields and values.
#include "importers/terms_table.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "schema/terms_fields.h"

namespace rangebook {
namespace {

const auto kPounds = Currency::from_code("GBP");

TEST(TermsTable, ReadsFieldsInAnyDialect) {
  for (const char* table :
       {"field,value\nreturn.window,28 days from delivery\ndelivery.standard.fee,\"3.95\"\n",
        "\xEF\xBB\xBFremark;Value;Field\r\n;28 days from delivery;return.window\r\n"
        "seen in the shop;\"3.95\";delivery.standard.fee\r\n"}) {
    ASSERT_TRUE(is_terms_table(table));
    const auto read = read_terms_table(table, kPounds);
    EXPECT_TRUE(read.faults.empty());
    EXPECT_EQ(field_text(read.terms, "return.window"), "28 days from delivery");
    EXPECT_EQ(field_text(read.terms, "delivery.standard.fee"), "3.95 GBP");
  }
}

TEST(TermsTable, KeepsGoodRowsAndNamesTheOthers) {
  const auto read = read_terms_table(
      "field,value\nreturn.window,soon\nreturn.exchange,yes\nreturn.exchange,no\nreturn.fee,\n",
      kPounds);
  EXPECT_EQ(field_text(read.terms, "return.exchange"), "yes");
  ASSERT_EQ(read.faults.size(), 2U);
  EXPECT_EQ(read.faults[0].line, 2U);
  EXPECT_EQ(read.faults[1].line, 4U);
}

TEST(TermsTable, IsNoPolicyAndNoForm) {
  EXPECT_FALSE(is_terms_table("Orders of any value, from any field, are delivered free.\n"));
  EXPECT_FALSE(is_terms_table("return.window = 28 days\n"));
  EXPECT_FALSE(is_terms_table("<html><body>field,value</body></html>"));
  EXPECT_FALSE(is_terms_table(""));
}

}  // namespace
}  // namespace rangebook

// Several syntaxes on one page: what is filled, what is kept, what is said.
#include "importers/page_merge.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/importers/page_rows.h"

namespace rangebook {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

ProductRow row_of(std::initializer_list<std::pair<Field, const char*>> cells) {
  ProductRow row;
  for (const auto& [field, text] : cells) row[field] = text;
  return row;
}

std::vector<ProductRow> merged(std::vector<ProductRow> json, std::vector<ProductRow> other) {
  return merge_page({{.syntax = PageSyntax::microdata, .rows = std::move(other)},
                     {.syntax = PageSyntax::json_ld, .rows = std::move(json)}});
}

TEST(PageMerge, FillsWhatIsMissing) {
  const auto rows = merged({row_of({{Field::name, "Coat"}, {Field::price, "10"}})},
                           {row_of({{Field::name, "Coat!"},
                                    {Field::price, "10.00"},
                                    {Field::currency, "EUR"},
                                    {Field::in_stock, "InStock"}})});
  ASSERT_THAT(rows, SizeIs(1));
  EXPECT_EQ(rows[0][Field::name], "Coat");
  EXPECT_EQ(rows[0][Field::currency], "EUR");
  EXPECT_EQ(rows[0][Field::in_stock], "InStock");
  EXPECT_THAT(rows[0].notes, IsEmpty());
}

TEST(PageMerge, KeepsTheFirstAndSaysBothWhereTheyContradict) {
  const auto rows =
      merged({row_of({{Field::name, "Coat"}, {Field::price, "10"}, {Field::in_stock, "InStock"}})},
             {row_of({{Field::name, "Coat"}, {Field::price, "12"}, {Field::in_stock, "SoldOut"}})});
  ASSERT_THAT(rows, SizeIs(1));
  EXPECT_EQ(rows[0][Field::price], "10");
  EXPECT_EQ(rows[0][Field::in_stock], "InStock");
  ASSERT_THAT(rows[0].notes, SizeIs(2));
  EXPECT_EQ(rows[0].notes[0].kind, RejectionKind::conflicting_rows);
  EXPECT_EQ(rows[0].notes[0].excerpt, "10 | 12");
  EXPECT_THAT(rows[0].notes[1].what, HasSubstr("SoldOut"));
}

TEST(PageMerge, ACurrencyOfAnotherPriceIsNotTaken) {
  const auto rows = merged({row_of({{Field::name, "Coat"}, {Field::price, "10"}})},
                           {row_of({{Field::price, "12"}, {Field::currency, "USD"}})});
  EXPECT_EQ(rows.at(0)[Field::currency], "");
}

TEST(PageMerge, AvailabilityOfTheLineIsNotThatOfItsVariants) {
  const auto rows = merged({row_of({{Field::line_code, "C"}, {Field::size, "S"}}),
                            row_of({{Field::line_code, "C"}, {Field::size, "M"}})},
                           {row_of({{Field::line_code, "C"},
                                    {Field::price, "12"},
                                    {Field::currency, "EUR"},
                                    {Field::in_stock, "InStock"}})});
  ASSERT_THAT(rows, SizeIs(2));
  EXPECT_EQ(rows[1][Field::price], "12");
  EXPECT_EQ(rows[1][Field::currency], "EUR");
  EXPECT_EQ(rows[1][Field::in_stock], "");
}

TEST(PageMerge, OtherProductsBesideTheOneAreLeftOut) {
  const auto coat = row_of({{Field::name, "Coat"}});
  const auto hat = row_of({{Field::name, "Hat"}});
  const auto belt = row_of({{Field::name, "Belt"}});
  EXPECT_THAT(merged({coat}, {hat, belt}), SizeIs(1));
  EXPECT_THAT(merged({coat, hat}, {hat, belt}), SizeIs(3));
}

TEST(PageMerge, CompleteJsonLdIsReadWithoutATree) {
  const std::string json =
      R"({"@type":"Product","name":"Coat","offers":{"price":"10","priceCurrency":"EUR",
          "availability":"InStock"}})";
  EXPECT_THAT(read_page(page_with(json) + "<h1>Coat</h1><p class=price>12 EUR</p>").mapping,
              testing::Not(HasSubstr("visible")));
  const ReadPage both = read_page(page_with(json) +
                                  "<div itemscope itemtype='https://schema.org/Product'>"
                                  "<b itemprop=name>Coat</b><i itemprop=offers itemscope>"
                                  "<meta itemprop=price content=12></i></div>");
  EXPECT_THAT(both.mapping, HasSubstr("microdata=1"));
  ASSERT_FALSE(both.rejections.empty());
  EXPECT_EQ(both.rejections[0].kind, RejectionKind::conflicting_rows);
}

}  // namespace
}  // namespace rangebook

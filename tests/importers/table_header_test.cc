// Where the header stands among the first records.
#include "importers/table_header.h"

#include <gtest/gtest.h>

namespace rangebook {
namespace {

using Cells = std::vector<std::string>;

std::vector<KeptRecord> records(const std::vector<Cells>& rows) {
  std::vector<KeptRecord> out;
  std::uint64_t line = 1;
  for (const auto& row : rows) {
    Record record;
    record.cells.assign(row.begin(), row.end());
    record.line = line++;
    out.emplace_back(record);
  }
  return out;
}

TEST(TableHeader, TheRowThatNamesMost) {
  const auto place = find_header(records(
      {{"Products", "", ""}, {"made by hand"}, {"code", "title", "price"}, {"M1", "Maya", "79"}}));
  EXPECT_EQ(place.names, (Cells{"code", "title", "price"}));
  EXPECT_EQ(place.preamble, 2U);
  EXPECT_EQ(place.body, 3U);
}

TEST(TableHeader, TextAboveNumbers) {
  const auto place = find_header(records({{"alpha", "beta"}, {"x", "1.5"}, {"y", "2.5"}}));
  EXPECT_EQ(place.names, (Cells{"alpha", "beta"}));
}

TEST(TableHeader, RowsLikeAllOthersAreNoHeader) {
  const auto place = find_header(records({{"M1", "Maya", "79"}, {"M2", "Nora", "80"}}));
  EXPECT_TRUE(place.names.empty());
  EXPECT_EQ(place.body, 0U);
  EXPECT_EQ(place.columns, 3U);
}

TEST(TableHeader, ASecondRowOfNamesIsJoined) {
  const auto place = find_header(records({{"name", "price", "weight"},
                                          {"", "EUR", "g"},
                                          {"Maya", "79.90", "300"},
                                          {"Nora", "80.00", "250"}}));
  EXPECT_EQ(place.names, (Cells{"name", "price EUR", "weight g"}));
  EXPECT_EQ(place.body, 2U);
}

TEST(TableHeader, AFirstRowWithoutNumbersIsNoSecondHeader) {
  const auto place = find_header(records({{"name", "colour", "price", "size"},
                                          {"Maya", "navy", "", "sold out"},
                                          {"Nora", "navy", "80.00", "38"},
                                          {"Ida", "ecru", "70.00", "40"}}));
  EXPECT_EQ(place.body, 1U);
}

TEST(TableHeader, OnTheLineTheUserNames) {
  const auto rows = records({{"name", "price"}, {"Titel", "Preis"}, {"Maya", "79"}});
  EXPECT_EQ(header_on_line(rows, 2).names, (Cells{"Titel", "Preis"}));
}

}  // namespace
}  // namespace rangebook

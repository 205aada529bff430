// What is no row of a table is left out and told.
#include "importers/table_rows.h"

#include <gtest/gtest.h>

#include "tests/importers/loaded_table.h"

namespace rangebook {
namespace {

using Rows = std::vector<Cells>;

TEST(TableRows, NotesAndTotalsAreToldByLine) {
  const auto table = load_table("code,name,price\nM1,Maya,79\n\nTotal,,79\nAll prices with tax.\n");
  EXPECT_EQ(table.rows, (Rows{{"M1", "Maya", "79"}}));
  EXPECT_NE(table.told.find("2 notes left out (line 4, 5)"), std::string::npos) << table.told;
}

TEST(TableRows, ARowWithACodeAloneIsNoNote) {
  EXPECT_EQ(load_table("code,name,price\nM1\nM2,Nora,80\n").rows.size(), 2U);
}

TEST(TableRows, ALineCalledLikeATotalStays) {
  EXPECT_EQ(load_table("code,name,price\nM1,Total,79\n").rows.size(), 1U);
  EXPECT_EQ(load_table("code,name,price\nM1,Sum,79\nTotal eclipse,,\n").rows.size(), 2U);
}

TEST(TableRows, HeadersAgainAndFurtherTables) {
  const auto table = load_table(
      "code,name,price\nM1,Maya,79\ncode,name,price\nM2,Nora,80\n\n"
      "name,colour,code,price\nIda,navy,M3,70\n");
  EXPECT_EQ(table.rows,
            (Rows{{"M1", "Maya", "79"}, {"M2", "Nora", "80"}, {"Ida", "navy", "M3", "70"}}));
  EXPECT_NE(table.told.find("1 headers repeated, 1 further tables"), std::string::npos);
}

TEST(TableRows, EmptyRowsAndColumns) {
  EXPECT_EQ(load_table(",name,,price\n,Maya,,79\n,,,\n,Nora,,80\n").rows.size(), 2U);
}

TEST(TableRows, TheUserNamesTheHeaderLine) {
  TableOptions options;
  options.header_row = 3;
  const auto table = load_table("name,price\nx,1\nname,full_price\nMaya,79\n", options);
  EXPECT_EQ(table.header, (Cells{"name", "full_price"}));
  EXPECT_EQ(table.rows.size(), 1U);
}

}  // namespace
}  // namespace rangebook

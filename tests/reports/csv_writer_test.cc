// CSV by RFC 4180, section 2, and cells that a spreadsheet must not run.
#include "reports/csv_writer.h"

#include <gtest/gtest.h>

namespace rangebook {
namespace {

std::string cell(std::string_view content) {
  CsvWriter csv;
  csv.text(content);
  return csv.take();
}

TEST(CsvWriter, QuotesCommasQuotesAndLineBreaks) {
  CsvWriter csv;
  csv.text("plain");
  csv.text("a,b");
  csv.text("say \"hi\"");
  csv.text("two\nlines");
  csv.text("");
  csv.end_row();
  csv.plain("-5.00");
  csv.end_row();
  EXPECT_EQ(csv.take(), "plain,\"a,b\",\"say \"\"hi\"\"\",\"two\nlines\",\r\n-5.00\r\n");
}

TEST(CsvWriter, FormulasAreDefused) {
  EXPECT_EQ(cell("=SUM(A1:A9)"), "'=SUM(A1:A9)");
  EXPECT_EQ(cell("+44 20"), "'+44 20");
  EXPECT_EQ(cell("-1"), "'-1");
  EXPECT_EQ(cell("@cmd"), "'@cmd");
  EXPECT_EQ(cell("\t=1"), "'\t=1");
  EXPECT_EQ(cell("\r=1"), "\"'\r=1\"");
  EXPECT_EQ(cell("\n=1"), "\"'\n=1\"");
  EXPECT_EQ(cell("a=1"), "a=1");
  EXPECT_EQ(cell("=1,\"2\""), "\"'=1,\"\"2\"\"\"");
}

TEST(CsvWriter, BrokenUtf8IsReplaced) { EXPECT_EQ(cell("caf\xE9"), "caf\xEF\xBF\xBD"); }

}  // namespace
}  // namespace rangebook

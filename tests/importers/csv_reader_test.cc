// The manual CSV contract: columns by name, delimiters, and every way a row can be refused.
#include "importers/csv_reader.h"

#include <gtest/gtest.h>

#include "tests/importers/text_source.h"

namespace rangebook {
namespace {

struct Read {
  std::vector<std::string> rows;  ///< `code|name|price`
  std::vector<Rejection> rejections;
  std::string mapping;
};

Read read(const std::string& text) {
  TextSource source(text, 64);
  const auto reader = open_csv(source, 0);
  Read out;
  for (auto step = reader->next(); step != RowReader::Step::end; step = reader->next()) {
    if (step == RowReader::Step::rejection) {
      out.rejections.push_back(reader->rejection());
      continue;
    }
    const RawRow& row = reader->row();
    out.rows.push_back(std::string(row[Field::line_code]) + "|" + std::string(row[Field::name]) +
                       "|" + std::string(row[Field::price]));
  }
  out.mapping = reader->mapping();
  return out;
}

using Rows = std::vector<std::string>;

TEST(CsvReader, ColumnsInAnyOrder) {
  const Read out = read("price,name,line_code\n79.90,Maya wrap dress,M1\n");
  EXPECT_EQ(out.rows, Rows{"M1|Maya wrap dress|79.90"});
  EXPECT_EQ(out.mapping, "delimiter=comma line_code=3 name=2 price=1");
}

TEST(CsvReader, SemicolonsAndByteOrderMark) {
  const Read out = read("\xEF\xBB\xBFline_code;name;price\r\nM1;Maya;79,90\r\n");
  EXPECT_EQ(out.rows, Rows{"M1|Maya|79,90"});
}

TEST(CsvReader, OnlyANameIsNeeded) { EXPECT_EQ(read("Name\nMaya\n").rows, Rows{"|Maya|"}); }

TEST(CsvReader, OtherColumnsAreListed) {
  EXPECT_EQ(read("name,Notes\nMaya,nice\n").mapping, "delimiter=comma name=1; not used: Notes");
}

TEST(CsvReader, WithoutANameColumnTheTableIsRefused) {
  const Read out = read("alpha,beta\n1,2\n");
  ASSERT_EQ(out.rejections.size(), 1U);
  EXPECT_EQ(out.rejections[0].kind, RejectionKind::no_name_column);
  EXPECT_NE(out.rejections[0].what.find("alpha, beta"), std::string::npos);
  EXPECT_TRUE(out.rows.empty());
}

TEST(CsvReader, AnUnquotedDecimalCommaIsExplained) {
  const Read out = read("line_code,name,price\nM1,Maya,79,90\nM2,Nora,80.00\n");
  EXPECT_EQ(out.rows, Rows{"M2|Nora|80.00"});
  ASSERT_EQ(out.rejections.size(), 1U);
  EXPECT_EQ(out.rejections[0].kind, RejectionKind::malformed_row);
  EXPECT_EQ(out.rejections[0].line, 2U);
  EXPECT_EQ(out.rejections[0].line_code, "M1");
  EXPECT_NE(out.rejections[0].how_to_fix.find("\"79,90\""), std::string::npos);
}

TEST(CsvReader, AShortRowStandsUnlessTheFileBreaksOff) {
  EXPECT_EQ(read("line_code,name,price\nM1,Maya\n").rows, Rows{"M1|Maya|"});
  const Read cut = read("line_code,name,price\nM1,May");
  EXPECT_TRUE(cut.rows.empty());
  ASSERT_EQ(cut.rejections.size(), 1U);
  EXPECT_NE(cut.rejections[0].what.find("breaks off"), std::string::npos);
}

TEST(CsvReader, BadBytesAreNamedAndTheRestIsRead) {
  const Read out =
      read(std::string("line_code,name\nM1,Pom\xC3\xA9 caf\xC3\xA9 \xE4\nM2,Nora\nM3,N\0ll\n", 48));
  EXPECT_EQ(out.rows, Rows{"M2|Nora|"});
  ASSERT_EQ(out.rejections.size(), 2U);
  EXPECT_EQ(out.rejections[0].kind, RejectionKind::bad_encoding);
  EXPECT_NE(out.rejections[0].what.find("0xE4 at byte 30"), std::string::npos);
  EXPECT_NE(out.rejections[1].what.find("NUL"), std::string::npos);
}

TEST(CsvReader, ARefusedRowStillNamesItsLine) {
  const Read out = read("line_code,name,price\nM1,Maya,\"79\nM2,Nora,1\n");
  ASSERT_EQ(out.rejections.size(), 1U);
  EXPECT_EQ(out.rejections[0].line_code, "M1");
  EXPECT_EQ(out.rejections[0].name, "Maya");
  EXPECT_EQ(out.rows, Rows{"M2|Nora|1"});
}

TEST(CsvReader, OtherFilesAreNoTables) {
  EXPECT_EQ(read("").rejections.at(0).kind, RejectionKind::unreadable_document);
  EXPECT_EQ(read("\x89PNG\r\n\x1A\n").rejections.at(0).kind, RejectionKind::unreadable_document);
  const Read zip = read("PK\x03\x04");
  EXPECT_EQ(zip.rejections.at(0).kind, RejectionKind::unreadable_document);
  EXPECT_NE(zip.rejections.at(0).what.find("zip"), std::string::npos);
}

}  // namespace
}  // namespace rangebook

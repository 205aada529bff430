// Workbooks written by exceljs (tests/checks/workbooks), by libxlsxwriter, and by hand.
#include "importers/xlsx_reader.h"

#include <gtest/gtest.h>
#include <xlsxwriter.h>

#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <iterator>

#include "tests/importers/read_rows.h"
#include "tests/importers/zip_of.h"

namespace rangebook {
namespace {

ReadRows read_xlsx(const std::string& bytes, const TableOptions& options = {}) {
  return read_all(*open_xlsx(bytes, 0, options));
}

std::string file_bytes(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

TEST(XlsxReader, AWorkbookByAnotherWriter) {
  const auto out = read_xlsx(file_bytes(RANGEBOOK_CHECKS "/workbooks/range.xlsx"));
  ASSERT_EQ(out.rows.size(), 3U);
  EXPECT_EQ(out.rows[0], (RowCells{{"line_code", "M1"},
                                   {"name", "Maya wrap dress"},
                                   {"colour", "navy"},
                                   {"size", "8"},
                                   {"price", "79.9 €"},
                                   {"full_price", "99.9 £"},
                                   {"in_stock", "true"}}));
  EXPECT_EQ(out.rows[1].at("price"), "79.9 €");  // of a formula
  EXPECT_EQ(out.rows[1].at("in_stock"), "false");
  EXPECT_EQ(out.rows[2].at("name"), "Nora <crêpe> & \"knit\"");
  EXPECT_EQ(out.rows[2].at("full_price"), "#DIV/0!");
  EXPECT_EQ(out.origins[0].line, 4U);
  EXPECT_EQ(out.mapping,
            "sheet=\"Range\" (not read: \"Notes\", \"Old\" (hidden)) line_code=1 name=2 colour=3 "
            "size=4 price=5 full_price=6 in_stock=7; not used: Seen, Share; header=line 3");
}

TEST(XlsxReader, DatesAndPercentagesAsTheSheetShowsThem) {
  const auto records = open_xlsx_records(file_bytes(RANGEBOOK_CHECKS "/workbooks/range.xlsx"), {});
  Record record;
  std::vector<std::string> seen;
  while (records->next(record)) {
    if (record.line >= 4) {
      seen.emplace_back(record.cells.at(7));
      seen.emplace_back(record.cells.at(8));
    }
  }
  EXPECT_EQ(seen, (std::vector<std::string>{"2026-09-01", "94%", "2026-09-01T14:30:00", "7%", "",
                                            "100%"}));
}

TEST(XlsxReader, NamesMergedOverTheirSizesAndDaysFrom1904) {
  const std::string bytes = file_bytes(RANGEBOOK_CHECKS "/workbooks/merged_1904.xlsx");
  const auto out = read_xlsx(bytes);
  ASSERT_EQ(out.rows.size(), 3U);
  for (const auto& row : out.rows) EXPECT_EQ(row.at("name"), "Maya");
  const auto records = open_xlsx_records(bytes, {});
  Record record;
  records->next(record);
  records->next(record);
  EXPECT_EQ(record.cells.at(4), "2026-09-01");
}

TEST(XlsxReader, ASheetByItsName) {
  TableOptions options;
  options.sheet = "old";
  const std::string bytes = file_bytes(RANGEBOOK_CHECKS "/workbooks/range.xlsx");
  EXPECT_EQ(read_xlsx(bytes, options).rows.at(0).at("name"), "Hidden dress");
  options.sheet = "Summer";
  const auto out = read_xlsx(bytes, options);
  ASSERT_EQ(out.rejections.size(), 1U);
  EXPECT_NE(out.rejections[0].how_to_fix.find("\"Range\""), std::string::npos);
}

/// Rows written by libxlsxwriter, in a file of its own that is gone afterwards.
std::string written_by_library(int rows) {
  const auto path = std::filesystem::temp_directory_path() /
                    ("rangebook_xlsx_" + std::to_string(::getpid()) + ".xlsx");
  lxw_workbook* book = workbook_new(path.c_str());
  lxw_worksheet* sheet = workbook_add_worksheet(book, "Range");
  const char* header[] = {"line_code", "name", "size", "price"};
  for (lxw_col_t c = 0; c < 4; ++c) worksheet_write_string(sheet, 0, c, header[c], nullptr);
  for (int r = 1; r <= rows; ++r) {
    const auto row = static_cast<lxw_row_t>(r);
    worksheet_write_string(sheet, row, 0, ("M" + std::to_string(r)).c_str(), nullptr);
    worksheet_write_string(sheet, row, 1, "Robe d’été – crêpe", nullptr);
    worksheet_write_number(sheet, row, 2, 8 + r % 4, nullptr);
    worksheet_write_number(sheet, row, 3, r / 100.0, nullptr);
  }
  workbook_close(book);
  std::string bytes = file_bytes(path);
  std::filesystem::remove(path);
  return bytes;
}

TEST(XlsxReader, ManyRowsByTheLibrary) {
  const auto out = read_xlsx(written_by_library(5000));
  ASSERT_EQ(out.rows.size(), 5000U);
  EXPECT_EQ(out.rows[28].at("price"), "0.29");
  EXPECT_EQ(out.rows[4999].at("line_code"), "M5000");
  EXPECT_EQ(out.rows[4999].at("price"), "50");
  EXPECT_EQ(out.origins[4999].line, 5001U);
}

TEST(XlsxReader, CellsWithoutReferencesAndWithGaps) {
  const auto out = read_xlsx(workbook_of(
      "<row><c t='inlineStr'><is><t>name</t></is></c><c t='str'><v>price</v></c></row>"
      "<row><c t='inlineStr'><is><r><t>Ma</t></r><r><t>ya</t></r></is></c><c><v>79.9</v></c></row>"
      "<row r='9'><c r='B9'><v>80</v></c></row>"));
  ASSERT_EQ(out.rows.size(), 2U);
  EXPECT_EQ(out.rows[0], (RowCells{{"name", "Maya"}, {"price", "79.9"}}));
  EXPECT_EQ(out.rows[1], (RowCells{{"price", "80"}}));
  EXPECT_EQ(out.origins[1].line, 9U);
}

TEST(XlsxReader, AMillionEmptyRowsAreNothing) {
  std::string rows = "<row r='1'><c t='str'><v>name</v></c></row>";
  rows += "<row r='2'><c t='str'><v>Maya</v></c></row>";
  for (int i = 0; i < 200'000; ++i) rows += "<row><c s='1'/></row>";
  const auto out = read_xlsx(workbook_of(rows));
  EXPECT_EQ(out.rows.size(), 1U);
  EXPECT_TRUE(out.rejections.empty());
}

TEST(XlsxReader, CellsFarToTheRightAreRefused) {
  const auto out =
      read_xlsx(workbook_of("<row><c t='str'><v>name</v></c></row>"
                            "<row><c r='XFD2' t='str'><v>x</v></c></row>"));
  ASSERT_EQ(out.rejections.size(), 1U);
  EXPECT_EQ(out.rejections[0].kind, RejectionKind::over_limit);
}

TEST(XlsxReader, ThreeDecimalsAreNoThousands) {
  const auto out =
      read_xlsx(workbook_of("<row><c t='str'><v>name</v></c><c t='str'><v>price</v></c></row>"
                            "<row><c t='str'><v>Maya</v></c><c><v>66.387</v></c></row>"));
  EXPECT_EQ(out.rows.at(0).at("price"), "66.3870");
}

std::string problem(const std::string& bytes) {
  const auto out = read_xlsx(bytes);
  EXPECT_TRUE(out.rows.empty());
  return out.rejections.size() == 1 ? out.rejections[0].what : "no single rejection";
}

TEST(XlsxReader, WhatIsNoWorkbookIsSaidPlainly) {
  using namespace std::string_literals;
  const std::string ole = "\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1";
  EXPECT_EQ(problem(ole), "This is a workbook in the old format (.xls).");
  EXPECT_EQ(problem(ole + "E\0n\0c\0r\0y\0p\0t\0e\0d\0P\0a\0c\0k\0a\0g\0e\0"s),
            "The workbook is protected by a password.");
  EXPECT_EQ(problem(""), "The file is empty.");
  EXPECT_EQ(problem("name,price\n"), "This is no workbook but a text.");
  EXPECT_EQ(problem(zip_of({{"a.csv", "name\n"}})), "The archive holds no workbook.");
  EXPECT_EQ(problem(zip_of({{"xl/workbook.bin", "x"}})), "This is a binary workbook (.xlsb).");
}

TEST(XlsxReader, DamagedWorkbooksEndWithAWord) {
  const std::string whole = written_by_library(300);
  for (std::size_t keep = 0; keep < whole.size(); keep += 997) {
    const auto out = read_xlsx(whole.substr(0, keep));
    EXPECT_FALSE(out.rejections.empty()) << keep;
  }
  const auto broken = read_xlsx(workbook_of("<row><c t='str'><v>name</v></c></row><row></c>"));
  ASSERT_FALSE(broken.rejections.empty());
  EXPECT_NE(broken.rejections.back().what.find("damaged"), std::string::npos);
}

TEST(XlsxReader, EntitiesAndDocumentTypesAreRefused) {
  const std::string bomb =
      "<!DOCTYPE x [<!ENTITY a 'aaaaaaaaaa'><!ENTITY b "
      "'&a;&a;&a;&a;'>]><sst><si><t>&b;</t></si></sst>";
  const auto out =
      read_xlsx(workbook_of("<row><c t='s'><v>0</v></c></row>", {{"xl/sharedStrings.xml", bomb}}));
  ASSERT_EQ(out.rejections.size(), 1U);
  EXPECT_NE(out.rejections[0].what.find("DOCTYPE"), std::string::npos);
}

TEST(XlsxReader, AnArchiveThatUnpacksBeyondMeasureIsRefused) {
  std::string rows;
  while (rows.size() < std::size_t{90} << 20U) rows += "<row></row>";
  const auto out = read_xlsx(workbook_of(rows));
  ASSERT_EQ(out.rejections.size(), 1U);
  EXPECT_EQ(out.rejections[0].kind, RejectionKind::over_limit);
}

}  // namespace
}  // namespace rangebook

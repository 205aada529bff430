// Records by RFC 4180, and what its abuses come to, whatever the chunks.
#include "importers/csv_records.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <random>

#include "tests/importers/text_source.h"

namespace rangebook {
namespace {

using ::testing::ElementsAre;
using Rows = std::vector<std::vector<std::string>>;

Rows rows_of(const std::string& text, std::size_t chunk = 1 << 16) {
  TextSource source(text, chunk);
  CsvRecords records(source);
  Rows rows;
  Record record;
  while (records.next(record)) {
    if (record.fault != RecordFault::none) {
      rows.push_back({"fault " + std::to_string(static_cast<int>(record.fault)) + " line " +
                      std::to_string(record.line)});
    } else {
      rows.emplace_back(record.cells.begin(), record.cells.end());
    }
  }
  return rows;
}

// The numbered examples of RFC 4180, section 2.
TEST(CsvRecords, Rfc4180Rule1And2LineEnds) {
  EXPECT_EQ(rows_of("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n"),
            (Rows{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}}));
  EXPECT_EQ(rows_of("aaa,bbb,ccc\r\nzzz,yyy,xxx"),
            (Rows{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}}));
}

TEST(CsvRecords, Rfc4180Rule5And6QuotedCells) {
  EXPECT_EQ(rows_of("\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx"),
            (Rows{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}}));
  EXPECT_EQ(rows_of("\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx"),
            (Rows{{"aaa", "b\r\nbb", "ccc"}, {"zzz", "yyy", "xxx"}}));
}

TEST(CsvRecords, Rfc4180Rule7DoubledQuotes) {
  EXPECT_EQ(rows_of("\"aaa\",\"b\"\"bb\",\"ccc\""), (Rows{{"aaa", "b\"bb", "ccc"}}));
}

TEST(CsvRecords, ByteOrderMarkAndEmptyLinesMeanNothing) {
  EXPECT_EQ(rows_of("\xEF\xBB\xBFname\n\n\r\nMaya\n\n"), (Rows{{"name"}, {"Maya"}}));
}

TEST(CsvRecords, EmptyCellsStay) {
  EXPECT_EQ(rows_of("a,,\n,\"\",b"), (Rows{{"a", "", ""}, {"", "", "b"}}));
}

TEST(CsvRecords, AQuoteInsideAnUnquotedCellIsText) {
  EXPECT_EQ(rows_of("5\" heel,x\n"), (Rows{{"5\" heel", "x"}}));
}

TEST(CsvRecords, AnUnclosedQuoteCostsItsLineOnly) {
  EXPECT_EQ(rows_of("a,b\n\"c,d\ne,f\n"), (Rows{{"a", "b"}, {"fault 1 line 2"}, {"e", "f"}}));
}

TEST(CsvRecords, TextAfterAQuoteCostsItsLineOnly) {
  EXPECT_EQ(rows_of("\"a\"b,c\nd,e\n"), (Rows{{"fault 2 line 1"}, {"d", "e"}}));
}

TEST(CsvRecords, ALineOverTheLimitIsSkippedAndReadingGoesOn) {
  const std::string text = "a,b\n" + std::string(2 * kMaxRecordBytes, 'x') + "\nc,d\n";
  EXPECT_EQ(rows_of(text), (Rows{{"a", "b"}, {"fault 3 line 2"}, {"c", "d"}}));
}

TEST(CsvRecords, LinesAndBytesAreCounted) {
  TextSource source("a\r\n\"b\nb\"\n\nc\n");
  CsvRecords records(source);
  Record record;
  std::vector<std::pair<std::uint64_t, std::uint64_t>> places;
  while (records.next(record)) places.emplace_back(record.line, record.byte);
  EXPECT_THAT(places, ElementsAre(std::pair(1, 0), std::pair(2, 3), std::pair(5, 10)));
}

// Any text gives the same records, faults and places, however it is cut into chunks.
TEST(CsvRecords, ChunksDoNotMatter) {
  std::mt19937 random(20260901);
  const std::string signs = "ab,,\"\"\n\r;";
  for (int round = 0; round < 3000; ++round) {
    std::string text;
    for (auto i = random() % 40; i > 0; --i) text += signs[random() % signs.size()];
    const Rows whole = rows_of(text);
    for (const std::size_t chunk : {1U, 2U, 3U, 7U}) {
      ASSERT_EQ(rows_of(text, chunk), whole) << ::testing::PrintToString(text) << chunk;
    }
  }
}

// What is written by the rules of RFC 4180 reads back, whatever the cells hold.
TEST(CsvRecords, WrittenCellsReadBack) {
  std::mt19937 random(4180);
  const std::string signs = "ab,\"\n\r ;";
  for (int round = 0; round < 2000; ++round) {
    Rows rows(1 + random() % 3);
    std::string text;
    for (auto& row : rows) {
      row.emplace_back("x");
      text += "x";
      for (auto i = random() % 4; i > 0; --i) {
        std::string cell;
        for (auto k = random() % 6; k > 0; --k) cell += signs[random() % signs.size()];
        text += ",\"";
        for (const char sign : cell)
          text += sign == '"' ? std::string("\"\"") : std::string(1, sign);
        text += '"';
        row.push_back(cell);
      }
      text += "\r\n";
    }
    ASSERT_EQ(rows_of(text, 1 + random() % 5), rows);
  }
}

}  // namespace
}  // namespace rangebook

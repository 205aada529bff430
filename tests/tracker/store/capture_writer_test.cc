// Captures go in whole or not at all, read back as they were, and cost only what changed.
#include "tracker/store/capture_writer.h"

#include <gtest/gtest.h>

#include <map>
#include <random>

#include "schema/error.h"
#include "tests/tracker/store/temp_book.h"
#include "tracker/store/snapshot_reader.h"

namespace rangebook {
namespace {

using Range = std::map<std::string, Listing>;  ///< by line code

CaptureInfo info_of(const std::string& season, const std::string& on) {
  CaptureInfo info;
  info.shop = "mill";
  info.season = season;
  info.on = *parse_day(on);
  return info;
}

CaptureOutcome write(Book& book, const CaptureInfo& info, const Range& range,
                     const std::string& document, bool keep = true) {
  CaptureWriter writer(book, mill_shop(), info, true);
  for (const auto& [code, listing] : range) writer.add("code:" + code, listing);
  writer.add_bytes(document);
  writer.end_document({.name = "range.csv", .importer = "table"});
  return writer.finish(keep);
}

Range read(const Book& book, std::int64_t capture) {
  Range range;
  for (auto& line : read_snapshot(book, capture, SnapshotDetail::with).lines) {
    range.emplace(line.listing.card.line_code, std::move(line.listing));
  }
  return range;
}

void expect_same(const Range& a, const Range& b) {
  ASSERT_EQ(a.size(), b.size());
  for (const auto& [code, listing] : a) EXPECT_TRUE(b.at(code).same_facts(listing)) << code;
}

TEST(CaptureWriter, ACaptureReadsBack) {
  const TempFolder folder;
  Book book = Book::open(folder.file("b.rangebook"), true);
  const Range range{{"A", plain_listing("A", {"10", "12"}, 7990)},
                    {"B", plain_listing("B", {"8"}, 4500)}};
  const auto outcome = write(book, info_of("AW25", "2025-09-01"), range, "text");
  EXPECT_EQ(outcome.lines, 2U);
  EXPECT_EQ(outcome.variants, 3U);
  EXPECT_EQ(outcome.new_lines, 2U);
  expect_same(read(book, outcome.id), range);
  EXPECT_EQ(book.document_bytes(outcome.id, 0), "text");
  EXPECT_TRUE(check_book(book).empty());
}

TEST(CaptureWriter, PiecesOfALineAreJoined) {
  const TempFolder folder;
  Book book = Book::open(folder.file("b.rangebook"), true);
  CaptureWriter writer(book, mill_shop(), info_of("AW25", "2025-09-01"), true);
  writer.add("code:A", plain_listing("A", {"10"}, 7990));
  writer.add("code:B", plain_listing("B", {"8"}, 4500));
  writer.add("code:A", plain_listing("A", {"12"}, 7990));
  writer.end_document({.name = "range.csv", .importer = "table"});
  const auto outcome = writer.finish(true);
  EXPECT_EQ(outcome.lines, 2U);
  expect_same(read(book, outcome.id), {{"A", plain_listing("A", {"10", "12"}, 7990)},
                                       {"B", plain_listing("B", {"8"}, 4500)}});
}

TEST(CaptureWriter, TheSameDocumentAgainChangesNothing) {
  const TempFolder folder;
  Book book = Book::open(folder.file("b.rangebook"), true);
  const Range range{{"A", plain_listing("A", {"10"}, 7990)}};
  const auto first = write(book, info_of("AW25", "2025-09-01"), range, "text");
  const auto again = write(book, info_of("AW25", "2025-09-01"), range, "text");
  EXPECT_TRUE(again.unchanged);
  EXPECT_EQ(again.id, first.id);
  EXPECT_EQ(book.captures("mill").size(), 1U);
}

TEST(CaptureWriter, WithoutCommitNothingStays) {
  const TempFolder folder;
  Book book = Book::open(folder.file("b.rangebook"), true);
  const Range range{{"A", plain_listing("A", {"10"}, 7990)}};
  EXPECT_EQ(write(book, info_of("AW25", "2025-09-01"), range, "text", false).lines, 1U);
  EXPECT_TRUE(book.shops().empty());
  EXPECT_EQ(write(book, info_of("AW25", "2025-09-01"), {}, "text").lines, 0U);
  EXPECT_TRUE(book.shops().empty());
}

TEST(CaptureWriter, UndoTakesTheNewestBack) {
  const TempFolder folder;
  Book book = Book::open(folder.file("b.rangebook"), true);
  const Range range{{"A", plain_listing("A", {"10"}, 7990)}};
  const auto first = write(book, info_of("AW25", "2025-09-01"), range, "one");
  write(book, info_of("AW26", "2026-09-01"), {{"A", plain_listing("A", {"10", "12"}, 1)}}, "two");
  EXPECT_FALSE(book.undo_capture("mill", first.id));  // not the newest
  ASSERT_TRUE(book.undo_capture("mill"));
  ASSERT_EQ(book.captures("mill").size(), 1U);
  expect_same(read(book, first.id), range);
  EXPECT_TRUE(check_book(book).empty());
  const auto again = write(book, info_of("AW26", "2026-09-01"), range, "two");
  EXPECT_GT(again.id, 2);  // ids are never used again
  EXPECT_TRUE(check_book(book).empty());
}

TEST(CaptureWriter, ARefusedRowIsKeptWithTheCapture) {
  const TempFolder folder;
  Book book = Book::open(folder.file("b.rangebook"), true);
  CaptureWriter writer(book, mill_shop(), info_of("AW25", "2025-09-01"), true);
  writer.add("code:A", plain_listing("A", {"10"}, 7990));
  Rejection rejection;
  rejection.line = 7;
  rejection.kind = RejectionKind::bad_price;
  rejection.what = "No.";
  rejection.excerpt = "\xFF";
  rejection.line_code = "B";
  writer.reject(rejection);
  writer.end_document({.name = "range.csv", .importer = "table"});
  const auto outcome = writer.finish(true);
  EXPECT_EQ(outcome.refused_rows, 1U);
  EXPECT_EQ(book.rejections(outcome.id), std::vector<Rejection>{rejection});
  EXPECT_EQ(read_snapshot(book, outcome.id, SnapshotDetail::without).refused.at(0).line_code, "B");
}

/// A season's changes at random: prices, stock, sizes, lines.
void change(Range& range, std::mt19937& random) {
  for (int i = 0; i < 6; ++i) {
    const std::string code = std::to_string(random() % 25);
    switch (random() % 4) {
      case 0:
        range.erase(code);
        break;
      case 1:
        range[code] = plain_listing(code, {"10", "12", "14"}, 1000 + random() % 9);
        break;
      case 2:
        range[code] = plain_listing(code, {"10", "12"}, 2000);
        break;
      default:
        if (!range.contains(code)) break;
        range[code].offers.offers[0].stock = Stock::sold_out;
        range[code].offers.offers[0].price = 500 + random() % 3;
    }
  }
}

// The store against a plain map through random captures, undos and reopenings.
TEST(CaptureWriter, AgreesWithAMapThroughRandomSeasons) {
  const TempFolder folder;
  const std::string path = folder.file("b.rangebook");
  std::mt19937 random(20260901);
  std::map<std::int64_t, Range> model;
  Range range;
  auto book = std::make_unique<Book>(Book::open(path, true));
  for (int round = 0; round < 60; ++round) {
    change(range, random);
    if (range.empty()) continue;
    const auto day = to_string(*parse_day("2020-01-01") + date::days(round));
    const auto outcome = write(*book, info_of("S" + std::to_string(round), day), range,
                               "document " + std::to_string(round));
    model[outcome.id] = range;
    if (random() % 5 == 0) {
      ASSERT_TRUE(book->undo_capture("mill"));
      model.erase(std::prev(model.end()));
    }
    if (random() % 7 == 0) book = std::make_unique<Book>(Book::open(path, false));
  }
  for (const auto& [capture, expected] : model) expect_same(read(*book, capture), expected);
  EXPECT_TRUE(check_book(*book).empty());
}

TEST(CheckBook, NoticesOneChangedByte) {
  const TempFolder folder;
  Book book = Book::open(folder.file("b.rangebook"), true);
  write(book, info_of("AW25", "2025-09-01"), {{"A", plain_listing("A", {"10"}, 7990)}}, "text");
  book.database().execute("UPDATE document SET bytes = bytes + 1");
  EXPECT_EQ(check_book(book).size(), 1U);
  book.database().execute("UPDATE pack SET hashes = x'0000000000000000' WHERE part = 'offers'");
  EXPECT_EQ(check_book(book).size(), 2U);
  book.database().execute("UPDATE capture SET line_count = 9");
  EXPECT_EQ(check_book(book).size(), 3U);
}

}  // namespace
}  // namespace rangebook

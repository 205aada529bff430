// A capture read again keeps its place; what others build on it stays true. Invented lines.
#include <gtest/gtest.h>

#include <map>

#include "tests/tracker/store/temp_book.h"
#include "tracker/store/capture_writer.h"
#include "tracker/store/manifest.h"
#include "tracker/store/snapshot_reader.h"

namespace rangebook {
namespace {

using Range = std::map<std::string, Listing>;  ///< by line code

Range range_of(int lines, MinorUnits price) {
  Range range;
  for (int i = 0; i < lines; ++i) {
    const std::string code = "L" + std::to_string(100 + i);
    range.emplace(code, plain_listing(code, {"8", "10", "12"}, price + i));
  }
  return range;
}

void give(CaptureWriter& writer, const Range& range) {
  for (const auto& [code, listing] : range) writer.add("code:" + code, listing);
  writer.add_bytes("bytes that are not looked at again");
  writer.end_document({.name = "range.csv", .importer = "table", .mapping = "name=1"});
}

CaptureOutcome capture(Book& book, const std::string& day, const Range& range) {
  CaptureInfo info;
  info.shop = "mill";
  info.season = "AW25";
  info.on = *parse_day(day);
  CaptureWriter writer(book, mill_shop(), info, true);
  for (const auto& [code, listing] : range) writer.add("code:" + code, listing);
  writer.add_bytes(day);
  writer.end_document({.name = "range.csv", .importer = "table", .mapping = "name=1"});
  return writer.finish(true);
}

CaptureOutcome reread(Book& book, std::int64_t id, const Range& range, bool keep = true) {
  CaptureWriter writer(book, book.capture(id).value());
  give(writer, range);
  return writer.finish(keep);
}

Range read(const Book& book, std::int64_t id) {
  Range range;
  for (auto& line : read_snapshot(book, id, SnapshotDetail::with).lines) {
    range.emplace(line.listing.card.line_code, std::move(line.listing));
  }
  return range;
}

void expect_same(const Range& a, const Range& b) {
  ASSERT_EQ(a.size(), b.size());
  for (const auto& [code, listing] : a) EXPECT_TRUE(b.at(code).same_facts(listing)) << code;
}

TEST(RereadCapture, TheContentIsReplacedIdAndDocumentsStay) {
  const TempFolder folder;
  Book book = Book::open(folder.file("b.rangebook"), true);
  const auto first = capture(book, "2025-09-01", range_of(5, 7990));
  const auto before = book.capture(first.id).value();
  const auto again = reread(book, first.id, range_of(7, 8990));
  EXPECT_EQ(again.id, first.id);
  EXPECT_EQ(again.lines, 7U);
  EXPECT_EQ(again.new_lines, 2U);
  EXPECT_FALSE(again.unchanged);
  expect_same(read(book, first.id), range_of(7, 8990));
  EXPECT_EQ(book.capture(first.id).value(), before);
  EXPECT_EQ(book.document_bytes(first.id, 0), "2025-09-01");
  EXPECT_TRUE(check_book(book).empty());
}

TEST(RereadCapture, TheSameResultChangesNothing) {
  const TempFolder folder;
  Book book = Book::open(folder.file("b.rangebook"), true);
  const auto first = capture(book, "2025-09-01", range_of(5, 7990));
  const auto again = reread(book, first.id, range_of(5, 7990));
  EXPECT_TRUE(again.unchanged);
  EXPECT_EQ(again.same_lines, 5U);
}

TEST(RereadCapture, WithoutALineOrWithoutKeepTheBookStays) {
  const TempFolder folder;
  Book book = Book::open(folder.file("b.rangebook"), true);
  const auto first = capture(book, "2025-09-01", range_of(5, 7990));
  EXPECT_EQ(reread(book, first.id, {}).lines, 0U);
  EXPECT_EQ(reread(book, first.id, range_of(3, 100), false).lines, 3U);
  expect_same(read(book, first.id), range_of(5, 7990));
  EXPECT_TRUE(check_book(book).empty());
}

TEST(RereadCapture, LaterCapturesThatAreDeltasAgainstItStillSayTheSame) {
  const TempFolder folder;
  Book book = Book::open(folder.file("b.rangebook"), true);
  std::map<std::int64_t, Range> expected;
  for (int month = 1; month <= 9; ++month) {
    Range range = range_of(200, 7990);
    range.begin()->second = plain_listing("L100", {"8"}, 1000 + month);
    const auto outcome = capture(book, "2025-0" + std::to_string(month) + "-01", range);
    expected.emplace(outcome.id, std::move(range));
  }
  for (const std::int64_t id : {3, 1, 9, 4, 4}) {
    Range changed = range_of(180, 5000 + id);
    ASSERT_FALSE(reread(book, id, changed).unchanged && id != 4);
    expected[id] = std::move(changed);
    for (const auto& [other, range] : expected) {
      expect_same(read(book, other), range);
      EXPECT_LT(manifest_chain(book.database(), other), kMaxManifestChain);
    }
  }
  EXPECT_TRUE(check_book(book).empty());
}

TEST(RereadCapture, ItCanBeUndoneAndOthersStay) {
  const TempFolder folder;
  Book book = Book::open(folder.file("b.rangebook"), true);
  const auto first = capture(book, "2025-09-01", range_of(5, 7990));
  const auto second = capture(book, "2025-10-01", range_of(6, 7990));
  reread(book, first.id, range_of(8, 4000));
  ASSERT_EQ(book.undo_capture("mill")->id, second.id);
  expect_same(read(book, first.id), range_of(8, 4000));
  EXPECT_TRUE(check_book(book).empty());
}

TEST(RereadCapture, WhatWasFoundInTheLinesAsTheyWereIsForgotten) {
  const TempFolder folder;
  Book book = Book::open(folder.file("b.rangebook"), true);
  const auto first = capture(book, "2025-09-01", range_of(5, 7990));
  const auto second = capture(book, "2025-10-01", range_of(6, 7990));
  for (const auto id : {first.id, second.id}) {
    book.database()
        .prepare("INSERT INTO found (capture_id, fingerprint) VALUES (?1, 'as it was')")
        .bind(1, id)
        .run();
  }
  reread(book, first.id, range_of(8, 4000));
  EXPECT_FALSE(book.database().prepare("SELECT 1 FROM found").step());
}

TEST(RereadCapture, RejectionsAndMappingAreReplaced) {
  const TempFolder folder;
  Book book = Book::open(folder.file("b.rangebook"), true);
  const auto first = capture(book, "2025-09-01", range_of(5, 7990));
  {
    CaptureWriter writer(book, book.capture(first.id).value());
    for (const auto& [code, listing] : range_of(5, 7990)) writer.add("code:" + code, listing);
    Rejection rejection;
    rejection.line = 3;
    writer.reject(rejection);
    TableOptions options;
    options.delimiter = ';';
    writer.end_document(
        {.name = "x", .importer = "table", .mapping = "n=2", .profile = "p", .options = options});
    EXPECT_FALSE(writer.finish(true).unchanged);
  }
  EXPECT_EQ(book.rejections(first.id).size(), 1U);
  const auto document = book.capture(first.id)->documents.at(0);
  EXPECT_EQ(document.name, "range.csv");
  EXPECT_EQ(document.mapping, "n=2");
  EXPECT_EQ(document.profile, "p");
  EXPECT_EQ(document.options.delimiter, ';');
}

}  // namespace
}  // namespace rangebook

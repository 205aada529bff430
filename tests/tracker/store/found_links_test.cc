// What was found is read back as it was kept, and only under the same fingerprint.
#include "tracker/store/found_links.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/tracker/store/temp_book.h"
#include "tracker/store/capture_writer.h"
#include "tracker/store/roll_reader.h"
#include "tracker/store/snapshot_reader.h"

namespace rangebook {
namespace {

using ::testing::IsEmpty;

void capture(Book& book, int year, const std::vector<std::string>& codes) {
  CaptureInfo info;
  info.shop = "mill";
  info.season = "AW" + std::to_string(year);
  info.on = date::sys_days(date::year(2000 + year) / 9 / 1);
  CaptureWriter writer(book, mill_shop(), info, true);
  writer.add_bytes(std::to_string(year));
  writer.end_document({.name = "a.csv", .importer = "table"});
  for (const auto& code : codes) writer.add("code:" + code, plain_listing(code, {"8"}, 5000));
  writer.finish(true);
}

TEST(FoundLinks, ReadBackAsTheyWereKept) {
  const TempFolder folder;
  Book book = Book::open(folder.file("b.rangebook"), true);
  capture(book, 24, {"A", "B"});
  capture(book, 25, {"C", "D"});
  const Roll roll = read_roll(book, "mill");
  EXPECT_THAT(roll.unsure, IsEmpty());
  CaptureFinds finds;
  finds.links.push_back({{0, 1},
                         {1, 0},
                         {LinkEvidence::gtin, LinkEvidence::likeness},
                         LinkAuthority::stylist,
                         0.875,
                         "why"});
  finds.ask.push_back({{0, 0}, {1, 1}, {LinkEvidence::likeness}, LinkAuthority::rule, 0.5, "so"});
  keep_found(book, roll, 1, "f1", finds);
  EXPECT_EQ(read_found(book, roll, 1, "f1"), finds);
  EXPECT_EQ(read_found(book, roll, 1, "f2"), std::nullopt);
  EXPECT_EQ(read_found(book, roll, 0, "f1"), std::nullopt);
  keep_found(book, roll, 1, "f2", {});
  EXPECT_EQ(read_found(book, roll, 1, "f2"), CaptureFinds{});
  EXPECT_THAT(check_book(book), IsEmpty());
}

TEST(FoundLinks, GoWithTheirCapture) {
  const TempFolder folder;
  Book book = Book::open(folder.file("b.rangebook"), true);
  capture(book, 24, {"A"});
  capture(book, 25, {"B"});
  CaptureFinds finds;
  finds.links.push_back({{0, 0}, {1, 0}, {LinkEvidence::gtin}, LinkAuthority::code, 1, "why"});
  keep_found(book, read_roll(book, "mill"), 1, "f", finds);
  book.undo_capture("mill");
  EXPECT_FALSE(book.database().prepare("SELECT 1 FROM found").step());
  EXPECT_FALSE(book.database().prepare("SELECT 1 FROM found_link").step());
}

}  // namespace
}  // namespace rangebook

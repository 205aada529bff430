// What makes a shop's state another one, and what does not.
#include "tracker/store/shop_state.h"

#include <gtest/gtest.h>

#include <set>

#include "tests/tracker/store/temp_book.h"
#include "tracker/store/capture_writer.h"
#include "tracker/store/decisions.h"

namespace rangebook {
namespace {

Day day(int number) { return date::sys_days(date::year(2026) / 9 / number); }

Shop second_shop() {
  Shop shop = mill_shop();
  shop.slug = "quay";
  return shop;
}

class ShopStates : public ::testing::Test {
 protected:
  void SetUp() override {
    book_.put_shop(mill_shop());
    book_.put_shop(second_shop());
  }
  void capture(const std::string& shop, int on) {
    CaptureInfo info;
    info.shop = shop;
    info.season = "AW26";
    info.on = day(on);
    CaptureWriter writer(book_, book_.find_shop(shop)->shop, info, true);
    writer.add_bytes(shop + std::to_string(on));
    writer.end_document({.name = "a.csv", .importer = "table"});
    for (const char* code : {"A", "B"}) {
      writer.add(std::string("code:") + code, plain_listing(code, {"8"}, 5000));
    }
    writer.finish(true);
  }
  std::string state(const std::string& shop) const { return shop_states(book_).at(shop); }
  void expect_new_state() { EXPECT_TRUE(seen_.insert(state("mill")).second) << seen_.size(); }

  TempFolder folder_;
  Book book_ = Book::open(folder_.file("b.rangebook"), true);
  std::set<std::string> seen_;
};

TEST_F(ShopStates, EveryCaptureDecisionAndSettingMakesANewOne) {
  expect_new_state();
  capture("mill", 1);
  expect_new_state();
  capture("mill", 2);
  expect_new_state();
  keep_decisions(book_, {{0, {1, 2, true, day(1), day(2)}, 0.7, "why"}});
  expect_new_state();
  Shop strict = mill_shop();
  strict.ask_above = 90;
  book_.put_shop(strict);
  expect_new_state();
}

TEST_F(ShopStates, ACaptureInThePlaceOfOneTakenBackIsAnotherState) {
  capture("mill", 1);
  capture("mill", 2);
  const std::string before = state("mill");
  book_.undo_capture("mill");
  EXPECT_NE(state("mill"), before);
  capture("mill", 2);
  EXPECT_NE(state("mill"), before);
}

TEST_F(ShopStates, ACaptureReadAgainMakesANewOneEachTime) {
  capture("mill", 1);
  const std::int64_t id = book_.captures("mill").front().info.id;
  for (const MinorUnits price : {5000, 5100, 5000}) {
    expect_new_state();
    CaptureWriter writer(book_, book_.capture(id).value());
    writer.add("code:A", plain_listing("A", {"8"}, price));
    writer.add_bytes("not looked at again");
    writer.end_document({.name = "a.csv", .importer = "table"});
    writer.finish(true);
  }
  expect_new_state();
}

TEST_F(ShopStates, OtherShopsAndReadingChangeNothing) {
  capture("mill", 1);
  const std::string before = state("mill");
  capture("quay", 3);
  book_.captures_of_all();
  EXPECT_EQ(state("mill"), before);
}

}  // namespace
}  // namespace rangebook

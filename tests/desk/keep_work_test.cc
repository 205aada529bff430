// Work that goes on while pages are asked.
#include "tracker/desk/keep_work.h"

#include <gtest/gtest.h>

#include <future>

#include "schema/error.h"

namespace rangebook {
namespace {

using std::chrono::milliseconds;
using std::chrono::seconds;

DeskAnswer leading_to(const std::string& address) {
  DeskAnswer answer;
  answer.go_to = address;
  return answer;
}

TEST(KeepWork, TellsHowFarItIsAndWhatItCameTo) {
  KeepWork work;
  EXPECT_FALSE(work.wait(milliseconds(0)));
  std::promise<void> half;
  std::promise<void> go_on;
  ASSERT_TRUE(work.start([&](const ProgressCallback& progress) {
    progress(50, 100);
    half.set_value();
    go_on.get_future().wait();
    return leading_to("/kept");
  }));
  half.get_future().wait();
  EXPECT_TRUE(work.goes_on());
  EXPECT_EQ(work.share(), 50U);
  EXPECT_FALSE(work.wait(milliseconds(0)));
  EXPECT_FALSE(work.start([](const ProgressCallback&) { return DeskAnswer{}; }));
  go_on.set_value();
  EXPECT_EQ(work.wait(seconds(60)).value().go_to, "/kept");
  EXPECT_EQ(work.wait(seconds(0)).value().go_to, "/kept");  // asked again
}

TEST(KeepWork, AFaultIsSaidToWhoeverAsks) {
  KeepWork work;
  ASSERT_TRUE(work.start([](const ProgressCallback&) -> DeskAnswer { throw Error("busy"); }));
  EXPECT_THROW(work.wait(seconds(60)), Error);
  ASSERT_TRUE(work.start([](const ProgressCallback&) { return leading_to("/"); }));
  EXPECT_EQ(work.wait(seconds(60)).value().go_to, "/");
}

}  // namespace
}  // namespace rangebook

// Worked out once for each state of the book.
#include "tracker/desk/remembered.h"

#include <gtest/gtest.h>

namespace rangebook {
namespace {

TEST(Remembered, AValueServesUntilTheStateChanges) {
  Remembered<int> remembered;
  int worked = 0;
  const auto ask = [&](const char* key, const char* state) {
    return remembered.value(key, state, [&] { return ++worked; });
  };
  EXPECT_EQ(ask("a", "then"), 1);
  EXPECT_EQ(ask("a", "then"), 1);
  EXPECT_EQ(ask("b", "then"), 2);
  EXPECT_EQ(ask("a", "now"), 3);
  EXPECT_EQ(ask("a", "now"), 3);
  EXPECT_EQ(ask("a", "then"), 4);
}

}  // namespace
}  // namespace rangebook

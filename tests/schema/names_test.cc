// Names of enumerators can be read back.
#include <gtest/gtest.h>

#include "schema/change.h"
#include "schema/rejection.h"
#include "schema/size.h"

namespace rangebook {
namespace {

TEST(Names, EveryKindOfChangeReadsBack) {
  for (std::size_t i = 0; i < kChangeKindCount; ++i) {
    const auto kind = static_cast<ChangeKind>(i);
    ASSERT_NE(to_string(kind), "?") << i;
    EXPECT_EQ(parse_change_kind(to_string(kind)), kind);
  }
}

TEST(Names, UnknownNamesAreNothing) {
  EXPECT_EQ(parse_change_kind("line-vanished"), std::nullopt);
  EXPECT_EQ(parse_rejection_kind(""), std::nullopt);
  EXPECT_EQ(parse_size_system("cm"), std::nullopt);
}

}  // namespace
}  // namespace rangebook

// Names of attributes and what readings come to.
#include "schema/attributes.h"

#include <gtest/gtest.h>

#include <string>

namespace rangebook {
namespace {

AttributeReading reading(Attribute attribute, const std::string& value) {
  return {attribute, value, AttributeReading::Field::name, 0, 0, {}};
}

TEST(Attributes, NamesReadBack) {
  for (std::size_t i = 0; i < kAttributeCount; ++i) {
    EXPECT_EQ(parse_attribute(to_string(Attribute(i))), Attribute(i));
  }
  EXPECT_EQ(parse_attribute("sleeves"), std::nullopt);
}

TEST(Attributes, OneValueOrNone) {
  const Attributes both{{reading(Attribute::neckline, "round"), reading(Attribute::neckline, "v")}};
  EXPECT_TRUE(both.contradicts(Attribute::neckline));
  EXPECT_EQ(both.value(Attribute::neckline), std::nullopt);
  EXPECT_EQ(both.value(Attribute::fit), std::nullopt);
  const Attributes twice{{reading(Attribute::fit, "slim"), reading(Attribute::fit, "slim")}};
  EXPECT_EQ(twice.value(Attribute::fit), "slim");
  EXPECT_FALSE(twice.contradicts(Attribute::fit));
}

TEST(Attributes, AZipAndButtonsDoNotContradict) {
  const Attributes both{
      {reading(Attribute::fastening, "buttons"), reading(Attribute::fastening, "zip")}};
  EXPECT_FALSE(both.contradicts(Attribute::fastening));
  EXPECT_EQ(both.values(Attribute::fastening).size(), 2U);
}

}  // namespace
}  // namespace rangebook

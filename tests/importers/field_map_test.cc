// Header names to fields. The contract's names are the project's own; the others are common
// practice, no source.
#include "importers/field_map.h"

#include <gtest/gtest.h>

namespace rangebook {
namespace {

FieldMap map(std::vector<std::string_view> header) { return map_header(header); }

TEST(FieldMap, TheContractsOwnNames) {
  for (std::size_t i = 0; i < kFieldCount; ++i) {
    const auto field = static_cast<Field>(i);
    EXPECT_EQ(field_named(to_string(field)), field);
  }
}

TEST(FieldMap, SpellingOfTheHeaderDoesNotMatter) {
  EXPECT_EQ(field_named("Full Price"), Field::full_price);
  EXPECT_EQ(field_named(" LINE-CODE "), Field::line_code);
  EXPECT_EQ(field_named("Color"), Field::colour);
  EXPECT_EQ(field_named("Notes"), std::nullopt);
}

TEST(FieldMap, TheContractsNameWinsOverASynonym) {
  const FieldMap both = map({"title", "name", "sku", "line_code"});
  EXPECT_EQ(both.column[static_cast<std::size_t>(Field::name)], 1U);
  EXPECT_EQ(both.column[static_cast<std::size_t>(Field::line_code)], 3U);
  EXPECT_EQ(both.unknown, (std::vector<std::string>{"title", "sku"}));
}

}  // namespace
}  // namespace rangebook

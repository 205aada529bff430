// Which lines of the other capture a refused row may be.
#include "tracker/refused_rows.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/tracker/change_text.h"

namespace rangebook {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;
using testing::range;

Snapshot refusing(std::string code, std::string name) {
  Snapshot snapshot = range("AW26", "");
  snapshot.refused = {{std::move(code), std::move(name)}};
  return snapshot;
}

std::vector<std::string> names(const std::vector<RefusedLine>& rows) {
  std::vector<std::string> all;
  for (const RefusedLine& row : rows) {
    if (row.line_code.empty()) all.push_back(row.name);
  }
  return all;
}

TEST(RefusedRows, ANewCodeMayBeAnyLineOfTheName) {
  const Snapshot other = range("AW25", "A1 | Maya Dress | Dresses\nA2 | Nora Top | Tops");
  EXPECT_THAT(names(refused_for(refusing("B7", "MAYA  dress"), other)), ElementsAre("Maya Dress"));
  EXPECT_THAT(names(refused_for(refusing("B7", "Ines"), other)), IsEmpty());
  EXPECT_THAT(names(refused_for(refusing("B7", ""), other)), IsEmpty());
}

TEST(RefusedRows, AKnownCodeIsThatLineOnly) {
  const Snapshot other = range("AW25", "A1 | Maya Dress | Dresses\nA2 | Maya Dress | Dresses");
  EXPECT_THAT(names(refused_for(refusing(" A2 ", "Maya Dress"), other)), IsEmpty());
}

TEST(RefusedRows, TheNameOfTheHouseDoesNotCount) {
  std::string lines = "A1 | Mill - Maya Dress | Dresses";
  for (char c = 'a'; c < 'a' + 9; ++c)
    lines += std::string("\n") + c + "2 | Mill - " + c + c + " | Tops";
  EXPECT_THAT(names(refused_for(refusing("B7", "Maya Dress"), range("AW25", lines))),
              ElementsAre("Mill - Maya Dress"));
}

}  // namespace
}  // namespace rangebook

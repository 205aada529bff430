// What was appended reads back, in any order, from memory and from the file.
#include "tracker/store/spill.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

#include "tests/tracker/store/temp_book.h"

namespace rangebook {
namespace {

TEST(Spill, ReadsBackInAnyOrder) {
  const TempFolder folder;
  Spill spill(folder.file(""));
  std::mt19937 random(11);
  std::vector<std::pair<std::uint64_t, std::string>> pieces;
  for (std::size_t bytes = 0; bytes < 2 * kSpillMemory;) {
    const std::string piece(1 + random() % 90'000, static_cast<char>('a' + random() % 26));
    pieces.emplace_back(spill.append(piece), piece);
    bytes += piece.size();
  }
  std::string read;
  for (const auto& [place, piece] : pieces) {
    spill.read(place, piece.size(), read);
    ASSERT_EQ(read, piece) << place;
  }
  std::shuffle(pieces.begin(), pieces.end(), random);
  for (const auto& [place, piece] : pieces) {
    spill.read(place, piece.size(), read);
    ASSERT_EQ(read, piece) << place;
  }
}

TEST(Spill, LeavesNoFileBehind) {
  const TempFolder folder;
  Spill spill(folder.file(""));
  for (int i = 0; i < 3; ++i) spill.append(std::string(kSpillMemory, 'x'));
  EXPECT_TRUE(std::filesystem::is_empty(folder.file("")));
}

}  // namespace
}  // namespace rangebook

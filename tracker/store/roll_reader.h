// The roll of a shop from the book, and its lines on demand.
#pragma once

#include <cstdint>
#include <map>
#include <string_view>
#include <vector>

#include "tracker/identity/finder.h"
#include "tracker/identity/roll.h"
#include "tracker/store/book.h"

namespace rangebook {

/// All captures of the shop with their lines, and the decisions. Only lists are read, no line.
/// A shop the book does not have gives an empty roll.
Roll read_roll(const Book& book, std::string_view shop);

/// Reads lines of the captures of a roll from the book, or from snapshots that are there already.
/// Book, roll and snapshots must outlive it.
class StoredLines : public LineSource {
 public:
  StoredLines(const Book& book, const Roll& roll) : book_(book), roll_(roll) {}

  /// Lines of this capture need not be read again. Details still are.
  void have(std::uint32_t capture, const Snapshot& snapshot) { at_hand_[capture] = &snapshot; }

  std::vector<LineState> lines(std::uint32_t capture,
                               const std::vector<std::uint32_t>& rows) override;
  std::vector<LineDetail> details(std::uint32_t capture,
                                  const std::vector<std::uint32_t>& rows) override;
  std::vector<std::uint64_t> hashes(std::uint32_t capture,
                                    const std::vector<std::uint32_t>& rows) override;

 private:
  const Book& book_;
  const Roll& roll_;
  std::map<std::uint32_t, const Snapshot*> at_hand_;
};

}  // namespace rangebook

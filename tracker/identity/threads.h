// Threads: rows of several captures that are one line by their code alone. Lines are threads tied
// together by links.
#pragma once

#include <cstdint>
#include <unordered_map>
#include <utility>
#include <vector>

#include "tracker/identity/roll.h"

namespace rangebook {

/// Threads are numbered by their first sighting. A row kept under an address or name is a thread of
/// its own: whether it is the line of the same name before is for the linker to say. Where the
/// stylist said that a code was given to another style, its thread ends.
class Threads {
 public:
  /// Of the first `captures` captures of the roll, which must outlive the threads.
  Threads(const Roll& roll, std::size_t captures);

  std::uint32_t count() const { return static_cast<std::uint32_t>(first_.size()); }
  std::uint32_t at(SightingAt sighting) const { return of_row_[sighting.capture][sighting.row]; }
  SightingAt first(std::uint32_t thread) const { return first_[thread]; }
  const std::vector<std::vector<std::uint32_t>>& of_row() const { return of_row_; }

 private:
  using Breaks = std::unordered_map<LineId, std::vector<Day>>;

  void add_capture(const RollCapture& capture, std::uint32_t place);
  std::uint32_t begin_thread(SightingAt first);

  const Roll& roll_;
  Breaks breaks_;                    // days on which a code began to mean another style
  std::vector<LineId> known_;        // ascending: all lines of the captures
  std::vector<std::uint32_t> open_;  // by place in known_: the thread that runs on
  std::vector<Day> opened_;          // and when it began
  std::vector<std::vector<std::uint32_t>> of_row_;
  std::vector<SightingAt> first_;
};

}  // namespace rangebook

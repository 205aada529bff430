// Looking at one capture: which of its rows are lines known from before under another code, name or
// address.
#pragma once

#include <cstdint>
#include <vector>

#include "tracker/identity/roll.h"
#include "tracker/likeness/likeness_matcher.h"

namespace rangebook {

/// Reads some lines of a capture of the roll. Rows may come in any order and are answered in it.
class LineSource {
 public:
  virtual ~LineSource() = default;
  virtual std::vector<LineState> lines(std::uint32_t capture,
                                       const std::vector<std::uint32_t>& rows) = 0;
  virtual std::vector<LineDetail> details(std::uint32_t capture,
                                          const std::vector<std::uint32_t>& rows) = 0;
  /// A number for each row that follows from what the line says of itself, and nothing else.
  virtual std::vector<std::uint64_t> hashes(std::uint32_t capture,
                                            const std::vector<std::uint32_t>& rows) = 0;
};

/// Links of the rows of `capture` that begin a thread to lines of `before`, the captures ahead of
/// it, that are not in it under a code they had. Each line is compared as it was last seen, however
/// long ago: a winter style is often away for the summer. When every code was there before, nothing
/// is read.
CaptureFinds find_links(const Roll& roll, const Identities& before, std::uint32_t capture,
                        LineSource& source, const LikenessOptions& options);

}  // namespace rangebook

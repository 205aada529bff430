// The roll of a shop: which lines each of its captures shows, known without reading any of them.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "schema/capture.h"
#include "schema/identity.h"
#include "tracker/linker.h"

namespace rangebook {

struct RollCapture {
  CaptureInfo info;
  std::vector<LineId> lines;  ///< ascending, as the rows of its snapshot
};

struct Roll {
  Shop shop;
  std::vector<RollCapture> captures;  ///< by capture_before
  /// Ascending: lines kept under an address or a name, which may be given to another style later.
  /// All others are kept under a code or group id: equal ids are equal codes.
  std::vector<LineId> unsure;
  std::vector<LinkDecision> decisions;
};

/// The order of captures: by date, then season, scope and documents; the number in the book, which
/// tells when a capture was taken in, only where all these are equal.
bool capture_before(const CaptureInfo& a, const CaptureInfo& b);

/// Where `line` was seen on `day`: in a capture of that day, else the latest before, else the first
/// after it. Nothing when no capture shows the line.
std::optional<SightingAt> sighting_on(const Roll& roll, LineId line, Day day);

/// The row of a line in a capture.
std::optional<std::uint32_t> row_of(const RollCapture& capture, LineId line);

bool is_unsure(const Roll& roll, LineId line);

}  // namespace rangebook

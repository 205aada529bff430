// One line through all captures: how it stood, what changed in between, and who did not look.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "schema/line_history.h"
#include "schema/snapshot.h"

namespace rangebook {

/// A capture as far as one line is concerned.
struct HistoryCapture {
  CaptureInfo capture;
  std::vector<RefusedLine> refused;
  std::optional<LineState> line;
  std::string link = {};  ///< why the line is the one seen before
};

/// Captures by date, the first of them with the line. Changes are those the differ finds between a
/// sighting and the one before it, so `changes` tells the same.
std::vector<HistoryEntry> tell_history(const Shop& shop, std::vector<HistoryCapture> captures);

}  // namespace rangebook

// How much detail a capture goes into anywhere. A source that never tells a lining from the shell,
// or blouses from tops, has not seen one go: what it leaves out is no change.
#pragma once

#include <optional>
#include <set>
#include <string>
#include <string_view>

#include "schema/snapshot.h"
#include "tracker/interpreter.h"

namespace rangebook {

/// Looks through the capture at the first question only: most comparisons never ask. `snapshot` and
/// `interpreter` must outlive this.
class CaptureDetail {
 public:
  CaptureDetail(const Snapshot& snapshot, Interpreter& interpreter)
      : snapshot_(snapshot), interpreter_(interpreter) {}

  /// Some line's composition names this part, such as `lining`.
  bool states_part(std::string_view part);
  /// Some variant has a full price above its selling price.
  bool states_markdowns();
  /// Some line is put into exactly this category by the shop.
  bool states_category(std::string_view slug);

 private:
  const Snapshot& snapshot_;
  Interpreter& interpreter_;
  std::optional<std::set<std::string, std::less<>>> parts_;
  std::optional<std::set<std::string_view>> categories_;
  std::optional<bool> markdowns_;
};

}  // namespace rangebook

// One line in both captures, and where its changes go.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "schema/change.h"
#include "schema/link.h"
#include "schema/snapshot.h"
#include "tracker/capture_detail.h"
#include "tracker/interpreter.h"

namespace rangebook {

/// A linked line with what the differ knows of both states. All pointers outlive the pair.
struct LinePair {
  const LineState* before = nullptr;
  const LineState* after = nullptr;
  const Link* link = nullptr;
  const SizeRun* sizes_before = nullptr;
  const SizeRun* sizes_after = nullptr;
  bool refused_then = false;  ///< a row refused in the earlier capture may belong to the line
  bool refused_now = false;   ///< likewise in the later capture
  CaptureDetail* detail_before = nullptr;  ///< what the earlier capture states anywhere
  CaptureDetail* detail_after = nullptr;

  const Listing& then() const { return before->listing; }
  const Listing& now() const { return after->listing; }
};

/// Where a line stands in a capture.
Sighting sighting_of(const CaptureInfo& capture, const Origin& origin);
/// A whole capture, for figures of the shop.
Sighting sighting_of(const CaptureInfo& capture);
/// The line by `state`, with `id` as its lasting identity.
LineRef line_ref(LineId id, const LineState& state, std::string_view category);
NameFact name_fact(const LineState& state);

/// Appends the changes of one pair to `changes`. Line and evidence are the same for all of them and
/// are built only when there is a change, since most lines have none.
class PairChanges {
 public:
  PairChanges(const LinePair& pair, const CaptureInfo& from, const CaptureInfo& to,
              Interpreter& interpreter, std::vector<Change>& changes)
      : pair_(pair), from_(from), to_(to), interpreter_(interpreter), changes_(changes) {}

  void add(ChangeKind kind, std::optional<Fact> before, std::optional<Fact> after);

 private:
  const LinePair& pair_;
  const CaptureInfo& from_;
  const CaptureInfo& to_;
  Interpreter& interpreter_;
  std::vector<Change>& changes_;
  std::optional<LineRef> line_;
  ChangeEvidence evidence_;
};

}  // namespace rangebook

// A snapshot: everything one capture says of a shop's range, as a value. Linker, differ and
// reports work on snapshots and know nothing of the store.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "schema/capture.h"
#include "schema/listing.h"

namespace rangebook {

/// The lasting identity of a line within one book.
using LineId = std::int64_t;

/// Content hashes of the three stored parts of a listing. Equal hashes mean equal parts.
struct PartHashes {
  std::uint64_t card = 0;
  std::uint64_t detail = 0;
  std::uint64_t offers = 0;

  bool operator==(const PartHashes&) const = default;
};

struct LineState {
  LineId id = 0;
  Listing listing;                   ///< detail is empty unless the snapshot was read with details
  std::optional<PartHashes> hashes;  ///< set by the store; a snapshot made by hand may omit it
};

/// A row of the capture that was refused: its line may well be there, so it is never called gone.
struct RefusedLine {
  std::string line_code;
  std::string name;
};

struct Snapshot {
  Shop shop;
  CaptureInfo capture;
  std::vector<LineState> lines;  ///< ordered by id
  std::vector<RefusedLine> refused;
};

/// A line the book knows from captures before both that are compared. Lets a line that is absent
/// in `from` and present in `to` be told apart: new, or returned.
struct EarlierLine {
  LineId id = 0;
  std::string season;  ///< of the latest such capture
  Day on{};
  std::int64_t capture = 0;
  std::string line_code = {};  ///< as seen then; may be left out
  std::string name = {};       ///< likewise; empty: the line is shown as it is now
};

}  // namespace rangebook

// Which lines of many captures are one line: what the book's history stands on. Captures are
// counted by their place in the order of their dates, never by when they were taken in.
#pragma once

#include <compare>
#include <cstdint>
#include <string>
#include <vector>

#include "schema/link.h"
#include "schema/snapshot.h"

namespace rangebook {

/// A line in one capture: the capture's place by date, and the row of the line in it.
struct SightingAt {
  std::uint32_t capture = 0;
  std::uint32_t row = 0;

  auto operator<=>(const SightingAt&) const = default;
};

/// Two sightings taken for one line, or asked about: `from` is the last sighting before `to`.
struct FoundLink {
  SightingAt from;
  SightingAt to;
  std::vector<LinkEvidence> evidence;
  LinkAuthority authority = LinkAuthority::rule;
  double score = 1.0;
  std::string sentence;

  bool operator==(const FoundLink&) const = default;
};

/// What looking at one capture found about lines seen before it.
struct CaptureFinds {
  std::vector<FoundLink> links;
  std::vector<FoundLink> ask;

  bool operator==(const CaptureFinds&) const = default;
};

/// One line through all captures, at most one row of each.
struct LineIdentity {
  LineId id = 0;                 ///< of its first sighting; told apart where that is used twice
  std::vector<SightingAt> seen;  ///< by capture
  std::vector<FoundLink> links;  ///< what joins sightings that no code joins, by time

  bool operator==(const LineIdentity&) const = default;
};

/// Every row of every capture stands in exactly one line.
struct Identities {
  std::vector<LineIdentity> lines;                 ///< by first sighting
  std::vector<std::vector<std::uint32_t>> of_row;  ///< capture, row -> index into `lines`
  std::vector<FoundLink> ask;                      ///< still open: best first

  std::uint32_t at(SightingAt sighting) const { return of_row[sighting.capture][sighting.row]; }
  bool operator==(const Identities&) const = default;
};

}  // namespace rangebook

// Everything a book knows of one line, capture by capture.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "schema/capture.h"
#include "schema/change.h"
#include "schema/link_case.h"
#include "schema/snapshot.h"

namespace rangebook {

/// What a capture has to say of a line.
enum class Presence : std::uint8_t {
  seen,
  absent,      ///< looked for, and not there
  not_looked,  ///< the capture did not look at such lines
  refused,     ///< a row that may be the line could not be read
};
std::string_view to_string(Presence presence);  ///< `not-looked`

/// Prices of one capture's variants, lowest and highest.
struct PriceSpan {
  Money low;
  Money high;
  bool operator==(const PriceSpan&) const = default;
};

/// The line as one capture shows it, in comparable form.
struct SeenLine {
  LineCard card;
  std::string category;  ///< slug
  Sighting seen;
  std::optional<PriceSpan> price;       ///< what it sells for
  std::optional<PriceSpan> full_price;  ///< without markdowns
  std::uint32_t variants = 0;
  std::uint32_t marked_down = 0;  ///< variants
  StockFact stock;
  std::vector<std::string> colours;
  std::vector<SizeFact> sizes;        ///< by system and fit range
  std::vector<std::string> unranked;  ///< labels of no known system
};

struct HistoryEntry {
  CaptureInfo capture;
  Presence presence = Presence::seen;
  std::optional<SeenLine> line;  ///< set when seen
  std::vector<Change> changes;   ///< since it was last seen
  std::string link;              ///< why this is the line last seen; empty for the first
};

struct LineHistory {
  Shop shop;
  LineId id = 0;
  std::string reference;
  std::vector<HistoryEntry> entries;  ///< by date; begins where the line was first seen
  std::vector<LinkCase> waiting;      ///< questions about the line
  std::vector<LinkCase> decided;
};

}  // namespace rangebook

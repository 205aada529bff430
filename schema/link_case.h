// Pairs of lines that the stylist decides about, and how a line is shown to her: value types of the
// list of links, for the command line and for pages.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "schema/capture.h"
#include "schema/change.h"
#include "schema/money.h"
#include "schema/snapshot.h"

namespace rangebook {

/// A line as it stood in one capture, short enough for a list.
struct LineGlimpse {
  LineId id = 0;
  std::string code;
  std::string name;
  std::optional<Money> price;    ///< lowest selling price
  std::optional<Sighting> seen;  ///< nothing when no capture of the book holds the line any more

  bool operator==(const LineGlimpse&) const = default;
};

/// Two lines that may be one, or about which it was decided.
struct LinkCase {
  std::string reference;  ///< short, the same for this pair in every book with the same lines
  LineGlimpse then;       ///< the one seen earlier
  LineGlimpse now;
  std::optional<bool> same;  ///< what the stylist said; nothing: it waits
  double score = 0;          ///< 0..1, the chance that both are one; 0 where rules found nothing
  std::string sentence;      ///< why they may be one; empty where rules found nothing

  bool operator==(const LinkCase&) const = default;
};

/// What waits, best evidence first, and what was decided, newest first.
struct LinkList {
  std::string shop;  ///< slug
  std::vector<LinkCase> waiting;
  std::vector<LinkCase> decided;
};

}  // namespace rangebook

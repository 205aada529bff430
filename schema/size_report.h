// Size reach as values: of one shop in one capture, size by size, and of one size across shops.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "schema/capture.h"
#include "schema/change.h"
#include "schema/size.h"

namespace rangebook {

/// What a shop itself says its sizes run from and to.
struct StatedSizes {
  std::string words;  ///< verbatim: `8-26`
  Day on{};           ///< the date it was read

  bool operator==(const StatedSizes&) const = default;
};

/// How long a size has been offered, as far as captures prove: back to `first` every capture that
/// could tell shows it.
struct OfferedSince {
  Sighting first;                 ///< a capture as a whole
  std::uint32_t captures = 1;     ///< that show it, from `first` on
  std::uint32_t cannot_tell = 0;  ///< captures in between that did not look there, or not fully

  bool operator==(const OfferedSince&) const = default;
};

struct SizeLine {
  ReachStep step;
  std::optional<OfferedSince> since;  ///< absent for a size that no line offers
  bool stated = false;                ///< within what the shop states

  bool operator==(const SizeLine&) const = default;
};
/// A category's reach in one system and fit range. `lines` is what every share is a share of.
struct SizeTable {
  SizeSystem system = SizeSystem::unknown;
  FitRange fit = FitRange::regular;
  std::uint32_t lines = 0;
  std::vector<SizeLine> sizes;  ///< smallest first; stated ones that no line offers included

  bool operator==(const SizeTable&) const = default;
};
/// Adds up: lines = ranked + unranked + unsized.
struct CategorySizes {
  std::string category;  ///< slug, or `all`
  std::uint32_t lines = 0;
  std::uint32_t ranked = 0;    ///< lines whose sizes, or some, are of a known system
  std::uint32_t unranked = 0;  ///< lines that state sizes, none of a known system
  std::uint32_t unsized = 0;   ///< lines that do not state all their sizes: in no denominator
  bool partial = false;        ///< the capture may lack lines: intervals are given
  std::vector<SizeTable> tables;

  bool operator==(const CategorySizes&) const = default;
};
struct SizeReport {
  Shop shop;
  CaptureInfo capture;
  std::uint32_t rows_refused = 0;
  std::optional<StatedSizes> stated;
  std::vector<CategorySizes> categories;  ///< `all` first, then by slug

  bool operator==(const SizeReport&) const = default;
};

/// What a shop's latest capture says of one size.
enum class Reaching : std::uint8_t {
  reaches,       ///< a line offers it
  not_found,     ///< lines with sizes of the system were seen, none offers it
  other_system,  ///< its sizes are of other systems: not compared
  not_seen,      ///< no capture, or none of lines that state sizes
};
std::string_view to_string(Reaching reaching);  ///< `not-found`

struct ReachingShop {
  Shop shop;
  std::optional<CaptureInfo> capture;
  Reaching reaching = Reaching::not_seen;
  FitRange fit = FitRange::regular;
  std::uint32_t lines = 0;  ///< lines of the category with sizes of the system and fit
  ReachStep step;           ///< counts and intervals of the size
  std::uint32_t unsized = 0;
  bool partial = false;
  std::optional<OfferedSince> since;
  std::vector<SizeSystem> systems;  ///< for other_system: which they are

  bool operator==(const ReachingShop&) const = default;
};
struct ReachingReport {
  Size size;
  std::string category;  ///< slug; `all`: the whole range
  /// Those that reach it first, largest share first; then by verdict, slug and fit.
  std::vector<ReachingShop> shops;

  bool operator==(const ReachingReport&) const = default;
};

}  // namespace rangebook

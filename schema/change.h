// The change set: what differs between two captures, each difference with both observations.
#pragma once

#include <array>
#include <compare>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "schema/capture.h"
#include "schema/link.h"
#include "schema/money.h"
#include "schema/size.h"
#include "schema/snapshot.h"

namespace rangebook {

/// In the order of the report. Names in JSON are the same words with hyphens.
enum class ChangeKind : std::uint8_t {
  line_new,
  line_dropped,
  line_returned,
  line_renamed,
  line_recoded,
  line_not_covered,
  colour_added,
  colour_dropped,
  sizes_widened,
  sizes_narrowed,
  size_gap_filled,
  size_gap_opened,
  fit_range_added,
  fit_range_dropped,
  price_up,
  price_down,
  marked_down,
  markdown_changed,  ///< marked down then and now, at another selling price
  markdown_ended,
  composition_changed,
  category_moved,
  stock_out,
  stock_back,
  terms_changed,
  reach_widened,
  reach_narrowed,
  entry_price_changed,
  price_index,
};
inline constexpr std::size_t kChangeKindCount = 28;
std::string_view to_string(ChangeKind kind);  ///< `sizes-widened`
std::optional<ChangeKind> parse_change_kind(std::string_view name);

/// The line a change is about, by its later state where there is one.
struct LineRef {
  LineId id = 0;
  std::string code;
  std::string name;
  std::string category;  ///< slug of the category tree, or `unsorted`

  auto operator<=>(const LineRef&) const = default;
};

struct NameFact {
  std::string code;
  std::string name;
  auto operator<=>(const NameFact&) const = default;
};
/// Variants that share one price: those of the line in these colours and these sizes. An empty list
/// does not restrict: both empty means every variant that can be compared. Always exact: variants
/// that no such pair of lists describes are split over several changes.
struct PriceFact {
  Money amount;
  std::vector<std::string> colours;
  std::vector<std::string> sizes;
  std::optional<Money> full;  ///< for markdowns: the price without it
  auto operator<=>(const PriceFact&) const = default;
};
struct ColourFact {
  std::string colour;
  auto operator<=>(const ColourFact&) const = default;
};
/// All sizes of one system and fit range that the line or category offers, smallest first. Sides of
/// a change about sizes carry both whole lists; what was added or lost is their difference.
struct SizeFact {
  SizeSystem system = SizeSystem::unknown;
  FitRange fit = FitRange::regular;
  std::vector<std::string> labels;
  std::string min;
  std::string max;
  auto operator<=>(const SizeFact&) const = default;
};
struct CompositionFact {
  std::string composition;  ///< verbatim as captured
  auto operator<=>(const CompositionFact&) const = default;
};
struct CategoryFact {
  std::string category;
  auto operator<=>(const CategoryFact&) const = default;
};
struct StockFact {
  std::uint32_t in_stock = 0;  ///< variants to be had
  std::uint32_t offered = 0;   ///< variants whose stock is stated
  auto operator<=>(const StockFact&) const = default;
};
/// Elementary price indices of carried lines, base 1, in millionths (1.0312 = 1031200), so that
/// output does not depend on floating-point printing.
struct IndexFact {
  std::int64_t jevons = 1'000'000;
  std::int64_t dutot = 1'000'000;
  std::int64_t carli = 1'000'000;
  std::uint32_t lines = 0;
  auto operator<=>(const IndexFact&) const = default;
};
using Fact = std::variant<NameFact, PriceFact, ColourFact, SizeFact, CompositionFact, CategoryFact,
                          StockFact, IndexFact>;

/// Where one side of a change was seen: a document of the capture and the line in it.
struct Sighting {
  std::int64_t capture = 0;
  Day on{};
  std::string season;
  std::string document;  ///< file name; empty for shop-level figures
  std::optional<std::uint64_t> line;
  auto operator<=>(const Sighting&) const = default;
};

struct ChangeEvidence {
  std::optional<Sighting> before;
  std::optional<Sighting> after;
  std::string link;  ///< why both are the same line; empty where there is only one side
  auto operator<=>(const ChangeEvidence&) const = default;
};

struct Change {
  ChangeKind kind = ChangeKind::line_new;
  std::optional<LineRef> line;  ///< absent for shop-level changes
  std::string category;         ///< for shop-level changes: the slug, or `all`
  std::optional<Fact> before;
  std::optional<Fact> after;
  ChangeEvidence evidence;

  bool operator==(const Change&) const = default;
};

/// Everything adds up: carried + added + returned + unseen_then = lines_now, and
/// carried + dropped + not_covered = lines_then.
struct Reconciliation {
  std::uint32_t lines_then = 0;
  std::uint32_t lines_now = 0;
  std::uint32_t carried = 0;
  std::uint32_t added = 0;  ///< `new` in JSON
  std::uint32_t returned = 0;
  std::uint32_t unseen_then = 0;  ///< now there, but the earlier capture did not look there
  std::uint32_t dropped = 0;
  std::uint32_t not_covered = 0;  ///< there then, but the later capture did not look there
  bool adds_up() const {
    return carried + added + returned + unseen_then == lines_now &&
           carried + dropped + not_covered == lines_then;
  }
  bool operator==(const Reconciliation&) const = default;
};

/// One size of a category: how many lines offer it.
struct ReachStep {
  Size size;
  std::uint32_t offering = 0;
  std::uint32_t in_stock = 0;  ///< lines with at least one variant of it in stock
  bool operator==(const ReachStep&) const = default;
};
/// Size reach of a category in one system and fit range.
struct SizeReach {
  SizeSystem system = SizeSystem::unknown;
  FitRange fit = FitRange::regular;
  std::uint32_t lines = 0;       ///< lines with any size of this system and fit
  std::vector<ReachStep> steps;  ///< smallest first
  bool operator==(const SizeReach&) const = default;
};
/// Prices of a category, one price a line (its lowest selling price), in one currency. Quartiles by
/// linear interpolation between ranks (Hyndman & Fan 1996, type 7), rounded half up.
struct PriceLadder {
  Currency currency;
  std::uint32_t lines = 0;
  MinorUnits entry = 0;
  MinorUnits lower_quartile = 0;
  MinorUnits median = 0;
  MinorUnits upper_quartile = 0;
  MinorUnits top = 0;
  std::uint32_t marked_down = 0;  ///< lines with at least one variant marked down
  bool operator==(const PriceLadder&) const = default;
};
struct CategorySide {
  std::uint32_t lines = 0;
  std::vector<SizeReach> reach;
  std::vector<PriceLadder> prices;
  bool operator==(const CategorySide&) const = default;
};
struct CategorySummary {
  std::string category;  ///< slug, or `all` for the whole shop
  CategorySide before;
  CategorySide after;
  std::uint32_t carried = 0;
  std::uint32_t added = 0;
  std::uint32_t dropped = 0;
  std::optional<IndexFact> index;  ///< of full prices of carried lines
  bool operator==(const CategorySummary&) const = default;
};

/// What may be compared at all.
struct Coverage {
  Scope common;                      ///< what both captures looked at
  std::uint32_t lines_compared = 0;  ///< carried lines
  std::uint32_t rows_refused_then = 0;
  std::uint32_t rows_refused_now = 0;
  std::vector<std::string> notes;  ///< sentences: what was not looked at, what is not stated
  bool operator==(const Coverage&) const = default;
};

struct ChangeSet {
  Shop shop;
  CaptureInfo from;
  CaptureInfo to;
  Coverage coverage;
  Reconciliation reconciliation;
  std::array<std::uint32_t, kChangeKindCount> counts{};  ///< by kind
  std::vector<CategorySummary> categories;               ///< `all` first, then by slug
  /// Ordered by kind, then line code, then name, then what the change is about.
  std::vector<Change> changes;

  bool operator==(const ChangeSet&) const = default;
};

}  // namespace rangebook

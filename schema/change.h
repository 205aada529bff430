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
/// Is a change of terms good for the customer? `neutral`: neither, or it depends.
enum class TermsDirection : std::uint8_t { neutral, better, worse };
std::string_view to_string(TermsDirection direction);  ///< `better`

/// One field of the delivery and return terms. Both sides of a change carry its direction.
struct TermsFact {
  std::string field;     ///< as in terms_fields.h: `return.window`
  std::string value;     ///< canonical text: `28 days from delivery`
  std::string sentence;  ///< it was read from; empty for what was typed in
  TermsDirection direction = TermsDirection::neutral;
  auto operator<=>(const TermsFact&) const = default;
};
using Fact = std::variant<NameFact, PriceFact, ColourFact, SizeFact, CompositionFact, CategoryFact,
                          StockFact, IndexFact, TermsFact>;

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

/// How another line bears on a change: a shop may make a colourway a line of its own, or one line
/// out of several. The change stays of its kind; this says what became of it.
enum class Relation : std::uint8_t {
  split_from,   ///< of a new line: it was this colour of that line
  split_into,   ///< of a colour or line that is gone: it is that line now
  merged_into,  ///< of a line that is gone: it is this colour of that line now
  merged_from,  ///< of a colour or line that is new: it was that line
};
std::string_view to_string(Relation relation);  ///< `split-from`
struct RelatedLine {
  Relation relation = Relation::split_from;
  LineRef line;
  std::string colour;
  auto operator<=>(const RelatedLine&) const = default;
};

struct Change {
  ChangeKind kind = ChangeKind::line_new;
  std::optional<LineRef> line;  ///< absent for shop-level changes
  std::string category;         ///< for shop-level changes: the slug, or `all`
  std::optional<Fact> before;
  std::optional<Fact> after;
  ChangeEvidence evidence;
  std::vector<RelatedLine> related = {};

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

/// A 95% confidence interval of a share, in millionths (Wilson score interval).
struct ShareInterval {
  std::uint32_t low = 0;
  std::uint32_t high = 0;
  bool operator==(const ShareInterval&) const = default;
};
/// One size of a category: how many lines offer it. Of these, `in_stock` have a variant of it to be
/// had, `stock_unknown` have none and do not state the stock of every one; the rest is sold out.
struct ReachStep {
  Size size;
  std::uint32_t offering = 0;
  std::uint32_t in_stock = 0;
  std::uint32_t stock_unknown = 0;
  std::optional<ShareInterval> offering_interval = {};  ///< only where the capture is partial
  std::optional<ShareInterval> in_stock_interval = {};  ///< likewise
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
  /// Median over these lines of their deepest markdown, in tenths of a percent of the full price.
  std::optional<std::uint32_t> median_depth = {};
  bool operator==(const PriceLadder&) const = default;
};
/// Figures over the lines of a category within the scope both captures share.
struct CategorySide {
  std::uint32_t lines = 0;  ///< lines of all `prices` and `unpriced` together
  std::vector<SizeReach> reach;
  std::vector<PriceLadder> prices;
  std::uint32_t unpriced = 0;  ///< lines without a price
  std::uint32_t unsized = 0;   ///< lines that do not state all their sizes: say nothing of reach
  std::uint32_t outside = 0;   ///< lines the other capture did not look for; in no figure here
  /// The capture may lack lines or sizes of the category: rows were refused, sizes are not stated,
  /// or, for `all`, only some categories were looked at.
  bool partial = false;
  bool operator==(const CategorySide&) const = default;
};
/// Adds up: carried + added + returned + unseen_then = lines_now = after.lines + after.outside, and
/// carried - moved_in + moved_out + dropped + not_covered = lines_then = before.lines +
/// before.outside.
struct CategorySummary {
  std::string category;  ///< slug, or `all` for the whole shop
  CategorySide before;
  CategorySide after;
  std::uint32_t carried = 0;  ///< by their category now
  std::uint32_t added = 0;
  std::uint32_t dropped = 0;
  std::optional<IndexFact> index;  ///< of full prices of carried lines
  std::uint32_t lines_then = 0;
  std::uint32_t lines_now = 0;
  std::uint32_t returned = 0;
  std::uint32_t unseen_then = 0;
  std::uint32_t not_covered = 0;
  std::uint32_t moved_in = 0;   ///< of the carried: in another category then
  std::uint32_t moved_out = 0;  ///< carried, in another category now
  bool adds_up() const {
    return carried + added + returned + unseen_then == lines_now &&
           carried + moved_out + dropped + not_covered == lines_then + moved_in &&
           before.lines + before.outside == lines_then && after.lines + after.outside == lines_now;
  }
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

/// A crossed-out price above what the shop asked shortly before: variants of one line that share
/// both prices, and the lowest price captured in the days before the markdown.
struct WasPriceFinding {
  LineRef line;
  PriceFact marked;    ///< as captured now; `full` is the price the shop states it was
  Sighting marked_at;  ///< where that stands
  Day marked_since{};  ///< date of the first capture of the unbroken run that shows it marked down
  Money lowest;        ///< below `marked.full`
  Sighting lowest_at;  ///< where that stands; not the place of the markdown's own run
  bool lowest_was_marked_down = false;  ///< it was itself a markdown, of an earlier sale

  bool operator==(const WasPriceFinding&) const = default;
};
/// What our own captures say of the stated "was" prices of the later capture. Counts are lines:
/// marked_down = lower + not_lower + not_checked. Nothing here proves that a claim is right:
/// between two captures anything may have happened.
struct WasPriceCheck {
  std::uint32_t marked_down = 0;
  std::uint32_t lower = 0;                ///< a lower price was captured
  std::uint32_t not_lower = 0;            ///< prices were captured, none of them lower
  std::uint32_t not_checked = 0;          ///< no price of some variant was captured in those days
  std::vector<WasPriceFinding> findings;  ///< by line code, name, id, then prices and variants

  bool operator==(const WasPriceCheck&) const = default;
};
/// Days before a markdown in which its "was" price is to be the lowest (Directive 98/6/EC, article
/// 6a, inserted by Directive (EU) 2019/2161; member states may shorten it for some goods).
inline constexpr int kWasPriceDays = 30;

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
  std::optional<WasPriceCheck> was_prices = {};  ///< absent where nobody checked

  bool operator==(const ChangeSet&) const = default;
};

}  // namespace rangebook

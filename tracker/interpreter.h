// What the verbatim texts of lines mean, worked out once for each distinct text. A shop uses few
// size runs, colours and compositions for many lines, so the differ asks here instead of parsing.
#pragma once

#include <compare>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "schema/composition.h"
#include "schema/listing.h"
#include "schema/size.h"

namespace rangebook {

/// Sizes that stand at one position are one size, however they are written.
struct SizePosition {
  SizeSystem system = SizeSystem::unknown;
  FitRange fit = FitRange::regular;
  std::int32_t low = 0;
  std::int32_t high = 0;

  auto operator<=>(const SizePosition&) const = default;
};
SizePosition position_of(const Size& size);

/// The part of a size run in one system and fit range: slots `begin` up to, not including, `end`.
struct SizeGroup {
  SizeSystem system = SizeSystem::unknown;
  FitRange fit = FitRange::regular;
  std::size_t begin = 0;
  std::size_t end = 0;
  std::size_t smallest = 0;  ///< slot that reaches lowest
  std::size_t largest = 0;   ///< slot that reaches highest
};

/// The size labels of one line, interpreted together.
struct SizeRun {
  std::vector<Size> slots;        ///< one for each position, in the order of size_less
  std::vector<SizeGroup> groups;  ///< by system, then fit range
  std::vector<std::optional<std::size_t>> slot_of;  ///< for each label; nothing if not ranked
  std::vector<std::string> unranked;                ///< labels of no known system, sorted
  bool stated = false;                              ///< there are labels, and none of them is empty

  const SizeGroup* group(SizeSystem system, FitRange fit) const;
  bool has_fit(FitRange fit) const;
};

/// The size runs of one line in two captures.
struct SizeRunPair {
  const SizeRun* before = nullptr;
  const SizeRun* after = nullptr;
};

/// Caches for one shop. Results live as long as the interpreter.
class Interpreter {
 public:
  /// `sizes`: what a bare number means in the shop.
  explicit Interpreter(SizeSystem sizes) : sizes_(sizes) {}

  const SizeRun& size_run(const std::vector<std::string>& labels);
  /// Both states of a line. Where they share a label, all labels are read as one set, so that a
  /// label means the same on both sides; where they share none, nothing says that they are of one
  /// system, and each side is read alone. Swapping the arguments swaps the answer.
  SizeRunPair size_runs(const std::vector<std::string>& before,
                        const std::vector<std::string>& after);
  /// Category slug of a line, or `unsorted`.
  std::string_view category(const LineCard& card);
  /// Category slug by the source's category alone, or `unsorted`.
  std::string_view stated_category(const LineCard& card);
  const std::string& colour_key(const std::string& colour);
  /// Nothing if the text cannot be read.
  const std::optional<Composition>& composition(const std::string& text);

 private:
  const SizeRun& run_among(const std::vector<std::string>& labels,
                           const std::vector<std::string>& others);

  SizeSystem sizes_;
  std::string key_;  // of the last size run, kept for its memory
  std::vector<std::string> last_labels_;
  const SizeRun* last_run_ = nullptr;
  std::unordered_map<std::string, std::unique_ptr<SizeRun>> runs_;
  std::unordered_map<std::string, std::string_view> categories_;
  std::unordered_map<std::string, std::string> colours_;
  std::unordered_map<std::string, std::optional<Composition>> compositions_;
};

}  // namespace rangebook

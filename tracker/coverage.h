// What two captures allow to be said: the scope they share, rows that were refused, and facts that
// only one of them states.
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>
#include <unordered_set>
#include <vector>

#include "schema/capture.h"
#include "schema/change.h"
#include "schema/snapshot.h"

namespace rangebook {

/// What both scopes cover: the whole range covers everything, picks share only picks, and of
/// categories the narrower ones remain. Categories that share nothing give an empty list.
Scope common_scope(const Scope& a, const Scope& b);

/// Lines that refused rows of a capture may belong to.
class RefusedIndex {
 public:
  explicit RefusedIndex(const std::vector<RefusedLine>& refused);

  /// By line code; where the row or the line has none, by name.
  bool may_be(const LineCard& card) const;

 private:
  std::unordered_set<std::string> codes_;
  std::unordered_set<std::string> names_;               // of all rows
  std::unordered_set<std::string> names_without_code_;  // names of rows without a code
};

/// Why nothing is said about a fact of a line.
enum class Silence : std::uint8_t {
  colours,         ///< one capture does not state all colours
  sizes,           ///< one capture does not state all sizes
  unranked_sizes,  ///< labels of no known system differ
  size_systems,    ///< sizes are in different systems
  prices,
  line_price,  ///< one price for the line against several
  markdowns,   ///< one capture never states a full price
  currency,
  composition,
  composition_parts,  ///< one capture never names parts such as a lining
  stock,
  refused_then,
  refused_now,
};
inline constexpr std::size_t kSilenceCount = 13;

/// Counts the lines each silence concerns and remembers the first few of them.
class SilenceLog {
 public:
  void add(Silence silence, const LineCard& card);
  /// One sentence for each silence that occurred.
  std::vector<std::string> sentences() const;

 private:
  struct Entry {
    std::uint32_t lines = 0;
    std::vector<std::string> first;  // codes or names, sorted, at most kNamedLines
  };
  std::array<Entry, kSilenceCount> entries_{};
};

/// How many lines a note names.
inline constexpr std::size_t kNamedLines = 3;

/// Scope, refusals and silences as the report states them. `reconciliation` has the counts.
Coverage coverage_of(const Snapshot& from, const Snapshot& to, const Reconciliation& reconciliation,
                     const SilenceLog& silences);

/// Says how many pairs of lines may be the same and wait for the stylist; nothing where none does.
void note_waiting(std::vector<std::string>& notes, std::size_t pairs);

}  // namespace rangebook

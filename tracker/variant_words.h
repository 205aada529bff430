// Naming a group of variants by lists of colours and sizes, exactly.
#pragma once

#include <cstddef>
#include <cstdint>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "tracker/line_pair.h"
#include "tracker/variant_match.h"

namespace rangebook {

/// Colours and sizes that together mean some variants of a line, in each capture's own spelling.
/// An empty list does not restrict.
struct VariantWords {
  std::vector<std::string> colours_before;
  std::vector<std::string> sizes_before;
  std::vector<std::string> colours_after;
  std::vector<std::string> sizes_after;
};

/// Names groups of variants of one line. `all` and `pair` must outlive it.
class VariantNamer {
 public:
  VariantNamer(const std::vector<CommonVariant>& all, const LinePair& pair);

  /// Describes `part`, indices into `all`. Each description means exactly the variants of `all` in
  /// its colours and sizes; where no single pair of lists does, the part is split by colours that
  /// share their sizes. The whole of `all` gives empty lists.
  std::vector<VariantWords> describe(const std::vector<std::size_t>& part) const;

 private:
  using Indices = std::vector<std::size_t>;
  using Numbers = std::set<std::uint16_t>;

  std::uint16_t colour(std::size_t i) const { return all_[i].after->colour; }
  std::uint16_t size(std::size_t i) const { return all_[i].after->size; }
  Numbers colours_of(const Indices& part) const;
  Numbers sizes_of(const Indices& part) const;
  bool is_exact(const Indices& part) const;
  std::vector<Indices> by_sizes(const Indices& part) const;
  VariantWords words(const Indices& part) const;
  void name_colours(const Indices& part, VariantWords& words) const;
  void name_sizes(const Indices& part, VariantWords& words) const;

  const std::vector<CommonVariant>& all_;
  const LinePair& pair_;
  std::map<std::uint16_t, Indices> of_colour_;
  std::map<std::uint16_t, Indices> of_size_;
};

}  // namespace rangebook

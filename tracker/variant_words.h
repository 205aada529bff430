// Naming a group of variants by lists of colours and sizes, exactly.
#pragma once

#include <cstddef>
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

/// Describes `part`, indices into `all`, among the variants of `all`. Each description means
/// exactly the variants of `all` in its colours and sizes; where no single pair of lists does, the
/// part is split by colours that share their sizes. The whole of `all` gives empty lists.
std::vector<VariantWords> describe_variants(const std::vector<CommonVariant>& all,
                                            const std::vector<std::size_t>& part,
                                            const LinePair& pair);

}  // namespace rangebook

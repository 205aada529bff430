// Small helpers for telling a shop's story.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "demo-feeds/turn.h"

namespace demo {

inline bool several_colours(const Style& style) { return style.colours.size() > 1; }
inline bool marked_down(const Style& style) { return !style.sale.empty(); }
inline bool not_marked_down(const Style& style) { return style.sale.empty(); }
inline bool several_undiscounted(const Style& style) {
  return several_colours(style) && not_marked_down(style);
}
inline bool sold_out(const Style& style) { return style.all_gone; }
inline bool on_shelf(const Style& style) { return !style.all_gone; }
inline bool has_fit(const Style& style, Fit fit) {
  return !sizes_of(style, style.sizes.begin()->system, fit).empty();
}
inline bool only_regular(const Style& style) {
  return !has_fit(style, Fit::petite) && !has_fit(style, Fit::tall);
}
inline bool reaches(const Style& style, int rank) {
  return sizes_of(style, style.sizes.begin()->system, Fit::regular).back().rank >= rank;
}
/// True when a size between the smallest and the largest is missing.
inline bool lacks(const Style& style, int rank) {
  return !style.sizes.contains({style.sizes.begin()->system, Fit::regular, rank});
}

/// Does `what` to each of `uids`.
template <typename What>
void each(const std::vector<int>& uids, What what) {
  for (const int uid : uids) what(uid);
}

/// The range as it stands in the shop: in no order of ours, some variants sold out.
inline Range on_sale(Range range, Random& random, int sold_out_percent) {
  random.shuffle(range.styles);
  scatter_sold_out(range, random, sold_out_percent);
  return range;
}

}  // namespace demo

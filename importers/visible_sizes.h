// The sizes a page offers, read from what a shopper would click: selects, buttons, lists.
#pragma once

#include <string>
#include <vector>

#include "importers/page_view.h"

namespace rangebook {

struct VisibleSize {
  std::string label;
  bool sold_out = false;
};

/// The first group of choices on the page that is named, or labelled, as sizes and whose entries
/// look like sizes. Sold out is what cannot be chosen: disabled, struck through, or called so by a
/// class, a title or words beside the size.
std::vector<VisibleSize> find_visible_sizes(const PageView& view);

/// True for what shops write as a size: `S`, `XXL`, `12`, `EU 38`, `W32 L34`, `8-10`, `One size`.
bool looks_like_size(std::string_view label);

}  // namespace rangebook

// The shops of a book side by side: each by its latest capture and the terms last seen.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "schema/change.h"
#include "schema/palette.h"
#include "schema/size_report.h"
#include "schema/terms_version.h"

namespace rangebook {

struct ShopEntry {
  Shop shop;
  std::uint32_t captures = 0;
  std::optional<CaptureInfo> capture;  ///< the latest; nothing: none yet
  /// Of the category in that capture. Without lines and not partial: looked for, none found.
  CategorySizes sizes;
  bool looked = false;              ///< the capture looked at all of the category
  std::vector<PriceLadder> prices;  ///< in the order of currencies
  Palette palette;
  std::optional<StatedSizes> stated;  ///< what the shop itself says its sizes are
  TermsInForce terms;                 ///< the latest in the book
};

struct ShopIndex {
  std::string category;          ///< slug, or `all`
  std::vector<ShopEntry> shops;  ///< by slug
};

}  // namespace rangebook

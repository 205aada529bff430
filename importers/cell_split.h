// Cells that hold more than one field: `Navy / 12`, `Size: 8-20`, `€ 79,99 (was € 99,99)`.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>

#include "schema/raw_row.h"

namespace rangebook {

struct ColourSize {
  std::string_view colour;
  std::string_view size;
};

/// Takes `Navy / 12`, `12 | Navy`, `Navy, XL` apart. A cell of one part is a size where it looks
/// like one, else a colour.
ColourSize split_colour_size(std::string_view cell);

/// `8-20` of `Size: 8-20`, when the words before the colon mean the same field; else the whole
/// cell.
std::string_view without_label(std::string_view cell, Field field);

/// without_label() for a whole table: remembers the last label of each field, since a column
/// repeats it.
class LabelMemo {
 public:
  std::string_view without_label(std::string_view cell, Field field);

 private:
  struct Last {
    std::string label;
    bool same_field = false;
  };
  std::array<Last, kFieldCount> last_;
};

struct PriceParts {
  std::string_view now;
  std::string_view was;
};

/// Takes a price and the former price beside it apart, by the words of
/// schema/tables/price_words.tsv. Nothing when there is no word of a former price, or not one
/// amount for each.
std::optional<PriceParts> split_price(std::string_view cell);

/// Whether a cell is long and wordy enough to be worth split_price(): a cheap look.
bool may_hold_two_prices(std::string_view cell);

}  // namespace rangebook

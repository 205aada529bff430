// What the lists of her vocabulary are called on pages.
#pragma once

#include <array>
#include <string_view>

#include "schema/pick.h"

namespace rangebook {

inline constexpr std::array<PickList, kPickLists> kAllPickLists{
    PickList::personality, PickList::palette, PickList::dress_code, PickList::body_shape,
    PickList::caution};

inline std::string_view list_words(PickList list) {
  switch (list) {
    case PickList::personality:
      return "Style personality";
    case PickList::palette:
      return "Palette";
    case PickList::dress_code:
      return "Dress code";
    case PickList::body_shape:
      return "Body shape";
    case PickList::caution:
      return "To mind";
  }
  return {};
}

}  // namespace rangebook

// Both lines of a pair in full, for the eye that has to decide.
#pragma once

#include <optional>

#include "schema/line_history.h"
#include "tracker/app/shop_lines.h"

namespace rangebook {

/// As the captures show them that the pair names; nothing where no capture holds the line any more.
struct PairSides {
  std::optional<SeenLine> then;
  std::optional<SeenLine> now;
};
PairSides sides_of(ShopLines& lines, const LinkCase& pair);

}  // namespace rangebook

// What a share of some lines says of all of them: the Wilson score interval. It stays within 0 and
// 1 and holds for few lines and for shares of none or all, where the textbook interval fails
// (E. B. Wilson, JASA 22, 1927; recommended by Newcombe, Statistics in Medicine 17, 1998).
#pragma once

#include <cstdint>

#include "schema/change.h"

namespace rangebook {

/// 95% interval of the share `part` of `whole`; `part` <= `whole`. Of nothing nothing is known: 0
/// to 1.
ShareInterval wilson_interval(std::uint32_t part, std::uint32_t whole);

}  // namespace rangebook

// Writes a capture as a table of the manual CSV contract, in the layout of its shop.
#pragma once

#include <string>

#include "tests/evaluate/range_model.h"

namespace rangebook::evaluate {

std::string csv_of(const Shop& shop, const Capture& capture);

}  // namespace rangebook::evaluate

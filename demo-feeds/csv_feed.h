// Writes a capture as a table in the columns of the manual CSV contract.
#pragma once

#include <string>
#include <vector>

#include "demo-feeds/story.h"

namespace demo {

/// The rows of a capture's table, the header first, prices with the decimal sign of the dialect.
/// Departments that are saved as pages are left out.
std::vector<std::vector<std::string>> table_rows(const House& house, const Capture& capture);

/// The whole file.
std::string csv_feed(const House& house, const Capture& capture);

/// The address of a style in its shop; `.example` is kept free by RFC 2606.
std::string address(const House& house, const Style& style);

}  // namespace demo

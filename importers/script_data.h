// What a page says of its product in the data for its own scripts. Believed only where there is
// nothing to choose between.
#pragma once

#include <vector>

#include "importers/page_view.h"
#include "importers/schema_org_rows.h"

namespace rangebook {

/// Rows from plain JSON in script elements: of the objects whose name or title is the page's
/// heading, or a part of its title where it has no heading. The price must have a decimal sign or a
/// sign of currency ("9500" may be cents), and all such objects must agree; else nothing. Full
/// price, stock, sizes, colour and composition come with it.
std::vector<ProductRow> read_script_data(const PageView& view);

}  // namespace rangebook

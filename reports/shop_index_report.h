// The shops of a book side by side, in every form.
#pragma once

#include <string>

#include "reports/report_page.h"
#include "schema/shop_index.h"

namespace rangebook {

/// To be laid out as text, Markdown, a workbook or a page.
ReportPage shop_index_page(const ShopIndex& index);
/// `rangebook.shop-index/1`, described in schema/FORMAT.md.
std::string shop_index_json(const ShopIndex& index);
/// One row a shop and currency, described in schema/FORMAT.md.
std::string shop_index_csv(const ShopIndex& index);

}  // namespace rangebook

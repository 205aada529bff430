// The forms of the size reports: one shop size by size, and one size across shops.
#pragma once

#include <string>

#include "reports/report_page.h"
#include "schema/size_report.h"

namespace rangebook {

/// The sizes of a table that a line offers; without labels where none does.
SizeFact found_sizes(const SizeTable& table);

/// `XS–XL; UK 6–24`: every table with a size that is offered; empty where there is none.
Phrase sizes_phrase(const CategorySizes& category);

/// To be laid out as text, Markdown or a page.
ReportPage sizes_page(const SizeReport& report);
/// `rangebook.sizes/1`, described in schema/FORMAT.md.
std::string sizes_json(const SizeReport& report);
/// One row a category and size, described in schema/FORMAT.md.
std::string sizes_csv(const SizeReport& report);

ReportPage reaching_page(const ReachingReport& report);
/// `rangebook.reaching/1`, described in schema/FORMAT.md.
std::string reaching_json(const ReachingReport& report);
/// One row a shop and fit range, described in schema/FORMAT.md.
std::string reaching_csv(const ReachingReport& report);

}  // namespace rangebook

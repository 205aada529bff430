// The prices of a shop then and now, by category: like-for-like indices, the ladder from the entry
// price to the top, markdowns, and what our own captures say of "was" prices. Every form shows how
// its figures add up.
#pragma once

#include <string>

#include "reports/report_page.h"
#include "schema/change.h"

namespace rangebook {

/// What of a comparison is shown.
struct PriceReportOptions {
  std::string category;  ///< slug; empty: the whole shop and every category
  bool invented = false;
};

/// To be laid out as text, Markdown or a page.
ReportPage price_page(const ChangeSet& set, const PriceReportOptions& options = {});

/// `rangebook.prices/1`, described in schema/FORMAT.md.
std::string price_json(const ChangeSet& set, const PriceReportOptions& options = {});

/// One row a category and currency, described in schema/FORMAT.md.
std::string price_csv(const ChangeSet& set, const PriceReportOptions& options = {});

}  // namespace rangebook

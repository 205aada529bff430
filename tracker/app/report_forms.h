// Reports in the form that was asked for: bytes for a file, the same for a command and for a page.
#pragma once

#include <string>

#include "reports/brief.h"
#include "reports/price_report.h"
#include "schema/change.h"
#include "schema/line_history.h"
#include "schema/order.h"
#include "schema/shop_index.h"
#include "schema/size_report.h"
#include "tracker/app/commands.h"

namespace rangebook {

std::string brief_in(Brief brief, const OutputChoice& output);
std::string changes_in(const ChangeSet& set, const std::string& format);
std::string prices_in(const ChangeSet& set, const PriceReportOptions& options,
                      const OutputChoice& output);
std::string sizes_in(const SizeReport& report, const OutputChoice& output);
std::string reaching_in(const ReachingReport& report, const OutputChoice& output);
std::string history_in(const LineHistory& history, const OutputChoice& output);
std::string shop_index_in(const ShopIndex& index, const OutputChoice& output);
std::string order_in(const OrderComparison& comparison, const OutputChoice& output);

}  // namespace rangebook

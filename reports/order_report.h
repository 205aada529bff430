// What an order would cost across shops, in every form.
#pragma once

#include <string>
#include <string_view>

#include "reports/report_page.h"
#include "schema/order.h"

namespace rangebook {

ReportPage order_page(const OrderComparison& comparison);
/// One row a shop. Text cells are safe to open in a spreadsheet.
std::string order_csv(const OrderComparison& comparison);
/// `"format":"rangebook.order/1"`.
std::string order_json(const OrderComparison& comparison);

}  // namespace rangebook

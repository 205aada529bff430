// One line a form; everything else is in reports/.
#include "tracker/app/report_forms.h"

#include "reports/brief_formats.h"
#include "reports/change_lists.h"
#include "reports/changes_json.h"
#include "reports/history_report.h"
#include "reports/order_report.h"
#include "reports/shop_index_report.h"
#include "reports/size_report_forms.h"
#include "reports/workbook.h"

namespace rangebook {

std::string page_in(const ReportPage& page, const OutputChoice& output) {
  if (output.format == "xlsx") return page_workbook(page, page.made);
  const auto style = NumberStyle::of(output.locale);
  const ReportPage& shown = style ? restyled(page, *style) : page;
  if (output.format == "md") return page_markdown(shown);
  if (output.format == "html") return page_html(shown);
  return page_text(shown);
}

std::string brief_in(const Brief& brief, const OutputChoice& output) {
  return output.format == "json" ? brief_json(brief) : page_in(page_of(brief), output);
}

std::string changes_in(const ChangeSet& set, const std::string& format) {
  if (format == "json") return changes_json(set);
  if (format == "csv") return changes_csv(set);
  if (format == "xlsx") return changes_workbook(set);
  if (format == "md") return changes_markdown(set);
  return changes_text(set);
}

std::string prices_in(const ChangeSet& set, const PriceReportOptions& options,
                      const OutputChoice& output) {
  if (output.format == "json") return price_json(set, options);
  if (output.format == "csv") return price_csv(set, options);
  return page_in(price_page(set, options), output);
}

std::string sizes_in(const SizeReport& report, const OutputChoice& output) {
  if (output.format == "json") return sizes_json(report);
  if (output.format == "csv") return sizes_csv(report);
  return page_in(sizes_page(report), output);
}

std::string reaching_in(const ReachingReport& report, const OutputChoice& output) {
  if (output.format == "json") return reaching_json(report);
  if (output.format == "csv") return reaching_csv(report);
  return page_in(reaching_page(report), output);
}

std::string history_in(const LineHistory& history, const OutputChoice& output) {
  if (output.format == "json") return history_json(history);
  if (output.format == "csv") return history_csv(history);
  return page_in(history_page(history), output);
}

std::string shop_index_in(const ShopIndex& index, const OutputChoice& output) {
  if (output.format == "json") return shop_index_json(index);
  if (output.format == "csv") return shop_index_csv(index);
  return page_in(shop_index_page(index), output);
}

std::string order_in(const OrderComparison& comparison, const OutputChoice& output) {
  if (output.format == "json") return order_json(comparison);
  if (output.format == "csv") return order_csv(comparison);
  return page_in(order_page(comparison), output);
}

}  // namespace rangebook

// One line a form; everything else is in reports/.
#include "tracker/app/report_forms.h"

#include <fmt/format.h>

#include <filesystem>
#include <fstream>
#include <iterator>

#include "reports/brief_formats.h"
#include "reports/change_lists.h"
#include "reports/changes_json.h"
#include "reports/history_report.h"
#include "reports/order_report.h"
#include "reports/phrase_book.h"
#include "reports/shop_index_report.h"
#include "reports/size_report_forms.h"
#include "reports/workbook.h"
#include "tracker/app/cli_words.h"

namespace rangebook {

namespace {

/// The table of translations; says on stderr which of its lines cannot be used.
PhraseBook phrase_book_in(const std::string& path) {
  std::error_code none;
  std::ifstream in;
  if (std::filesystem::is_regular_file(path, none)) in.open(path, std::ios::binary);
  if (!in.is_open()) throw UsageError{fmt::format("--words: \"{}\" cannot be read.", path)};
  const std::string table(std::istreambuf_iterator<char>(in), {});
  std::vector<std::string> faults;
  PhraseBook book = PhraseBook::read(table, faults);
  for (const auto& fault : faults) fmt::print(stderr, "rangebook: {}, {}\n", path, fault);
  return book;
}

}  // namespace

std::string page_in(ReportPage page, const OutputChoice& output) {
  if (output.format == "words") return phrase_table(std::move(page));
  if (!output.words.empty()) page = translated(std::move(page), phrase_book_in(output.words));
  if (output.format == "xlsx") return page_workbook(page, page.made);
  if (const auto style = NumberStyle::of(output.locale)) page = restyled(std::move(page), *style);
  if (output.format == "md") return page_markdown(page);
  if (output.format == "html") return page_html(page);
  return page_text(page);
}

std::string brief_in(Brief brief, const OutputChoice& output) {
  if (output.format == "json") return brief_json(brief);
  return page_in(page_of(std::move(brief)), output);
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

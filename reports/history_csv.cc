// A line as a table: one row a capture.
#include <fmt/format.h>
#include <fmt/ranges.h>

#include "reports/csv_writer.h"
#include "reports/history_report.h"

namespace rangebook {
namespace {

constexpr std::string_view kColumns[] = {
    "capture",     "season",    "date",       "presence",     "line_code", "name",
    "category",    "price_low", "price_high", "full_low",     "full_high", "currency",
    "marked_down", "variants",  "in_stock",   "stock_stated", "colours",   "sizes",
    "composition", "document",  "row",        "link"};

std::string low(const std::optional<PriceSpan>& span) {
  return span ? decimal_text(span->low) : std::string();
}
std::string high(const std::optional<PriceSpan>& span) {
  return span ? decimal_text(span->high) : std::string();
}

std::string currency(const SeenLine& line) {
  const auto& span = line.price ? line.price : line.full_price;
  return span ? std::string(span->low.currency.code()) : std::string();
}

std::string all_sizes(const SeenLine& line) {
  std::vector<std::string> labels;
  for (const SizeFact& fact : line.sizes) {
    labels.insert(labels.end(), fact.labels.begin(), fact.labels.end());
  }
  labels.insert(labels.end(), line.unranked.begin(), line.unranked.end());
  return fmt::format("{}", fmt::join(labels, "|"));
}

void write_line(CsvWriter& csv, const SeenLine& line) {
  csv.text(line.card.line_code);
  csv.text(line.card.name);
  csv.plain(line.category);
  for (const auto& amount : {low(line.price), high(line.price), low(line.full_price),
                             high(line.full_price), currency(line)}) {
    csv.plain(amount);
  }
  for (const std::uint32_t count :
       {line.marked_down, line.variants, line.stock.in_stock, line.stock.offered}) {
    csv.plain(std::to_string(count));
  }
  csv.text(fmt::format("{}", fmt::join(line.colours, "|")));
  csv.text(all_sizes(line));
  csv.text(line.card.composition);
  csv.text(line.seen.document);
  csv.plain(line.seen.line ? std::to_string(*line.seen.line) : "");
}

}  // namespace

std::string history_csv(const LineHistory& history) {
  constexpr std::size_t kLineCells = 17;
  CsvWriter csv;
  for (const auto column : kColumns) csv.plain(column);
  csv.end_row();
  for (const HistoryEntry& entry : history.entries) {
    csv.plain(std::to_string(entry.capture.id));
    csv.text(entry.capture.season);
    csv.plain(to_string(entry.capture.on));
    csv.plain(to_string(entry.presence));
    if (entry.line) {
      write_line(csv, *entry.line);
    } else {
      for (std::size_t i = 0; i < kLineCells; ++i) csv.plain("");
    }
    csv.text(entry.link);
    csv.end_row();
  }
  return csv.take();
}

}  // namespace rangebook

// The prices of a shop for other programs: JSON and CSV.
#include <fmt/format.h>

#include "reports/category_figures.h"
#include "reports/changes_json.h"
#include "reports/csv_writer.h"
#include "reports/json_facts.h"
#include "reports/json_writer.h"
#include "reports/price_report.h"

namespace rangebook {
namespace {

void write_lines(JsonWriter& json, const CategorySummary& summary) {
  json.begin_object();
  json.member("lines_then", summary.lines_then);
  json.member("lines_now", summary.lines_now);
  json.member("carried", summary.carried);
  json.member("new", summary.added);
  json.member("returned", summary.returned);
  json.member("unseen_then", summary.unseen_then);
  json.member("dropped", summary.dropped);
  json.member("not_covered", summary.not_covered);
  json.member("moved_in", summary.moved_in);
  json.member("moved_out", summary.moved_out);
  json.member("outside_then", summary.before.outside);
  json.member("outside_now", summary.after.outside);
  json.member("unpriced_then", summary.before.unpriced);
  json.member("unpriced_now", summary.after.unpriced);
  json.end_object();
}

void write_index(JsonWriter& json, const std::optional<IndexFact>& index) {
  if (!index) return json.null();
  json.begin_object();
  json.member("jevons", index_text(index->jevons));
  json.member("dutot", index_text(index->dutot));
  json.member("carli", index_text(index->carli));
  json.member("lines", index->lines);
  json.end_object();
}

void write_side(JsonWriter& json, std::string_view name, const PriceLadder* ladder) {
  json.key(name);
  if (ladder == nullptr) return json.null();
  write_ladder(json, *ladder);
}

void write_category(JsonWriter& json, const CategorySummary& summary) {
  json.begin_object();
  json.member("category", summary.category);
  json.key("lines");
  write_lines(json, summary);
  json.key("index");
  write_index(json, summary.index);
  json.key("prices");
  json.begin_array();
  for (const LadderPair& pair : ladder_pairs(summary)) {
    json.begin_object();
    json.member("currency", pair.currency().code());
    write_side(json, "then", pair.then);
    write_side(json, "now", pair.now);
    json.end_object();
  }
  json.end_array();
  json.end_object();
}

// --- CSV

constexpr std::string_view kColumns[] = {"category",
                                         "currency",
                                         "when",
                                         "capture",
                                         "season",
                                         "date",
                                         "lines",
                                         "priced",
                                         "unpriced",
                                         "outside",
                                         "entry",
                                         "lower_quartile",
                                         "median",
                                         "upper_quartile",
                                         "top",
                                         "marked_down",
                                         "median_depth_percent",
                                         "jevons",
                                         "dutot",
                                         "carli",
                                         "index_lines",
                                         "carried",
                                         "new",
                                         "returned",
                                         "unseen_then",
                                         "dropped",
                                         "not_covered",
                                         "moved_in",
                                         "moved_out"};

/// `12.5`; nothing for no markdown.
std::string depth_text(const std::optional<std::uint32_t>& depth) {
  return depth ? fmt::format("{}.{}", *depth / 10, *depth % 10) : "";
}

void write_ladder_cells(CsvWriter& csv, const PriceLadder* ladder) {
  if (ladder == nullptr) {
    for (int cell = 0; cell < 7; ++cell) csv.plain("");
    return;
  }
  for (const MinorUnits amount : {ladder->entry, ladder->lower_quartile, ladder->median,
                                  ladder->upper_quartile, ladder->top}) {
    csv.plain(decimal_text({amount, ladder->currency}));
  }
  csv.plain(std::to_string(ladder->marked_down));
  csv.plain(depth_text(ladder->median_depth));
}

/// What is said of both captures together stands in the row of the later one.
void write_change_cells(CsvWriter& csv, const CategorySummary& summary, bool now) {
  if (!now) {
    for (int cell = 0; cell < 12; ++cell) csv.plain("");
    return;
  }
  csv.plain(summary.index ? index_text(summary.index->jevons) : "");
  csv.plain(summary.index ? index_text(summary.index->dutot) : "");
  csv.plain(summary.index ? index_text(summary.index->carli) : "");
  csv.plain(std::to_string(summary.index ? summary.index->lines : 0));
  for (const std::uint32_t count :
       {summary.carried, summary.added, summary.returned, summary.unseen_then, summary.dropped,
        summary.not_covered, summary.moved_in, summary.moved_out}) {
    csv.plain(std::to_string(count));
  }
}

void write_row(CsvWriter& csv, const ChangeSet& set, const CategorySummary& summary,
               const PriceLadder* ladder, bool now) {
  const CaptureInfo& capture = now ? set.to : set.from;
  const CategorySide& side = now ? summary.after : summary.before;
  csv.text(summary.category);
  csv.plain(ladder != nullptr ? ladder->currency.code() : "");
  csv.plain(now ? "now" : "then");
  csv.plain(std::to_string(capture.id));
  csv.text(capture.season);
  csv.plain(to_string(capture.on));
  csv.plain(std::to_string(now ? summary.lines_now : summary.lines_then));
  csv.plain(std::to_string(ladder != nullptr ? ladder->lines : 0));
  csv.plain(std::to_string(side.unpriced));
  csv.plain(std::to_string(side.outside));
  write_ladder_cells(csv, ladder);
  write_change_cells(csv, summary, now);
  csv.end_row();
}

void write_side_rows(CsvWriter& csv, const ChangeSet& set, const CategorySummary& summary,
                     bool now) {
  const CategorySide& side = now ? summary.after : summary.before;
  if (side.prices.empty()) write_row(csv, set, summary, nullptr, now);
  for (const PriceLadder& ladder : side.prices) write_row(csv, set, summary, &ladder, now);
}

}  // namespace

std::string price_json(const ChangeSet& set, const PriceReportOptions& options) {
  JsonWriter json;
  json.begin_object();
  json.member("format", "rangebook.prices/1");
  json.member("shop", set.shop.slug);
  json.member("invented", options.invented);
  json.key("from");
  write_capture(json, set.from);
  json.key("to");
  write_capture(json, set.to);
  json.member("quartiles", "hyndman-fan-7");
  json.line_break();
  json.key("notes");
  json.begin_array();
  for (const auto& note : set.coverage.notes) json.value(note);
  json.end_array();
  json.line_break();
  json.key("was_prices");
  write_was_prices(json, set, options.category);
  json.line_break();
  json.key("categories");
  json.begin_array();
  for (const CategorySummary* summary : summaries_of(set, options.category)) {
    json.line_break();
    write_category(json, *summary);
  }
  json.end_array();
  json.line_break();
  json.end_object();
  return json.take() + '\n';
}

std::string price_csv(const ChangeSet& set, const PriceReportOptions& options) {
  CsvWriter csv;
  for (const auto column : kColumns) csv.plain(column);
  csv.end_row();
  for (const CategorySummary* summary : summaries_of(set, options.category)) {
    write_side_rows(csv, set, *summary, false);
    write_side_rows(csv, set, *summary, true);
  }
  return csv.take();
}

}  // namespace rangebook

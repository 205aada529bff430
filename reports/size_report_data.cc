// Size reports for other programs: JSON and CSV.
#include "reports/changes_json.h"
#include "reports/csv_writer.h"
#include "reports/json_facts.h"
#include "reports/json_writer.h"
#include "reports/size_report_forms.h"

namespace rangebook {
namespace {

void write_interval_member(JsonWriter& json, std::string_view name,
                           const std::optional<ShareInterval>& interval) {
  if (!interval) return;
  json.key(name);
  write_interval(json, *interval);
}

void write_since(JsonWriter& json, const std::optional<OfferedSince>& since) {
  json.key("since");
  if (!since) return json.null();
  json.begin_object();
  json.member("capture", since->first.capture);
  json.member("season", since->first.season);
  json.member("date", to_string(since->first.on));
  json.member("captures", since->captures);
  json.member("cannot_tell", since->cannot_tell);
  json.end_object();
}

void write_step_members(JsonWriter& json, const ReachStep& step) {
  json.member("offering", step.offering);
  json.member("in_stock", step.in_stock);
  json.member("stock_unknown", step.stock_unknown);
  write_interval_member(json, "offering_interval", step.offering_interval);
  write_interval_member(json, "in_stock_interval", step.in_stock_interval);
}

void write_table(JsonWriter& json, const SizeTable& table) {
  json.begin_object();
  json.member("system", to_string(table.system));
  json.member("fit", to_string(table.fit));
  json.member("lines", table.lines);
  json.key("sizes");
  json.begin_array();
  for (const SizeLine& line : table.sizes) {
    json.line_break();
    json.begin_object();
    json.member("label", line.step.size.label);
    json.member("stated", line.stated);
    write_step_members(json, line.step);
    write_since(json, line.since);
    json.end_object();
  }
  json.end_array();
  json.end_object();
}

void write_category(JsonWriter& json, const CategorySizes& category) {
  json.begin_object();
  json.member("category", category.category);
  json.member("lines", category.lines);
  json.member("ranked", category.ranked);
  json.member("unranked", category.unranked);
  json.member("unsized", category.unsized);
  json.member("partial", category.partial);
  json.key("tables");
  json.begin_array();
  for (const SizeTable& table : category.tables) write_table(json, table);
  json.end_array();
  json.end_object();
}

void write_reaching(JsonWriter& json, const ReachingShop& row) {
  json.begin_object();
  json.member("shop", row.shop.slug);
  json.key("capture");
  if (row.capture) {
    write_capture(json, *row.capture);
  } else {
    json.null();
  }
  json.member("verdict", to_string(row.reaching));
  json.member("fit", to_string(row.fit));
  json.member("lines", row.lines);
  write_step_members(json, row.step);
  json.member("unsized", row.unsized);
  json.member("partial", row.partial);
  write_since(json, row.since);
  json.key("systems");
  json.begin_array();
  for (const SizeSystem system : row.systems) json.value(to_string(system));
  json.end_array();
  json.end_object();
}

// --- CSV

void write_bounds(CsvWriter& csv, const std::optional<ShareInterval>& interval) {
  csv.plain(interval ? index_text(interval->low) : "");
  csv.plain(interval ? index_text(interval->high) : "");
}

void write_counts(CsvWriter& csv, std::uint32_t lines, const ReachStep& step) {
  csv.plain(std::to_string(lines));
  csv.plain(std::to_string(step.offering));
  csv.plain(std::to_string(step.in_stock));
  csv.plain(std::to_string(step.stock_unknown));
  write_bounds(csv, step.offering_interval);
  write_bounds(csv, step.in_stock_interval);
}

void write_since(CsvWriter& csv, const std::optional<OfferedSince>& since) {
  csv.text(since ? since->first.season : "");
  csv.plain(since ? to_string(since->first.on) : "");
  csv.plain(since ? std::to_string(since->captures) : "");
}

void write_capture_cells(CsvWriter& csv, const CaptureInfo& capture) {
  csv.plain(std::to_string(capture.id));
  csv.text(capture.season);
  csv.plain(to_string(capture.on));
}

void write_header(CsvWriter& csv, std::initializer_list<std::string_view> columns) {
  for (const auto column : columns) csv.plain(column);
  csv.end_row();
}

}  // namespace

std::string sizes_json(const SizeReport& report) {
  JsonWriter json;
  json.begin_object();
  json.member("format", "rangebook.sizes/1");
  json.member("shop", report.shop.slug);
  json.key("capture");
  write_capture(json, report.capture);
  json.member("rows_refused", report.rows_refused);
  json.key("stated");
  if (report.stated) {
    json.begin_object();
    json.member("sizes", report.stated->words);
    json.member("date", to_string(report.stated->on));
    json.end_object();
  } else {
    json.null();
  }
  json.line_break();
  json.key("categories");
  json.begin_array();
  for (const CategorySizes& category : report.categories) {
    json.line_break();
    write_category(json, category);
  }
  json.end_array();
  json.line_break();
  json.end_object();
  return json.take() + '\n';
}

std::string sizes_csv(const SizeReport& report) {
  CsvWriter csv;
  write_header(csv, {"capture",
                     "season",
                     "date",
                     "category",
                     "system",
                     "fit",
                     "size",
                     "stated",
                     "lines",
                     "offering",
                     "in_stock",
                     "stock_unknown",
                     "offering_low",
                     "offering_high",
                     "in_stock_low",
                     "in_stock_high",
                     "since_season",
                     "since_date",
                     "since_captures",
                     "category_lines",
                     "category_unranked",
                     "category_unsized"});
  for (const CategorySizes& category : report.categories) {
    for (const SizeTable& table : category.tables) {
      for (const SizeLine& line : table.sizes) {
        write_capture_cells(csv, report.capture);
        csv.text(category.category);
        csv.plain(to_string(table.system));
        csv.plain(to_string(table.fit));
        csv.text(line.step.size.label);
        csv.plain(line.stated ? "yes" : "no");
        write_counts(csv, table.lines, line.step);
        write_since(csv, line.since);
        csv.plain(std::to_string(category.lines));
        csv.plain(std::to_string(category.unranked));
        csv.plain(std::to_string(category.unsized));
        csv.end_row();
      }
    }
  }
  return csv.take();
}

std::string reaching_json(const ReachingReport& report) {
  JsonWriter json;
  json.begin_object();
  json.member("format", "rangebook.reaching/1");
  json.member("size", report.size.label);
  json.member("system", to_string(report.size.system));
  json.member("fit", to_string(report.size.fit));
  json.member("category", report.category);
  json.line_break();
  json.key("shops");
  json.begin_array();
  for (const ReachingShop& row : report.shops) {
    json.line_break();
    write_reaching(json, row);
  }
  json.end_array();
  json.line_break();
  json.end_object();
  return json.take() + '\n';
}

std::string reaching_csv(const ReachingReport& report) {
  CsvWriter csv;
  write_header(csv,
               {"size",          "system",        "category",      "shop",         "verdict",
                "fit",           "capture",       "season",        "date",         "lines",
                "offering",      "in_stock",      "stock_unknown", "offering_low", "offering_high",
                "in_stock_low",  "in_stock_high", "unsized",       "since_season", "since_date",
                "since_captures"});
  for (const ReachingShop& row : report.shops) {
    csv.text(report.size.label);
    csv.plain(to_string(report.size.system));
    csv.text(report.category);
    csv.text(row.shop.slug);
    csv.plain(to_string(row.reaching));
    csv.plain(to_string(row.fit));
    if (row.capture) {
      write_capture_cells(csv, *row.capture);
    } else {
      for (int cell = 0; cell < 3; ++cell) csv.plain("");
    }
    write_counts(csv, row.lines, row.step);
    csv.plain(std::to_string(row.unsized));
    write_since(csv, row.since);
    csv.end_row();
  }
  return csv.take();
}

}  // namespace rangebook

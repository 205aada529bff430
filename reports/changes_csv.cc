// One row a change, both sides and their evidence beside each other.
#include <string_view>

#include "reports/change_lists.h"
#include "reports/csv_writer.h"
#include "reports/wording.h"

namespace rangebook {
namespace {

constexpr std::string_view kColumns[] = {"kind",           "line_id",         "line_code",
                                         "line_name",      "category",        "before",
                                         "after",          "amount_before",   "amount_after",
                                         "currency",       "capture_before",  "season_before",
                                         "date_before",    "document_before", "row_before",
                                         "capture_after",  "season_after",    "date_after",
                                         "document_after", "row_after",       "link"};

const PriceFact* price_of(const std::optional<Fact>& fact) {
  return fact ? std::get_if<PriceFact>(&*fact) : nullptr;
}

void write_line(CsvWriter& csv, const Change& change) {
  csv.plain(change.line ? std::to_string(change.line->id) : "");
  csv.text(change.line ? change.line->code : "");
  csv.text(change.line ? change.line->name : "");
  csv.text(change.line ? change.line->category : change.category);
}

void write_amounts(CsvWriter& csv, const Change& change) {
  const PriceFact* before = price_of(change.before);
  const PriceFact* after = price_of(change.after);
  csv.plain(before != nullptr ? decimal_text(before->amount) : "");
  csv.plain(after != nullptr ? decimal_text(after->amount) : "");
  const PriceFact* either = after != nullptr ? after : before;
  csv.plain(either != nullptr ? either->amount.currency.code() : "");
}

void write_sighting(CsvWriter& csv, const std::optional<Sighting>& seen) {
  csv.plain(seen ? std::to_string(seen->capture) : "");
  csv.text(seen ? seen->season : "");
  csv.plain(seen ? to_string(seen->on) : "");
  csv.text(seen ? seen->document : "");
  csv.plain(seen && seen->line ? std::to_string(*seen->line) : "");
}

void write_change(CsvWriter& csv, const Change& change) {
  csv.plain(to_string(change.kind));
  write_line(csv, change);
  csv.text(plain_text(side_phrase(change.kind, change.before), false));
  csv.text(plain_text(side_phrase(change.kind, change.after), false));
  write_amounts(csv, change);
  write_sighting(csv, change.evidence.before);
  write_sighting(csv, change.evidence.after);
  csv.text(change.evidence.link);
  csv.end_row();
}

}  // namespace

std::string changes_csv(const ChangeSet& set) {
  CsvWriter csv;
  for (const auto column : kColumns) csv.plain(column);
  csv.end_row();
  for (const Change& change : set.changes) write_change(csv, change);
  return csv.take();
}

}  // namespace rangebook

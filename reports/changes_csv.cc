// One row a change, both sides and their evidence beside each other.
#include "reports/change_lists.h"
#include "reports/sheet.h"
#include "reports/wording.h"

namespace rangebook {
namespace {

class Row {
 public:
  void text(std::string_view content) { cells_.push_back({std::string(content), {}}); }
  void value(const PieceValue& value) { cells_.push_back({{}, value}); }
  void nothing() { cells_.emplace_back(); }
  template <typename Number>
  void count(const Number& number) {
    value(Count{static_cast<std::int64_t>(number)});
  }
  std::vector<SheetCell> take() { return std::move(cells_); }

 private:
  std::vector<SheetCell> cells_;
};

const PriceFact* price_of(const std::optional<Fact>& fact) {
  return fact ? std::get_if<PriceFact>(&*fact) : nullptr;
}

void add_line(Row& row, const Change& change) {
  if (!change.line) {
    for (int i = 0; i < 3; ++i) row.nothing();
    return row.text(change.category);
  }
  row.count(change.line->id);
  row.text(change.line->code);
  row.text(change.line->name);
  row.text(change.line->category);
}

void add_amounts(Row& row, const Change& change) {
  const PriceFact* before = price_of(change.before);
  const PriceFact* after = price_of(change.after);
  for (const PriceFact* side : {before, after}) {
    if (side != nullptr) {
      row.value(side->amount);
    } else {
      row.nothing();
    }
  }
  const PriceFact* either = after != nullptr ? after : before;
  row.text(either != nullptr ? either->amount.currency.code() : "");
}

void add_sighting(Row& row, const std::optional<Sighting>& seen) {
  if (!seen) {
    for (int i = 0; i < 5; ++i) row.nothing();
    return;
  }
  row.count(seen->capture);
  row.text(seen->season);
  row.value(seen->on);
  row.text(seen->document);
  if (seen->line) {
    row.count(*seen->line);
  } else {
    row.nothing();
  }
}

}  // namespace

Sheet changes_sheet(const ChangeSet& set) {
  Sheet sheet{"Changes",
              "One row a change",
              {"kind",         "line_id",         "line_code",      "line_name",
               "category",     "before",          "after",          "amount_before",
               "amount_after", "currency",        "capture_before", "season_before",
               "date_before",  "document_before", "row_before",     "capture_after",
               "season_after", "date_after",      "document_after", "row_after",
               "link"},
              {}};
  for (const Change& change : set.changes) {
    Row row;
    row.text(to_string(change.kind));
    add_line(row, change);
    row.text(plain_text(side_phrase(change.kind, change.before), false));
    row.text(plain_text(side_phrase(change.kind, change.after), false));
    add_amounts(row, change);
    add_sighting(row, change.evidence.before);
    add_sighting(row, change.evidence.after);
    row.text(change.evidence.link);
    sheet.rows.push_back(row.take());
  }
  return sheet;
}

std::string changes_csv(const ChangeSet& set) { return csv_of(changes_sheet(set)); }

}  // namespace rangebook

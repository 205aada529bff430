// A few cells of each column, and what its name or its choice says it means.
#include "importers/column_examples.h"

#include <fmt/format.h>

#include <algorithm>

#include "importers/byte_search.h"
#include "importers/header_words.h"
#include "importers/utf8.h"
#include "schema/rejection.h"

namespace rangebook {
namespace {

bool contains(const std::vector<std::size_t>& columns, std::size_t column) {
  return std::find(columns.begin(), columns.end(), column) != columns.end();
}

std::vector<Field> fields_of(const FieldMap& map, std::size_t column) {
  std::vector<Field> fields;
  for (std::size_t i = 0; i < kFieldCount; ++i) {
    if (map.column[i] == column || map.fallback[i] == column) {
      fields.push_back(static_cast<Field>(i));
    }
  }
  if (map.colour_size == column) fields.insert(fields.end(), {Field::colour, Field::size});
  return fields;
}

/// Takes a cell unless it is empty, known, or one too many; true when that was the last one wanted.
bool add_example(ColumnPreview& column, ColumnExample example) {
  auto& examples = column.examples;
  const auto same = [&](const ColumnExample& other) { return other.text == example.text; };
  if (example.text.empty() || examples.size() >= kPreviewExamples ||
      std::any_of(examples.begin(), examples.end(), same)) {
    return false;
  }
  examples.push_back(std::move(example));
  return examples.size() == kPreviewExamples;
}

std::string cell_text(std::string_view cell) {
  return excerpt_of(without_blanks(cell), kExcerptBytes);
}

/// What a row has for a field, where this cell says so; another column may have said it.
void add_field(ColumnExample& example, const RawRow& row, Field field) {
  const std::string_view text = row[field];
  if (text.empty() || example.text.find(text) == std::string::npos) return;
  example.fields.push_back({field, std::string(text)});
}

}  // namespace

void ColumnExamples::describe(std::size_t column, const std::string& name, const FieldMap& map) {
  auto& preview = columns_.emplace_back();
  preview.place = column + 1;
  preview.name = name;
  preview.fields = fields_of(map, column);
  if (contains(map.chosen, column)) {
    preview.known = ColumnPreview::Known::by_choice;
  } else if (map.guessed && !preview.fields.empty()) {
    preview.known = ColumnPreview::Known::by_values;
    preview.doubts.emplace_back("Its meaning was guessed from its values.");
  }
  const auto meaning = column_meaning(name);
  if (contains(map.doubled, column) && meaning && preview.fields.empty()) {
    const auto taken = map.column[static_cast<std::size_t>(meaning->field)];
    preview.doubts.push_back(fmt::format("Two columns for {}: it is read from column {}.",
                                         to_string(meaning->field), taken.value_or(0) + 1));
  }
  const auto price = static_cast<std::size_t>(Field::price);
  if (map.fallback[price] == column) {
    preview.doubts.emplace_back("Read as the price of rows that are not on sale.");
  }
}

void ColumnExamples::begin(const std::vector<std::string>& names, const FieldMap& map,
                           const std::deque<KeptRecord>& first) {
  columns_.clear();
  const std::size_t columns = std::max(names.size(), map.columns);
  for (std::size_t i = 0; i < columns; ++i) {
    describe(i, i < names.size() ? names[i] : std::string{}, map);
  }
  wanting_ = columns;
  if (map.has(Field::name)) return;
  for (const auto& record : first) {
    for (std::size_t i = 0; i < std::min(columns, record.cells.size()); ++i) {
      add_example(columns_[i], {cell_text(record.cells[i]), {}, {}, {}});
    }
  }
}

void ColumnExamples::take(const Record& record, const RawRow& row) {
  if (wanting_ == 0) return;
  for (std::size_t i = 0; i < std::min(columns_.size(), record.cells.size()); ++i) {
    auto& column = columns_[i];
    if (column.examples.size() >= kPreviewExamples) continue;
    ColumnExample example;
    example.text = cell_text(record.cells[i]);
    example.currency = row[Field::currency];
    for (const Field field : column.fields) add_field(example, row, field);
    const bool price_alone = column.fields == std::vector{Field::price};
    if (price_alone && row[Field::full_price] != row[Field::price]) {
      add_field(example, row, Field::full_price);
    }
    if (add_example(column, std::move(example))) --wanting_;
  }
}

}  // namespace rangebook

// Counts while reading, sentences at the end.
#include "tracker/app/preview_builder.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

#include "tracker/category_parser.h"
#include "tracker/cell_words.h"
#include "tracker/money_parser.h"
#include "tracker/size_parser.h"

namespace rangebook {
namespace {

constexpr std::size_t kShownUnknown = 5;

std::string counted(std::uint64_t count, std::string_view thing) {
  return fmt::format("{} {}{}", count, thing, count == 1 ? "" : "s");
}

/// The column a field is read from; nothing where no column is.
ColumnPreview* column_of(DocumentPreview& preview, Field field) {
  const auto has = [&](const ColumnPreview& column) {
    return std::find(column.fields.begin(), column.fields.end(), field) != column.fields.end();
  };
  const auto at = std::find_if(preview.columns.begin(), preview.columns.end(), has);
  return at == preview.columns.end() ? nullptr : &*at;
}

std::optional<Field> field_called(std::string_view name) {
  for (std::size_t i = 0; i < kFieldCount; ++i) {
    if (to_string(static_cast<Field>(i)) == name) return static_cast<Field>(i);
  }
  return std::nullopt;
}

/// Columns with a place, or with examples of their own.
bool is_table(const DocumentPreview& preview) {
  return std::any_of(
      preview.columns.begin(), preview.columns.end(),
      [](const ColumnPreview& column) { return column.place > 0 || !column.examples.empty(); });
}

/// `price 79,90: 79.90 EUR` where a cell gives several fields, else the reading alone.
std::string reading_of(const ColumnExample& example, const CellHints& hints) {
  std::vector<std::string> parts;
  for (const auto& [field, text] : example.fields) {
    const std::string words = cell_words(field, text, hints);
    if (example.fields.size() == 1) return words == text ? std::string{} : words;
    parts.push_back(fmt::format("{}: {}", to_string(field), words.empty() ? text : words));
  }
  return fmt::format("{}", fmt::join(parts, "; "));
}

}  // namespace

void PreviewBuilder::Unknown::add(const std::string& text) {
  const bool known = std::find(texts.begin(), texts.end(), text) != texts.end();
  if (!known && texts.size() < kShownUnknown) texts.push_back(text);
}

void PreviewBuilder::row(const RawRow& row) {
  ++rows_;
  for (std::size_t i = 0; i < kFieldCount; ++i) {
    if (row.cells[i].empty()) continue;
    ++filled_[i];
    keep_example(static_cast<Field>(i), row);
  }
  for (const Field field : {Field::price, Field::full_price}) {
    const auto sign = proven_decimal_sign(row[field]);
    points_ += sign == '.' ? 1U : 0U;
    commas_ += sign == ',' ? 1U : 0U;
  }
}

void PreviewBuilder::keep_example(Field field, const RawRow& row) {
  auto& examples = examples_[static_cast<std::size_t>(field)];
  if (examples.size() >= kPreviewExamples) return;
  const std::string_view text = row[field].substr(0, kExcerptBytes);
  const auto same = [&](const ColumnExample& one) { return one.text == text; };
  if (std::any_of(examples.begin(), examples.end(), same)) return;
  examples.push_back(
      {std::string(text), {{field, std::string(text)}}, std::string(row[Field::currency]), {}});
}

void PreviewBuilder::listing(const Listing& listing) {
  bool unknown = false;
  for (const auto& size : interpret_sizes(listing.offers.sizes, shop_.sizes)) {
    if (size.ranked() || size.label.empty()) continue;
    unknown = true;
    sizes_.add(size.label);
  }
  sizes_.lines += unknown ? 1U : 0U;
  const auto& category = listing.card.category;
  if (category.empty() || find_category(category, listing.card.name) != "unsorted") return;
  ++categories_.lines;
  categories_.add(category);
}

void PreviewBuilder::rejection(const Rejection& rejection) {
  auto& refusals = refusals_[rejection.field];
  if (rejection.refused == Refused::nothing) {
    ++doubted_;
    ++refusals.doubted;
  } else {
    ++(rejection.refused == Refused::row ? refused_rows_ : refused_cells_);
    ++refusals.refused;
  }
  if (!refusals.first.empty()) return;
  refusals.first = rejection.line
                       ? fmt::format(", first in line {}: {}", *rejection.line, rejection.what)
                       : fmt::format(": {}", rejection.what);
}

DocumentPreview PreviewBuilder::finish(DocumentPreview found, std::optional<char> decimal,
                                       bool decimal_stated) {
  found.rows = rows_;
  found.refused_rows = refused_rows_;
  found.refused_cells = refused_cells_;
  found.doubted = doubted_;
  fill_columns(found);
  read_examples(found, decimal);
  tell_decimal(found, decimal, decimal_stated);
  doubt_unknown(found);
  doubt_fields(found);
  doubt_gaps(found);
  return found;
}

/// Where the importer knows no columns, the fields stand for them.
void PreviewBuilder::fill_columns(DocumentPreview& preview) {
  if (is_table(preview)) return;
  for (std::size_t i = 0; i < kFieldCount; ++i) {
    const auto field = static_cast<Field>(i);
    if (filled_[i] == 0) continue;
    auto* column = column_of(preview, field);
    if (column == nullptr) column = &preview.columns.emplace_back();
    column->fields = {field};
    column->examples = examples_[i];
  }
}

void PreviewBuilder::read_examples(DocumentPreview& preview, std::optional<char> decimal) const {
  for (auto& column : preview.columns) {
    for (auto& example : column.examples) {
      example.read = reading_of(example, {shop_, Currency::from_code(example.currency), decimal});
    }
  }
}

void PreviewBuilder::tell_decimal(DocumentPreview& preview, std::optional<char> decimal,
                                  bool stated) const {
  if (filled(Field::price) + filled(Field::full_price) == 0) return;
  const bool both = points_ > 0 && commas_ > 0;
  std::string value = "no price shows it";
  if (decimal) value = *decimal == '.' ? "point" : "comma";
  if (!stated && both) value = fmt::format("point ({}) and comma ({})", points_, commas_);
  if (!stated && !both && decimal) {
    value += fmt::format(", shown by {}", counted(std::max(points_, commas_), "price"));
  }
  preview.detected.push_back({"decimal sign", std::move(value), stated});
  if (stated || !both) return;
  auto* column = column_of(preview, Field::price);
  (column != nullptr ? column->doubts : preview.doubts)
      .emplace_back(
          "Some prices are written with a decimal point, others with a decimal comma; a price that "
          "could be either is refused.");
}

void PreviewBuilder::doubt_fields(DocumentPreview& preview) const {
  for (const auto& [name, refusals] : refusals_) {
    std::vector<std::string> counts;
    if (refusals.refused > 0) counts.push_back(fmt::format("{} refused", refusals.refused));
    if (refusals.doubted > 0)
      counts.push_back(fmt::format("{} kept but doubted", refusals.doubted));
    const std::string text = fmt::format("{}{}", fmt::join(counts, ", "), refusals.first);
    const auto field = field_called(name);
    auto* column = field ? column_of(preview, *field) : nullptr;
    if (column != nullptr) {
      column->doubts.push_back(text);
    } else {
      preview.doubts.push_back(field ? fmt::format("{}: {}", name, text) : "Rows: " + text);
    }
  }
}

/// What a capture would lack.
void PreviewBuilder::doubt_gaps(DocumentPreview& preview) const {
  if (rows_ == 0) return;
  const auto none = [&](Field field) { return filled(field) == 0; };
  if (none(Field::price) && none(Field::full_price)) {
    preview.doubts.emplace_back("Nothing gives a price.");
  }
  if (none(Field::size)) preview.doubts.emplace_back("Nothing gives sizes.");
  if (none(Field::line_code) && none(Field::group_id) && none(Field::url)) {
    preview.doubts.emplace_back(
        "Nothing gives a code or an address: lines are known by their name alone.");
  }
}

void PreviewBuilder::doubt_unknown(DocumentPreview& preview) const {
  const auto put = [&](Field field, std::string text) {
    auto* column = column_of(preview, field);
    (column != nullptr ? column->doubts : preview.doubts).push_back(std::move(text));
  };
  if (sizes_.lines > 0) {
    put(Field::size,
        fmt::format("Sizes of {} belong to no known system and are kept as written: {}.{}",
                    counted(sizes_.lines, "line"), fmt::join(sizes_.texts, ", "),
                    shop_.sizes == SizeSystem::unknown
                        ? fmt::format(" What does a bare number mean here? Say it with: rangebook "
                                      "shop add {} --sizes uk",
                                      shop_.slug)
                        : std::string{}));
  }
  if (categories_.lines > 0) {
    put(Field::category,
        fmt::format("{} of a category that is not known: {}.", counted(categories_.lines, "line"),
                    fmt::join(categories_.texts, ", ")));
  }
}

}  // namespace rangebook

// Columns in the order they are met; a few different examples of each.
#include "importers/feed_names.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <utility>

#include "importers/utf8.h"
#include "schema/rejection.h"

namespace rangebook {

void FeedNames::note(const std::string& path, const std::string& name, std::string_view text,
                     std::vector<FieldText> fields) {
  if (!keep_columns) return;
  const auto [known, is_new] = by_path_.try_emplace(path, columns.size());
  if (is_new && columns.size() < kMaxFeedColumns) {
    columns.push_back({.path = path, .fields = {}, .chosen = false, .examples = {}});
  }
  if (known->second >= columns.size()) return;
  FeedColumn& column = columns[known->second];
  column.chosen = column.chosen || choices.find(path, name) != nullptr;
  for (const auto& one : fields) column.fields.insert(one.field);
  if (!keep_examples || column.examples.size() >= kPreviewExamples) return;
  ColumnExample example{excerpt_of(text, kExcerptBytes), std::move(fields), {}, {}};
  const bool same = std::any_of(column.examples.begin(), column.examples.end(),
                                [&](const ColumnExample& one) { return one.text == example.text; });
  if (!same && !example.text.empty()) column.examples.push_back(std::move(example));
}

std::vector<std::string> FeedNames::missing() const {
  std::vector<std::string> out;
  for (const auto& choice : choices.all()) {
    if (!found.contains(choice.column)) out.push_back(choice.column);
  }
  return out;
}

std::string to_string(const FeedNames& names) {
  std::vector<std::string> parts;
  for (const auto& [field, from] : names.read) {
    parts.push_back(fmt::format("{}={}", to_string(field), fmt::join(from, "/")));
  }
  std::string text = fmt::format("{}", fmt::join(parts, " "));
  if (!names.unknown.empty()) text += fmt::format("; not used: {}", fmt::join(names.unknown, ", "));
  return text;
}

std::vector<ColumnPreview> columns_of(const FeedNames& names) {
  std::vector<ColumnPreview> columns;
  for (const auto& one : names.columns) {
    auto& column = columns.emplace_back();
    column.name = one.path;
    column.fields.assign(one.fields.begin(), one.fields.end());
    if (one.chosen) column.known = ColumnPreview::Known::by_choice;
    column.examples = one.examples;
  }
  if (names.keep_columns) return columns;
  for (const auto& [field, from] : names.read) {
    auto& column = columns.emplace_back();
    column.name = fmt::format("{}", fmt::join(from, ", "));
    column.fields.push_back(field);
  }
  for (const auto& name : names.unknown) columns.emplace_back().name = name;
  return columns;
}

}  // namespace rangebook

// Names are compared folded, as headers of tables are.
#include "importers/feed_choices.h"

#include <algorithm>
#include <utility>

namespace rangebook {

FeedChoices::FeedChoices(std::vector<ColumnChoice> choices) : choices_(std::move(choices)) {
  for (const auto& choice : choices_) {
    folded_.push_back(folded_header(choice.column));
    if (names_of_way(choice.column).size() > 1) ways_.push_back(choice);
    if (choice.field) fields_.insert(*choice.field);
    if (choice.colour_size) fields_.insert({Field::colour, Field::size});
  }
}

const ColumnChoice* FeedChoices::find(std::string_view path, std::string_view name) const {
  if (choices_.empty()) return nullptr;
  for (const auto wanted : {path, name}) {
    const auto at = std::find(folded_.begin(), folded_.end(), folded_header(wanted));
    if (at != folded_.end()) return &choices_[static_cast<std::size_t>(at - folded_.begin())];
  }
  return nullptr;
}

std::set<Field> FeedChoices::fields_of(const std::set<std::string>& names) const {
  std::set<Field> fields;
  for (const auto& name : names) {
    const ColumnChoice* choice = find(name, name);
    if (choice != nullptr && choice->field) fields.insert(*choice->field);
  }
  return fields;
}

std::optional<ColumnMeaning> meaning_of(const ColumnChoice& choice) {
  ColumnMeaning meaning;
  if (choice.colour_size) {
    meaning.role = ColumnRole::colour_size;
    meaning.field = Field::colour;
    return meaning;
  }
  if (!choice.field) return std::nullopt;
  meaning.field = *choice.field;
  return meaning;
}

std::vector<std::string> names_of_way(std::string_view way) {
  std::vector<std::string> names;
  for (std::size_t from = 0; from <= way.size();) {
    const auto end = std::min(way.find_first_of("./", from), way.size());
    if (end > from) names.emplace_back(way.substr(from, end - from));
    from = end + 1;
  }
  return names;
}

}  // namespace rangebook

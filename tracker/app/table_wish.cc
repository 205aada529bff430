// A column is there when one table of the capture has it.
#include "tracker/app/table_wish.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

#include "schema/nearest_word.h"

namespace rangebook {

std::variant<TableWish, NotThere> wish_of(const Book& book, const std::string& shop,
                                          const MappingRequest& request) {
  TableWish wish;
  wish.said = request.said;
  wish.by_name = !request.profile.empty();
  if (request.no_profile) return wish;
  std::vector<std::string> names;
  for (auto& profile : book.profiles(shop)) {
    names.push_back(profile.name);
    if (wish.by_name ? profile.name != request.profile : !profile.is_default) continue;
    wish.profile = profile.name;
    wish.profile_options = std::move(profile.options);
  }
  if (!wish.by_name || !wish.profile.empty()) return wish;
  return NotThere{fmt::format(
      "{} has no profile \"{}\".{} {}", shop, request.profile, did_you_mean(request.profile, names),
      names.empty() ? std::string("It has none yet; --save-profile NAME keeps one.")
                    : fmt::format("It has: {}.", fmt::join(names, ", ")))};
}

void ColumnSearch::saw(const TableOptions& options, const DocumentPreview& table) {
  for (const auto& choice : options.columns) {
    const bool missing =
        std::find(table.missing.begin(), table.missing.end(), choice.column) != table.missing.end();
    if (!missing) found_.insert(choice.column);
  }
  names_.clear();
  for (const auto& column : table.columns) {
    if (!column.name.empty()) names_.push_back(column.name);
  }
  table_ = table.name;
}

std::optional<NotThere> ColumnSearch::missing(const TableOptions& said) const {
  for (const auto& choice : said.columns) {
    if (found_.contains(choice.column)) continue;
    if (table_.empty()) {
      return NotThere{
          fmt::format("--column \"{}\": there is no table among these documents.", choice.column)};
    }
    return NotThere{fmt::format(
        "There is no column \"{}\" in {}.{} {}", choice.column, table_,
        did_you_mean(choice.column, names_),
        names_.empty() ? std::string("It has no line of column names: count them, as in #3=price.")
                       : fmt::format("Its columns are: {}.", fmt::join(names_, ", ")))};
  }
  return std::nullopt;
}

}  // namespace rangebook

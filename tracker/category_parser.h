// Sorting lines into the category tree (schema/tables/categories.tsv).
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace rangebook {

inline constexpr std::string_view kUnsorted = "unsorted";

/// The slug for a source's category, breadcrumb (`Women > Dresses > Midi`) or, when that says
/// nothing, the line's name ("Maya Midi Dress"). `unsorted` when neither tells.
std::string_view find_category(std::string_view category, std::string_view name);

/// True when `slug` is a category of the tree.
bool is_category(std::string_view slug);
/// The parent's slug; empty for a top category or an unknown slug.
std::string_view parent_category(std::string_view slug);
/// True when `slug` is `ancestor` or stands below it.
bool category_within(std::string_view slug, std::string_view ancestor);
/// All slugs, in the order of the table.
std::vector<std::string_view> all_categories();

}  // namespace rangebook

// Sorting lines into the category tree (schema/tables/categories.tsv).
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace rangebook {

inline constexpr std::string_view kUnsorted = "unsorted";
/// A category or name longer than this is read up to here.
inline constexpr std::size_t kMaxCategoryTextBytes = 512;

/// The slug for a source's category, breadcrumb (`Women > Dresses > Midi`) or, when that says
/// nothing, the line's name ("Maya Midi Dress"). `unsorted` when neither tells.
///
/// The head noun decides: the last one where words compound to the left ("Shirt dress" is a dress,
/// "Dress shirt" a shirt, "Sommerkleid" a Kleid), the first one in French, Spanish and Italian
/// ("Pantalon tailleur"). What stands behind "with", "in", "mit", "avec".. or a comma is about the
/// garment, not its kind. "Coats & Jackets" is what both stand below; without such a category, the
/// first. In a breadcrumb the last step that tells decides, but a lone singular ("Dresses > Shirt")
/// only describes the step before, unless it is a kind of that ("Jackets > Coat"). The view lives
/// as long as the program.
std::string_view find_category(std::string_view category, std::string_view name);

/// True when `slug` is a category of the tree; `unsorted` is none.
bool is_category(std::string_view slug);
/// The parent's slug; empty for a top category or an unknown slug.
std::string_view parent_category(std::string_view slug);
/// True when `slug` is `ancestor` or stands below it.
bool category_within(std::string_view slug, std::string_view ancestor);
/// All slugs, in the order of the table.
std::vector<std::string_view> all_categories();

}  // namespace rangebook

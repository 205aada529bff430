// The short texts of a row: seasons, colours, categories, days and GTINs; and kept options.
#include <string>
#include <string_view>

#include "schema/day.h"
#include "schema/gtin.h"
#include "schema/table_options.h"
#include "tests/fuzz/require.h"
#include "tracker/category_parser.h"
#include "tracker/colour_parser.h"
#include "tracker/season_parser.h"

namespace rangebook {
namespace {

void check_season(std::string_view text) {
  const Season season = parse_season(text);
  require(parse_season(season.label).label == season.label, "a canonical season stays as it is");
  require(!season_less(season, season), "no season comes before itself");
}

void check_colours(std::string_view text) {
  for (const std::string& colour : split_colours(text)) {
    require(!colour.empty(), "a colour is not empty");
    const std::string key = colour_key(colour);
    require(colour_key(key) == key, "a colour key is its own key");
  }
}

void check_category(std::string_view text) {
  const std::string_view slug = find_category(text, text);
  require(slug == kUnsorted || is_category(slug), "a category is one of the tree");
  require(category_within(slug, slug) || slug == kUnsorted, "a category lies within itself");
}

void check_codes(std::string_view text) {
  if (const auto gtin = Gtin::parse(text)) {
    require(Gtin::parse(to_string(*gtin)) == gtin, "a GTIN reads back");
  }
  if (const auto day = parse_day(text)) require(to_string(*day) == text, "a day reads back");
}

void check_options(std::string_view text) {
  const auto options = table_options_of(text);
  if (!options) return;
  require(table_options_of(to_text(*options)) == options, "options read back");
  require(overlaid(*options, *options) == *options, "options on top of themselves stay");
}

void check(std::string_view text) {
  check_options(text);
  check_season(text);
  check_colours(text);
  check_category(text);
  check_codes(text);
}

}  // namespace
}  // namespace rangebook

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  rangebook::check(rangebook::as_text(data, size));
  return 0;
}

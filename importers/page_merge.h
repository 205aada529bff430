// One set of rows from the several ways in which a page says the same: JSON-LD, microdata, RDFa,
// Open Graph tags, visible text. The earlier one decides; a later one fills what is missing, and
// where it contradicts, that is said.
#pragma once

#include <cstdint>
#include <string_view>
#include <vector>

#include "importers/schema_org_rows.h"

namespace rangebook {

/// In the order in which they decide.
enum class PageSyntax : std::uint8_t {
  json_ld,
  microdata,
  rdfa,
  open_graph,
  loose_properties,  ///< itemprop outside any item
  visible_text,
  script_data,  ///< asked only where nothing before gives a price or a doubt about it
};
std::string_view to_string(PageSyntax syntax);  ///< as in a message: `visible text`

struct SyntaxRows {
  PageSyntax syntax = PageSyntax::json_ld;
  std::vector<ProductRow> rows;
};

/// Merges all rows of one page. Rules, each in order of the syntaxes:
/// - Where both describe one line, or share a code, GTIN, address or name, they are the same line.
///   Of a line with colours and sizes on both sides, rows pair by those.
/// - An empty cell takes the later syntax's value. What is said of the whole line (price, currency)
///   goes to its variants only where none of them states it; availability never does.
/// - A line without sizes takes the sizes that the later syntax lists, one row for each.
/// - Price, currency and availability that contradict stay as the earlier syntax has them, with a
///   `conflicting_rows` note that shows both.
/// - Lines that only the later syntax has are taken where the earlier one describes several lines
///   too; beside the page's one product they are others it recommends, and left out.
std::vector<ProductRow> merge_page(std::vector<SyntaxRows> all);

/// Gives the rows the breadcrumbs of their page as category where they have none. `path` is joined
/// with " > " and may end with the product's own name, which is left out. A page of several lines
/// keeps what it has.
void fill_category(std::vector<ProductRow>& rows, std::string path);

/// The amount in a price text, for comparing only: ten-thousandths of the main unit, no sign. The
/// last of ".", "," and a sign of currency inside the number is the decimal sign unless three
/// digits follow it.
std::optional<std::int64_t> comparable_amount(std::string_view price);

}  // namespace rangebook

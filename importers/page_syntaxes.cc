// One tree, several readers.
#include "importers/page_syntaxes.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "importers/byte_search.h"
#include "importers/html_tree.h"
#include "importers/loose_offer.h"
#include "importers/markup_source.h"
#include "importers/microdata.h"
#include "importers/open_graph.h"
#include "importers/page_view.h"
#include "importers/rdfa.h"
#include "importers/script_data.h"
#include "importers/visible_text.h"

namespace rangebook {
namespace {

void add_items(PageSyntaxes& found, PageSyntax syntax, MarkupItems items, const PageFrame& frame,
               std::string_view language) {
  if (items.empty()) return;
  MarkupSource source;
  source.add(std::move(items));
  source.find_products(language);
  source.open_rows(frame);
  found.summary +=
      fmt::format(" {}={}", syntax == PageSyntax::rdfa ? "rdfa" : "microdata", source.products());
  found.rows.push_back({.syntax = syntax, .rows = source.rest()});
  if (found.breadcrumbs.empty()) found.breadcrumbs = source.breadcrumbs("");
}

void add_rows(PageSyntaxes& found, PageSyntax syntax, std::string_view name,
              std::vector<ProductRow> rows) {
  if (rows.empty()) return;
  found.summary += fmt::format(" {}={}", name, rows.size());
  found.rows.push_back({.syntax = syntax, .rows = std::move(rows)});
}

// True when `word` stands around its own byte `inside`, which is at `at`.
bool stands_around(std::string_view page, std::size_t at, std::string_view word,
                   std::size_t inside) {
  return at >= inside && page.substr(at - inside).starts_with(word);
}

}  // namespace

std::variant<PageSyntaxes, TreeLimit> read_syntaxes(std::string_view page, const PageFrame& frame,
                                                    const PageScan& scan) {
  const auto built = HtmlTree::build(page);
  if (const auto* limit = std::get_if<TreeLimit>(&built)) return *limit;
  const auto& tree = std::get<HtmlTree>(built);
  const std::string language = scan.language.value_or("");
  PageSyntaxes found;
  add_items(found, PageSyntax::microdata, read_microdata(tree), frame, language);
  add_items(found, PageSyntax::rdfa, read_rdfa(tree), frame, language);
  add_rows(found, PageSyntax::open_graph, "open-graph", read_open_graph(tree, frame));
  const PageView view(tree);
  add_rows(found, PageSyntax::loose_properties, "loose", read_loose_properties(view));
  add_rows(found, PageSyntax::visible_text, "visible", read_visible_text(view, frame));
  add_rows(found, PageSyntax::script_data, "script", read_script_data(view));
  return found;
}

bool states_the_essentials(const std::vector<ProductRow>& rows) {
  return !rows.empty() && std::all_of(rows.begin(), rows.end(), [](const ProductRow& row) {
    const bool priced = !row[Field::price].empty() && !row[Field::currency].empty();
    return !row[Field::name].empty() && (priced || row.doubt) && !row[Field::in_stock].empty();
  });
}

bool mentions_other_markup(std::string_view page) {
  const char* const end = page.data() + page.size();
  for (const char* at = page.data(); at != end; ++at) {
    at = find_pair<'m', 's', 'f', '='>(at, end);
    if (at == end) return false;
    const auto place = static_cast<std::size_t>(at - page.data());
    if (stands_around(page, place, "itemscope", 3) || stands_around(page, place, "typeof=", 5)) {
      return true;
    }
  }
  return false;
}

std::string limit_sentence(const TreeLimit& limit) {
  constexpr std::string_view kStart = "The page has no product markup in JSON-LD, and ";
  switch (limit.kind) {
    case TreeLimit::Kind::bytes:
      return fmt::format("{}is larger than the {} MiB up to which its elements are read.", kStart,
                         kMaxTreeBytes >> 20U);
    case TreeLimit::Kind::depth:
      return fmt::format("{}its elements are nested more than {} deep.", kStart, kMaxTreeDepth);
    case TreeLimit::Kind::tags:
      return fmt::format("{}has more than {} tags.", kStart, kMaxTreeTags);
    case TreeLimit::Kind::attributes:
      return fmt::format("{}one of its tags has more than {} attributes.", kStart,
                         kMaxTreeAttributes);
    case TreeLimit::Kind::misnested:
      return fmt::format("{}closes its elements in the wrong order more than {} times.", kStart,
                         kMaxMisnested);
    case TreeLimit::Kind::frames:
      return fmt::format("{}consists of frames.", kStart);
  }
  return "";
}

}  // namespace rangebook

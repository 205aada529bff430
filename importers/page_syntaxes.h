// What a page says besides JSON-LD, read from its tree: microdata, RDFa, Open Graph tags, loose
// properties, visible text, data of its scripts.
#pragma once

#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "importers/html_guard.h"
#include "importers/html_scan.h"
#include "importers/page_merge.h"

namespace rangebook {

/// A page with more products than this is not merged: it is a feed in JSON-LD, and streamed.
inline constexpr std::size_t kMaxMergedProducts = 2000;

struct PageSyntaxes {
  std::vector<SyntaxRows> rows;
  std::string summary;      ///< for the record: ` microdata=1 rdfa=0`
  std::string breadcrumbs;  ///< as marked up, the product's own name at the end included
};

/// Builds the tree of a page and reads it in every way, or says why no tree was built.
std::variant<PageSyntaxes, TreeLimit> read_syntaxes(std::string_view page, const PageFrame& frame,
                                                    const PageScan& scan);

/// True when rows leave nothing open for which another syntax should be asked: a price (or a doubt
/// about it), its currency, availability.
bool states_the_essentials(const std::vector<ProductRow>& rows);

/// True when the bytes of a page mention microdata or RDFa. A quick search: it may be mistaken.
bool mentions_other_markup(std::string_view page);

/// A sentence on the limit that kept a page from being read as a tree.
std::string limit_sentence(const TreeLimit& limit);

}  // namespace rangebook

// Microdata of an HTML page, by the WHATWG HTML standard: itemscope, itemtype, itemprop, itemref,
// itemid, and what an element's value is.
#pragma once

#include "importers/html_tree.h"
#include "importers/markup_items.h"

namespace rangebook {

/// All items of the page, inner ones included. One deviation, which schema.org's own examples make
/// and shops follow: a `content` attribute is the value of any element without an address, not of
/// meta only (`<span itemprop=price content=49.90>49,90 EUR</span>`).
MarkupItems read_microdata(const HtmlTree& tree);

/// The value of an element by its kind: the address in href, src or data, `content`, `datetime`,
/// `value`, else its text. Addresses stay as written.
std::string element_value(const HtmlTree& tree, HtmlId element);

/// The words of a space-separated attribute.
std::vector<std::string> attribute_words(std::string_view value);

}  // namespace rangebook

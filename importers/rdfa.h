// RDFa Lite 1.1 of an HTML page (W3C): vocab, typeof, property, resource, prefix; with `about`,
// `content`, `datetime`, `rel`, `href` and `src` of RDFa 1.1 as far as product markup uses them.
#pragma once

#include "importers/html_tree.h"
#include "importers/markup_items.h"

namespace rangebook {

/// All things the page describes. Types and properties are full names where a vocabulary or a
/// known prefix is in force (`https://schema.org/price`), else as written. Open Graph tags in the
/// head are properties of the page, which is no item, and are left out.
MarkupItems read_rdfa(const HtmlTree& tree);

}  // namespace rangebook

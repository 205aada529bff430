// Product facts in the vocabularies that pages used before schema.org (GoodRelations and
// data-vocabulary.org), said again in schema.org's terms, so that one reading serves all.
#pragma once

#include "importers/markup_items.h"

namespace rangebook {

/// The items with types and properties of older vocabularies renamed by
/// `schema/tables/older_vocabularies.tsv`; others stay as they are. What those vocabularies put
/// elsewhere is put where schema.org has it: an offer that names its goods itself gets a product,
/// price and stock on a product go to its offer, breadcrumbs in a chain become a list.
MarkupItems in_schema_org_terms(MarkupItems items);

}  // namespace rangebook

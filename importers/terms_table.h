// Terms from a table: a CSV with the columns `field` and `value`, one field a row, in any dialect
// and encoding that tables of products may have.
#pragma once

#include <string_view>

#include "schema/terms_text.h"

namespace rangebook {

/// True when the first row has cells that name both columns.
bool is_terms_table(std::string_view document);

/// Rows without a field say nothing, nor do those without a value. A row that cannot be read is a
/// fault with its line; the others hold. A field given twice with different values is a fault, and
/// the first stays.
ReadTermsText read_terms_table(std::string_view document, std::optional<Currency> home = {});

}  // namespace rangebook

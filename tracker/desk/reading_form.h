// What was understood of each document, and the form that corrects it.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "schema/mapping_preview.h"
#include "schema/table_options.h"
#include "tracker/desk/desk_sheet.h"

namespace rangebook {

/// Fields for how tables are read, each document with its columns, examples and doubts.
/// `typed`: words that were not understood stand in the fields again.
void reading_fields(HtmlWriter& html, const std::vector<DocumentPreview>& documents,
                    const TableOptions& said, const DeskAsk& typed);

/// What that form says; a sentence for the first word that is no option.
std::variant<TableOptions, std::string> reading_of(const DeskAsk& ask);

}  // namespace rangebook

// The list of changes for reading in a terminal, in a spreadsheet and in a Markdown document. The
// form for other programs is changes_json.
#pragma once

#include <string>

#include "schema/change.h"

namespace rangebook {

/// Plain text: what was compared, then a heading for each kind and one line for each change, with
/// the document and row of both sides in brackets. No control characters from names.
std::string changes_text(const ChangeSet& set);

/// RFC 4180 with CRLF and a header row, one row a change. Columns: `kind`, `line_id`, `line_code`,
/// `line_name`, `category`, `before`, `after` (as text), `amount_before`, `amount_after`,
/// `currency`, then for each side `capture`, `season`, `date`, `document`, `row`, and `link`.
/// Cells of text that a spreadsheet would run as a formula get an apostrophe in front; see
/// reports/csv_writer.h.
std::string changes_csv(const ChangeSet& set);

/// CommonMark with GFM tables, one table a kind. Names cannot become markup.
std::string changes_markdown(const ChangeSet& set);

}  // namespace rangebook

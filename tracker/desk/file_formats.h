// The formats in which pages can be kept as files.
#pragma once

#include <string>
#include <vector>

#include "tracker/app/commands.h"
#include "tracker/desk/desk_sheet.h"

namespace rangebook {

/// Of a page that is read: HTML, workbook, text, Markdown, JSON.
const std::vector<Choice>& paper_formats();
/// The same and CSV.
const std::vector<Choice>& paper_and_csv();

/// The format that is asked for; empty for a page of the desk, and for words that are none.
std::string asked_format(const DeskAsk& ask, const std::vector<Choice>& formats);
OutputChoice as_file(const std::string& format);

}  // namespace rangebook

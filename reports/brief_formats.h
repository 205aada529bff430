// The forms of a brief. All say the same: the figures are made once, in make_brief.
#pragma once

#include <string>

#include "reports/brief.h"
#include "reports/report_page.h"

namespace rangebook {

/// What the forms below are laid out from.
ReportPage page_of(Brief brief);

/// For a terminal: headlines, sections with aligned columns, numbered sources.
std::string brief_text(Brief brief);

/// CommonMark with GFM tables and footnotes.
std::string brief_markdown(Brief brief);

/// `rangebook.brief/1`, described in schema/FORMAT.md. For figures to calculate with, read the
/// changes JSON: the brief holds them as text.
std::string brief_json(const Brief& brief);

/// One self-contained page: no outside address, no script. Readable at any width from 390 px, dark
/// and light by the reader's setting, printable on A4 with folded lists open.
std::string brief_html(Brief brief);

}  // namespace rangebook

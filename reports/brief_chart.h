// The picture of size reach: which sizes a category offers, then and now.
#pragma once

#include "reports/brief.h"
#include "reports/html_writer.h"

namespace rangebook {

/// An SVG with one step a size: the share of lines that offer it now stands above the line, the
/// share then hangs below it, so a step gained or lost shows without colour. The same figures
/// stand in the table beside it; for readers without sight the picture is named and skipped.
void write_reach_picture(HtmlWriter& html, const BriefTable& table);

}  // namespace rangebook

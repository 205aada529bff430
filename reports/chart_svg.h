// Writes pictures into a page.
#pragma once

#include "reports/chart.h"
#include "reports/html_writer.h"
#include "reports/number_style.h"

namespace rangebook {

/// The sheets of a picture as SVG, each an image named by its finding and described in words. `id`
/// is unique in the page.
void write_chart(HtmlWriter& html, const Chart& chart, std::string_view id,
                 const NumberStyle& numbers);

}  // namespace rangebook

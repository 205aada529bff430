// What could not be taken, as a table of a page.
#pragma once

#include <vector>

#include "reports/html_writer.h"
#include "schema/capture.h"
#include "schema/rejection.h"

namespace rangebook {

/// `all`: how many there are, where only the first are given.
void rejection_table(HtmlWriter& html, const CaptureInfo& capture,
                     const std::vector<Rejection>& rejections, std::uint64_t all);

}  // namespace rangebook

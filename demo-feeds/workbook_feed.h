// A shop's export as a workbook.
#pragma once

#include <string>

#include "demo-feeds/story.h"

namespace demo {

/// The rows of csv_feed as the one sheet of an XLSX workbook, prices as numbers, under a title. The
/// workbook says it was made on the day of the capture, so that the same bytes come out every time.
std::string workbook_feed(const House& house, const Capture& capture);

}  // namespace demo

// What could not be taken in, for reading and for a spreadsheet.
#pragma once

#include <string>
#include <vector>

#include "schema/capture.h"
#include "schema/rejection.h"

namespace rangebook {

/// One line: `aw26.csv:17: bad-price: price: what is wrong. How to fix it.`
std::string rejection_line(const CaptureInfo& capture, const Rejection& rejection);

/// One line each, with the text in question below, and the counts at the end.
std::string rejections_text(const CaptureInfo& capture, const std::vector<Rejection>& rejections);

/// One row each, safe to open in a spreadsheet.
std::string rejections_csv(const CaptureInfo& capture, const std::vector<Rejection>& rejections);

/// `rangebook.rejections/1`, see schema/FORMAT.md.
std::string rejections_json(const CaptureInfo& capture, const std::vector<Rejection>& rejections);

}  // namespace rangebook

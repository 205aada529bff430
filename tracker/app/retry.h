// Reading the documents of a capture again, from the book, with another mapping.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "schema/mapping_preview.h"
#include "schema/rejection.h"
#include "tracker/app/capture_report.h"
#include "tracker/app/request.h"
#include "tracker/store/book.h"

namespace rangebook {

struct RetryReport {
  CaptureReport capture;
  std::uint64_t lines_before = 0;
  std::uint64_t refused_before = 0;        ///< rows and cells
  std::uint64_t cured = 0;                 ///< of these
  std::uint64_t newly_refused = 0;         ///< rows and cells that were read before
  std::vector<DocumentPreview> documents;  ///< only where nothing is kept
};

/// Reads the kept documents of a capture again, each with what was said about it then and what is
/// said now, in one transaction. The capture keeps its id, date and documents; its lines and its
/// rejections are what the documents say under this mapping. Without `keep`: what it would come to.
/// When not a single line can be read, or nothing changes, the book stays as it is.
std::variant<RetryReport, NotThere> retry_capture(Book& book, const RetryRequest& request,
                                                  bool keep, const ProgressCallback& progress);

}  // namespace rangebook

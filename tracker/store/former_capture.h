// A capture as it was before it is read again, with all that depends on it.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "schema/capture.h"
#include "schema/rejection.h"
#include "tracker/store/book.h"
#include "tracker/store/manifest.h"

namespace rangebook {

struct FormerCapture {
  /// A list of lines that is a delta against this capture's.
  struct Dependent {
    std::int64_t capture = 0;
    Manifest manifest;
  };

  CaptureInfo info;
  Manifest manifest;
  std::string origins;
  std::vector<Rejection> rejections;
  std::vector<Dependent> dependents;
};

/// Throws Error when the capture is damaged.
FormerCapture read_former_capture(const Book& book, const CaptureInfo& capture);

/// Whether the book has the capture as it was: its lines, origins, documents and rejections.
bool same_as_former(const Book& book, const FormerCapture& former, const CaptureInfo& info,
                    const Manifest& manifest);

}  // namespace rangebook

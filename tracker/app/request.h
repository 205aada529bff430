// What a command asks for, after the command line was understood. Pages and tests use the same
// values, so they cannot ask for anything the command line cannot.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "schema/capture.h"

namespace rangebook {

struct CaptureRequest {
  std::vector<std::string> files;  ///< files, or folders whose pages and tables are meant
  std::string shop;                ///< slug
  std::string season;
  std::optional<Day> on;  ///< absent: today
  Scope scope;
  bool dry_run = false;
};

/// Names one capture: a season (its latest capture), a date, or a capture id.
struct CompareRequest {
  std::string shop;
  std::string from;  ///< empty: the capture before `to` of another season
  std::string to;    ///< empty: the latest
};

}  // namespace rangebook

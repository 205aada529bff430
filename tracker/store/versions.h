// Finding or writing the version of a part: what has not changed is not written again.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "tracker/store/pack.h"

namespace rangebook {

/// Versions of one part of one shop's lines, for reading and appending.
class PartVersions {
 public:
  PartVersions(const Database& database, std::int64_t shop, Part part);

  /// The version with these canonical bytes: `previous` if it has them, else any other that has,
  /// else a new one. New offers become a delta against `previous` where that is shorter.
  Version put(std::string_view canonical, std::optional<Version> previous);
  void flush() { writer_.flush(); }

 private:
  bool holds(Version version, std::string_view canonical);
  std::optional<std::string> delta(std::string_view canonical, Version previous);

  Part part_;
  PackReader reader_;
  PackWriter writer_;
};

}  // namespace rangebook

// Text forms of a capture's scope.
#include "schema/capture.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace rangebook {

std::string to_string(const Scope& scope) {
  switch (scope.kind) {
    case Scope::Kind::all:
      return "all";
    case Scope::Kind::picks:
      return "picks";
    case Scope::Kind::categories:
      return fmt::format("{}", fmt::join(scope.categories, ","));
  }
  return {};
}

}  // namespace rangebook

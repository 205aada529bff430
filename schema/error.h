// The one exception type: the environment is broken (disk, book file, build). Bad input never
// throws; it is returned as a Rejection or another value.
#pragma once

#include <stdexcept>
#include <string>

namespace rangebook {

/// A broken environment. The message says what failed and what the user can do. Caught only in
/// `main` and in a request handler.
class Error : public std::runtime_error {
 public:
  explicit Error(const std::string& message) : std::runtime_error(message) {}
};

}  // namespace rangebook

// A line on stderr that says how far the work is, when somebody is watching and it takes long.
#pragma once

#include <chrono>
#include <cstdint>

namespace rangebook {

class Progress {
 public:
  Progress();
  ~Progress() { clear(); }
  Progress(const Progress&) = delete;
  Progress& operator=(const Progress&) = delete;

  /// Bytes read, and bytes in all.
  void operator()(std::uint64_t done, std::uint64_t all);
  /// Takes the line away again; before anything else is printed.
  void clear();

 private:
  using Clock = std::chrono::steady_clock;

  bool watched_ = false;
  bool shown_ = false;
  Clock::time_point start_ = Clock::now();
  Clock::time_point last_ = start_;
};

}  // namespace rangebook

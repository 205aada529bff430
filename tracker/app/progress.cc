// Twice a second at most; nothing where stderr is no terminal.
#include "tracker/app/progress.h"

#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <cstdio>
#include <utility>

namespace rangebook {
namespace {

constexpr auto kQuietTime = std::chrono::milliseconds(500);
constexpr double kMega = 1e6;

}  // namespace

Progress::Progress() : watched_(::isatty(STDERR_FILENO) == 1) {}

void Progress::operator()(std::uint64_t done, std::uint64_t all) {
  const auto now = Clock::now();
  if (!watched_ || now - last_ < kQuietTime) return;
  last_ = now;
  shown_ = true;
  const double seconds = std::chrono::duration<double>(now - start_).count();
  const double rate = static_cast<double>(done) / seconds;
  if (done >= all) {
    fmt::print(stderr, "\r{:.1f} MB read, {:.1f} MB/s; writing .. \x1b[K",
               static_cast<double>(all) / kMega, rate / kMega);
    return;
  }
  fmt::print(stderr, "\r{:3}% of {:.1f} MB read, {:.1f} MB/s, {:.0f} s left \x1b[K",
             all > 0 ? done * 100 / all : 100, static_cast<double>(all) / kMega, rate / kMega,
             static_cast<double>(all - done) / std::max(rate, 1.0));
}

void Progress::clear() {
  if (std::exchange(shown_, false)) fmt::print(stderr, "\r\x1b[K");
}

}  // namespace rangebook

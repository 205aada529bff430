// The temporary file loses its name at once: a killed import leaves nothing behind.
#include "tracker/store/spill.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstdlib>
#include <cstring>

#include "schema/error.h"

namespace rangebook {
namespace {

constexpr std::size_t kReadAhead = std::size_t{1} << 20U;

[[noreturn]] void fail(const std::string& folder) {
  throw Error(fmt::format("Cannot use a temporary file in {}: {}.", folder,
                          std::strerror(errno)));  // NOLINT(concurrency-mt-unsafe)
}

}  // namespace

Spill::~Spill() {
  if (file_ >= 0) ::close(file_);
}

void Spill::open() {
  std::string name = folder_ + "/rangebook-import-XXXXXX";
  file_ = ::mkstemp(name.data());
  if (file_ < 0) fail(folder_);
  ::unlink(name.c_str());
}

std::uint64_t Spill::append(std::string_view bytes) {
  if (buffer_.size() + bytes.size() > kSpillMemory) flush();
  const std::uint64_t place = flushed_ + buffer_.size();
  buffer_.append(bytes);
  return place;
}

void Spill::flush() {
  if (file_ < 0) open();
  for (std::size_t done = 0; done < buffer_.size();) {
    const ssize_t wrote = ::pwrite(file_, buffer_.data() + done, buffer_.size() - done,
                                   static_cast<off_t>(flushed_ + done));
    if (wrote <= 0 && errno != EINTR) fail(folder_);
    done += static_cast<std::size_t>(std::max<ssize_t>(wrote, 0));
  }
  flushed_ += buffer_.size();
  buffer_.clear();
}

/// Reads ahead only where reading goes on: pieces that lie scattered are read one by one.
void Spill::fill_window(std::uint64_t place, std::size_t length) {
  const bool goes_on = place >= window_at_ && place <= window_at_ + window_.size();
  const std::size_t wanted = goes_on ? std::max(length, kReadAhead) : length;
  window_.resize(std::min<std::uint64_t>(wanted, flushed_ - place));
  window_at_ = place;
  for (std::size_t done = 0; done < window_.size();) {
    const ssize_t got = ::pread(file_, window_.data() + done, window_.size() - done,
                                static_cast<off_t>(place + done));
    if (got == 0 || (got < 0 && errno != EINTR)) fail(folder_);
    done += static_cast<std::size_t>(std::max<ssize_t>(got, 0));
  }
}

void Spill::read(std::uint64_t place, std::size_t length, std::string& out) {
  if (place >= flushed_) {
    out.assign(buffer_, place - flushed_, length);
    return;
  }
  const bool inside = place >= window_at_ && place + length <= window_at_ + window_.size();
  if (!inside) fill_window(place, length);
  out.assign(window_, place - window_at_, length);
}

}  // namespace rangebook

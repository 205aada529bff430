// Bytes that wait for the end of an import: in memory while they are few, then in a nameless
// temporary file, so that an import's memory does not grow with its document.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

namespace rangebook {

/// So much is held in memory before the file is used.
inline constexpr std::size_t kSpillMemory = std::size_t{8} << 20U;

class Spill {
 public:
  /// The file, if one is needed, is made in `folder`.
  explicit Spill(std::string folder) : folder_(std::move(folder)) {}
  ~Spill();
  Spill(const Spill&) = delete;
  Spill& operator=(const Spill&) = delete;

  /// Returns the place of the bytes. Throws Error when the disk is full.
  std::uint64_t append(std::string_view bytes);
  /// Reads what was appended; `out` is replaced.
  void read(std::uint64_t place, std::size_t length, std::string& out);

 private:
  void flush();
  void open();
  void fill_window(std::uint64_t place, std::size_t length);

  std::string folder_;
  std::string buffer_;
  std::uint64_t flushed_ = 0;  ///< bytes in the file
  std::string window_;         ///< bytes of the file read ahead
  std::uint64_t window_at_ = 0;
  int file_ = -1;
};

}  // namespace rangebook

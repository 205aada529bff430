// Walking the entries of a zip archive held in memory (libarchive), within limits: a few bytes may
// claim to unpack to more than a disk holds.
#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

#include "importers/record_source.h"
#include "importers/row_reader.h"

struct archive;
struct archive_entry;

namespace rangebook {

/// More entries than this in one archive are refused.
inline constexpr std::size_t kMaxZipEntries = 20'000;
/// All entries of one archive together.
inline constexpr std::uint64_t kMaxUnpackedBytes = std::uint64_t{4} << 30U;
/// Unpacked bytes for each byte of the archive, once past kFreeUnpackedBytes. Tables of text pack 5
/// to 40 times, empty rows of a sheet up to 200 times.
inline constexpr std::uint64_t kMaxUnpackRatio = 400;
inline constexpr std::uint64_t kFreeUnpackedBytes = std::uint64_t{64} << 20U;

class ZipWalk {
 public:
  /// `bytes` must outlive this.
  explicit ZipWalk(std::string_view bytes);
  ~ZipWalk();
  ZipWalk(const ZipWalk&) = delete;
  ZipWalk& operator=(const ZipWalk&) = delete;

  /// Moves to the next file of the archive; false at the end or after a fault.
  bool next();
  /// Its path with `/`, as the archive states it.
  const std::string& path() const { return path_; }
  /// What the archive says that the file unpacks to; nothing when it does not say.
  std::optional<std::uint64_t> stated_bytes() const { return stated_bytes_; }
  /// The next piece of the file, empty at its end or after a fault. Valid until the next call.
  std::string_view read();
  /// The whole file, or as much of it as `max_bytes`; one byte more than that tells that it is
  /// longer.
  std::string read_all(std::size_t max_bytes);
  /// What ended the walk early: a broken archive, a password, a limit.
  const std::optional<DocumentFault>& fault() const { return fault_; }

 private:
  struct Close {
    void operator()(archive* handle) const;
  };

  void fail(RejectionKind kind, std::string what, std::string how_to_fix);
  void fail_broken();
  bool is_within_limits();

  std::string_view bytes_;
  std::unique_ptr<archive, Close> archive_;
  std::string path_;
  std::optional<std::uint64_t> stated_bytes_;
  std::size_t entries_ = 0;
  std::uint64_t unpacked_ = 0;
  std::optional<DocumentFault> fault_;
};

/// A file of an archive as a source of bytes. The walk must outlive this and stay at the file.
class ZipEntrySource final : public ByteSource {
 public:
  explicit ZipEntrySource(ZipWalk& walk) : walk_(walk) {}
  std::string_view next_chunk() override { return walk_.read(); }

 private:
  ZipWalk& walk_;
};

}  // namespace rangebook

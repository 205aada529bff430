// libarchive reads the directory at the end of the archive, so entries come as it lists them.
#include "importers/zip_walk.h"

#include <archive.h>
#include <archive_entry.h>
#include <fmt/format.h>

#include <algorithm>

#include "schema/error.h"

namespace rangebook {

void ZipWalk::Close::operator()(archive* handle) const { archive_read_free(handle); }

ZipWalk::ZipWalk(std::string_view bytes) : bytes_(bytes), archive_(archive_read_new()) {
  if (!archive_) throw Error("libarchive cannot be started: out of memory.");
  archive_read_support_format_zip(archive_.get());
  if (archive_read_open_memory(archive_.get(), bytes.data(), bytes.size()) != ARCHIVE_OK) {
    fail_broken();
  }
}

ZipWalk::~ZipWalk() = default;

bool ZipWalk::next() {
  while (!fault_) {
    archive_entry* entry = nullptr;
    const int result = archive_read_next_header(archive_.get(), &entry);
    if (result == ARCHIVE_EOF) return false;
    if (result != ARCHIVE_OK && result != ARCHIVE_WARN) {
      fail_broken();
      return false;
    }
    if (++entries_ > kMaxZipEntries) {
      fail(RejectionKind::over_limit,
           fmt::format("The archive holds more than {} files.", kMaxZipEntries),
           "Pack fewer files into one archive.");
      return false;
    }
    if (archive_entry_filetype(entry) == AE_IFDIR) continue;
    if (archive_entry_is_encrypted(entry) != 0) {
      fail(RejectionKind::unreadable_document, "The archive is protected by a password.",
           "Unpack it with its password and give the files.");
      return false;
    }
    const char* path = archive_entry_pathname_utf8(entry);
    if (path == nullptr) path = archive_entry_pathname(entry);
    path_ = path == nullptr ? "" : path;
    stated_bytes_.reset();
    if (archive_entry_size_is_set(entry) != 0) {
      stated_bytes_ = static_cast<std::uint64_t>(archive_entry_size(entry));
    }
    std::replace(path_.begin(), path_.end(), '\\', '/');
    return true;
  }
  return false;
}

std::string_view ZipWalk::read() {
  if (fault_) return {};
  const void* data = nullptr;
  std::size_t size = 0;
  la_int64_t offset = 0;
  while (size == 0) {
    const int result = archive_read_data_block(archive_.get(), &data, &size, &offset);
    if (result == ARCHIVE_EOF) return {};
    if (result != ARCHIVE_OK && result != ARCHIVE_WARN) {
      fail_broken();
      return {};
    }
  }
  unpacked_ += size;
  return is_within_limits() ? std::string_view(static_cast<const char*>(data), size)
                            : std::string_view{};
}

std::string ZipWalk::read_all(std::size_t max_bytes) {
  std::string all;
  for (auto piece = read(); !piece.empty() && all.size() <= max_bytes; piece = read()) {
    all += piece.substr(0, max_bytes + 1 - all.size());
  }
  return all;
}

bool ZipWalk::is_within_limits() {
  if (unpacked_ > kMaxUnpackedBytes) {
    fail(RejectionKind::over_limit,
         fmt::format("The archive unpacks to more than {} GiB.", kMaxUnpackedBytes >> 30U),
         "Give the files that matter, one by one.");
  } else if (unpacked_ > kFreeUnpackedBytes && unpacked_ / kMaxUnpackRatio > bytes_.size()) {
    fail(RejectionKind::over_limit,
         fmt::format("The archive unpacks to more than {} times its size, as archives made to do "
                     "harm do.",
                     kMaxUnpackRatio),
         "Do not open it; ask where it comes from.");
  }
  return !fault_;
}

void ZipWalk::fail(RejectionKind kind, std::string what, std::string how_to_fix) {
  fault_ = DocumentFault{kind, std::move(what), std::move(how_to_fix)};
}

void ZipWalk::fail_broken() {
  fail(RejectionKind::unreadable_document, "The archive is damaged or cut short.",
       "Download or copy it again.");
}

}  // namespace rangebook

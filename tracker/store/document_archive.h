// Keeping documents: every byte a capture came from stays in the book, compressed, under its hash.
#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <string_view>

#include "tracker/store/sqlite.h"

namespace rangebook {

/// Raw bytes of a document in one frame.
inline constexpr std::size_t kFrameBytes = std::size_t{1} << 20U;

struct ArchivedDocument {
  std::int64_t id = 0;
  std::string sha256;  ///< 32 bytes
  std::uint64_t bytes = 0;
  bool was_known = false;  ///< the book had this document already
};

/// Takes one document after the other, within the caller's transaction. Hashing and compressing
/// run on a second thread for documents larger than a frame, so that reading is not held up.
class DocumentArchive {
 public:
  explicit DocumentArchive(const Database& database);
  ~DocumentArchive();
  DocumentArchive(const DocumentArchive&) = delete;
  DocumentArchive& operator=(const DocumentArchive&) = delete;

  /// Appends to the current document. Throws Error when the book cannot be written.
  void add(std::string_view bytes);
  /// Ends the current document. A document whose hash the book knows is not kept twice.
  ArchivedDocument finish();

 private:
  class Worker;

  void push_frame();
  void store(const std::string& frame);
  void begin_document();

  const Database& database_;
  std::unique_ptr<Worker> worker_;
  std::string pending_;
  std::int64_t document_ = 0;  ///< row of the current document, once it has one
  std::int64_t position_ = 0;
  std::uint64_t bytes_ = 0;
};

}  // namespace rangebook

// Frames carry their content size and a checksum, so damage is noticed on reading.
#include "tracker/store/zstd_frame.h"

#include <zstd.h>

#include "schema/error.h"

namespace rangebook {
namespace {

const char kDamaged[] =
    "A compressed block of the book is damaged. Restore the book from a backup, or run "
    "\"rangebook check\" to see what is affected.";

}  // namespace

struct FrameWriter::Context {
  ZSTD_CCtx* zstd = ZSTD_createCCtx();
  Context() = default;
  Context(const Context&) = delete;
  Context& operator=(const Context&) = delete;
  ~Context() { ZSTD_freeCCtx(zstd); }
};

FrameWriter::FrameWriter(int level) : context_(std::make_unique<Context>()) {
  if (!context_->zstd) throw Error("No memory for compression.");
  ZSTD_CCtx_setParameter(context_->zstd, ZSTD_c_compressionLevel, level);
  ZSTD_CCtx_setParameter(context_->zstd, ZSTD_c_checksumFlag, 1);
}

FrameWriter::~FrameWriter() = default;

std::string FrameWriter::compress(std::string_view bytes) {
  std::string frame(ZSTD_compressBound(bytes.size()), '\0');
  const std::size_t size =
      ZSTD_compress2(context_->zstd, frame.data(), frame.size(), bytes.data(), bytes.size());
  if (ZSTD_isError(size) != 0) throw Error("Compression failed: no memory.");
  frame.resize(size);
  return frame;
}

std::string decompress(std::string_view frame, std::uint64_t max_bytes) {
  const unsigned long long size = ZSTD_getFrameContentSize(frame.data(), frame.size());
  if (size == ZSTD_CONTENTSIZE_UNKNOWN || size == ZSTD_CONTENTSIZE_ERROR || size > max_bytes) {
    throw Error(kDamaged);
  }
  std::string bytes(size, '\0');
  const std::size_t got = ZSTD_decompress(bytes.data(), bytes.size(), frame.data(), frame.size());
  if (ZSTD_isError(got) != 0 || got != size) throw Error(kDamaged);
  return bytes;
}

}  // namespace rangebook

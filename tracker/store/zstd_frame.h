// Zstandard frames (RFC 8878), the compressed form of everything large in a book.
#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <string_view>

namespace rangebook {

/// Makes independent frames; keeps its working memory between them. One per thread.
class FrameWriter {
 public:
  explicit FrameWriter(int level);
  ~FrameWriter();
  FrameWriter(const FrameWriter&) = delete;
  FrameWriter& operator=(const FrameWriter&) = delete;

  std::string compress(std::string_view bytes);

 private:
  struct Context;
  std::unique_ptr<Context> context_;
};

/// The content of a frame. Throws Error when it is damaged or claims more than `max_bytes`.
std::string decompress(std::string_view frame, std::uint64_t max_bytes);

}  // namespace rangebook

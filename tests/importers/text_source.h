// A document in memory, handed out in chunks of a chosen size.
#pragma once

#include <string>
#include <string_view>

#include "importers/row_reader.h"

namespace rangebook {

class TextSource final : public ByteSource {
 public:
  explicit TextSource(std::string text, std::size_t chunk = 1 << 16)
      : text_(std::move(text)), chunk_(chunk) {}

  std::string_view next_chunk() override {
    const std::string_view chunk = std::string_view(text_).substr(at_, chunk_);
    at_ += chunk.size();
    return chunk;
  }

 private:
  std::string text_;
  std::size_t chunk_;
  std::size_t at_ = 0;
};

}  // namespace rangebook

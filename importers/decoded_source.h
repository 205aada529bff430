// A document's bytes as UTF-8, whatever they are in, chunk by chunk.
#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <string_view>

#include "importers/document_kind.h"
#include "importers/row_reader.h"
#include "importers/text_encoding.h"

namespace rangebook {

/// Hands on UTF-8 as it stands. Text in another encoding is converted; what cannot be converted
/// becomes U+FFFD. The encoding is detected from the first bytes; a document that is ASCII so far
/// is settled at its first byte above 127. Text that has been UTF-8 stays UTF-8: a later byte that
/// is not goes through as it stands, and all_text() is false from then on.
class DecodedSource final : public ByteSource {
 public:
  /// `encoding` is the user's, by any name ICU knows; empty: detected. `source` must outlive this.
  DecodedSource(ByteSource& source, std::string_view encoding);
  ~DecodedSource() override;

  std::string_view next_chunk() override;
  bool all_text() const override { return all_text_; }
  /// What the first bytes show the document to be, as they stand before decoding.
  DocumentKind kind() const { return kind_; }
  /// Settled once the first chunk has been read, for ASCII later.
  const TextEncoding& encoding() const { return encoding_; }
  /// True when the encoding was named and there is no such encoding; detection is used then.
  bool unknown_name() const { return unknown_name_; }

 private:
  enum class State : std::uint8_t { start, ascii, utf8, convert };
  struct Conversion;

  std::string_view read_start();
  std::string_view pass_on(std::string_view chunk);
  std::string_view judge(std::string_view chunk);
  void check_utf8(std::string_view chunk);
  void convert_from(const std::string& name);
  std::string_view convert(std::string_view chunk);
  std::string_view pull();
  void gather(std::size_t bytes);

  ByteSource& source_;
  State state_ = State::start;
  TextEncoding encoding_;
  DocumentKind kind_ = DocumentKind::text;
  bool named_ = false;
  bool unknown_name_ = false;
  bool all_text_ = true;
  bool at_end_ = false;
  std::string held_;     ///< chunks read together, to judge more than a few bytes at once
  std::string tail_;     ///< a character cut by the end of the last chunk
  std::string decoded_;  ///< what next_chunk() gave last, when converted
  std::unique_ptr<Conversion> conversion_;
};

}  // namespace rangebook

// The body of a MIME part without its transfer encoding (RFC 2045, section 6), and the way back
// from a place in it to the place in the file.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace rangebook {

class MimeBody {
 public:
  /// Decodes `body`, which must outlive this; nothing when the encoding is not known. Broken
  /// encoded text gives what can be read of it.
  static std::optional<MimeBody> decode(std::string_view body, std::string_view encoding);

  std::string_view text() const { return coded_ ? std::string_view(text_) : body_; }
  /// Signs that do not belong into base64.
  std::size_t bad_signs() const { return bad_signs_; }
  /// Where in the encoded body the line begins from which the byte `at` of the text came (in a body
  /// of nothing but short lines, one shortly before); `at` itself where nothing was encoded.
  std::size_t encoded_place(std::size_t at) const;

 private:
  struct Place {
    std::uint32_t text = 0;
    std::uint32_t body = 0;
  };

  std::string_view body_;
  std::string text_;
  bool coded_ = false;
  std::size_t bad_signs_ = 0;
  std::vector<Place> lines_;  ///< where lines of the encoded body begin
};

}  // namespace rangebook

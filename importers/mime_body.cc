// Decoding by gmime, a line at a time, which is what remembers the places.
#include "importers/mime_body.h"

#include <algorithm>

#include "importers/byte_search.h"
#include "importers/gmime_handles.h"

namespace rangebook {
namespace {

constexpr std::size_t kLongestStep = std::size_t{64} << 10U;
// A body of nothing but short lines must not fill the memory: of so many places only some are kept.
constexpr std::size_t kBytesAPlace = 16;
constexpr std::size_t kFreePlaces = std::size_t{1} << 20U;

bool is_base64_sign(char sign) {
  return is_ascii_letter(sign) || is_ascii_digit(sign) || sign == '+' || sign == '/' ||
         sign == '=' || is_html_space(sign);
}

bool is_plain(std::string_view encoding) {
  return encoding.empty() || encoding == "7bit" || encoding == "8bit" || encoding == "binary";
}

}  // namespace

std::optional<MimeBody> MimeBody::decode(std::string_view body, std::string_view encoding) {
  MimeBody decoded;
  decoded.body_ = body;
  if (is_plain(encoding)) return decoded;
  const auto kind = g_mime_content_encoding_from_string(std::string(encoding).c_str());
  if (kind == GMIME_CONTENT_ENCODING_DEFAULT) return std::nullopt;
  if (kind == GMIME_CONTENT_ENCODING_BASE64) {
    const auto good = std::count_if(body.begin(), body.end(), is_base64_sign);
    decoded.bad_signs_ = body.size() - static_cast<std::size_t>(good);
  }
  decoded.coded_ = true;
  GMimeEncoding state;
  g_mime_encoding_init_decode(&state, kind);
  for (std::size_t at = 0; at < body.size();) {
    const std::size_t line_end = std::min(body.find('\n', at), body.size() - 1) + 1;
    const std::size_t size = std::min(line_end - at, kLongestStep);
    const std::size_t done = decoded.text_.size();
    if (decoded.lines_.size() * kBytesAPlace <= at + kFreePlaces) {
      decoded.lines_.push_back({static_cast<std::uint32_t>(done), static_cast<std::uint32_t>(at)});
    }
    decoded.text_.resize(done + g_mime_encoding_outlen(&state, size));
    const std::size_t got =
        g_mime_encoding_step(&state, body.data() + at, size, decoded.text_.data() + done);
    decoded.text_.resize(done + got);
    at += size;
  }
  return decoded;
}

std::size_t MimeBody::encoded_place(std::size_t at) const {
  if (!coded_) return at;
  const auto behind =
      std::upper_bound(lines_.begin(), lines_.end(), at,
                       [](std::size_t place, const Place& line) { return place < line.text; });
  return behind == lines_.begin() ? 0 : (behind - 1)->body;
}

}  // namespace rangebook

// Web archives written by hand for tests.
#pragma once

#include <fstream>
#include <iterator>
#include <stdexcept>
#include <string>
#include <string_view>

namespace rangebook {

inline std::string mhtml_check(const std::string& name) {
  std::ifstream in(RANGEBOOK_CHECKS "/mhtml/" + name, std::ios::binary);
  if (!in) throw std::runtime_error("cannot read " + name);
  return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

/// A part: its header without the empty line, and its body.
inline std::string mime_part(std::string_view header, std::string_view body) {
  return "--b\r\n" + std::string(header) + "\r\n\r\n" + std::string(body) + "\r\n";
}

/// A document of such parts; `more` is added to its content type.
inline std::string mime_document(const std::string& parts, const std::string& more = "") {
  return "MIME-Version: 1.0\r\nContent-Type: multipart/related; boundary=\"b\"" + more +
         "\r\n\r\n" + parts + "--b--\r\n";
}

inline constexpr std::string_view kShownPage =
    "<html><body><h1>Thea wrap coat</h1><p class=price>\xC2\xA3"
    "149.90</p></body></html>";

}  // namespace rangebook

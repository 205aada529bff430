// Text in another encoding, by ICU.
#pragma once

#include <unicode/ucnv.h>

#include <stdexcept>
#include <string>
#include <string_view>

namespace rangebook {

inline std::string recoded(std::string_view utf8, const char* encoding) {
  UErrorCode error = U_ZERO_ERROR;
  std::string out(utf8.size() * 4 + 16, '\0');
  const int size = ucnv_convert(encoding, "UTF-8", out.data(), static_cast<int>(out.size()),
                                utf8.data(), static_cast<int>(utf8.size()), &error);
  if (U_FAILURE(error)) throw std::runtime_error(std::string("no encoding ") + encoding);
  out.resize(static_cast<std::size_t>(size));
  return out;
}

}  // namespace rangebook

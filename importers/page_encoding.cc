// Encodings by the rules of the WHATWG encoding standard; conversion by ICU.
#include "importers/page_encoding.h"

#include <unicode/ucnv.h>

#include <algorithm>
#include <array>
#include <utility>

#include "importers/html_tag.h"
#include "importers/utf8_sequence.h"

namespace rangebook {
namespace {

constexpr std::string_view kUtf8 = "UTF-8";
constexpr std::string_view kWestern = "windows-1252";

// Labels that mean something else than their name says.
constexpr auto kLabels = std::to_array<std::pair<std::string_view, std::string_view>>(
    {{"utf8", kUtf8},
     {"unicode-1-1-utf-8", kUtf8},
     // A page whose ASCII could be read cannot be in UTF-16.
     {"utf-16", kUtf8},
     {"utf-16le", kUtf8},
     {"utf-16be", kUtf8},
     {"iso-8859-1", kWestern},
     {"iso8859-1", kWestern},
     {"iso_8859-1", kWestern},
     {"latin1", kWestern},
     {"l1", kWestern},
     {"ascii", kWestern},
     {"us-ascii", kWestern},
     {"cp1252", kWestern},
     {"x-cp1252", kWestern},
     {"iso-8859-9", "windows-1254"},
     {"iso-8859-11", "windows-874"},
     {"gb2312", "GBK"},
     {"x-sjis", "Shift_JIS"},
     {"ks_c_5601-1987", "EUC-KR"}});

std::string meaning_of(const std::string& label) {
  for (const auto& [name, meaning] : kLabels) {
    if (equals_ignoring_case(label, name)) return std::string(meaning);
  }
  return equals_ignoring_case(label, kUtf8) ? std::string(kUtf8) : label;
}

// Markup in UTF-16 without a mark begins with "<" and a zero byte, in one order or the other.
std::string_view utf16_shape(std::string_view document) {
  using namespace std::string_view_literals;
  if (document.size() < 4) return {};
  const auto head = document.substr(0, 4);
  if (head[0] == '<' && head[1] == '\0' && head[2] != '\0' && head[3] == '\0') return "UTF-16LE";
  if (head[0] == '\0' && head[1] == '<' && head[2] == '\0' && head[3] != '\0') return "UTF-16BE";
  return {};
}

}  // namespace

std::size_t byte_order_mark(std::string_view document) {
  if (document.starts_with("\xEF\xBB\xBF")) return 3;
  return document.starts_with("\xFF\xFE") || document.starts_with("\xFE\xFF") ? 2 : 0;
}

std::string find_encoding(std::string_view document, std::optional<std::string> declared) {
  if (document.starts_with("\xEF\xBB\xBF")) return std::string(kUtf8);
  if (document.starts_with("\xFF\xFE")) return "UTF-16LE";
  if (document.starts_with("\xFE\xFF")) return "UTF-16BE";
  const auto shape = utf16_shape(document);
  if (!shape.empty()) return std::string(shape);
  if (declared && !declared->empty()) return meaning_of(*declared);
  return utf8_prefix(document) == document.size() ? std::string(kUtf8) : std::string(kWestern);
}

std::optional<PageText> decode_page(std::string_view document, std::string_view encoding) {
  PageText page{.text = document.substr(byte_order_mark(document)),
                .encoding = std::string(encoding),
                .converted = {}};
  if (encoding == kUtf8) return page;
  UErrorCode error = U_ZERO_ERROR;
  const auto source_size = static_cast<std::int32_t>(page.text.size());
  const std::int32_t size = ucnv_convert("UTF-8", page.encoding.c_str(), nullptr, 0,
                                         page.text.data(), source_size, &error);
  if (error != U_BUFFER_OVERFLOW_ERROR && U_FAILURE(error)) return std::nullopt;
  page.converted.resize(static_cast<std::size_t>(size) + 1);
  error = U_ZERO_ERROR;
  ucnv_convert("UTF-8", page.encoding.c_str(), page.converted.data(), size + 1, page.text.data(),
               source_size, &error);
  if (U_FAILURE(error)) return std::nullopt;
  page.converted.resize(static_cast<std::size_t>(size));
  page.text = {};
  return page;
}

std::uint64_t encoded_size(std::string_view text, const std::string& encoding) {
  UErrorCode error = U_ZERO_ERROR;
  const std::int32_t size = ucnv_convert(encoding.c_str(), "UTF-8", nullptr, 0, text.data(),
                                         static_cast<std::int32_t>(text.size()), &error);
  return static_cast<std::uint64_t>(std::max<std::int32_t>(size, 0));
}

}  // namespace rangebook

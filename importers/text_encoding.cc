// Byte order marks, zero bytes, and ICU's detector for the rest.
#include "importers/text_encoding.h"

#include <unicode/ucnv.h>
#include <unicode/ucsdet.h>

#include <algorithm>
#include <array>
#include <memory>

namespace rangebook {
namespace {

struct Mark {
  std::string_view bytes;
  std::string_view name;
};
using namespace std::string_view_literals;
// UTF-32 first: its little-endian mark begins with that of UTF-16.
constexpr std::array<Mark, 5> kMarks{{{"\xFF\xFE\0\0"sv, "UTF-32LE"},
                                      {"\0\0\xFE\xFF"sv, "UTF-32BE"},
                                      {"\xEF\xBB\xBF"sv, "UTF-8"},
                                      {"\xFF\xFE"sv, "UTF-16LE"},
                                      {"\xFE\xFF"sv, "UTF-16BE"}}};

/// Encodings that shops' exports come in. ICU also detects others (of mail and of mainframes) that
/// would be mistaken for these.
constexpr std::array<std::string_view, 22> kLikely{
    "windows-1250", "windows-1251", "windows-1252", "windows-1253", "windows-1254", "windows-1255",
    "windows-1256", "ISO-8859-1",   "ISO-8859-2",   "ISO-8859-5",   "ISO-8859-7",   "ISO-8859-9",
    "KOI8-R",       "Shift_JIS",    "GB18030",      "Big5",         "EUC-JP",       "EUC-KR",
    "windows-1257", "windows-1258", "ISO-8859-15",  "IBM850"};
/// Another encoding must be so much likelier than windows-1252 (ICU's confidence, 0 to 100).
constexpr int kClearlyLikelier = 12;

/// What a text in Latin letters has among its high bytes: letters of Western words and the signs of
/// prices, as windows-1252 places them.
bool is_western(unsigned char byte) {
  constexpr std::string_view kSigns =
      "\x80\x82\x84\x85\x91\x92\x93\x94\x96\x97\x99\xA0\xA3\xA9\xAB\xAE\xB0\xB4\xB7\xBB\xBD\xBE"
      "\xBC";
  if (kSigns.find(static_cast<char>(byte)) != std::string_view::npos) return true;
  return byte >= 0xC0 && byte != 0xD7 && byte != 0xF7;
}

std::size_t ascii_letters(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char sign) {
    return (sign >= 'a' && sign <= 'z') || (sign >= 'A' && sign <= 'Z');
  }));
}

/// Few high bytes, alone among ASCII letters: Western text, whatever a statistic of so few says.
bool looks_western(std::string_view sample) {
  std::size_t high = 0;
  std::size_t western = 0;
  std::size_t runs = 0;
  bool before = false;
  for (const char sign : sample) {
    const bool is_high = static_cast<unsigned char>(sign) >= 0x80;
    high += is_high ? 1U : 0U;
    western += is_high && is_western(static_cast<unsigned char>(sign)) ? 1U : 0U;
    runs += is_high && before ? 1U : 0U;
    before = is_high;
  }
  return western == high && runs * 5 <= high && high * 6 < ascii_letters(sample);
}

std::string_view family(std::string_view name) {
  return name == "ISO-8859-1" ? "windows-1252" : name == "ISO-8859-9" ? "windows-1254" : name;
}

}  // namespace

std::optional<TextEncoding> proven_encoding(std::string_view head) {
  for (const auto& mark : kMarks) {
    if (head.starts_with(mark.bytes)) {
      return TextEncoding{std::string(mark.name), mark.bytes.size()};
    }
  }
  std::size_t even = 0;
  std::size_t odd = 0;
  const std::size_t pairs = std::min<std::size_t>(head.size(), 1024) / 2;
  for (std::size_t i = 0; i < pairs; ++i) {
    even += head[2 * i] == 0 ? 1U : 0U;
    odd += head[2 * i + 1] == 0 ? 1U : 0U;
  }
  if (pairs >= 4 && odd * 2 > pairs && even * 8 < pairs) return TextEncoding{"UTF-16LE", 0};
  if (pairs >= 4 && even * 2 > pairs && odd * 8 < pairs) return TextEncoding{"UTF-16BE", 0};
  return std::nullopt;
}

std::string guess_encoding(std::string_view sample) {
  constexpr const char* kWestern = "windows-1252";
  if (looks_western(sample)) return kWestern;
  UErrorCode error = U_ZERO_ERROR;
  const std::unique_ptr<UCharsetDetector, decltype(&ucsdet_close)> detector(ucsdet_open(&error),
                                                                            &ucsdet_close);
  ucsdet_setText(detector.get(), sample.data(), static_cast<std::int32_t>(sample.size()), &error);
  std::int32_t count = 0;
  const UCharsetMatch** matches = ucsdet_detectAll(detector.get(), &count, &error);
  if (U_FAILURE(error)) return kWestern;
  int western = 0;
  int most = 0;
  std::string best = kWestern;
  for (std::int32_t i = 0; i < count; ++i) {
    const std::string name(family(ucsdet_getName(matches[i], &error)));
    const int confidence = ucsdet_getConfidence(matches[i], &error);
    if (name == kWestern) western = std::max(western, confidence);
    if (std::find(kLikely.begin(), kLikely.end(), name) == kLikely.end()) continue;
    if (confidence > most) {
      most = confidence;
      best = name;
    }
  }
  return most >= western + kClearlyLikelier ? best : kWestern;
}

std::optional<std::string> encoding_named(std::string_view name) {
  UErrorCode error = U_ZERO_ERROR;
  const std::string wanted(name);
  const std::unique_ptr<UConverter, decltype(&ucnv_close)> found(ucnv_open(wanted.c_str(), &error),
                                                                 &ucnv_close);
  if (U_FAILURE(error) || wanted.empty()) return std::nullopt;
  for (const char* const standard : {"MIME", "IANA"}) {
    const char* const known = ucnv_getStandardName(wanted.c_str(), standard, &error);
    if (U_SUCCESS(error) && known != nullptr) return known;
    error = U_ZERO_ERROR;
  }
  return wanted;
}

bool is_binary(std::string_view sample) {
  std::size_t controls = 0;
  for (const char sign : sample) {
    const auto byte = static_cast<unsigned char>(sign);
    const bool text = byte >= 0x20 || (byte >= 0x09 && byte <= 0x0D) || byte == 0x1A ||
                      byte == 0x1E || byte == 0x1F;
    controls += text ? 0U : 1U;
  }
  return controls > 0 && controls * 20 > sample.size();
}

}  // namespace rangebook

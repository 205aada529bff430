// UTF-8 passes through without a copy; everything else goes through an ICU converter.
#include "importers/decoded_source.h"

#include <unicode/ucnv.h>

#include <algorithm>
#include <array>

#include "importers/utf8.h"
#include "schema/error.h"

namespace rangebook {
namespace {

/// So many bytes at the front tell UTF-16 from text of one byte a sign.
constexpr std::size_t kStartBytes = 4096;
/// So many bytes from the first one above 127 tell UTF-8 from other encodings.
constexpr std::size_t kJudgeBytes = 32768;

bool is_high(char sign) { return static_cast<unsigned char>(sign) >= 0x80; }

/// Length that the first byte of a UTF-8 character announces; 1 when it announces none.
std::size_t announced_length(char lead) {
  const auto byte = static_cast<unsigned char>(lead);
  return byte >= 0xF0 ? 4 : byte >= 0xE0 ? 3 : byte >= 0xC2 ? 2 : 1;
}

/// How many bytes at the end begin a character that the end cuts.
std::size_t cut_bytes(std::string_view text) {
  for (std::size_t back = 1; back <= std::min<std::size_t>(3, text.size()); ++back) {
    const char sign = text[text.size() - back];
    if (!is_high(sign)) return 0;
    if (announced_length(sign) > 1) return announced_length(sign) > back ? back : 0;
  }
  return 0;
}

/// More well-formed characters beyond ASCII than bytes that belong to none.
bool is_mostly_utf8(std::string_view text) {
  text.remove_suffix(cut_bytes(text));
  std::size_t good = 0;
  std::size_t bad = 0;
  while (!text.empty()) {
    const std::size_t at = first_bad_byte(text).value_or(text.size());
    for (std::size_t i = 0; i < at; ++i) good += announced_length(text[i]) > 1 ? 1U : 0U;
    if (at == text.size()) break;
    bad += text[at] == 0 ? 0U : 1U;
    text.remove_prefix(at + 1);
  }
  return good > bad;
}

}  // namespace

/// Two converters and the UTF-16 text between them.
struct DecodedSource::Conversion {
  UConverter* from = nullptr;
  UConverter* to = nullptr;
  std::array<char16_t, 1024> pivot{};
  char16_t* pivot_source = pivot.data();
  char16_t* pivot_target = pivot.data();

  explicit Conversion(const std::string& name) {
    UErrorCode error = U_ZERO_ERROR;
    from = ucnv_open(name.c_str(), &error);
    to = ucnv_open("UTF-8", &error);
    if (U_FAILURE(error)) throw Error("ICU cannot convert " + name + "; is its data installed?");
  }
  ~Conversion() {
    ucnv_close(from);
    ucnv_close(to);
  }
  Conversion(const Conversion&) = delete;
  Conversion& operator=(const Conversion&) = delete;

  void append(std::string& out, std::string_view bytes, bool last) {
    const char* at = bytes.data();
    const char* const end = at + bytes.size();
    std::array<char, 8192> buffer{};
    UErrorCode error = U_BUFFER_OVERFLOW_ERROR;
    while (error == U_BUFFER_OVERFLOW_ERROR) {
      error = U_ZERO_ERROR;
      char* target = buffer.data();
      ucnv_convertEx(to, from, &target, buffer.data() + buffer.size(), &at, end, pivot.data(),
                     &pivot_source, &pivot_target, pivot.data() + pivot.size(), 0,
                     static_cast<UBool>(last), &error);
      out.append(buffer.data(), target);
    }
  }
};

DecodedSource::DecodedSource(ByteSource& source, std::string_view encoding) : source_(source) {
  if (encoding.empty()) return;
  const auto name = encoding_named(encoding);
  unknown_name_ = !name;
  named_ = name.has_value();
  if (name) encoding_.name = *name;
}

DecodedSource::~DecodedSource() = default;

std::string_view DecodedSource::pull() {
  const std::string_view chunk = at_end_ ? std::string_view{} : source_.next_chunk();
  at_end_ = chunk.empty();
  return chunk;
}

/// Reads on until `held_` has so many bytes, or the document ends.
void DecodedSource::gather(std::size_t bytes) {
  while (held_.size() < bytes) {
    const std::string_view chunk = pull();
    if (chunk.empty()) return;
    held_.append(chunk);
  }
}

std::string_view DecodedSource::next_chunk() {
  if (state_ == State::start) return read_start();
  const std::string_view chunk = pull();
  if (state_ == State::convert) return convert(chunk);
  return pass_on(chunk);
}

std::string_view DecodedSource::read_start() {
  gather(kStartBytes);
  kind_ = kind_of(held_);
  const auto proven = named_ ? std::nullopt : proven_encoding(held_);
  if (proven) encoding_ = *proven;
  if (named_ && held_.starts_with("\xEF\xBB\xBF")) encoding_.mark_bytes = 3;
  if (!encoding_.is_utf8()) {
    convert_from(encoding_.name);
    return convert(std::string_view(held_).substr(encoding_.mark_bytes));
  }
  state_ = proven || named_ ? State::utf8 : State::ascii;
  return pass_on(held_);
}

std::string_view DecodedSource::pass_on(std::string_view chunk) {
  if (!all_text_ && state_ == State::utf8) return chunk;
  if (state_ == State::ascii) {
    if (is_plain_ascii(chunk)) return chunk;
    if (std::any_of(chunk.begin(), chunk.end(), is_high)) return judge(chunk);
    all_text_ = false;  // a NUL
    return chunk;
  }
  check_utf8(chunk);
  return chunk;
}

/// The first bytes beyond ASCII settle the encoding.
std::string_view DecodedSource::judge(std::string_view chunk) {
  if (chunk.data() != held_.data()) held_.assign(chunk);
  const auto first =
      static_cast<std::size_t>(std::find_if(held_.begin(), held_.end(), is_high) - held_.begin());
  gather(first + kJudgeBytes);
  if (is_mostly_utf8(held_)) {
    state_ = State::utf8;
    check_utf8(held_);
    return held_;
  }
  encoding_.name = guess_encoding(std::string_view(held_).substr(0, first + kJudgeBytes));
  convert_from(encoding_.name);
  return convert(held_);
}

void DecodedSource::check_utf8(std::string_view chunk) {
  if (chunk.empty()) all_text_ = all_text_ && tail_.empty();
  while (!tail_.empty() && !chunk.empty()) {
    tail_.push_back(chunk.front());
    chunk.remove_prefix(1);
    if (tail_.size() < announced_length(tail_.front())) continue;
    all_text_ = all_text_ && !first_bad_byte(tail_);
    tail_.clear();
  }
  const std::size_t cut = cut_bytes(chunk);
  all_text_ = all_text_ && !first_bad_byte(chunk.substr(0, chunk.size() - cut));
  tail_.append(chunk.substr(chunk.size() - cut));
}

void DecodedSource::convert_from(const std::string& name) {
  state_ = State::convert;
  conversion_ = std::make_unique<Conversion>(name);
}

/// Never empty before the end, even when a chunk holds nothing but the first half of a character.
std::string_view DecodedSource::convert(std::string_view chunk) {
  decoded_.clear();
  while (true) {
    conversion_->append(decoded_, chunk, at_end_);
    if (!decoded_.empty() || at_end_) break;
    chunk = pull();
  }
  if (decoded_.find('\0') != std::string::npos) all_text_ = false;
  return decoded_;
}

}  // namespace rangebook

// The number and text forms that all stored bytes are made of (schema/FORMAT.md, "Bytes").
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace rangebook {

/// Unsigned LEB128: seven bits a byte, lowest first, high bit set on all but the last.
inline void put_varint(std::string& out, std::uint64_t value) {
  while (value >= 0x80) {
    out.push_back(static_cast<char>(static_cast<unsigned char>(value | 0x80U)));
    value >>= 7U;
  }
  out.push_back(static_cast<char>(static_cast<unsigned char>(value)));
}

/// Signed numbers as unsigned ones with the sign in the lowest bit, so small ones stay short.
inline std::uint64_t zigzag(std::int64_t value) {
  return (static_cast<std::uint64_t>(value) << 1U) ^ static_cast<std::uint64_t>(value >> 63);
}
inline std::int64_t unzigzag(std::uint64_t value) {
  return static_cast<std::int64_t>(value >> 1U) ^ -static_cast<std::int64_t>(value & 1U);
}

/// Length, then bytes.
inline void put_text(std::string& out, std::string_view text) {
  put_varint(out, text.size());
  out.append(text);
}

/// Reads what the functions above wrote. A reader that runs past its bytes is `failed()` and gives
/// zeros and empty texts from there on: damaged bytes never become an endless loop or a crash.
class ByteReader {
 public:
  explicit ByteReader(std::string_view bytes) : at_(bytes.data()), end_(at_ + bytes.size()) {}

  bool failed() const { return failed_; }
  bool at_end() const { return at_ == end_; }
  std::size_t left() const { return static_cast<std::size_t>(end_ - at_); }

  std::uint64_t varint() {
    std::uint64_t value = 0;
    for (unsigned shift = 0; shift < 64 && at_ != end_; shift += 7) {
      const auto byte = static_cast<unsigned char>(*at_++);
      value |= std::uint64_t{byte & 0x7FU} << shift;
      if (byte < 0x80) return value;
    }
    return fail();
  }

  std::int64_t signed_varint() { return unzigzag(varint()); }

  std::uint8_t byte() {
    if (at_ == end_) return static_cast<std::uint8_t>(fail());
    return static_cast<std::uint8_t>(*at_++);
  }

  std::string_view bytes(std::uint64_t length) {
    if (length > left()) {
      fail();
      return {};
    }
    const std::string_view found(at_, length);
    at_ += length;
    return found;
  }

  std::string_view text() { return bytes(varint()); }

  /// A count of things that take at least `least` bytes each; fails when they cannot be there.
  std::size_t count(std::size_t least = 1) {
    const std::uint64_t value = varint();
    return value > left() / least ? fail() : value;
  }

 private:
  std::uint64_t fail() {
    failed_ = true;
    at_ = end_;
    return 0;
  }

  const char* at_;
  const char* end_;
  bool failed_ = false;
};

}  // namespace rangebook

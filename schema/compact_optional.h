// An optional number in the space of the number. A capture has a million prices; std::optional
// would double them and the time it takes to go through them.
#pragma once

#include <compare>
#include <optional>

namespace rangebook {

/// Behaves as std::optional<T> and converts to and from it. `Absent` is a value no present one
/// has; it never shows outside this class.
template <typename T, T Absent>
class CompactOptional {
 public:
  constexpr CompactOptional() = default;
  constexpr CompactOptional(std::nullopt_t) {}              // NOLINT(google-explicit-constructor)
  constexpr CompactOptional(T value) : value_(value) {}     // NOLINT(google-explicit-constructor)
  constexpr CompactOptional(const std::optional<T>& value)  // NOLINT(google-explicit-constructor)
      : value_(value.value_or(Absent)) {}

  constexpr operator std::optional<T>() const {  // NOLINT(google-explicit-constructor)
    return has_value() ? std::optional<T>(value_) : std::nullopt;
  }
  constexpr bool has_value() const { return value_ != Absent; }
  constexpr explicit operator bool() const { return has_value(); }
  constexpr T operator*() const { return value_; }
  constexpr void reset() { value_ = Absent; }
  constexpr T value_or(T other) const { return has_value() ? value_ : other; }

  constexpr bool operator==(const CompactOptional&) const = default;

 private:
  T value_ = Absent;
};

}  // namespace rangebook

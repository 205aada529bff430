// Seeded random numbers that are the same on every machine and compiler: the standard library's
// distributions are not.
#pragma once

#include <cstddef>
#include <cstdint>
#include <span>

namespace rangebook::bench {

/// SplitMix64 (Steele, Lea, Flood 2014, public domain; from memory). Each (seed, line, purpose) has
/// its own stream, so that any row can be made without the rows before it.
class Random {
 public:
  Random(std::uint64_t seed, std::uint64_t line, std::uint64_t purpose)
      : state_(mix(mix(seed + kStep) ^ mix(line * 2 + 1) ^ mix(purpose * 2 + kStep))) {}

  std::uint64_t next() {
    state_ += kStep;
    return mix(state_);
  }
  /// 0 .. bound - 1; bound > 0.
  std::uint32_t below(std::uint32_t bound) {
    return static_cast<std::uint32_t>(((next() >> 32U) * bound) >> 32U);
  }
  bool in_a_thousand(std::uint32_t parts) { return below(1000) < parts; }
  template <class T, std::size_t N>
  const T& one_of(const T (&choices)[N]) {
    return choices[below(N)];
  }

  static std::uint64_t mix(std::uint64_t value) {
    value = (value ^ (value >> 30U)) * 0xbf58476d1ce4e5b9U;
    value = (value ^ (value >> 27U)) * 0x94d049bb133111ebU;
    return value ^ (value >> 31U);
  }

 private:
  static constexpr std::uint64_t kStep = 0x9e3779b97f4a7c15U;
  std::uint64_t state_;
};

/// A one-to-one shuffle of 0 .. domain - 1 (domain <= 2^38): a four-round Feistel network that is
/// walked until it lands inside. Gives unique numbers that show no order.
inline std::uint64_t shuffled(std::uint64_t value, std::uint64_t domain, std::uint64_t seed) {
  constexpr unsigned kHalf = 19;
  constexpr std::uint64_t kMask = (1U << kHalf) - 1;
  do {
    for (std::uint64_t round = 0; round < 4; ++round) {
      const std::uint64_t left = value >> kHalf;
      const std::uint64_t right = value & kMask;
      value = (right << kHalf) | (left ^ (Random::mix(right + seed + (round << 32U)) & kMask));
    }
  } while (value >= domain);
  return value;
}

}  // namespace rangebook::bench

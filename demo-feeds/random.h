// Random numbers that are the same on every machine and compiler. The standard library's
// distributions may differ between implementations, so none of them is used.
#pragma once

#include <cstddef>
#include <cstdint>
#include <utility>
#include <vector>

namespace demo {

/// SplitMix64 (public domain, Sebastiano Vigna 2015): one 64-bit state, any seed is good.
class Random {
 public:
  explicit Random(std::uint64_t seed) : state_(seed) {}

  std::uint64_t next() {
    state_ += 0x9E3779B97F4A7C15ULL;
    std::uint64_t z = state_;
    z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9ULL;
    z = (z ^ (z >> 27)) * 0x94D049BB133111EBULL;
    return z ^ (z >> 31);
  }
  /// 0 .. limit-1; `limit` must not be 0. The slight bias of the remainder does no harm here.
  std::size_t below(std::size_t limit) { return static_cast<std::size_t>(next() % limit); }
  int between(int low, int high) {
    return low + static_cast<int>(below(static_cast<std::size_t>(high - low + 1)));
  }
  bool percent(int chance) { return between(1, 100) <= chance; }

  template <typename T>
  const T& one_of(const std::vector<T>& items) {
    return items[below(items.size())];
  }
  /// Fisher-Yates.
  template <typename T>
  void shuffle(std::vector<T>& items) {
    for (std::size_t i = items.size(); i > 1; --i) std::swap(items[i - 1], items[below(i)]);
  }

 private:
  std::uint64_t state_;
};

}  // namespace demo

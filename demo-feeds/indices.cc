// Price indices by integer arithmetic. Definitions: ILO/IMF Consumer Price Index Manual (2020),
// elementary indices (from memory).
#include "demo-feeds/indices.h"

#include <algorithm>
#include <cstdint>
#include <stdexcept>

namespace demo {
namespace {

constexpr std::int64_t kOne = 1'000'000;

/// A natural number of any size; only what a product of prices needs.
class Product {
 public:
  void times(std::uint32_t factor) {
    std::uint64_t carry = 0;
    for (std::uint32_t& digit : digits_) {
      carry += std::uint64_t{digit} * factor;
      digit = static_cast<std::uint32_t>(carry);
      carry >>= 32;
    }
    if (carry != 0) digits_.push_back(static_cast<std::uint32_t>(carry));
  }
  bool operator<=(const Product& other) const {
    if (digits_.size() != other.digits_.size()) return digits_.size() < other.digits_.size();
    return !std::lexicographical_compare(other.digits_.rbegin(), other.digits_.rend(),
                                         digits_.rbegin(), digits_.rend());
  }

 private:
  std::vector<std::uint32_t> digits_{1};  // lowest first
};

std::string six_places(std::int64_t millionths) {
  const std::string fraction = std::to_string(millionths % kOne);
  return std::to_string(millionths / kOne) + "." + std::string(6 - fraction.size(), '0') + fraction;
}

/// True when (half_steps / 2,000,000)^n <= product of ratios: the index is at least that large.
bool at_least(const std::vector<PricePair>& pairs, std::int64_t half_steps) {
  Product left;
  Product right;
  for (const auto& [then, now] : pairs) {
    left.times(static_cast<std::uint32_t>(half_steps));
    left.times(static_cast<std::uint32_t>(then));
    right.times(static_cast<std::uint32_t>(2 * kOne));
    right.times(static_cast<std::uint32_t>(now));
  }
  return left <= right;
}

}  // namespace

std::string jevons(const std::vector<PricePair>& pairs) {
  // The largest j with j - 1/2 millionth <= index, found by halving. Ratios stay below 100.
  std::int64_t low = 0;
  std::int64_t high = 100 * kOne;
  while (high - low > 1) {
    const std::int64_t middle = (low + high) / 2;
    (at_least(pairs, 2 * middle - 1) ? low : high) = middle;
  }
  return six_places(low);
}

std::string dutot(const std::vector<PricePair>& pairs) {
  std::int64_t then = 0;
  std::int64_t now = 0;
  for (const auto& [before, after] : pairs) {
    then += before;
    now += after;
  }
  if (then == 0) throw std::logic_error("an index needs a price then that is not nothing");
  return six_places((2 * now * kOne + then) / (2 * then));
}

std::string carli(const std::vector<PricePair>& pairs) {
  constexpr std::int64_t kFine = 1'000'000;  // further digits, so that rounding happens once
  std::int64_t sum = 0;
  for (const auto& [then, now] : pairs) sum += now * kOne * kFine / then;
  const auto count = static_cast<std::int64_t>(pairs.size());
  return six_places((sum / count + kFine / 2) / kFine);
}

}  // namespace demo

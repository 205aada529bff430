// Hash, base 32, and the shortest beginning that tells references apart.
#include "tracker/reference.h"

#include <xxhash.h>

#include <algorithm>

namespace rangebook {
namespace {

constexpr std::string_view kSigns = "0123456789abcdefghjkmnpqrstvwxyz";
constexpr std::size_t kLongSigns = 12;

char lower(char sign) {
  return sign >= 'A' && sign <= 'Z' ? static_cast<char>(sign - 'A' + 'a') : sign;
}

std::size_t common_signs(const std::string& a, const std::string& b) {
  const auto length = std::min(a.size(), b.size());
  std::size_t common = 0;
  while (common < length && a[common] == b[common]) ++common;
  return common;
}

}  // namespace

// Each part is followed by a zero byte, so that `ab|c` and `a|bc` differ.
std::string long_reference(const std::vector<std::string_view>& parts) {
  std::string joined;
  for (const auto part : parts) joined.append(part).push_back('\0');
  auto hash = XXH3_64bits(joined.data(), joined.size());
  std::string reference;
  for (std::size_t i = 0; i < kLongSigns; ++i) {
    reference.push_back(kSigns[hash & 31U]);
    hash >>= 5U;
  }
  return reference;
}

std::vector<std::string> shown_references(const std::vector<std::string>& long_references) {
  std::vector<std::string> sorted = long_references;
  std::sort(sorted.begin(), sorted.end());
  sorted.erase(std::unique(sorted.begin(), sorted.end()), sorted.end());
  std::size_t signs = kReferenceSigns;
  for (std::size_t i = 1; i < sorted.size(); ++i) {
    signs = std::max(signs, common_signs(sorted[i - 1], sorted[i]) + 1);
  }
  std::vector<std::string> shown;
  shown.reserve(long_references.size());
  for (const auto& reference : long_references) shown.push_back(reference.substr(0, signs));
  return shown;
}

std::string typed_reference(std::string_view word) {
  std::string reference;
  for (const char typed : word) {
    char sign = lower(typed);
    if (sign == 'o') sign = '0';
    if (sign == 'i' || sign == 'l') sign = '1';
    if (kSigns.find(sign) == std::string_view::npos) return {};
    reference.push_back(sign);
  }
  return reference.size() < kLeastReferenceSigns || reference.size() > kLongSigns ? std::string()
                                                                                  : reference;
}

}  // namespace rangebook

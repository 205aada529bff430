// robots.txt: the first line is a path, the rest the file. Whatever it says, the answer is the same
// for the path in its encoded form, and a rule that forbids is one of the file.
#include <cstddef>
#include <cstdint>

#include "importers/robots_rules.h"
#include "tests/fuzz/require.h"

namespace {

/// Every octet percent-encoded but `/`: the same path by RFC 3986.
std::string encoded(std::string_view path) {
  constexpr std::string_view kDigits = "0123456789ABCDEF";
  std::string out;
  for (const char sign : path) {
    const auto byte = static_cast<unsigned char>(sign);
    const bool letter = (sign >= 'a' && sign <= 'z') || (sign >= 'A' && sign <= 'Z');
    if (letter || byte >= 0x80) {
      out += '%';
      out += kDigits[byte / 16U];
      out += kDigits[byte % 16U];
    } else {
      out += sign;
    }
  }
  return out;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace rangebook;
  const auto [path, text] = first_line(as_text(data, size));
  const RobotsRules rules = RobotsRules::read(text, "rangebook");
  const RobotsRule* forbids = rules.forbids(path);
  if (forbids != nullptr) {
    require(!forbids->allow && !forbids->pattern.empty(), "a rule that forbids says what");
    require(forbids->line > 0, "a rule stands in a line");
  }
  if (path.find('%') == std::string_view::npos) {
    require(rules.forbids(encoded(path)) == forbids, "an encoded path is the same path");
  }
  return 0;
}

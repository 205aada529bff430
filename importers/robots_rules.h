// robots.txt (RFC 9309): which addresses of a site a program may ask for.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace rangebook {

/// `Disallow: /basket*` in line 12.
struct RobotsRule {
  std::string pattern;  ///< of a path; `*` and a last `$` have their meaning
  bool allow = false;
  std::size_t line = 0;  ///< from 1
};

/// The rules that hold for one program. The first 500 KiB are read (RFC 9309, 2.5).
class RobotsRules {
 public:
  /// `agent`: product token of the program, compared without case; where no group names it, those
  /// of `*` hold.
  static RobotsRules read(std::string_view text, std::string_view agent);

  /// The rule that forbids `path` (with its query); null where it may be asked for. The longest
  /// pattern that matches decides, of two alike the one that allows (RFC 9309, 2.2.2).
  const RobotsRule* forbids(std::string_view path) const;

 private:
  std::vector<RobotsRule> rules_;
};

}  // namespace rangebook

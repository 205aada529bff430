// Groups of user agents with their rules; everything else in the file is passed over.
#include "importers/robots_rules.h"

#include <algorithm>
#include <optional>

#include "importers/byte_search.h"
#include "importers/html_tag.h"

namespace rangebook {
namespace {

constexpr std::size_t kReadBytes = std::size_t{500} * 1024;
constexpr std::string_view kMark = "\xEF\xBB\xBF";

/// Letters, `-` and `_` from the start: `ExampleBot/1.2` names `ExampleBot`.
std::string_view product_token(std::string_view name) {
  const auto end = std::find_if(name.begin(), name.end(), [](char sign) {
    return (ascii_lower(sign) < 'a' || ascii_lower(sign) > 'z') && sign != '-' && sign != '_';
  });
  return name.substr(0, static_cast<std::size_t>(end - name.begin()));
}

std::optional<unsigned> hex_digit(char sign) {
  if (sign >= '0' && sign <= '9') return static_cast<unsigned>(sign - '0');
  const char small = ascii_lower(sign);
  if (small >= 'a' && small <= 'f') return static_cast<unsigned>(small - 'a' + 10);
  return std::nullopt;
}

/// RFC 3986, 2.3.
bool is_unreserved(char sign) {
  const bool letter = ascii_lower(sign) >= 'a' && ascii_lower(sign) <= 'z';
  return letter || (sign >= '0' && sign <= '9') || sign == '-' || sign == '.' || sign == '_' ||
         sign == '~';
}

/// The form in which paths are compared: octets above ASCII percent-encoded, encoded unreserved
/// ones decoded, the digits of the rest capitals.
std::string comparable(std::string_view path) {
  constexpr std::string_view kDigits = "0123456789ABCDEF";
  constexpr unsigned kHalf = 16;
  constexpr unsigned char kAscii = 0x80;
  std::string out;
  const auto encode = [&](unsigned byte) {
    out += '%';
    out += kDigits[byte / kHalf];
    out += kDigits[byte % kHalf];
  };
  for (std::size_t i = 0; i < path.size(); ++i) {
    const auto byte = static_cast<unsigned char>(path[i]);
    const bool encoded =
        path[i] == '%' && i + 2 < path.size() && hex_digit(path[i + 1]) && hex_digit(path[i + 2]);
    if (encoded) {
      const unsigned value = *hex_digit(path[i + 1]) * kHalf + *hex_digit(path[i + 2]);
      i += 2;
      if (value < kAscii && is_unreserved(static_cast<char>(value))) {
        out += static_cast<char>(value);
      } else {
        encode(value);
      }
    } else if (byte >= kAscii) {
      encode(byte);
    } else {
      out += path[i];
    }
  }
  return out;
}

/// Whether the pattern matches from the start of the path; greedy with one step back to the last
/// `*`, so the time is bounded by the product of both lengths.
bool matches(std::string_view pattern, std::string_view path) {
  const bool to_the_end = pattern.ends_with('$');
  if (to_the_end) pattern.remove_suffix(1);
  std::size_t at = 0;
  std::size_t in = 0;
  std::optional<std::size_t> star;
  std::size_t star_in = 0;
  for (;;) {
    if (at == pattern.size() && (!to_the_end || in == path.size())) return true;
    if (at < pattern.size() && pattern[at] == '*') {
      star = at++;
      star_in = in;
    } else if (at < pattern.size() && in < path.size() && pattern[at] == path[in]) {
      ++at;
      ++in;
    } else if (star && star_in < path.size()) {
      at = *star + 1;
      in = ++star_in;
    } else {
      return false;
    }
  }
}

struct Field {
  std::string_view name;
  std::string_view value;
};

std::optional<Field> field_of(std::string_view line) {
  line = line.substr(0, line.find('#'));
  const std::size_t colon = line.find(':');
  if (colon == std::string_view::npos) return std::nullopt;
  return Field{without_blanks(line.substr(0, colon)), without_blanks(line.substr(colon + 1))};
}

/// Sorts rules to the program and to everyone as the lines come.
class Groups {
 public:
  explicit Groups(std::string_view agent) : agent_(agent) {}

  void take(const Field& field, std::size_t line) {
    if (equals_ignoring_case(field.name, "user-agent")) return user_agent(field.value);
    const bool allow = equals_ignoring_case(field.name, "allow");
    if (!allow && !equals_ignoring_case(field.name, "disallow")) return;
    in_names_ = false;
    if (field.value.empty()) return;
    const RobotsRule rule{comparable(field.value), allow, line};
    if (names_it_) its_.push_back(rule);
    if (names_all_) everyones_.push_back(rule);
  }

  std::vector<RobotsRule> rules() && {
    return was_named_ ? std::move(its_) : std::move(everyones_);
  }

 private:
  void user_agent(std::string_view name) {
    if (!in_names_) names_it_ = names_all_ = false;
    in_names_ = true;
    if (name == "*") names_all_ = true;
    const std::string_view token = product_token(name);
    if (!token.empty() && equals_ignoring_case(token, agent_)) names_it_ = was_named_ = true;
  }

  std::string_view agent_;
  std::vector<RobotsRule> its_;
  std::vector<RobotsRule> everyones_;
  bool in_names_ = false;
  bool names_it_ = false;
  bool names_all_ = false;
  bool was_named_ = false;
};

}  // namespace

RobotsRules RobotsRules::read(std::string_view text, std::string_view agent) {
  if (text.starts_with(kMark)) text.remove_prefix(kMark.size());
  text = text.substr(0, kReadBytes);
  Groups groups(agent);
  for (std::size_t line = 1; !text.empty(); ++line) {
    const std::size_t end = std::min(text.find_first_of("\r\n"), text.size());
    if (const auto field = field_of(text.substr(0, end))) groups.take(*field, line);
    const bool both = text.substr(end).starts_with("\r\n");
    text.remove_prefix(std::min(end + (both ? 2 : 1), text.size()));
  }
  RobotsRules rules;
  rules.rules_ = std::move(groups).rules();
  return rules;
}

const RobotsRule* RobotsRules::forbids(std::string_view path) const {
  const std::string asked = comparable(path);
  if (asked == "/robots.txt") return nullptr;
  const RobotsRule* best = nullptr;
  for (const RobotsRule& rule : rules_) {
    if (!matches(rule.pattern, asked)) continue;
    const std::size_t most = best == nullptr ? 0 : best->pattern.size();
    if (best == nullptr || rule.pattern.size() > most ||
        (rule.pattern.size() == most && rule.allow)) {
      best = &rule;
    }
  }
  return best != nullptr && !best->allow ? best : nullptr;
}

}  // namespace rangebook

// The checks in the order in which they are cheap.
#include "tracker/desk/desk_guard.h"

#include <fmt/format.h>
#include <sys/random.h>

#include <array>

#include "schema/error.h"

namespace rangebook {

std::optional<std::string> stranger(const DeskCaller& caller, int port) {
  const std::string number = fmt::format("127.0.0.1:{}", port);
  const std::string name = fmt::format("localhost:{}", port);
  if (caller.host != number && caller.host != name) {
    return fmt::format("This is the desk of http://{}/ and answers under no other name.", number);
  }
  const bool own_origin = caller.origin == "http://" + caller.host;
  if (!caller.origin.empty() && !own_origin) return "Another site sent this request.";
  // `none`: typed, bookmarked or followed from outside the browser.
  const bool own_site = caller.fetch_site.empty() || caller.fetch_site == "same-origin" ||
                        caller.fetch_site == "none";
  if (!own_site) return "Another site sent this request.";
  const bool says_whence = own_origin || caller.fetch_site == "same-origin";
  if (caller.method == "POST" && !says_whence) {
    return "The request does not say which page it comes from.";
  }
  return std::nullopt;
}

std::string_view cookie_value(std::string_view cookies, std::string_view name) {
  while (!cookies.empty()) {
    const auto end = cookies.find("; ");
    const auto pair = cookies.substr(0, end);
    if (pair.size() > name.size() && pair.starts_with(name) && pair[name.size()] == '=') {
      return pair.substr(name.size() + 1);
    }
    if (end == std::string_view::npos) break;
    cookies.remove_prefix(end + 2);
  }
  return {};
}

bool same_secret(std::string_view said, std::string_view secret) {
  if (said.size() != secret.size() || secret.empty()) return false;
  unsigned different = 0;
  for (std::size_t i = 0; i < said.size(); ++i) {
    different |= static_cast<unsigned>(static_cast<unsigned char>(said[i])) ^
                 static_cast<unsigned>(static_cast<unsigned char>(secret[i]));
  }
  return different == 0;
}

std::string new_secret() {
  std::array<unsigned char, 32> bytes{};
  if (::getrandom(bytes.data(), bytes.size(), 0) != static_cast<ssize_t>(bytes.size())) {
    throw Error("The system gives no random numbers; the desk does not open without them.");
  }
  std::string out;
  for (const unsigned byte : bytes) out += fmt::format("{:02x}", byte);
  return out;
}

}  // namespace rangebook

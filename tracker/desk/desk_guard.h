// Who may ask the desk for something. Any page of the web that the stylist has open can send
// requests to this machine; only her own browser, on the desk's own pages, may be answered.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace rangebook {

/// What a request says of where it comes from; the texts as sent, empty where it says nothing.
struct DeskCaller {
  std::string method;
  std::string host;
  std::string origin;
  std::string fetch_site;  ///< `Sec-Fetch-Site` (W3C Fetch Metadata)
  std::string cookies;
};

/// Why the caller is a stranger, in a sentence. A foreign `Host` is a name that was pointed at this
/// machine (DNS rebinding); a foreign `Origin`, or another site in `Sec-Fetch-Site`, is a page of
/// someone else that sends a form. A post must say where it comes from.
std::optional<std::string> stranger(const DeskCaller& caller, int port);

/// The value of a cookie (RFC 6265, section 4.2.1); empty where there is none.
std::string_view cookie_value(std::string_view cookies, std::string_view name);

/// Compares without telling by its time how much was right.
bool same_secret(std::string_view said, std::string_view secret);

/// 32 bytes from the system's generator, in hex. Throws Error when there are none.
std::string new_secret();

}  // namespace rangebook

// Asking a shop for single pages, as a guest: only addresses that are named, only what robots.txt
// allows (RFC 9309), one after another.
#pragma once

#include <chrono>
#include <cstddef>
#include <map>
#include <string>
#include <string_view>
#include <variant>

#include "importers/robots_rules.h"

namespace rangebook {

/// What a server gave, byte for byte after its content coding was taken off.
struct FetchedPage {
  std::string address;  ///< where it was found in the end
  std::string type;     ///< media type in small letters, without parameters: `text/html`
  std::string bytes;
};

struct FetchLimits {
  std::size_t bytes = std::size_t{64} << 20U;    ///< of a page
  std::chrono::milliseconds time{60'000};        ///< for a page, from first to last byte
  std::chrono::milliseconds to_connect{15'000};  ///< likewise to reach the server
  std::chrono::milliseconds pause{2'000};        ///< between two questions to one server
};

class PageFetcher {
 public:
  explicit PageFetcher(const FetchLimits& limits = {});
  ~PageFetcher();
  PageFetcher(const PageFetcher&) = delete;
  PageFetcher& operator=(const PageFetcher&) = delete;

  /// The page, or one or two sentences on why not and what to do. At most five redirections are
  /// followed, each under the rules of the site it leads to, none from https to http. No cookies
  /// are kept or sent. Throws Error where libcurl cannot be used at all.
  std::variant<FetchedPage, std::string> fetch(const std::string& address);

 private:
  struct Answer;
  struct Site {
    RobotsRules rules;
    std::string trouble;  ///< robots.txt cannot be read: nothing may be asked for
  };

  Answer ask(const std::string& address, const std::string& site, std::size_t most);
  const Site& site(const std::string& origin);

  const FetchLimits limits_;
  void* handle_;  // CURL*
  std::map<std::string, Site> sites_;
  std::map<std::string, std::chrono::steady_clock::time_point> asked_;
};

/// A file name for a page: `shop.example-dresses-maya.html`, small letters, digits, `.` and `-`.
std::string fetched_name(std::string_view address, std::string_view type);

}  // namespace rangebook

// libcurl, told to do as little as possible: http and https, no cookies, no redirections of its
// own.
#include "tracker/app/page_fetch.h"

#include <curl/curl.h>
#include <fmt/format.h>

#include <algorithm>
#include <memory>
#include <optional>
#include <thread>

#include "importers/byte_search.h"
#include "reports/phrase.h"
#include "schema/error.h"

namespace rangebook {
namespace {

constexpr std::string_view kAgent = "rangebook";
constexpr int kRedirections = 5;
constexpr std::size_t kRobotsBytes = std::size_t{512} * 1024;
constexpr std::size_t kLongestName = 120;
constexpr std::string_view kByHand = "Save the page in your browser instead.";

/// An address in its parts.
struct Address {
  std::string whole;   ///< without fragment
  std::string scheme;  ///< `https`
  std::string origin;  ///< `https://shop.example:8443`
  std::string path;    ///< with the query
};

std::string part_of(CURLU* url, CURLUPart part) {
  char* text = nullptr;
  if (curl_url_get(url, part, &text, 0) != CURLUE_OK) return {};
  std::string copy(text);
  curl_free(text);
  return copy;
}

/// The address, or what is wrong with it.
std::variant<Address, std::string> address_of(const std::string& text) {
  const std::unique_ptr<CURLU, decltype(&curl_url_cleanup)> url(curl_url(), &curl_url_cleanup);
  if (!url || curl_url_set(url.get(), CURLUPART_URL, text.c_str(), 0) != CURLUE_OK) {
    return fmt::format("\"{}\" is no address; write it as https://shop.example/page.",
                       clean_line(text));
  }
  Address address;
  address.scheme = part_of(url.get(), CURLUPART_SCHEME);
  if (address.scheme != "https" && address.scheme != "http") {
    return fmt::format("\"{}\": only https and http are asked for.", clean_line(text));
  }
  if (!part_of(url.get(), CURLUPART_USER).empty()) {
    return std::string("An address with a name or password in it is not asked for.");
  }
  curl_url_set(url.get(), CURLUPART_FRAGMENT, nullptr, 0);
  address.whole = part_of(url.get(), CURLUPART_URL);
  address.path = part_of(url.get(), CURLUPART_PATH);
  const std::string query = part_of(url.get(), CURLUPART_QUERY);
  if (!query.empty()) address.path += '?' + query;
  const std::string port = part_of(url.get(), CURLUPART_PORT);
  address.origin = fmt::format("{}://{}{}{}", address.scheme, part_of(url.get(), CURLUPART_HOST),
                               port.empty() ? "" : ":", port);
  return address;
}

struct Body {
  std::string bytes;
  std::size_t most = 0;
  bool too_long = false;
};

std::size_t take(char* data, std::size_t size, std::size_t count, void* to) {
  auto& body = *static_cast<Body*>(to);
  if (body.bytes.size() + size * count > body.most) {
    body.too_long = true;
    return 0;
  }
  body.bytes.append(data, size * count);
  return size * count;
}

bool leads_on(long status) {
  return status == 301 || status == 302 || status == 303 || status == 307 || status == 308;
}

std::string media_type(const char* header) {
  std::string type(header == nullptr ? "" : header);
  type.resize(std::min(type.size(), type.find(';')));
  while (type.ends_with(' ')) type.pop_back();
  for (char& sign : type) sign = ascii_lower(sign);
  return type;
}

std::string refusal(const std::string& address, long status) {
  if (status == 401 || status == 403 || status == 429) {
    return fmt::format("{} is not given to programs (the server says {}). {}", address, status,
                       kByHand);
  }
  return fmt::format("{} is not there (the server says {}). Check the address.", address, status);
}

}  // namespace

struct PageFetcher::Answer {
  std::string fault;  ///< empty where there was an answer
  long status = 0;
  std::string to;  ///< of a redirection
  std::string type;
  std::string bytes;
};

PageFetcher::PageFetcher(const FetchLimits& limits) : limits_(limits), handle_(nullptr) {
  static const CURLcode ready = curl_global_init(CURL_GLOBAL_DEFAULT);
  if (ready == CURLE_OK) handle_ = curl_easy_init();
  if (handle_ == nullptr) throw Error("libcurl cannot be started");
}

PageFetcher::~PageFetcher() { curl_easy_cleanup(static_cast<CURL*>(handle_)); }

PageFetcher::Answer PageFetcher::ask(const std::string& address, const std::string& site,
                                     std::size_t most) {
  const auto last = asked_.find(site);
  if (last != asked_.end()) std::this_thread::sleep_until(last->second + limits_.pause);
  auto* const curl = static_cast<CURL*>(handle_);
  Body body{{}, most, false};
  curl_easy_reset(curl);
  curl_easy_setopt(curl, CURLOPT_URL, address.c_str());
  curl_easy_setopt(curl, CURLOPT_PROTOCOLS_STR, "http,https");
  curl_easy_setopt(
      curl, CURLOPT_USERAGENT,
      fmt::format("{}/{} (single pages, asked for by a reader)", kAgent, RANGEBOOK_VERSION)
          .c_str());
  curl_easy_setopt(curl, CURLOPT_ACCEPT_ENCODING, "");
  curl_easy_setopt(curl, CURLOPT_NOSIGNAL, 1L);
  curl_easy_setopt(curl, CURLOPT_TIMEOUT_MS, static_cast<long>(limits_.time.count()));
  curl_easy_setopt(curl, CURLOPT_CONNECTTIMEOUT_MS, static_cast<long>(limits_.to_connect.count()));
  curl_easy_setopt(curl, CURLOPT_WRITEFUNCTION, &take);
  curl_easy_setopt(curl, CURLOPT_WRITEDATA, &body);
  const CURLcode code = curl_easy_perform(curl);
  asked_[site] = std::chrono::steady_clock::now();
  Answer answer;
  if (code != CURLE_OK) {
    answer.fault = body.too_long ? fmt::format("is larger than {} bytes", most)
                                 : std::string(curl_easy_strerror(code));
    return answer;
  }
  curl_easy_getinfo(curl, CURLINFO_RESPONSE_CODE, &answer.status);
  const char* text = nullptr;
  curl_easy_getinfo(curl, CURLINFO_REDIRECT_URL, &text);
  if (text != nullptr) answer.to = text;
  text = nullptr;
  curl_easy_getinfo(curl, CURLINFO_CONTENT_TYPE, &text);
  answer.type = media_type(text);
  answer.bytes = std::move(body.bytes);
  return answer;
}

/// RFC 9309, 2.3.1: what is not there (4xx) forbids nothing, what cannot be reached everything.
const PageFetcher::Site& PageFetcher::site(const std::string& origin) {
  const auto known = sites_.find(origin);
  if (known != sites_.end()) return known->second;
  std::string at = origin + "/robots.txt";
  Answer answer = ask(at, origin, kRobotsBytes);
  for (int hop = 0; hop < kRedirections && leads_on(answer.status); ++hop) {
    const auto next = address_of(answer.to);
    if (!std::holds_alternative<Address>(next)) break;
    at = std::get<Address>(next).whole;
    answer = ask(at, std::get<Address>(next).origin, kRobotsBytes);
  }
  Site& site = sites_[origin];
  const bool there = answer.status >= 200 && answer.status < 300;
  if (there) {
    site.rules = RobotsRules::read(answer.bytes, kAgent);
  } else if (!answer.fault.empty() || answer.status >= 500) {
    const std::string why =
        answer.fault.empty() ? fmt::format("the server says {}", answer.status) : answer.fault;
    site.trouble =
        fmt::format("{} cannot be read ({}), so nothing is asked for. Try again later.", at, why);
  }
  return site;
}

std::variant<FetchedPage, std::string> PageFetcher::fetch(const std::string& address) {
  std::string next = address;
  std::string before;
  for (int hop = 0; hop <= kRedirections; ++hop) {
    const auto parsed = address_of(next);
    if (const auto* fault = std::get_if<std::string>(&parsed)) return *fault;
    const auto& asked = std::get<Address>(parsed);
    if (before == "https" && asked.scheme == "http") {
      return fmt::format("{} leads from https to http, which is not followed. {}", address,
                         kByHand);
    }
    const Site& from = site(asked.origin);
    if (!from.trouble.empty()) return from.trouble;
    if (const RobotsRule* rule = from.rules.forbids(asked.path)) {
      return fmt::format(
          "{} must not be asked for by programs: {}/robots.txt, line {}, forbids {}. {}",
          asked.whole, asked.origin, rule->line, rule->pattern, kByHand);
    }
    Answer answer = ask(asked.whole, asked.origin, limits_.bytes);
    if (!answer.fault.empty()) {
      return fmt::format("{}: {}. {}", asked.whole, answer.fault, kByHand);
    }
    if (answer.status == 200) {
      return FetchedPage{asked.whole, std::move(answer.type), std::move(answer.bytes)};
    }
    if (!leads_on(answer.status) || answer.to.empty()) return refusal(asked.whole, answer.status);
    before = asked.scheme;
    next = answer.to;
  }
  return fmt::format("{} leads on more than {} times. Check the address.", address, kRedirections);
}

std::string fetched_name(std::string_view address, std::string_view type) {
  const auto begin = address.find("://");
  if (begin != std::string_view::npos) address.remove_prefix(begin + 3);
  std::string name;
  for (const char letter : address) {
    const char sign = ascii_lower(letter);
    const bool keeps = (sign >= 'a' && sign <= 'z') || (sign >= '0' && sign <= '9') || sign == '.';
    if (keeps) {
      name += sign;
    } else if (!name.empty() && name.back() != '-') {
      name += '-';
    }
  }
  name.resize(std::min(name.size(), kLongestName));
  while (name.ends_with('-') || name.ends_with('.')) name.pop_back();
  if (name.empty() || name.front() == '.') name.insert(0, "page");
  std::string_view ending;
  if (type == "text/html" || type == "application/xhtml+xml") ending = ".html";
  if (type == "text/csv") ending = ".csv";
  if (type == "application/json" || type == "application/ld+json") ending = ".json";
  if (type == "application/xml" || type == "text/xml" || type == "application/rss+xml")
    ending = ".xml";
  if (type == "application/zip") ending = ".zip";
  if (ending.empty() || name.ends_with(ending)) return name;
  return name + std::string(ending);
}

}  // namespace rangebook

// From a request to a page, in this order: where it comes from, whether there is such a page,
// whether the browser opened this desk, how much it sends, whether the form is ours. Only then a
// page is asked.
#include "tracker/desk/desk_server.h"

#include <fmt/format.h>
#include <sys/socket.h>

#include <charconv>
#include <chrono>

#include "reports/page_script.h"
#include "schema/error.h"
#include "tracker/app/cli_words.h"
#include "tracker/desk/desk_guard.h"
#include "tracker/desk/desk_sheet.h"
#include "tracker/desk/request_queue.h"

namespace rangebook {
namespace {

using Clock = std::chrono::steady_clock;

/// Without SO_REUSEPORT, which the library sets: another program could listen on the same port.
void options_of_socket(socket_t socket) {
  const int yes = 1;
  ::setsockopt(socket, SOL_SOCKET, SO_REUSEADDR, &yes, sizeof yes);
}

DeskCaller caller_of(const httplib::Request& request) {
  return {request.method, request.get_header_value("Host"), request.get_header_value("Origin"),
          request.get_header_value("Sec-Fetch-Site"), request.get_header_value("Cookie")};
}

const DeskRoute* route_of(std::string_view method, std::string_view path) {
  const auto wanted = method == "POST" ? DeskRoute::Method::post : DeskRoute::Method::get;
  for (const DeskRoute& route : desk_routes()) {
    if (route.method == wanted && route.path == path) return &route;
  }
  return nullptr;
}

/// The only scripts that run are ours: the desk's own file, and in reports the one known by its
/// hash. Nothing is loaded from elsewhere, and no other page may show the desk in a frame.
std::string policy() {
  return fmt::format(
      "default-src 'none'; style-src 'self'; script-src 'self' 'sha256-{}'; connect-src 'self'; "
      "form-action 'self'; "
      "base-uri 'none'; frame-ancestors 'none'",
      page_script_hash());
}

void send(httplib::Response& response, const DeskAnswer& answer) {
  response.status = answer.go_to.empty() ? answer.status : 303;
  response.set_header("Content-Security-Policy", policy());
  response.set_header("X-Content-Type-Options", "nosniff");
  response.set_header("Referrer-Policy", "same-origin");
  response.set_header("Cross-Origin-Opener-Policy", "same-origin");
  response.set_header("Cross-Origin-Resource-Policy", "same-origin");
  response.set_header("Cache-Control", "no-store");
  if (!answer.go_to.empty()) response.set_header("Location", answer.go_to);
  if (answer.look_again > 0) response.set_header("Refresh", std::to_string(answer.look_again));
  if (!answer.file_name.empty()) {
    response.set_header("Content-Disposition",
                        fmt::format("attachment; filename=\"{}\"", answer.file_name));
  }
  response.set_content(answer.body, answer.type);
}

std::optional<std::size_t> stated_length(const httplib::Request& request) {
  const std::string text = request.get_header_value("Content-Length");
  std::size_t length = 0;
  const auto read = std::from_chars(text.data(), text.data() + text.size(), length);
  if (text.empty() || read.ec != std::errc() || read.ptr != text.data() + text.size()) {
    return std::nullopt;
  }
  return length;
}

}  // namespace

class DeskServer::Parts {
 public:
  Parts(Desk& desk, int port, const DeskLimits& limits) : desk_(desk), limits_(limits) {
    server_.set_socket_options(options_of_socket);
    server_.new_task_queue = [this] { return new RequestQueue(limits_.threads, limits_.waiting); };
    server_.set_tcp_nodelay(true);        // heads and bodies are sent one after the other
    server_.set_keep_alive_max_count(1);  // an idle connection would keep a thread
    server_.set_read_timeout(limits_.patience);
    server_.set_write_timeout(limits_.patience);
    server_.set_payload_max_length(limits_.body);
    server_.set_pre_routing_handler([this](const auto& request, auto& response) {
      return before_body(request, response) ? httplib::Server::HandlerResponse::Handled
                                            : httplib::Server::HandlerResponse::Unhandled;
    });
    server_.Post(".*", [this](const httplib::Request& request, httplib::Response& response,
                              const httplib::ContentReader& reader) {
      send(response, guarded([&] { return posted(request, reader); }));
    });
    if (port == 0) {
      port_ = server_.bind_to_any_port("127.0.0.1");
    } else {
      port_ = server_.bind_to_port("127.0.0.1", port) ? port : -1;
    }
    if (port_ <= 0) {
      throw Error(
          fmt::format("Port {} of this machine is taken. Name another one with --port, or "
                      "none for any that is free.",
                      port));
    }
  }

  int port() const { return port_; }
  const std::string& key() const { return key_; }
  void serve() {
    if (!server_.listen_after_bind()) throw Error("The desk could not go on listening.");
  }
  void stop() { server_.stop(); }

 private:
  std::string cookie_name() const { return fmt::format("desk{}", port_); }

  bool has_session(const httplib::Request& request) const {
    const std::string cookies = request.get_header_value("Cookie");
    return same_secret(cookie_value(cookies, cookie_name()), session_);
  }

  /// True when all is said; false for a post whose body is to be read.
  bool before_body(const httplib::Request& request, httplib::Response& response) {
    DeskAnswer answer;
    if (request.method == "GET" && request.path == "/" && is_entry(request)) {
      answer.go_to = "/";
      response.set_header("Set-Cookie", fmt::format("{}={}; Path=/; HttpOnly; SameSite=Strict",
                                                    cookie_name(), session_));
    } else if (auto refusal = refused(request)) {
      answer = std::move(*refusal);
    } else if (request.method == "POST") {
      return false;
    } else {
      answer = guarded([&] { return asked(request); });
    }
    send(response, answer);
    return true;
  }

  bool is_entry(const httplib::Request& request) const {
    return !stranger(caller_of(request), port_) &&
           same_secret(request.get_param_value("key"), key_);
  }

  /// Before a byte of the body is read.
  std::optional<DeskAnswer> refused(const httplib::Request& request) const {
    const auto plain = [](int status, std::string message) {
      DeskAnswer answer;
      answer.status = status;
      answer.type = "text/plain; charset=utf-8";
      answer.body = std::move(message) + "\n";
      return answer;
    };
    const bool known_method =
        request.method == "GET" || request.method == "HEAD" || request.method == "POST";
    if (!known_method) return plain(405, "The desk answers GET, HEAD and POST only.");
    if (const auto why = stranger(caller_of(request), port_)) return plain(403, *why);
    if (!has_session(request)) {
      return plain(403,
                   "Open the desk with the address that rangebook desk printed: it holds the key "
                   "of this session.");
    }
    if (!route_of(request.method, request.path)) {
      return trouble_sheet(desk_, 404, "The desk has no such page.");
    }
    if (request.method != "POST") return std::nullopt;
    const auto length = stated_length(request);
    if (!length) return plain(411, "A form says how long it is.");
    if (*length > limits_.body) {
      return trouble_sheet(desk_, 413,
                           fmt::format("These files hold more than {} MB together. Upload them in "
                                       "parts, or take them in with rangebook capture.",
                                       limits_.body >> 20));
    }
    return std::nullopt;
  }

  /// A broken environment is said on a page; the desk stays open.
  DeskAnswer guarded(const std::function<DeskAnswer()>& answer) const {
    try {
      return answer();
    } catch (const UsageError& wrong) {
      return trouble_sheet(desk_, 400, without_options(wrong.message));
    } catch (const Error& error) {
      return trouble_sheet(desk_, 503, error.what());
    } catch (const std::bad_alloc&) {
      return trouble_sheet(desk_, 503, "Not enough memory. Nothing was changed.");
    }
  }

  DeskAnswer asked(const httplib::Request& request) {
    DeskAsk ask{request.path, {}};
    for (const auto& [name, value] : request.params) {
      if (ask.fields.size() < limits_.fields) ask.fields.push_back({name, value, {}});
    }
    return route_of(request.method, request.path)->answer(desk_, ask);
  }

  DeskAnswer posted(const httplib::Request& request, const httplib::ContentReader& reader) {
    std::unique_lock one_at_a_time(large_, std::defer_lock);
    if (stated_length(request).value_or(0) > limits_.small_body && !one_at_a_time.try_lock()) {
      return trouble_sheet(desk_, 503, "Other files are being uploaded. Try again in a moment.");
    }
    if (!request.is_multipart_form_data()) {
      return trouble_sheet(desk_, 415, "This form was not made by the desk.");
    }
    DeskAsk ask{request.path, {}};
    if (const auto problem = read_form(reader, ask)) return trouble_sheet(desk_, 400, *problem);
    if (!desk_.tokens().holds(request.path, ask.said("token"))) {
      return trouble_sheet(desk_, 403, "This form is out of date. Open its page again.");
    }
    return route_of(request.method, request.path)->answer(desk_, ask);
  }

  /// A sentence where it does not come in as it should.
  std::optional<std::string> read_form(const httplib::ContentReader& reader, DeskAsk& ask) const {
    const auto until = Clock::now() + std::chrono::seconds(limits_.body_seconds);
    bool too_many = false;
    const bool whole = reader(
        [&](const httplib::MultipartFormData& part) {
          ask.fields.push_back({part.name, {}, part.filename});
          too_many = ask.fields.size() > limits_.fields;
          return !too_many;
        },
        [&](const char* bytes, std::size_t size) {
          ask.fields.back().value.append(bytes, size);
          return Clock::now() < until;
        });
    if (too_many) {
      return fmt::format(
          "More than {} files at once. Hand them over in parts, or as a zip archive.",
          limits_.fields);
    }
    if (!whole) return "The form did not arrive whole, or too slowly. Send it again.";
    return std::nullopt;
  }

  Desk& desk_;
  const DeskLimits limits_;
  const std::string key_ = new_secret();
  const std::string session_ = new_secret();
  std::mutex large_;
  httplib::Server server_;
  int port_ = 0;
};

DeskServer::DeskServer(Desk& desk, int port, const DeskLimits& limits)
    : parts_(std::make_unique<Parts>(desk, port, limits)) {}
DeskServer::~DeskServer() = default;
int DeskServer::port() const { return parts_->port(); }
std::string DeskServer::entrance() const {
  return fmt::format("http://127.0.0.1:{}/?key={}", parts_->port(), parts_->key());
}
void DeskServer::serve() { parts_->serve(); }
void DeskServer::stop() { parts_->stop(); }

}  // namespace rangebook

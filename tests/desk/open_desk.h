// A desk that is open on a free port, with a visitor. Gone with the test.
#pragma once

#include <gtest/gtest.h>
#include <httplib.h>

#include <fstream>
#include <string>
#include <thread>

#include "tests/tracker/store/temp_book.h"
#include "tracker/app/pipeline.h"
#include "tracker/desk/desk_server.h"

namespace rangebook {

/// Takes `rows` into the book as a capture of the mill.
inline void keep_rows(const TempFolder& folder, const std::string& season, const std::string& day,
                      const std::string& rows) {
  const std::string file = folder.file(season + ".csv");
  std::ofstream(file) << "line_code,name,category,colour,size,price,currency\n" << rows;
  Book book = Book::open(folder.file("b.rangebook"), true);
  book.put_shop(mill_shop());
  CaptureRequest request;
  request.files = {file};
  request.shop = "mill";
  request.season = season;
  request.on = parse_day(day);
  const auto taken = run_capture(book, request, {});
  ASSERT_TRUE(std::holds_alternative<CaptureReport>(taken));
}

class OpenDesk {
 public:
  explicit OpenDesk(const TempFolder& folder, const DeskLimits& limits = {})
      : desk_(folder.file("b.rangebook"), ""), server_(desk_, 0, limits) {
    thread_ = std::thread([this] { server_.serve(); });
    const std::string entrance = server_.entrance();
    const auto entered = client().Get(entrance.substr(entrance.find("/?")));
    if (entered) cookie_ = entered->get_header_value("Set-Cookie");
    cookie_ = cookie_.substr(0, cookie_.find(';'));
  }
  ~OpenDesk() {
    server_.stop();
    thread_.join();
  }
  OpenDesk(const OpenDesk&) = delete;
  OpenDesk& operator=(const OpenDesk&) = delete;

  Desk& desk() { return desk_; }
  int port() const { return server_.port(); }
  httplib::Client client() const { return httplib::Client("127.0.0.1", server_.port()); }
  std::string origin() const { return "http://127.0.0.1:" + std::to_string(port()); }
  /// What the stylist's browser sends with a request from a page of the desk.
  httplib::Headers own() const { return {{"Cookie", cookie_}, {"Origin", origin()}}; }

  httplib::Result get(const std::string& path) const { return client().Get(path, own()); }
  /// Sends a form of the desk, with its token.
  httplib::Result post(const std::string& path, httplib::MultipartFormDataItems items = {}) const {
    items.push_back({"token", desk_.tokens().of(path), "", ""});
    return client().Post(path, own(), items);
  }

 private:
  Desk desk_;
  DeskServer server_;
  std::thread thread_;
  std::string cookie_;
};

}  // namespace rangebook

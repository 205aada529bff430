// Every page of the desk on a book of 200 shops with 20 captures each, asked over loopback on a
// kept connection, beside a static page of the same size served by the same library.
//
// Each benchmark is one page; `p99_ms` and `p50_ms` are over its requests.
#include <benchmark/benchmark.h>
#include <fmt/format.h>
#include <httplib.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <functional>
#include <optional>
#include <string>
#include <thread>
#include <vector>

#include "tests/bench/invented_line.h"
#include "tracker/app/pick_desk.h"
#include "tracker/app/pipeline.h"
#include "tracker/app/terms_desk.h"
#include "tracker/desk/desk_server.h"

namespace rangebook {
namespace {

namespace fs = std::filesystem;
using Clock = std::chrono::steady_clock;

constexpr int kShops = 200;
constexpr int kCaptures = 20;
constexpr std::uint64_t kLines = 60;  // a capture; about 800 variants
constexpr int kRequests = 200;

std::string slug_of(int shop) { return fmt::format("shop-{:03}", shop); }

/// Captures are five weeks apart; each drops a line, adds one and moves some prices.
std::string table_of(int shop, int capture) {
  std::string text = "line_code,name,category,colour,size,price,full_price,currency,in_stock\n";
  const auto seed = static_cast<std::uint64_t>(shop + 1);
  const auto first = static_cast<std::uint64_t>(capture);
  for (std::uint64_t index = first; index < first + kLines; ++index) {
    const bench::InventedLine line = bench::invented_line(seed, index);
    for (std::uint32_t variant = 0; variant < line.variant_count(); ++variant) {
      bench::InventedOffer offer = bench::invented_offer(line, seed, variant);
      if ((index + first) % 7 == 0) offer.price += 100 * static_cast<std::uint32_t>(capture);
      text += fmt::format("{},{},{},{},{},{}.{:02},,GBP,{}\n", line.code, line.name, line.category,
                          line.colours[variant / line.size_count],
                          line.first_size + 2 * (variant % line.size_count), offer.price / 100,
                          offer.price % 100, offer.in_stock ? "yes" : "no");
    }
  }
  return text;
}

void keep_terms_of(Book& book, int shop) {
  const ShopRecord record = std::get<ShopRecord>(find_shop(book, slug_of(shop)));
  const auto fields =
      typed_fields({fmt::format("delivery.standard.fee={}.95 GBP", 2 + shop % 5),
                    "delivery.standard.free_over=60 GBP", "return.window=28 days from delivery",
                    "return.post=yes", "return.post.fee=2.50 GBP"},
                   Currency::from_code("GBP"));
  type_terms(book, record, *parse_day("2026-01-05"), std::get<std::vector<TermsValue>>(fields));
}

/// A dress of shop-007's latest capture, and a capture of that shop.
std::string line_code() { return bench::invented_line(8, 25).code; }
constexpr int kCaptureOfShop = 8 * kCaptures;

void keep_a_pick(Book& book) {
  PickWish wish;
  wish.shop = "shop-007";
  wish.line = line_code();
  wish.on = *parse_day("2026-10-01");
  if (!std::holds_alternative<FollowedPick>(keep_pick(book, wish))) std::abort();
}

/// The book is kept in the temporary folder for the next time; its folder is named by what it
/// holds.
std::string prepared_book() {
  const fs::path folder =
      fs::temp_directory_path() /
      fmt::format("rangebook-desk-bench-{}x{}x{}-pick", kShops, kCaptures, kLines);
  const fs::path book_file = folder / "bench.rangebook";
  if (fs::exists(folder / "complete")) return book_file.string();
  fs::remove_all(folder);
  fs::create_directories(folder);
  Book book = Book::open(book_file.string(), true);
  const fs::path table = folder / "table.csv";
  for (int shop = 0; shop < kShops; ++shop) {
    book.put_shop({slug_of(shop), fmt::format("Shop {}", shop), "GB", Currency::from_code("GBP"),
                   SizeSystem::uk});
    for (int capture = 0; capture < kCaptures; ++capture) {
      std::ofstream(table) << table_of(shop, capture);
      CaptureRequest request;
      request.files = {table.string()};
      request.shop = slug_of(shop);
      request.season = fmt::format("S{:02}", capture);
      request.on = *parse_day("2024-10-07") + std::chrono::days(35 * capture);
      if (!std::holds_alternative<CaptureReport>(run_capture(book, request, {}))) std::abort();
    }
    keep_terms_of(book, shop);
  }
  keep_a_pick(book);
  std::ofstream(folder / "complete") << "\n";
  return book_file.string();
}

/// A desk that is open, a static page beside it, and a browser with the key.
class Open {
 public:
  Open() : desk_(prepared_book(), ""), server_(desk_, 0) {
    threads_.emplace_back([this] { server_.serve(); });
    plain_.set_tcp_nodelay(true);
    plain_port_ = plain_.bind_to_any_port("127.0.0.1");
    plain_.Get("/static", [](const httplib::Request&, httplib::Response& answer) {
      answer.set_content(std::string(20'000, 'x'), "text/html; charset=utf-8");
    });
    threads_.emplace_back([this] { plain_.listen_after_bind(); });
    while (!plain_.is_running()) std::this_thread::sleep_for(std::chrono::milliseconds(1));
    const std::string entrance = server_.entrance();
    httplib::Client visitor("127.0.0.1", server_.port());
    const auto entered = visitor.Get(entrance.substr(entrance.find("/?")));
    if (!entered) std::abort();
    cookie_ = entered->get_header_value("Set-Cookie");
    cookie_ = cookie_.substr(0, cookie_.find(';'));
    hold_an_upload();
  }
  ~Open() {
    server_.stop();
    plain_.stop();
    for (auto& thread : threads_) thread.join();
  }
  Open(const Open&) = delete;
  Open& operator=(const Open&) = delete;

  const std::string& held() const { return held_; }

  httplib::Client visitor(bool plain) const {
    httplib::Client client("127.0.0.1", plain ? plain_port_ : server_.port());
    client.set_keep_alive(true);
    client.set_tcp_nodelay(true);
    client.set_default_headers({{"Cookie", cookie_}});
    client.set_read_timeout(60);
    return client;
  }

 private:
  void hold_an_upload() {
    for (const HeldUpload& old : desk_.held().all()) desk_.held().drop(old);
    const auto upload = desk_.held().hold(
        {{"documents", table_of(7, kCaptures), "next.csv"}}, "",
        {{"shop", "shop-007", {}}, {"season", "AW26", {}}, {"on", "2026-11-16", {}}});
    held_ = std::get<HeldUpload>(upload).id;
  }

  Desk desk_;
  DeskServer server_;
  httplib::Server plain_;
  int plain_port_ = 0;
  std::vector<std::thread> threads_;
  std::string cookie_;
  std::string held_;
};

Open& open_desk() {
  static Open open;
  return open;
}

/// Asks for `path` and keeps the times.
void ask(benchmark::State& state, bool plain, const std::string& path) {
  httplib::Client client = open_desk().visitor(plain);
  std::vector<double> times;
  for (auto _ : state) {
    const auto begun = Clock::now();
    const auto answer = client.Get(path);
    times.push_back(std::chrono::duration<double, std::milli>(Clock::now() - begun).count());
    // The page of a long import leads on to the shop while none is under way.
    if (!answer || (answer->status != 200 && answer->status != 303)) {
      state.SkipWithError(fmt::format("{} answers {}", path, answer ? answer->status : 0).c_str());
      return;
    }
    state.counters["bytes"] = static_cast<double>(answer->body.size());
  }
  std::sort(times.begin(), times.end());
  state.counters["p50_ms"] = times[times.size() / 2];
  state.counters["p99_ms"] = times[times.size() * 99 / 100];
}

/// What a page has to be told. Pages that need nothing take no notice.
std::string address_of(std::string_view path) {
  std::string address(path);
  if (path == "/" || path == "/desk.css" || path.ends_with(".js")) return address;
  if (path == "/order") return address + "?currency=GBP&keep=69%2045.50&back=39";
  if (path == "/reach") return address + "?size=22&system=uk&category=dresses";
  if (path == "/held") return address + "?upload=" + open_desk().held();
  if (path == "/kept") return fmt::format("{}?shop=shop-007&capture={}", path, kCaptureOfShop);
  if (path == "/picks/change" || path == "/picks/drop") return address + "?pick=1";
  if (path == "/picks/word") return address + "?list=dress-code&word=business";
  if (path == "/line" || path == "/picks/keep") {
    return fmt::format("{}?shop=shop-007&line={}", path, line_code());
  }
  return address + "?shop=shop-007";
}

void ask_for(const std::string& name, const std::function<std::string()>& address) {
  benchmark::RegisterBenchmark(name.c_str(), [address](benchmark::State& state) {
    ask(state, false, address());
  })->Iterations(kRequests);
}

const int kRegistered = [] {
  benchmark::RegisterBenchmark("/static", [](benchmark::State& state) {
    ask(state, true, "/static");
  })->Iterations(kRequests);
  for (const DeskRoute& route : desk_routes()) {
    if (route.method != DeskRoute::Method::get) continue;
    ask_for(std::string(route.path), [path = route.path] { return address_of(path); });
  }
  // These say something of every shop where none is named.
  for (const char* const path : {"/links", "/terms", "/picks"}) {
    ask_for(fmt::format("{} (all shops)", path), [path] { return std::string(path); });
  }
  return 0;
}();

}  // namespace
}  // namespace rangebook

// `rangebook demo`: the invented scenario, from feeds to briefs, in one command.
#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <sstream>
#include <utility>

#include "reports/brief.h"
#include "reports/brief_formats.h"
#include "reports/order_report.h"
#include "schema/error.h"
#include "tracker/app/cli.h"
#include "tracker/app/commands.h"
#include "tracker/app/pipeline.h"
#include "tracker/app/scope_words.h"
#include "tracker/app/terms_desk.h"

namespace rangebook {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t kHeadlines = 5;

/// One line of captures.tsv.
struct DemoCapture {
  Shop shop;
  CaptureRequest request;
};

std::vector<std::string> split(const std::string& text, char sign) {
  std::vector<std::string> parts;
  std::istringstream in(text);
  for (std::string part; std::getline(in, part, sign);) parts.push_back(part);
  return parts;
}

[[noreturn]] void damaged(const fs::path& list, std::size_t line) {
  throw Error(
      fmt::format("{}:{}: not a capture of the demo. Make the feeds again, see "
                  "demo-feeds/README.md.",
                  list.string(), line));
}

/// Columns: shop, name, country, currency, sizes, season, date, scope, files.
DemoCapture read_capture(const std::vector<std::string>& cells, const fs::path& feeds) {
  DemoCapture capture;
  capture.shop.slug = capture.request.shop = cells[0];
  capture.shop.name = cells[1];
  capture.shop.country = cells[2];
  capture.shop.currency = Currency::from_code(cells[3]);
  capture.shop.sizes = parse_size_system(cells[4]).value_or(SizeSystem::unknown);
  capture.request.season = cells[5];
  capture.request.on = parse_day(cells[6]);
  const auto scope = parse_scope(cells[7]);
  if (const auto* good = std::get_if<Scope>(&scope)) capture.request.scope = *good;
  for (const auto& file : split(cells[8], ' ')) {
    capture.request.files.push_back((feeds / file).string());
  }
  return capture;
}

/// The cells of each line of a list below the feeds, with its number; remarks and the header aside.
std::vector<std::pair<std::size_t, std::vector<std::string>>> list_rows(const fs::path& list) {
  std::ifstream in(list);
  if (!in) {
    throw Error(fmt::format("There is no demo in {} ({} is missing). Name the folder with --feeds.",
                            list.parent_path().string(), list.filename().string()));
  }
  std::vector<std::pair<std::size_t, std::vector<std::string>>> rows;
  std::size_t number = 0;
  bool header = true;
  for (std::string line; std::getline(in, line);) {
    ++number;
    if (line.empty() || line.front() == '#' || std::exchange(header, false)) continue;
    rows.emplace_back(number, split(line, '\t'));
  }
  return rows;
}

std::vector<DemoCapture> read_list(const fs::path& feeds) {
  const fs::path list = feeds / "captures.tsv";
  std::vector<DemoCapture> captures;
  for (const auto& [number, cells] : list_rows(list)) {
    if (cells.size() != 9) damaged(list, number);
    captures.push_back(read_capture(cells, feeds));
    if (!captures.back().request.on) damaged(list, number);
  }
  return captures;
}

fs::path new_book(const fs::path& out) {
  fs::create_directories(out);
  fs::path book = out / "demo.rangebook";
  for (const char* suffix : {"", "-wal", "-shm"}) fs::remove(book.string() + suffix);
  return book;
}

struct ShopBrief {
  Shop shop;
  Brief brief;
};

/// What matters most of each shop first, then what matters next: four shops are four stories.
void print_headlines(const std::vector<ShopBrief>& briefs) {
  std::vector<std::string> told;
  for (std::size_t rank = 0; rank < kHeadlines; ++rank) {
    for (const auto& [shop, brief] : briefs) {
      const auto sentences = top_sentences(brief, kHeadlines);
      if (rank < sentences.size()) told.push_back(shop.name + ": " + sentences[rank]);
    }
  }
  fmt::print("\nThe five most important changes (all shops and figures here are invented):\n");
  for (std::size_t i = 0; i < std::min(kHeadlines, told.size()); ++i) {
    fmt::print("{}. {}\n", i + 1, told[i]);
  }
}

/// The saved policies of terms.tsv.
void take_terms(Book& book, const std::string& feeds) {
  const fs::path list = fs::path(feeds) / "terms.tsv";
  for (const auto& [number, cells] : list_rows(list)) {
    const auto on = cells.size() == 3 ? parse_day(cells[1]) : std::nullopt;
    const auto shop = on ? book.find_shop(cells[0]) : std::nullopt;
    if (!shop) damaged(list, number);
    const auto read = read_terms_files({(fs::path(feeds) / cells[2]).string()}, shop->shop, *on);
    keep_terms(book, *shop, *on, read.reading, read.documents);
  }
}

/// One order across all shops, in each of their currencies: nothing is converted.
void write_orders(const Book& book, const std::string& out) {
  constexpr MinorUnits kKept = 6900;
  constexpr MinorUnits kBack = 4500;
  for (const std::string_view code : {"GBP", "EUR"}) {
    Order order{Currency::from_code(code).value(), {}, 0, 1, {}, {}, {}, {}, {}, {}};
    order.items = {{kKept, false, {}}, {kBack, true, {}}};
    order.bought = parse_day("2026-11-20").value();
    const auto compared = compare_terms(book, {}, order, order.bought, {});
    if (const auto* missing = std::get_if<NotThere>(&compared)) throw Error(missing->message);
    const fs::path file = fs::path(out) / fmt::format("order-{}.html", code);
    auto page = order_page(std::get<OrderComparison>(compared));
    page.invented = true;
    write_output(page_html(page), {"html", file.string()});
    fmt::print("  {}\n", file.string());
  }
}

}  // namespace

void take_demo(Book& book, const std::string& feeds,
               const std::function<void(const Shop&, const CaptureReport&)>& taken) {
  for (const auto& capture : read_list(feeds)) {
    book.put_shop(capture.shop);
    const auto outcome = run_capture(book, capture.request, {});
    if (const auto* missing = std::get_if<NotThere>(&outcome)) throw Error(missing->message);
    taken(capture.shop, std::get<CaptureReport>(outcome));
  }
  take_terms(book, feeds);
}

int command_demo(const std::string& feeds, const std::string& out) {
  const fs::path path = new_book(out);
  Book book = Book::open(path.string(), true);
  std::vector<Shop> shops;
  take_demo(book, feeds, [&shops](const Shop& shop, const CaptureReport& report) {
    const bool known = !shops.empty() && shops.back().slug == shop.slug;
    if (!known) shops.push_back(shop);
    fmt::print("{} {}: {} lines, {} variants\n", shop.name, report.info.season,
               report.outcome.lines, report.outcome.variants);
  });
  std::vector<ShopBrief> briefs;
  fmt::print("\nThe book is {}. The briefs:\n", path.string());
  for (const auto& shop : shops) {
    const auto set = run_comparison(book, {shop.slug, "", ""});
    if (const auto* missing = std::get_if<NotThere>(&set)) return not_there(*missing);
    BriefOptions extras = run_brief_extras(book, std::get<ChangeSet>(set));
    extras.invented = true;
    briefs.push_back({shop, make_brief(std::get<ChangeSet>(set), extras)});
    const fs::path file = fs::path(out) / (shop.slug + ".html");
    write_output(brief_html(briefs.back().brief), {"html", file.string()});
    fmt::print("  {}\n", file.string());
  }
  write_orders(book, out);
  print_headlines(briefs);
  return kDone;
}

}  // namespace rangebook

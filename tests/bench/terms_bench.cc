// An order compared at 200 shops whose terms were seen twenty times in five years, beside SQLite
// handing out the same rows of the terms in force.
#include <benchmark/benchmark.h>
#include <fmt/format.h>

#include <cstdlib>
#include <filesystem>
#include <optional>

#include "schema/terms_fields.h"
#include "tracker/order_quote.h"
#include "tracker/store/book.h"
#include "tracker/store/terms_store.h"

namespace rangebook {
namespace {

namespace fs = std::filesystem;

constexpr int kShops = 200;
constexpr int kVersions = 20;

std::vector<TermsValue> invented_terms(int shop, int version) {
  const int fee = 2 + (shop + version) % 5;
  const int limit = 40 + (shop * 7 + version * 5) % 60;
  const auto pounds = [](int whole) { return fmt::format("{}.95 GBP", whole); };
  return {{"delivery.standard.name", "Standard delivery"},
          {"delivery.standard.regions", "GB"},
          {"delivery.standard.fee", pounds(fee)},
          {"delivery.standard.free_over", pounds(limit)},
          {"delivery.standard.transit", "3-5 working days"},
          {"delivery.express.fee", pounds(fee + 3)},
          {"delivery.express.express", "yes"},
          {"delivery.express.transit", "1 working day"},
          {"delivery.collection.fee", "0.00 GBP"},
          {"delivery.collection.collection", "yes"},
          {"return.window", fmt::format("{} days from delivery", 14 + shop % 3 * 7)},
          {"return.post", "yes"},
          {"return.post.paid_by", "customer"},
          {"return.post.fee", pounds(1 + version % 3)},
          {"return.store", "yes"},
          {"return.store.fee", "0.00 GBP"},
          {"return.items.underwear", "not returnable"},
          {"return.items.sale", "exchange only"},
          {"return.needs.tags-on", "yes"},
          {"return.refund", "original payment"},
          {"return.refund_within", "up to 14 days"}};
}

TermsReading reading_of(int shop, int version) {
  TermsReading reading;
  for (const TermsValue& value : invented_terms(shop, version)) {
    if (set_field(reading.terms, value.field, value.text)) std::abort();
    reading.terms.evidence[value.field].sentence = "An invented sentence about " + value.field;
  }
  return reading;
}

/// Two pieces go back, one of them swimwear.
Order order_of_three() {
  Order order{*Currency::from_code("GBP"), {}, 0, 1, {}, {}, {}, {}, *parse_day("2026-11-20"), {}};
  order.items = {{6900, false, {}}, {8500, true, {}}, {3000, true, ReturnItem::swimwear}};
  return order;
}

/// The book, made once.
struct Prepared {
  Prepared() : folder(fs::temp_directory_path() / "rangebook-terms-bench") {
    fs::remove_all(folder);
    fs::create_directories(folder);
    book.emplace(Book::open((folder / "bench.rangebook").string(), true));
    const Day first = *parse_day("2021-10-01");
    for (int shop = 0; shop < kShops; ++shop) {
      const std::string slug = fmt::format("shop-{:03}", shop);
      book->put_shop({slug, slug, "GB", Currency::from_code("GBP"), SizeSystem::uk});
      const ShopRecord record = *book->find_shop(slug);
      for (int version = 0; version < kVersions; ++version) {
        keep_terms(*book, record, first + Day::duration{version * 91}, reading_of(shop, version),
                   {});
      }
    }
  }

  fs::path folder;
  std::optional<Book> book;
  Order order = order_of_three();
};

Prepared& prepared() {
  static Prepared one;
  return one;
}

void rows_in_force(benchmark::State& state) {
  const Prepared& with = prepared();
  std::size_t bytes = 0;
  for (auto _ : state) {
    auto rows = with.book->database().prepare(
        "SELECT f.field, f.value, f.sentence FROM "
        "(SELECT shop_id, max(observed_on) AS newest FROM terms GROUP BY shop_id) n "
        "JOIN terms t ON t.shop_id = n.shop_id AND t.observed_on = n.newest "
        "JOIN terms_field f ON f.terms_id = t.id");
    while (rows.step()) bytes += rows.text(0).size() + rows.text(1).size() + rows.text(2).size();
  }
  if (bytes == 0) state.SkipWithError("no rows");
}
BENCHMARK(rows_in_force)->Unit(benchmark::kMillisecond);

void order_at_all_shops(benchmark::State& state) {
  const Prepared& with = prepared();
  std::size_t shops = 0;
  for (auto _ : state) {
    const auto in_force = terms_in_force(*with.book, with.book->shops(), with.order.bought);
    shops = compare_order(in_force, with.order, {}).quotes.size();
  }
  if (shops != kShops) state.SkipWithError("shops are missing");
}
BENCHMARK(order_at_all_shops)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace rangebook

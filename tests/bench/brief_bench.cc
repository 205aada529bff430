// The brief of 10,000 lines, every second one at another price, beside reading the two snapshots it
// is made from.
#include <benchmark/benchmark.h>
#include <fmt/format.h>

#include <filesystem>
#include <fstream>
#include <optional>

#include "reports/brief_formats.h"
#include "tracker/app/pipeline.h"
#include "tracker/store/snapshot_reader.h"

namespace rangebook {
namespace {

namespace fs = std::filesystem;

constexpr int kLines = 10'000;

std::string invented_table(bool later) {
  std::string text = "line_code,name,category,colour,size,price,currency\n";
  for (int i = 0; i < kLines; ++i) {
    const int price = 20 + i % 97 + (later && i % 2 == 1 ? 3 : 0);
    text +=
        fmt::format("MA{0:05},Invented style number {0},dresses,navy,8-18,{1}.00,GBP\n", i, price);
  }
  return text;
}

/// A book with both captures, made once.
struct Prepared {
  Prepared() : folder(fs::temp_directory_path() / "rangebook-brief-bench") {
    fs::remove_all(folder);
    fs::create_directories(folder);
    book.emplace(Book::open((folder / "bench.rangebook").string(), true));
    book->put_shop({"bench", "Bench", "GB", Currency::from_code("GBP"), SizeSystem::uk});
    take("AW25", "2025-09-01", false);
    take("AW26", "2026-09-01", true);
    set = std::get<ChangeSet>(run_comparison(*book, {"bench", "", ""}));
    extras = run_brief_extras(*book, set);
  }

  void take(const char* season, const char* on, bool later) {
    const fs::path file = folder / (std::string(season) + ".csv");
    std::ofstream(file) << invented_table(later);
    CaptureRequest request;
    request.files = {file.string()};
    request.shop = "bench";
    request.season = season;
    request.on = parse_day(on);
    run_capture(*book, request, {});
  }

  fs::path folder;
  std::optional<Book> book;
  ChangeSet set;
  BriefOptions extras;
};

Prepared& prepared() {
  static Prepared one;
  return one;
}

void read_both_snapshots(benchmark::State& state) {
  const Prepared& with = prepared();
  for (auto _ : state) {
    benchmark::DoNotOptimize(read_snapshot(*with.book, with.set.from.id, SnapshotDetail::with));
    benchmark::DoNotOptimize(read_snapshot(*with.book, with.set.to.id, SnapshotDetail::with));
  }
}
BENCHMARK(read_both_snapshots)->Unit(benchmark::kMillisecond);

void brief_page(benchmark::State& state) {
  const Prepared& with = prepared();
  std::size_t bytes = 0;
  for (auto _ : state) {
    const std::string page = brief_html(make_brief(with.set, with.extras));
    bytes = page.size();
    benchmark::DoNotOptimize(page.data());
  }
  state.counters["bytes"] = static_cast<double>(bytes);
}
BENCHMARK(brief_page)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace rangebook

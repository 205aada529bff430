// Linking and comparing two invented seasons of one shop: 33,334 lines with a million variants, 3 %
// of the variants changed at random, which touches six lines out of ten.
#include <benchmark/benchmark.h>

#include <algorithm>
#include <numeric>

#include "schema/snapshot.h"
#include "tests/bench/invented_line.h"
#include "tests/bench/random.h"
#include "tracker/differ.h"
#include "tracker/linker.h"

namespace rangebook {
namespace {

constexpr std::uint64_t kSeed = 26;
constexpr std::uint64_t kLines = 33'334;
constexpr std::uint32_t kChangedPerMille = 30;

enum class Codes { same, replaced };
enum class Hashes { with, without };

/// The sorted labels, and for each label given where it went.
std::vector<std::string> sorted_labels(std::vector<std::string> labels,
                                       std::vector<std::uint16_t>& place) {
  std::vector<std::uint16_t> order(labels.size());
  std::iota(order.begin(), order.end(), std::uint16_t{0});
  std::sort(order.begin(), order.end(), [&](auto a, auto b) { return labels[a] < labels[b]; });
  place.resize(labels.size());
  std::vector<std::string> sorted;
  for (std::uint16_t at = 0; at < order.size(); ++at) {
    place[order[at]] = at;
    sorted.push_back(labels[order[at]]);
  }
  return sorted;
}

bool add_offers(const bench::InventedLine& line, bool later, LineOffers& offers) {
  std::vector<std::string> sizes;
  for (std::uint32_t i = 0; i < line.size_count; ++i) {
    sizes.push_back(std::to_string(line.first_size + 2 * i));
  }
  std::vector<std::uint16_t> colour_at;
  std::vector<std::uint16_t> size_at;
  offers.currency = Currency::from_code("GBP");
  offers.colours = sorted_labels({line.colours.begin(), line.colours.end()}, colour_at);
  offers.sizes = sorted_labels(std::move(sizes), size_at);
  offers.offers.resize(line.variant_count());
  offers.gtins.resize(line.variant_count());
  bool changed = false;
  for (std::uint32_t variant = 0; variant < line.variant_count(); ++variant) {
    bench::InventedOffer invented = bench::invented_offer(line, kSeed, variant);
    if (later && bench::Random(kSeed, line.index, 100 + variant).in_a_thousand(kChangedPerMille)) {
      bench::change_offer(invented, kSeed, line.index, variant);
      changed = true;
    }
    const std::uint16_t colour = colour_at[variant / line.size_count];
    const std::uint16_t size = size_at[variant % line.size_count];
    const std::size_t at = colour * offers.sizes.size() + size;
    offers.offers[at] = {colour, size, invented.in_stock ? Stock::in_stock : Stock::sold_out,
                         invented.price, std::nullopt};
    if (invented.full_price != invented.price) offers.offers[at].full_price = invented.full_price;
    offers.gtins[at] = Gtin::from_value(bench::invented_gtin(kSeed, line.index, variant));
  }
  return changed;
}

Snapshot season(bool later, Codes codes, Hashes hashes) {
  Snapshot snapshot;
  snapshot.shop.sizes = SizeSystem::uk;
  snapshot.capture.id = later ? 2 : 1;
  snapshot.capture.season = later ? "AW26" : "AW25";
  snapshot.capture.documents.push_back({snapshot.capture.season + ".csv", {}, 0, "csv", {}});
  for (std::uint64_t index = 0; index < kLines; ++index) {
    bench::InventedLine line = bench::invented_line(kSeed, index);
    if (later && codes == Codes::replaced) bench::recode(line, kSeed);
    LineState state;
    state.id = static_cast<LineId>(index);
    state.listing.card = {line.code,        {},
                          line.name,        std::string(line.category),
                          line.composition, "https://shop.example/p/" + line.slug};
    state.listing.origin.line = index + 2;
    const bool changed = add_offers(line, later, state.listing.offers);
    if (hashes == Hashes::with) {
      state.hashes = PartHashes{index, 0, changed ? ~index : index};
    }
    snapshot.lines.push_back(std::move(state));
  }
  return snapshot;
}

void link_seasons(benchmark::State& state, Codes codes) {
  const Snapshot from = season(false, codes, Hashes::without);
  const Snapshot to = season(true, codes, Hashes::without);
  std::size_t links = 0;
  for (auto _ : state) links = link_lines(from, to, {}, nullptr).links.size();
  state.counters["links"] = static_cast<double>(links);
}

void diff_seasons(benchmark::State& state, Hashes hashes) {
  const Snapshot from = season(false, Codes::same, hashes);
  const Snapshot to = season(true, Codes::same, hashes);
  const LinkSet links = link_lines(from, to, {}, nullptr);
  std::size_t changes = 0;
  for (auto _ : state) changes = diff_snapshots(from, to, links, {}).changes.size();
  state.counters["changes"] = static_cast<double>(changes);
}

void link_same_codes(benchmark::State& state) { link_seasons(state, Codes::same); }
void link_replaced_codes(benchmark::State& state) { link_seasons(state, Codes::replaced); }
void diff_with_hashes(benchmark::State& state) { diff_seasons(state, Hashes::with); }
void diff_without_hashes(benchmark::State& state) { diff_seasons(state, Hashes::without); }

BENCHMARK(link_same_codes)->Unit(benchmark::kMillisecond);
BENCHMARK(link_replaced_codes)->Unit(benchmark::kMillisecond);
BENCHMARK(diff_with_hashes)->Unit(benchmark::kMillisecond);
BENCHMARK(diff_without_hashes)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace rangebook

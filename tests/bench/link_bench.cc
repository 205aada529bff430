// Linking by likeness: two invented seasons in which no code, address or barcode is shared, a fifth
// of the lines are renamed, a tenth dropped and as many new. Beside it the plain way, which
// compares every name with every other by Jaro and Winkler's measure, at a size it can bear.
#include <benchmark/benchmark.h>

#include <algorithm>
#include <string>
#include <vector>

#include "schema/snapshot.h"
#include "tests/bench/invented_line.h"
#include "tests/bench/random.h"
#include "tracker/likeness/candidates.h"
#include "tracker/likeness/likeness_matcher.h"

namespace rangebook {
namespace {

constexpr std::uint64_t kSeed = 27;

void add_offers(const bench::InventedLine& line, LineOffers& offers) {
  offers.currency = Currency::from_code("GBP");
  offers.colours = {line.colours.begin(), line.colours.end()};
  for (std::uint32_t i = 0; i < line.size_count; ++i) {
    offers.sizes.push_back(std::to_string(line.first_size + 2 * i));
  }
  std::sort(offers.colours.begin(), offers.colours.end());
  std::sort(offers.sizes.begin(), offers.sizes.end());
  for (std::uint16_t colour = 0; colour < offers.colours.size(); ++colour) {
    for (std::uint16_t size = 0; size < offers.sizes.size(); ++size) {
      offers.offers.push_back({colour, size, Stock::unknown, line.full_price, std::nullopt});
    }
  }
}

LineState state_of(std::uint64_t index, bool later) {
  bench::InventedLine line = bench::invented_line(kSeed, index);
  bench::Random random(kSeed, index, 300);
  if (later) {
    bench::recode(line, kSeed);
    if (random.in_a_thousand(200)) bench::rename(line, kSeed);
    if (random.in_a_thousand(400)) line.full_price += 100 * (1 + random.below(8));
  }
  LineState state;
  state.id = static_cast<LineId>(index);
  state.listing.card = {line.code, {}, line.name, std::string(line.category), line.composition, {}};
  state.listing.detail.description = line.description;
  add_offers(line, state.listing.offers);
  return state;
}

/// Lines `first` to `first + count`; the later season starts a tenth later in the invented row.
Snapshot season(bool later, std::uint64_t count) {
  Snapshot snapshot;
  snapshot.shop.sizes = SizeSystem::uk;
  snapshot.capture.id = later ? 2 : 1;
  const std::uint64_t first = later ? count / 10 : 0;
  for (std::uint64_t i = 0; i < count; ++i) snapshot.lines.push_back(state_of(first + i, later));
  return snapshot;
}

void link_by_likeness(benchmark::State& state) {
  const auto count = static_cast<std::uint64_t>(state.range(0));
  const Snapshot from = season(false, count);
  const Snapshot to = season(true, count);
  const LikenessMatcher matcher;
  LinkSet links;
  for (auto _ : state) links = link_lines(from, to, {}, &matcher);
  double right = 0;
  for (const Link& link : links.links) right += link.from == link.to + count / 10;
  state.counters["recall"] = right / static_cast<double>(count - count / 10);
  state.counters["precision"] = right / static_cast<double>(links.links.size());
  state.counters["asked"] = static_cast<double>(links.ask.size());
}

std::vector<LineProfile> profiles_of(ProfileBuilder& builder, const Snapshot& snapshot) {
  std::vector<LineProfile> profiles;
  for (const LineState& line : snapshot.lines) {
    profiles.push_back(builder.build(line.listing, line.listing.detail));
  }
  return profiles;
}

void find_candidates_alone(benchmark::State& state) {
  const auto count = static_cast<std::uint64_t>(state.range(0));
  ProfileBuilder builder(SizeSystem::uk);
  const auto from = profiles_of(builder, season(false, count));
  const auto to = profiles_of(builder, season(true, count));
  std::vector<Candidate> candidates;
  for (auto _ : state) candidates = find_candidates(from, to, {});
  double found = 0;
  for (const Candidate& pair : candidates) found += pair.from == pair.to + count / 10;
  state.counters["recall"] = found / static_cast<double>(count - count / 10);
  state.counters["pairs"] = static_cast<double>(candidates.size());
}

// --- The plain way

/// Marks what `b` shares with `a` within half the longer length; in the order of `a`.
std::string shared_letters(const std::string& a, const std::string& b) {
  const std::size_t reach = std::max(a.size(), b.size()) / 2;
  const std::size_t window = reach > 0 ? reach - 1 : 0;
  std::string shared;
  std::vector<char> used(b.size());
  for (std::size_t i = 0; i < a.size(); ++i) {
    const std::size_t end = std::min(b.size(), i + window + 1);
    for (std::size_t j = i > window ? i - window : 0; j < end; ++j) {
      if (used[j] != 0 || a[i] != b[j]) continue;
      used[j] = 1;
      shared += a[i];
      break;
    }
  }
  return shared;
}

/// Winkler 1990: Jaro's measure with a bonus for up to four letters in common at the start.
double jaro_winkler(const std::string& a, const std::string& b) {
  const std::string of_a = shared_letters(a, b);
  const std::string of_b = shared_letters(b, a);
  const auto shared = static_cast<double>(std::min(of_a.size(), of_b.size()));
  if (shared == 0) return 0;
  double moved = 0;
  for (std::size_t i = 0; i < std::min(of_a.size(), of_b.size()); ++i) moved += of_a[i] != of_b[i];
  const double jaro = (shared / static_cast<double>(a.size()) +
                       shared / static_cast<double>(b.size()) + (shared - moved / 2) / shared) /
                      3;
  std::size_t start = 0;
  while (start < 4 && start < a.size() && start < b.size() && a[start] == b[start]) ++start;
  return jaro + 0.1 * static_cast<double>(start) * (1 - jaro);
}

void compare_all_names(benchmark::State& state) {
  const auto count = static_cast<std::uint64_t>(state.range(0));
  const Snapshot from = season(false, count);
  const Snapshot to = season(true, count);
  double right = 0;
  for (auto _ : state) {
    right = 0;
    for (std::size_t i = 0; i < count; ++i) {
      double best = 0;
      std::size_t partner = 0;
      for (std::size_t j = 0; j < count; ++j) {
        const double likeness =
            jaro_winkler(from.lines[i].listing.card.name, to.lines[j].listing.card.name);
        if (likeness <= best) continue;
        best = likeness;
        partner = j;
      }
      right += i == partner + count / 10;
    }
  }
  state.counters["recall"] = right / static_cast<double>(count - count / 10);
}

BENCHMARK(link_by_likeness)
    ->Arg(1'000)
    ->Arg(5'000)
    ->Arg(10'000)
    ->Arg(20'000)
    ->Unit(benchmark::kMillisecond);
BENCHMARK(find_candidates_alone)
    ->Arg(5'000)
    ->Arg(10'000)
    ->Arg(20'000)
    ->Unit(benchmark::kMillisecond);
BENCHMARK(compare_all_names)->Arg(1'000)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace rangebook

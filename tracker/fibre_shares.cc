// Whole numbers: hundredths of a percent summed over lines, divided once.
#include "tracker/fibre_shares.h"

#include <algorithm>
#include <array>
#include <map>

#include "schema/composition.h"
#include "tracker/differ.h"
#include "tracker/interpreter.h"

namespace rangebook {
namespace {

constexpr std::size_t kShown = 9;

struct Tally {
  std::uint32_t lines = 0;
  std::uint32_t stated = 0;
  std::map<std::string, std::int64_t> fibres;  // hundredths of a percent, over all lines
  std::array<std::int64_t, 4> origins{};

  void add(const CompositionPart& part) {
    ++stated;
    const OriginShares shares = shares_by_origin(part);
    const std::array<std::int32_t, 4> by_origin{shares.natural, shares.regenerated,
                                                shares.synthetic, shares.other};
    for (std::size_t i = 0; i < origins.size(); ++i) origins.at(i) += by_origin.at(i);
    for (const FibreShare& each : part.fibres) fibres[each.fibre] += each.hundredths;
  }

  std::uint32_t mean(std::int64_t hundredths) const {
    constexpr std::int64_t kTenths = 10;
    if (stated == 0) return 0;
    return static_cast<std::uint32_t>((hundredths + kTenths * stated / 2) / (kTenths * stated));
  }
  std::int64_t of(const std::string& fibre) const {
    const auto found = fibres.find(fibre);
    return found == fibres.end() ? 0 : found->second;
  }
};

Tally tally_of(const Snapshot& snapshot, const Scope& within) {
  Tally tally;
  Interpreter interpreter(snapshot.shop.sizes);
  for (const LineState& line : snapshot.lines) {
    const LineCard& card = line.listing.card;
    if (!scope_covers(within, interpreter.category(card))) continue;
    ++tally.lines;
    const auto& composition = interpreter.composition(card.composition);
    if (!composition || composition->parts.empty()) continue;
    const CompositionPart& main = composition->parts.front();
    if (main.part == kMainPart && main.sums_to_100()) tally.add(main);
  }
  return tally;
}

}  // namespace

FibrePair compare_fibres(const Snapshot& from, const Snapshot& to, const Scope& common) {
  const Tally then = tally_of(from, common);
  const Tally now = tally_of(to, common);
  FibrePair pair{then.lines, now.lines, then.stated, now.stated, {}};
  if (then.stated + now.stated == 0) return pair;
  for (std::size_t i = 0; i < then.origins.size(); ++i) {
    if (then.origins.at(i) + now.origins.at(i) == 0) continue;
    pair.rows.push_back({"all " + std::string(to_string(FibreOrigin(i))), true,
                         then.mean(then.origins.at(i)), now.mean(now.origins.at(i))});
  }
  std::map<std::string, std::int64_t> names = then.fibres;
  for (const auto& [name, sum] : now.fibres) names[name] += sum;
  std::vector<std::pair<std::string, std::int64_t>> order(names.begin(), names.end());
  std::stable_sort(order.begin(), order.end(),
                   [](const auto& a, const auto& b) { return a.second > b.second; });
  std::int64_t rest_then = 0;
  std::int64_t rest_now = 0;
  for (std::size_t i = 0; i < order.size(); ++i) {
    const std::string& name = order[i].first;
    if (i < kShown) {
      pair.rows.push_back({name, false, then.mean(then.of(name)), now.mean(now.of(name))});
    } else {
      rest_then += then.of(name);
      rest_now += now.of(name);
    }
  }
  if (order.size() > kShown) {
    pair.rows.push_back({"other fibres", false, then.mean(rest_then), now.mean(rest_now)});
  }
  return pair;
}

}  // namespace rangebook

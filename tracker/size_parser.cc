// The meaning of a whole set of size labels: what each says by itself, then the system the bare
// numbers share.
#include "tracker/size_parser.h"

#include <array>
#include <tuple>

#include "tracker/size_grid.h"
#include "tracker/size_label.h"

namespace rangebook {
namespace {

constexpr std::size_t kSystemCount = static_cast<std::size_t>(SizeSystem::one_size) + 1;

/// What the pairs with a slash mean in this set: `30/32` is waist and length, `12/14` a dual size.
enum class SlashPairs { dual, waist_length, neither };

/// All that has to be known of the set before a label's numbers can be understood.
struct SetFacts {
  std::array<NumberSet, kSystemCount> marked{};  ///< by the labels' own mark
  NumberSet bare;
  SlashPairs slashes = SlashPairs::dual;
  bool w_is_waist = false;  ///< `30W` is a waist in inches, not a US plus size

  NumberSet& numbers_of(const SizeReading& reading) {
    return reading.mark ? marked[static_cast<std::size_t>(*reading.mark)] : bare;
  }
};

bool is_bare_slash(const SizeReading& reading) {
  return reading.shape == SizeShape::slash_pair && !reading.mark;
}

bool waist_and_length(const SizeReading& r) {
  return r.low >= 200 && r.low <= 600 && r.high >= 240 && r.high <= 400;
}

/// Two readings that cannot both be dual sizes of one scale: they overlap.
bool overlap(const SizeReading& a, const SizeReading& b) {
  return a.low != b.low || a.high != b.high ? a.low <= b.high && b.low <= a.high : false;
}

/// Where nothing else tells: pairs such as 30/32 are waists, except on the scales where 34/36 and
/// up are everyday dual sizes (common practice, no source).
bool looks_like_waist(const SizeReading& reading, SizeSystem shop_default) {
  const bool continental = shop_default == SizeSystem::eu || shop_default == SizeSystem::fr ||
                           shop_default == SizeSystem::it;
  return reading.low >= 230 && reading.low < (continental ? 340 : 370) && reading.high <= 380;
}

SlashPairs meaning_of_slashes(std::span<const SizeReading> readings, SizeSystem shop_default) {
  std::vector<SizeReading> pairs;
  for (const auto& reading : readings) {
    if (is_bare_slash(reading)) pairs.push_back(reading);
  }
  bool dual = true;
  bool waists = true;
  for (const auto& pair : pairs) {
    dual = dual && pair.high - pair.low == 20;
    waists = waists && waist_and_length(pair);
  }
  for (std::size_t i = 1; i < pairs.size(); ++i) dual = dual && !overlap(pairs[i - 1], pairs[i]);
  if (dual && waists && pairs.size() == 1) dual = !looks_like_waist(pairs[0], shop_default);
  if (dual) return SlashPairs::dual;
  return waists ? SlashPairs::waist_length : SlashPairs::neither;
}

bool w_means_waist(std::span<const SizeReading> readings, SizeSystem shop_default) {
  if (shop_default == SizeSystem::us) return false;
  for (const auto& reading : readings) {
    if (reading.shape == SizeShape::w_number && reading.low < 230) return false;
  }
  return true;
}

SetFacts facts_of(std::span<const SizeReading> readings, SizeSystem shop_default) {
  SetFacts facts;
  facts.slashes = meaning_of_slashes(readings, shop_default);
  facts.w_is_waist = w_means_waist(readings, shop_default);
  for (const auto& reading : readings) {
    const bool number = reading.shape == SizeShape::number ||
                        reading.shape == SizeShape::dash_pair ||
                        (reading.shape == SizeShape::slash_pair &&
                         (reading.mark || facts.slashes == SlashPairs::dual));
    if (!number) continue;
    facts.numbers_of(reading).add(reading.low);
    facts.numbers_of(reading).add(reading.high);
  }
  return facts;
}

SizeSystem system_of_number(const SizeReading& reading, SetFacts& facts, SizeSystem shop_default) {
  return system_of_numbers(facts.numbers_of(reading), reading.mark.value_or(shop_default),
                           reading.mark.has_value());
}

/// Leg lengths and cups stay below this many steps.
constexpr int kSecondMeasures = 1000;

int two_measures(int first, int second) { return first * kSecondMeasures + second; }

/// A slash pair as waist and length.
void place_waist_pair(const SizeReading& reading, Size& size) {
  size.system = SizeSystem::waist_length;
  size.low = size.high = two_measures(reading.low, reading.high);
}

void place_w_number(const SizeReading& reading, bool waist, Size& size) {
  const bool plausible = waist ? reading.low <= 600 : reading.low <= 440;
  if (!plausible) return;
  size.system = waist ? SizeSystem::waist_length : SizeSystem::us;
  if (waist) size.low = size.high = two_measures(reading.low, 0);
  if (!waist) size.fit = FitRange::plus;
}

void place(const SizeReading& reading, SetFacts& facts, SizeSystem shop_default, Size& size) {
  switch (reading.shape) {
    case SizeShape::unknown:
      return;
    case SizeShape::number:
    case SizeShape::dash_pair:
      size.system = system_of_number(reading, facts, shop_default);
      return;
    case SizeShape::slash_pair:
      if (reading.low > reading.high && reading.mark) return;  // "UK 12 / 4" runs nowhere
      if (reading.mark || facts.slashes == SlashPairs::dual) {
        size.system = system_of_number(reading, facts, shop_default);
      } else if (facts.slashes == SlashPairs::waist_length) {
        place_waist_pair(reading, size);
      }
      return;
    case SizeShape::w_number:
      place_w_number(reading, facts.w_is_waist, size);
      return;
    case SizeShape::alpha:
      size.system = SizeSystem::alpha;
      return;
    case SizeShape::waist:
      size.system = SizeSystem::waist_length;
      size.low = size.high = two_measures(reading.low, reading.second);
      return;
    case SizeShape::bra:
      size.system = reading.mark.value_or(SizeSystem::bra);
      size.low = size.high = two_measures(reading.low, reading.second);
      return;
    case SizeShape::one_size:
      size.system = SizeSystem::one_size;
      return;
  }
}

Size size_of(const std::string& label, const SizeReading& reading, SetFacts& facts,
             SizeSystem shop_default) {
  Size size{.label = label,
            .system = SizeSystem::unknown,
            .fit = reading.fit,
            .low = reading.low,
            .high = reading.high};
  place(reading, facts, shop_default, size);
  if (!size.ranked()) size = Size{.label = label};
  return size;
}

}  // namespace

std::vector<Size> interpret_sizes(std::span<const std::string> labels, SizeSystem shop_default) {
  std::vector<SizeReading> readings;
  readings.reserve(labels.size());
  for (const auto& label : labels) readings.push_back(read_size_label(label, shop_default));
  auto facts = facts_of(readings, shop_default);
  std::vector<Size> sizes;
  sizes.reserve(labels.size());
  for (std::size_t i = 0; i < labels.size(); ++i) {
    sizes.push_back(size_of(labels[i], readings[i], facts, shop_default));
  }
  return sizes;
}

bool size_less(const Size& a, const Size& b) {
  return std::tie(a.system, a.fit, a.low, a.high, a.label) <
         std::tie(b.system, b.fit, b.low, b.high, b.label);
}

}  // namespace rangebook

// Describing groups of variants.
#include "tracker/variant_words.h"

#include <algorithm>

namespace rangebook {
namespace {

using Indices = std::vector<std::size_t>;
using Numbers = std::set<std::uint16_t>;
using ByNumber = std::map<std::uint16_t, Indices>;

/// How many variants have one of `numbers`.
std::size_t count_of(const ByNumber& by_number, const Numbers& numbers) {
  std::size_t count = 0;
  for (const std::uint16_t number : numbers) count += by_number.at(number).size();
  return count;
}

/// Sizes smallest first; those without a rank last, by label.
std::vector<std::string> sized(const SizeRun& run, const std::vector<std::string>& labels,
                               const Numbers& numbers) {
  std::vector<std::uint16_t> order(numbers.begin(), numbers.end());
  std::sort(order.begin(), order.end(), [&](std::uint16_t a, std::uint16_t b) {
    const std::size_t rank_a = run.slot_of[a].value_or(run.slots.size());
    const std::size_t rank_b = run.slot_of[b].value_or(run.slots.size());
    return rank_a != rank_b ? rank_a < rank_b : labels[a] < labels[b];
  });
  std::vector<std::string> names;
  names.reserve(order.size());
  for (const std::uint16_t number : order) names.push_back(labels[number]);
  return names;
}

}  // namespace

VariantNamer::VariantNamer(const std::vector<CommonVariant>& all, const LinePair& pair)
    : all_(all), pair_(pair) {
  for (std::size_t i = 0; i < all.size(); ++i) {
    of_colour_[colour(i)].push_back(i);
    of_size_[size(i)].push_back(i);
  }
}

Numbers VariantNamer::colours_of(const Indices& part) const {
  Numbers numbers;
  for (const std::size_t i : part) numbers.insert(colour(i));
  return numbers;
}

Numbers VariantNamer::sizes_of(const Indices& part) const {
  Numbers numbers;
  for (const std::size_t i : part) numbers.insert(size(i));
  return numbers;
}

// The colours and sizes of `part` mean no other variant. Looks at the variants of the colours or at
// those of the sizes, whichever are fewer: a line may have thousands of either.
bool VariantNamer::is_exact(const Indices& part) const {
  const Numbers colours = colours_of(part);
  const Numbers sizes = sizes_of(part);
  std::size_t meant = 0;
  if (count_of(of_colour_, colours) <= count_of(of_size_, sizes)) {
    for (const std::uint16_t number : colours) {
      for (const std::size_t i : of_colour_.at(number)) meant += sizes.contains(size(i)) ? 1 : 0;
    }
  } else {
    for (const std::uint16_t number : sizes) {
      for (const std::size_t i : of_size_.at(number)) meant += colours.contains(colour(i)) ? 1 : 0;
    }
  }
  return meant == part.size();
}

/// `part` by sets of colours that have the same sizes in it.
std::vector<Indices> VariantNamer::by_sizes(const Indices& part) const {
  ByNumber of_colour;
  for (const std::size_t i : part) of_colour[colour(i)].push_back(i);
  std::map<Numbers, Indices> of_sizes;
  for (const auto& [number, variants] : of_colour) {
    Indices& together = of_sizes[sizes_of(variants)];
    together.insert(together.end(), variants.begin(), variants.end());
  }
  std::vector<Indices> parts;
  parts.reserve(of_sizes.size());
  for (auto& [sizes, variants] : of_sizes) parts.push_back(std::move(variants));
  return parts;
}

void VariantNamer::name_colours(const Indices& part, VariantWords& words) const {
  std::set<std::string> before;
  std::set<std::string> after;
  for (const std::size_t i : part) {
    before.insert(pair_.then().offers.colours[all_[i].before->colour]);
    after.insert(pair_.now().offers.colours[all_[i].after->colour]);
  }
  words.colours_before.assign(before.begin(), before.end());
  words.colours_after.assign(after.begin(), after.end());
}

void VariantNamer::name_sizes(const Indices& part, VariantWords& words) const {
  Numbers before;
  for (const std::size_t i : part) before.insert(all_[i].before->size);
  words.sizes_before = sized(*pair_.sizes_before, pair_.then().offers.sizes, before);
  words.sizes_after = sized(*pair_.sizes_after, pair_.now().offers.sizes, sizes_of(part));
}

VariantWords VariantNamer::words(const Indices& part) const {
  VariantWords words;
  const bool every_size = count_of(of_colour_, colours_of(part)) == part.size();
  const bool every_colour = !every_size && count_of(of_size_, sizes_of(part)) == part.size();
  if (!every_colour) name_colours(part, words);
  if (!every_size) name_sizes(part, words);
  return words;
}

std::vector<VariantWords> VariantNamer::describe(const Indices& part) const {
  if (part.size() == all_.size()) return {VariantWords{}};
  if (is_exact(part)) return {words(part)};
  std::vector<VariantWords> parts;
  for (const Indices& exact : by_sizes(part)) parts.push_back(words(exact));
  return parts;
}

}  // namespace rangebook

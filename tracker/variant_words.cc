// Describing groups of variants.
#include "tracker/variant_words.h"

#include <algorithm>
#include <map>
#include <set>

namespace rangebook {
namespace {

using Indices = std::vector<std::size_t>;
using Numbers = std::set<std::uint16_t>;

class Describer {
 public:
  Describer(const std::vector<CommonVariant>& all, const LinePair& pair) : all_(all), pair_(pair) {}

  VariantWords words(const Indices& part) const;
  /// The colours and sizes of `part` mean no other variant.
  bool is_exact(const Indices& part) const;
  /// `part` by sets of colours that have the same sizes in it.
  std::vector<Indices> by_sizes(const Indices& part) const;

 private:
  std::uint16_t colour(std::size_t i) const { return all_[i].after->colour; }
  std::uint16_t size(std::size_t i) const { return all_[i].after->size; }
  Numbers colours_of(const Indices& part) const;
  Numbers sizes_of(const Indices& part) const;
  std::size_t count_in(const Numbers* colours, const Numbers* sizes) const;
  void name_colours(const Indices& part, VariantWords& words) const;
  void name_sizes(const Indices& part, VariantWords& words) const;

  const std::vector<CommonVariant>& all_;
  const LinePair& pair_;
};

Numbers Describer::colours_of(const Indices& part) const {
  Numbers numbers;
  for (const std::size_t i : part) numbers.insert(colour(i));
  return numbers;
}

Numbers Describer::sizes_of(const Indices& part) const {
  Numbers numbers;
  for (const std::size_t i : part) numbers.insert(size(i));
  return numbers;
}

std::size_t Describer::count_in(const Numbers* colours, const Numbers* sizes) const {
  std::size_t count = 0;
  for (std::size_t i = 0; i < all_.size(); ++i) {
    const bool in_colours = colours == nullptr || colours->contains(colour(i));
    if (in_colours && (sizes == nullptr || sizes->contains(size(i)))) ++count;
  }
  return count;
}

bool Describer::is_exact(const Indices& part) const {
  const Numbers colours = colours_of(part);
  const Numbers sizes = sizes_of(part);
  return count_in(&colours, &sizes) == part.size();
}

std::vector<Indices> Describer::by_sizes(const Indices& part) const {
  std::map<std::uint16_t, Indices> of_colour;
  for (const std::size_t i : part) of_colour[colour(i)].push_back(i);
  std::map<Numbers, Indices> of_sizes;
  for (const auto& [number, variants] : of_colour) {
    Indices& together = of_sizes[sizes_of(variants)];
    together.insert(together.end(), variants.begin(), variants.end());
  }
  std::vector<Indices> parts;
  for (auto& [sizes, variants] : of_sizes) parts.push_back(std::move(variants));
  return parts;
}

/// Labels in the order of their bytes, each once.
std::vector<std::string> in_order(const std::set<std::string>& labels) {
  return {labels.begin(), labels.end()};
}

void Describer::name_colours(const Indices& part, VariantWords& words) const {
  std::set<std::string> before;
  std::set<std::string> after;
  for (const std::size_t i : part) {
    before.insert(pair_.then().offers.colours[all_[i].before->colour]);
    after.insert(pair_.now().offers.colours[all_[i].after->colour]);
  }
  words.colours_before = in_order(before);
  words.colours_after = in_order(after);
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
  for (const std::uint16_t number : order) names.push_back(labels[number]);
  return names;
}

void Describer::name_sizes(const Indices& part, VariantWords& words) const {
  Numbers before;
  for (const std::size_t i : part) before.insert(all_[i].before->size);
  words.sizes_before = sized(*pair_.sizes_before, pair_.then().offers.sizes, before);
  words.sizes_after = sized(*pair_.sizes_after, pair_.now().offers.sizes, sizes_of(part));
}

VariantWords Describer::words(const Indices& part) const {
  const Numbers colours = colours_of(part);
  const Numbers sizes = sizes_of(part);
  VariantWords words;
  const bool every_size = count_in(&colours, nullptr) == part.size();
  const bool every_colour = !every_size && count_in(nullptr, &sizes) == part.size();
  if (!every_colour) name_colours(part, words);
  if (!every_size) name_sizes(part, words);
  return words;
}

}  // namespace

std::vector<VariantWords> describe_variants(const std::vector<CommonVariant>& all,
                                            const std::vector<std::size_t>& part,
                                            const LinePair& pair) {
  if (part.size() == all.size()) return {VariantWords{}};
  const Describer describer(all, pair);
  if (describer.is_exact(part)) return {describer.words(part)};
  std::vector<VariantWords> words;
  for (const Indices& exact : describer.by_sizes(part)) words.push_back(describer.words(exact));
  return words;
}

}  // namespace rangebook

// Small answers about styles and sizes.
#include "demo-feeds/range.h"

#include <algorithm>
#include <array>

namespace demo {
namespace {

constexpr std::array<const char*, 7> kAlpha{"XS", "S", "M", "L", "XL", "XXL", "3XL"};

std::string fibres(const std::vector<Fibre>& list, Wording wording) {
  std::string text;
  for (const Fibre& fibre : list) {
    if (!text.empty()) text += ", ";
    const std::string share = std::to_string(fibre.percent) + "%";
    text += wording == Wording::share_first ? share + " " + fibre.name : fibre.name + " " + share;
  }
  return text;
}

char check_digit(const std::string& first_twelve) {
  int sum = 0;
  for (std::size_t i = 0; i < first_twelve.size(); ++i) {
    sum += (first_twelve[i] - '0') * (i % 2 == 0 ? 1 : 3);
  }
  return static_cast<char>('0' + (10 - sum % 10) % 10);
}

}  // namespace

std::string label(const SizeStep& size) {
  if (size.system == System::one_size) return "One Size";
  std::string text = size.system == System::uk ? std::to_string(size.rank)
                                               : kAlpha.at(static_cast<std::size_t>(size.rank));
  if (size.fit == Fit::petite) text += " Petite";
  if (size.fit == Fit::tall) text += " Tall";
  return text;
}

std::string to_string(System system) {
  switch (system) {
    case System::uk:
      return "uk";
    case System::alpha:
      return "alpha";
    case System::one_size:
      return "one-size";
  }
  return {};
}

std::string to_string(Fit fit) {
  switch (fit) {
    case Fit::regular:
      return "regular";
    case Fit::petite:
      return "petite";
    case Fit::tall:
      return "tall";
  }
  return {};
}

int step_between(System system) { return system == System::uk ? 2 : 1; }

std::string composition(const Fabric& fabric, Wording wording) {
  if (fabric.lining.empty()) return fibres(fabric.main, wording);
  return "Main: " + fibres(fabric.main, wording) + "; Lining: " + fibres(fabric.lining, wording);
}

Minor Style::selling(const std::string& colour) const {
  const auto found = sale.find(colour);
  return found == sale.end() ? full : found->second;
}

Minor Style::lowest_selling() const {
  Minor lowest = full;
  for (const std::string& colour : colours) lowest = std::min(lowest, selling(colour));
  return lowest;
}

std::vector<VariantKey> Style::variants() const {
  std::vector<VariantKey> keys;
  for (const std::string& colour : colours) {
    for (const SizeStep& size : sizes) keys.emplace_back(colour, size);
  }
  return keys;
}

std::vector<SizeStep> sizes_of(const Style& style, System system, Fit fit) {
  std::vector<SizeStep> found;
  for (const SizeStep& size : style.sizes) {
    if (size.system == system && size.fit == fit) found.push_back(size);
  }
  return found;
}

const Style* Range::find(int uid) const {
  const auto found = std::ranges::find(styles, uid, &Style::uid);
  return found == styles.end() ? nullptr : &*found;
}
Style* Range::find(int uid) {
  const auto found = std::ranges::find(styles, uid, &Style::uid);
  return found == styles.end() ? nullptr : &*found;
}

std::string Numbers::next_gtin() {
  std::string digits = std::to_string(++counter_);
  digits = "29" + std::to_string(shop_) + std::string(9 - digits.size(), '0') + digits;
  return digits + check_digit(digits);
}

void Numbers::number_variants(Style& style) {
  for (const VariantKey& key : style.variants()) {
    if (!style.gtins.contains(key)) style.gtins.emplace(key, next_gtin());
  }
}

std::string decimal(Minor amount, char sign) {
  const std::string cents = std::to_string(amount % 100);
  return std::to_string(amount / 100) + sign + std::string(2 - cents.size(), '0') + cents;
}

}  // namespace demo

// Taking the row about a whole line out of its offers.
#include "tracker/whole_line_row.h"

#include <algorithm>
#include <utility>
#include <vector>

namespace rangebook {
namespace {

bool names_no_variant(const LineOffers& offers, const Offer& offer) {
  return offers.colours[offer.colour].empty() && offers.sizes[offer.size].empty();
}

bool adds_facts(const Offer& row, const LineOffers& rest) {
  const auto none = [&rest](auto states) {
    return std::none_of(rest.offers.begin(), rest.offers.end(), states);
  };
  return (row.price && none([](const Offer& o) { return o.price.has_value(); })) ||
         (row.full_price && none([](const Offer& o) { return o.full_price.has_value(); })) ||
         (row.stock != Stock::unknown &&
          none([](const Offer& o) { return o.stock != Stock::unknown; }));
}

/// Drops the labels no offer uses; they are sorted, so an empty one can only be the first.
void drop_unused_empty_label(std::vector<std::string>& labels, std::vector<Offer>& offers,
                             std::uint16_t Offer::*index) {
  if (!labels.front().empty()) return;
  const bool used = std::any_of(offers.begin(), offers.end(),
                                [index](const Offer& offer) { return offer.*index == 0; });
  if (used) return;
  labels.erase(labels.begin());
  for (Offer& offer : offers) --(offer.*index);
}

template <typename List>
void erase_place(List& list, std::size_t place) {
  if (!list.empty()) list.erase(list.begin() + static_cast<std::ptrdiff_t>(place));
}

}  // namespace

std::optional<LineOffers> without_whole_line_row(const LineOffers& offers) {
  if (offers.offers.size() < 2 || !offers.colours.front().empty() || !offers.sizes.front().empty())
    return std::nullopt;
  const auto row = std::find_if(offers.offers.begin(), offers.offers.end(),
                                [&](const Offer& o) { return names_no_variant(offers, o); });
  if (row == offers.offers.end()) return std::nullopt;
  const Offer whole = *row;
  const auto place = static_cast<std::size_t>(row - offers.offers.begin());
  LineOffers rest = offers;
  erase_place(rest.offers, place);
  erase_place(rest.gtins, place);
  erase_place(rest.variant_codes, place);
  if (adds_facts(whole, rest)) return std::nullopt;
  drop_unused_empty_label(rest.colours, rest.offers, &Offer::colour);
  drop_unused_empty_label(rest.sizes, rest.offers, &Offer::size);
  return rest;
}

}  // namespace rangebook

// Reasons, trait by trait.
#include "tracker/likeness/reasons.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <vector>

#include "schema/money.h"

namespace rangebook {
namespace {

/// What speaks for a pair, and what against it.
struct Reasons {
  std::vector<std::string> same;
  std::vector<std::string> other;

  void add(bool alike, std::string reason) { (alike ? same : other).push_back(std::move(reason)); }
};

void add_name(const TraitView& seen, Reasons& reasons) {
  if (*seen.step >= steps::kNameEqual) {
    reasons.add(true, "same name");
  } else if (*seen.step >= steps::kNameNear) {
    reasons.add(true, "nearly the same name");
  } else if (*seen.step >= 2) {
    reasons.add(true, "the names share words");
  } else {
    reasons.add(false, "another name");
  }
}

void add_description(const TraitView& seen, Reasons& reasons) {
  if (*seen.step > steps::kDescriptionNear) {
    reasons.add(true, "same description");
  } else if (*seen.step == steps::kDescriptionNear) {
    reasons.add(true, "nearly the same description");
  } else if (*seen.step >= steps::kDescriptionAlike) {
    reasons.add(true, "a similar description");
  } else if (*seen.step == 0) {
    reasons.add(false, "another description");
  }
}

void add_composition(const TraitView& seen, const LineProfile& from, const LineProfile& to,
                     Reasons& reasons) {
  if (*seen.step == steps::kCompositionEqual) {
    reasons.add(true, fmt::format("same composition {}", to.fabric->text));
  } else {
    reasons.add(*seen.step == steps::kCompositionNear,
                fmt::format("composition {} -> {}", from.fabric->text, to.fabric->text));
  }
}

void add_colours(const TraitView& seen, const LineProfile& from, const LineProfile& to,
                 Reasons& reasons) {
  if (from.colours == to.colours) {
    reasons.add(true, to.colours.size() == 1 ? "same colour" : "same colours");
  } else {
    reasons.add(*seen.step > 0, *seen.step > 0 ? "colours in common" : "no colour in common");
  }
}

void add_price(const TraitView& seen, const LineProfile& from, const LineProfile& to,
               Reasons& reasons) {
  const Currency currency = *to.currency;
  const std::string now = to_string(Money{*to.price, currency});
  if (*from.price == *to.price) {
    reasons.add(true, fmt::format("same price {}", now));
  } else {
    reasons.add(*seen.step >= steps::kPriceNear,
                fmt::format("price {} -> {}", decimal_text({*from.price, currency}), now));
  }
}

void add_trait(const PairView& view, Trait trait, const LineProfile& from, const LineProfile& to,
               Reasons& reasons) {
  const TraitView& seen = trait_of(view, trait);
  if (!seen.step) return;
  switch (trait) {
    case Trait::name:
      return add_name(seen, reasons);
    case Trait::description:
      return add_description(seen, reasons);
    case Trait::composition:
      return add_composition(seen, from, to, reasons);
    case Trait::colours:
      return add_colours(seen, from, to, reasons);
    case Trait::price:
      return add_price(seen, from, to, reasons);
    case Trait::sizes:
      if (*seen.step == 3) reasons.add(true, "same sizes");
      return;
    case Trait::picture:
      if (*seen.step == steps::kPictureEqual) reasons.add(true, "same picture");
      return;
    case Trait::code:
      if (*seen.step == 1) reasons.add(true, "a part of the code in common");
      return;
    case Trait::category:
      if (*seen.step != steps::kCategorySame) reasons.add(false, "another category");
      return;
  }
}

}  // namespace

std::string reason_of(const PairView& view, const LineProfile& from, const LineProfile& to) {
  Reasons reasons;
  for (std::size_t trait = 0; trait < kTraits; ++trait) {
    add_trait(view, static_cast<Trait>(trait), from, to, reasons);
  }
  std::string text = fmt::format("{}", fmt::join(reasons.same, ", "));
  if (reasons.other.empty()) return text;
  return text + (text.empty() ? "" : "; but ") + fmt::format("{}", fmt::join(reasons.other, ", "));
}

}  // namespace rangebook
